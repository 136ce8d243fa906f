package nullplane.scoring;

import nullplane.units.Curve;

/**
 * The frequencies a spec is solved and scored at, with the band's corners among them.
 *
 * @param frequencyHz the axis (Hz), ascending
 * @param firstInBand index of the low corner
 * @param lastInBand index of the upper corner
 * @param bandWeights weight of each band point in a mean over log frequency (1), summing to 1
 */
public record ScoringAxis(Curve frequencyHz, int firstInBand, int lastInBand, Curve bandWeights) {
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 1000;
  private static final double POINTS_PER_DECADE = 28;
  private static final double DRAWN_PER_DECADE = 80;

  /**
   * Returns the axis of a target: log-spaced in three parts that meet at the corners, at least from
   * 20 Hz to 1 kHz, about 28 points a decade.
   *
   * @param target the target
   */
  public static ScoringAxis of(Target target) {
    return of(target, POINTS_PER_DECADE);
  }

  /**
   * Returns the axis of a target's curves: the same ends and corners, about 80 points a decade.
   *
   * @param target the target
   */
  public static Curve drawnFor(Target target) {
    return of(target, DRAWN_PER_DECADE).frequencyHz();
  }

  private static ScoringAxis of(Target target, double perDecade) {
    double low = target.lowCornerHz();
    double high = target.upperCornerHz();
    double lowest = Math.min(LOWEST_HZ, 0.7 * low);
    double highest = Math.max(HIGHEST_HZ, 1.5 * high);
    int below = cells(lowest, low, perDecade);
    int inside = cells(low, high, perDecade);
    int above = cells(high, highest, perDecade);
    double[] axis = new double[below + inside + above + 1];
    double[] weights = new double[inside + 1];
    fill(axis, 0, Curve.logSpaced(lowest, low, below + 1));
    fill(axis, below, Curve.logSpaced(low, high, inside + 1));
    fill(axis, below + inside, Curve.logSpaced(high, highest, above + 1));
    for (int i = 0; i <= inside; i++) {
      weights[i] = (i == 0 || i == inside ? 0.5 : 1.0) / inside;
    }
    return new ScoringAxis(Curve.of(axis), below, below + inside, Curve.of(weights));
  }

  private static int cells(double from, double to, double perDecade) {
    return Math.max(2, (int) Math.round(perDecade * Math.log10(to / from)));
  }

  private static void fill(double[] axis, int offset, Curve part) {
    for (int i = 0; i < part.size(); i++) {
      axis[offset + i] = part.at(i);
    }
  }

  /** Returns the number of points in the band, corners included. */
  public int pointsInBand() {
    return lastInBand - firstInBand + 1;
  }
}
