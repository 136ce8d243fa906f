package nullplane.judging;

import java.util.Map;
import java.util.Objects;
import nullplane.units.Curve;

/**
 * Where the difference between two woofers in one stack comes from.
 *
 * @param stack the stack's name
 * @param frequencyHz the axis (Hz)
 * @param firstLevelDb level with the first woofer at the target's voltage, no network (dB re 20
 *     uPa)
 * @param secondLevelDb the same with the second (dB re 20 uPa)
 * @param sharesDb what each parameter adds on the way from the first to the second (dB); at every
 *     frequency they add up to second minus first
 */
public record StackDifference(
    String stack,
    Curve frequencyHz,
    Curve firstLevelDb,
    Curve secondLevelDb,
    Map<ParameterGroup, Curve> sharesDb) {
  /** Copies the map and checks that no parameter is missing. */
  public StackDifference {
    sharesDb = Map.copyOf(sharesDb);
    if (sharesDb.size() != ParameterGroup.values().length) {
      throw new IllegalArgumentException(sharesDb.size() + " shares");
    }
  }

  /**
   * Returns what a parameter adds (dB) by frequency.
   *
   * @param group the parameter
   */
  public Curve shareDb(ParameterGroup group) {
    return Objects.requireNonNull(sharesDb.get(group));
  }

  /**
   * Returns the index of the frequency at which a parameter's share is largest, either way.
   *
   * @param group the parameter
   */
  public int largestAt(ParameterGroup group) {
    Curve share = shareDb(group);
    int largest = 0;
    for (int f = 1; f < share.size(); f++) {
      if (Math.abs(share.at(f)) > Math.abs(share.at(largest))) {
        largest = f;
      }
    }
    return largest;
  }
}
