package nullplane.sample;

import nullplane.units.Checks;

/**
 * What a round's samples show of the part that one lever moves: bare mass (kg), stiffness (N/m), Bl
 * (T m), Re (ohm) or rest position (m), in the order of {@link Lever}.
 *
 * @param value mean over the samples (SI); geometric except for the rest position
 * @param standardError standard uncertainty of that mean by measurement alone (same unit)
 * @param samples how many samples it is of
 */
public record LeverReading(double value, double standardError, int samples) {
  /** Checks the ranges. */
  public LeverReading {
    Checks.finite(value, "mean of the samples", "SI");
    Checks.notNegative(standardError, "standard error of the mean", "SI");
    if (samples < 1) {
      throw new IllegalArgumentException("a mean of " + samples + " samples; allowed: 1 or more");
    }
  }
}
