package nullplane.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a line into dashes. XChart draws a curve point by point, and a dashed stroke would start
 * anew at every point; here the dashes run on over the points.
 */
final class Dashes {
  private Dashes() {}

  /**
   * Returns the dashes of a line, each ended by a point that is not a number.
   *
   * @param xPx the line's points (pixels); a point with a NaN starts a new line
   * @param yPx as many
   * @param pattern lengths of dash, gap, dash, gap, ... (pixels), an even number
   * @return x and y of the dashes' points (pixels)
   */
  static double[][] cut(double[] xPx, double[] yPx, float[] pattern) {
    List<Double> x = new ArrayList<>();
    List<Double> y = new ArrayList<>();
    int phase = 0;
    double left = pattern[0];
    boolean started = false;
    for (int i = 1; i < xPx.length; i++) {
      double length = Math.hypot(xPx[i] - xPx[i - 1], yPx[i] - yPx[i - 1]);
      if (Double.isNaN(length)) {
        if (started) {
          end(x, y);
          started = false;
        }
        continue;
      }
      double done = 0;
      while (done < length) {
        double step = Math.min(left, length - done);
        if (phase % 2 == 0) {
          if (!started) {
            add(x, y, xPx, yPx, i, done / length);
            started = true;
          }
          add(x, y, xPx, yPx, i, (done + step) / length);
        }
        done += step;
        left -= step;
        if (left <= 1e-9) {
          if (phase % 2 == 0) {
            end(x, y);
          }
          phase = (phase + 1) % pattern.length;
          left = pattern[phase];
          started = false;
        }
      }
    }
    return new double[][] {
      x.stream().mapToDouble(Double::doubleValue).toArray(),
      y.stream().mapToDouble(Double::doubleValue).toArray()
    };
  }

  private static void add(
      List<Double> x, List<Double> y, double[] xPx, double[] yPx, int i, double share) {
    x.add(xPx[i - 1] + share * (xPx[i] - xPx[i - 1]));
    y.add(yPx[i - 1] + share * (yPx[i] - yPx[i - 1]));
  }

  /** Ends a dash. */
  private static void end(List<Double> x, List<Double> y) {
    x.add(x.get(x.size() - 1));
    y.add(Double.NaN);
  }
}
