package nullplane.fit;

import java.util.Arrays;

/**
 * Points of a sweep that stand apart from their neighbours: hum, a knock, a loose contact. A point
 * is judged by how far its distance from the circuit lies from the median of its neighbours', so a
 * circuit that fits badly but smoothly makes no outliers.
 *
 * <p>The spread is 1.4826 times the median absolute value (F. R. Hampel, J. Amer. Statist. Assoc.
 * 69 (1974) 383). Beyond six of it, one sound point in a thousand sweeps is lost.
 */
final class OutlyingPoints {
  private static final double BEYOND = 6;
  private static final int REACH = 3;

  /** A deviation below this is left in whatever the spread: it does no harm (1, rad). */
  private static final double HARMLESS = 1e-4;

  private OutlyingPoints() {}

  /**
   * Tells which points stand apart.
   *
   * @param distance distance from the circuit: one row per point, or two with phase
   * @param phased whether there are two rows per point
   */
  static boolean[] in(double[] distance, boolean phased) {
    int rows = phased ? 2 : 1;
    int points = distance.length / rows;
    double[] deviation = new double[distance.length];
    for (int i = 0; i < points; i++) {
      for (int r = 0; r < rows; r++) {
        deviation[rows * i + r] = distance[rows * i + r] - around(distance, rows, r, i, points);
      }
    }
    double[] size = Arrays.stream(deviation).map(Math::abs).sorted().toArray();
    double spread = 1.4826 * size[size.length / 2];
    double limit = Math.max(BEYOND * spread, HARMLESS);
    boolean[] out = new boolean[points];
    for (int i = 0; i < points; i++) {
      double other = phased ? deviation[2 * i + 1] : 0;
      out[i] = Math.hypot(deviation[rows * i], other) > limit;
    }
    return out;
  }

  private static double around(double[] distance, int rows, int row, int point, int points) {
    double[] near = new double[2 * REACH];
    int count = 0;
    for (int j = Math.max(0, point - REACH); j <= Math.min(points - 1, point + REACH); j++) {
      if (j != point) {
        near[count++] = distance[rows * j + row];
      }
    }
    Arrays.sort(near, 0, count);
    return count == 0 ? 0 : 0.5 * (near[(count - 1) / 2] + near[count / 2]);
  }
}
