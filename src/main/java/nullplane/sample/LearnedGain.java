package nullplane.sample;

import nullplane.units.Checks;

/**
 * How far a maker goes when a lever is to be moved: achieved over asked.
 *
 * @param gain the gain (1); 1 is exactly what was asked for
 * @param standardError its standard uncertainty (1)
 * @param rounds rounds that it rests on; 0 if it is assumed
 */
public record LearnedGain(double gain, double standardError, int rounds) {
  /** Least and greatest gain that a request reckons with (1). */
  private static final double LEAST_USED = 0.25;

  private static final double MOST_USED = 2;

  /** Checks the ranges. */
  public LearnedGain {
    Checks.finite(gain, "gain", "1");
    Checks.notNegative(standardError, "standard error of the gain", "1");
  }

  /**
   * Returns the gain that a request reckons with (1): from 0.25 to 2, so that a lever which hardly
   * answers, or answers the wrong way, is not asked for without bounds.
   */
  public double used() {
    return Math.max(LEAST_USED, Math.min(MOST_USED, gain));
  }

  /** Returns the lower end of the 95 % interval (1), of a normal distribution. */
  public double lower95() {
    return gain - 1.96 * standardError;
  }

  /** Returns the upper end of the 95 % interval (1), of a normal distribution. */
  public double upper95() {
    return gain + 1.96 * standardError;
  }
}
