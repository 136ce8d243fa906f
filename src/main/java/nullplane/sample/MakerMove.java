package nullplane.sample;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What came of one request: the samples it was made from, and the next ones.
 *
 * @param round the round that asked, from 1
 * @param next the round that shows what came of it
 * @param asked what was asked for
 * @param gains the gain that the request reckoned with, by lever (1)
 * @param before the samples that the request was made from, as far as they show it
 * @param after the next samples, as far as they show it
 */
public record MakerMove(
    int round,
    int next,
    AskedChange asked,
    Map<Lever, Double> gains,
    Map<Lever, LeverReading> before,
    Map<Lever, LeverReading> after) {
  /** Copies the maps. */
  public MakerMove {
    gains = copy(gains);
    before = copy(before);
    after = copy(after);
  }

  private static <T> Map<Lever, T> copy(Map<Lever, T> map) {
    Map<Lever, T> copy = new EnumMap<>(Lever.class);
    copy.putAll(map);
    return Collections.unmodifiableMap(copy);
  }

  /** Returns whether both rounds show the part that a lever moves. */
  public boolean shows(Lever lever) {
    return before.containsKey(lever) && after.containsKey(lever);
  }

  /**
   * Returns by how much a lever was expected to move, in the measure of {@link AskedChange#amount}:
   * what was asked, times the gain reckoned with; of shares by their logarithms.
   *
   * @param lever the lever
   */
  public double predicted(Lever lever) {
    double gain = gains.getOrDefault(lever, 1.0);
    double amount = asked.amount(lever);
    return isLength(lever) || lever == Lever.MASS ? gain * amount : Math.pow(1 + amount, gain) - 1;
  }

  /**
   * Returns by how much a lever really moved, in the measure of {@link AskedChange#amount}: the
   * change from round to round, less what a new winding does to mass and force by itself.
   *
   * @param lever the lever
   * @param windingGain how much of a new winding came (1)
   */
  public OptionalDouble achieved(Lever lever, double windingGain) {
    LeverReading was = before.get(lever);
    LeverReading is = after.get(lever);
    if (was == null || is == null) {
      return OptionalDouble.empty();
    }
    double windingMass = asked.winding().map(AskedChange.WindingStep::massKg).orElse(0.0);
    double force = asked.winding().map(AskedChange.WindingStep::forceRatio).orElse(1.0);
    return OptionalDouble.of(
        switch (lever) {
          case MASS -> is.value() - was.value() - windingGain * windingMass;
          case FLUX -> is.value() / was.value() / Math.pow(force, windingGain) - 1;
          case STIFFNESS, WINDING -> is.value() / was.value() - 1;
          case REST_POSITION -> is.value() - was.value();
        });
  }

  static boolean isLength(Lever lever) {
    return lever == Lever.REST_POSITION;
  }
}
