package nullplane.tolerance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds the cheapest windows that linear sensitivities permit.
 *
 * <p>Symbols: w_i half a window, p_i the usual one; S_ci change of response c (a level at a
 * frequency in a stack, or a load) per unit of deviation i; r_c the room that c has. Halving a
 * window is taken to double what it costs to keep, so the cost is the sum of p_i/w_i. Units that
 * fill the windows evenly give c the variance (1/3) sum S_ci^2 w_i^2, which must stay in proportion
 * to the room: sum (S_ci/r_c)^2 w_i^2 &lt;= 1 for every c. In v_i = w_i^2 this is a convex problem
 * with linear constraints, so the conditions of Karush, Kuhn and Tucker decide: with a multiplier
 * m_c &gt;= 0 that is 0 unless c is at its limit,
 *
 * <pre>
 *   -p_i/w_i^2 + 2 w_i sum_c m_c (S_ci/r_c)^2 = 0
 *   w_i = (p_i / (2 sum_c m_c (S_ci/r_c)^2))^(1/3)
 * </pre>
 *
 * <p>With one response that is w_i in proportion to (p_i/S_i^2)^(1/3). Windows are cut off at their
 * caps, which the same conditions allow. The multipliers are found by m_c := m_c g_c^(1/2), g_c the
 * sum above, which rests exactly where g_c = 1 or m_c = 0.
 *
 * <p>Source: derived; W. Karush 1939, H. W. Kuhn and A. W. Tucker 1951, for the conditions. The
 * trade of cost against tolerance is that of F. H. Speckhart, J. Eng. Ind. 94 (1972) 447, who
 * states it for other costs.
 */
final class WindowShape {
  private static final int ITERATIONS = 4000;
  private static final double EXPONENT = 0.5;
  private static final double SETTLED = 1e-9;

  private final double[] usual;
  private final double[] caps;
  private final List<double[]> shares = new ArrayList<>();

  /**
   * @param usual usual windows p_i
   * @param caps widest windows
   */
  WindowShape(double[] usual, double[] caps) {
    this.usual = usual.clone();
    this.caps = caps.clone();
  }

  /**
   * Adds a response.
   *
   * @param sensitivities S_ci
   * @param room r_c, above 0
   */
  void add(double[] sensitivities, double room) {
    double[] squares = new double[sensitivities.length];
    for (int i = 0; i < squares.length; i++) {
      squares[i] = Math.pow(sensitivities[i] / room, 2);
    }
    shares.add(squares);
  }

  /** Returns half of each window; no response exceeds its room by the measure above. */
  double[] windows() {
    double[] multipliers = new double[shares.size()];
    Arrays.fill(multipliers, 1);
    double[] windows = windowsAt(multipliers);
    for (int step = 0; step < ITERATIONS; step++) {
      double change = 0;
      for (int c = 0; c < multipliers.length; c++) {
        double next = multipliers[c] * Math.pow(usage(c, windows), EXPONENT);
        change = Math.max(change, Math.abs(next - multipliers[c]));
        multipliers[c] = next;
      }
      windows = windowsAt(multipliers);
      if (change < SETTLED * Arrays.stream(multipliers).sum()) {
        break;
      }
    }
    double most = 0;
    for (int c = 0; c < multipliers.length; c++) {
      most = Math.max(most, usage(c, windows));
    }
    // what is left of the iteration's error is taken off every window alike
    double shrink = most > 1 ? 1 / Math.sqrt(most) : 1;
    for (int i = 0; i < windows.length; i++) {
      windows[i] *= shrink;
    }
    return windows;
  }

  private double[] windowsAt(double[] multipliers) {
    double[] windows = new double[usual.length];
    for (int i = 0; i < windows.length; i++) {
      double sum = 0;
      for (int c = 0; c < multipliers.length; c++) {
        sum += multipliers[c] * shares.get(c)[i];
      }
      // without any sensitivity this is infinite, and the cap takes over
      windows[i] = Math.min(caps[i], Math.cbrt(usual[i] / (2 * sum)));
    }
    return windows;
  }

  /** g_c, the share of its room that a response takes up, squared (1). */
  private double usage(int c, double[] windows) {
    double sum = 0;
    for (int i = 0; i < windows.length; i++) {
      sum += shares.get(c)[i] * windows[i] * windows[i];
    }
    return sum;
  }
}
