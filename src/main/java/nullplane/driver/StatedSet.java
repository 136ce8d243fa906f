package nullplane.driver;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import nullplane.units.Checks;

/**
 * What a data sheet states about a woofer, taken as it stands.
 *
 * @param mounting the mounting of fs, the quality factors and Mms
 * @param nominalM frame size class (m), if stated; helps to explain a wrong area
 * @param figures what is stated
 */
public record StatedSet(
    Mounting mounting, OptionalDouble nominalM, Map<Parameter, Figure> figures) {

  /**
   * A stated value.
   *
   * @param value the value (SI; dB for levels)
   * @param rounding half of the last digit printed, as a share of the value (1); dB for levels
   */
  public record Figure(double value, double rounding) {
    /** Checks that the rounding is not negative. */
    public Figure {
      Checks.finite(value, "stated value", "");
      Checks.notNegative(rounding, "rounding", "1");
    }
  }

  /** Checks each value and copies the map, in the order of trust. */
  public StatedSet {
    nominalM.ifPresent(size -> Checks.positive(size, "nominal size", "m"));
    figures.forEach((parameter, figure) -> parameter.toLog(figure.value()));
    EnumMap<Parameter, Figure> copy = new EnumMap<>(Parameter.class);
    copy.putAll(figures);
    figures = Collections.unmodifiableMap(copy);
  }

  /**
   * Returns a set that states nothing yet.
   *
   * @param mounting the mounting of fs, the quality factors and Mms
   */
  public static StatedSet in(Mounting mounting) {
    return new StatedSet(mounting, OptionalDouble.empty(), Map.of());
  }

  /**
   * Returns the set with one more value, or another value for the same figure.
   *
   * @param parameter what is stated
   * @param value its value (SI; dB for levels), known to three digits
   * @throws IllegalArgumentException if the value is not finite, or not positive where that is
   *     needed
   */
  public StatedSet with(Parameter parameter, double value) {
    return with(parameter, value, 0);
  }

  /**
   * Returns the set with one more value, or another value for the same figure.
   *
   * @param parameter what is stated
   * @param value its value (SI; dB for levels)
   * @param rounding half of the last digit printed, as a share of the value (1); dB for levels
   * @throws IllegalArgumentException if the value is not finite, or not positive where that is
   *     needed
   */
  public StatedSet with(Parameter parameter, double value, double rounding) {
    EnumMap<Parameter, Figure> more = new EnumMap<>(Parameter.class);
    more.putAll(figures);
    more.put(parameter, new Figure(value, rounding));
    return new StatedSet(mounting, nominalM, more);
  }

  /**
   * Returns the set with a stated frame size.
   *
   * @param sizeM frame size class (m)
   */
  public StatedSet withNominal(double sizeM) {
    return new StatedSet(mounting, OptionalDouble.of(sizeM), figures);
  }

  /** Returns the stated value of a figure (SI; dB for levels). */
  public OptionalDouble value(Parameter parameter) {
    Figure figure = figures.get(parameter);
    return figure == null ? OptionalDouble.empty() : OptionalDouble.of(figure.value());
  }
}
