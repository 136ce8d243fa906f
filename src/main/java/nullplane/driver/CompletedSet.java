package nullplane.driver;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * All that follows from a data sheet, and where it contradicts itself.
 *
 * @param stated what the sheet states
 * @param values every figure that is stated or follows
 * @param contradictions stated figures that the rest contradicts, the most trusted first
 * @param agreements stated figures that the rest confirms
 * @param gaps what the sheet leaves open of the woofer, travel aside; none if it settles it
 */
public record CompletedSet(
    StatedSet stated,
    Map<Parameter, CompletedValue> values,
    List<Contradiction> contradictions,
    List<Agreement> agreements,
    List<Gap> gaps) {

  /** Copies map and lists. */
  public CompletedSet {
    EnumMap<Parameter, CompletedValue> copy = new EnumMap<>(Parameter.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
    contradictions = List.copyOf(contradictions);
    agreements = List.copyOf(agreements);
    gaps = List.copyOf(gaps);
  }

  /** Returns a figure as stated, or as derived (SI; dB for levels); nothing if it stays open. */
  public OptionalDouble value(Parameter parameter) {
    CompletedValue value = values.get(parameter);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.value());
  }

  /** Returns whether the set settles a woofer, travel aside. */
  public boolean settled() {
    return gaps.isEmpty();
  }

  /**
   * Returns the woofer of the set, by the figures that the set is completed from.
   *
   * @param name what people call it
   * @param nominalM frame size class (m)
   * @param inductanceH coil inductance Le (H)
   * @param travelM travel, one way (m)
   * @param powerW rated power (W)
   * @throws IllegalStateException if the set does not settle a woofer
   */
  public Woofer woofer(
      String name, double nominalM, double inductanceH, double travelM, double powerW) {
    return new Woofer(
        name,
        nominalM,
        consistent(Parameter.AREA),
        consistent(Parameter.RESISTANCE),
        inductanceH,
        consistent(Parameter.BARE_MASS),
        consistent(Parameter.STIFFNESS),
        consistent(Parameter.LOSS),
        consistent(Parameter.FORCE_FACTOR),
        travelM,
        powerW);
  }

  private double consistent(Parameter parameter) {
    CompletedValue value = values.get(parameter);
    if (value == null) {
      throw new IllegalStateException("the set does not settle " + parameter.words());
    }
    return value.consistent();
  }
}
