package nullplane.scoring;

import java.util.Arrays;
import nullplane.driver.Woofer;

/**
 * A stack with all woofers in parallel, where the mode sum closes: u = (Bl V/Ze) Q (z + Bl^2/Ze +
 * L)^{-1} Q^T 1.
 *
 * <p>This is where a search spends its time. Everything is laid out frequency by frequency in plain
 * rows, so that each step is a loop over frequencies without branches, which a compiler turns into
 * vector instructions; nothing is allocated.
 *
 * <p>Symbols and source as in {@link StackModel}. Immutable; work space belongs to the caller.
 */
final class ParallelStack {
  /** Rows of work space needed besides two per woofer. */
  static final int SCRATCH_ROWS = 10;

  private final int points;
  private final int woofers;
  private final double[] omega;
  private final double[] lambdaRe;
  private final double[] lambdaIm;
  private final double[] heardRe;
  private final double[] heardIm;
  private final double[] sharesRe;
  private final double[] sharesIm;

  /**
   * @param omega angular frequencies (rad/s)
   * @param lambda modes' radiation impedances, interleaved complex, frequency by frequency (N s/m)
   * @param modes woofers' shares in the modes, interleaved, by frequency, woofer and mode (1)
   * @param listening modes' pressures per velocity, interleaved, by frequency and mode (Pa s/m)
   * @param woofers number of woofers
   */
  ParallelStack(double[] omega, double[] lambda, double[] modes, double[] listening, int woofers) {
    this.points = omega.length;
    this.woofers = woofers;
    this.omega = omega;
    this.lambdaRe = new double[woofers * points];
    this.lambdaIm = new double[woofers * points];
    this.heardRe = new double[woofers * points];
    this.heardIm = new double[woofers * points];
    this.sharesRe = new double[woofers * woofers * points];
    this.sharesIm = new double[woofers * woofers * points];
    for (int f = 0; f < points; f++) {
      for (int m = 0; m < woofers; m++) {
        int from = 2 * (f * woofers + m);
        int to = m * points + f;
        lambdaRe[to] = lambda[from];
        lambdaIm[to] = lambda[from + 1];
        double oneRe = 0;
        double oneIm = 0;
        for (int i = 0; i < woofers; i++) {
          oneRe += modes[2 * ((f * woofers + i) * woofers + m)];
          oneIm += modes[2 * ((f * woofers + i) * woofers + m) + 1];
        }
        heardRe[to] = oneRe * listening[from] - oneIm * listening[from + 1];
        heardIm[to] = oneRe * listening[from + 1] + oneIm * listening[from];
        for (int i = 0; i < woofers; i++) {
          double qRe = modes[2 * ((f * woofers + i) * woofers + m)];
          double qIm = modes[2 * ((f * woofers + i) * woofers + m) + 1];
          int share = (m * woofers + i) * points + f;
          sharesRe[share] = oneRe * qRe - oneIm * qIm;
          sharesIm[share] = oneRe * qIm + oneIm * qRe;
        }
      }
    }
  }

  /**
   * Computes the stack per volt at its terminals.
   *
   * @param woofer the woofer
   * @param out work space of at least this stack's size; overwritten
   */
  void respond(Woofer woofer, StackModel.PerVolt out) {
    double[] rows = out.rows;
    int n = points;
    int force = 2 * woofers * n;
    int damped = force + 2 * n;
    int pressure = damped + 2 * n;
    int mode = pressure + 2 * n;
    Arrays.fill(rows, 0, force, 0);
    Arrays.fill(rows, pressure, pressure + 2 * n, 0);
    fillDrive(woofer, rows, force, damped);
    for (int m = 0; m < woofers; m++) {
      addMode(m, rows, force, damped, pressure, mode);
    }
    finish(woofer, rows, pressure, out);
  }

  /** Force per volt Bl/Ze, and the mechanical impedance with the motor's damping, z + Bl^2/Ze. */
  private void fillDrive(Woofer woofer, double[] rows, int force, int damped) {
    double bl = woofer.forceFactorTm();
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double loss = woofer.lossNsPerM();
    double mass = woofer.bareMassKg();
    double stiffness = woofer.stiffnessNPerM();
    for (int f = 0; f < points; f++) {
      double w = omega[f];
      double zeIm = w * inductance;
      double perZe2 = bl / (resistance * resistance + zeIm * zeIm);
      double forceRe = perZe2 * resistance;
      double forceIm = -perZe2 * zeIm;
      rows[force + f] = forceRe;
      rows[force + points + f] = forceIm;
      rows[damped + f] = loss + bl * forceRe;
      rows[damped + points + f] = w * mass - stiffness / w + bl * forceIm;
    }
  }

  private void addMode(int m, double[] rows, int force, int damped, int pressure, int mode) {
    int n = points;
    int at = m * n;
    for (int f = 0; f < n; f++) {
      double sumRe = rows[damped + f] + lambdaRe[at + f];
      double sumIm = rows[damped + n + f] + lambdaIm[at + f];
      double perSquare = 1 / (sumRe * sumRe + sumIm * sumIm);
      double forceRe = rows[force + f];
      double forceIm = rows[force + n + f];
      rows[mode + f] = (forceRe * sumRe + forceIm * sumIm) * perSquare;
      rows[mode + n + f] = (forceIm * sumRe - forceRe * sumIm) * perSquare;
    }
    addProduct(rows, mode, heardRe, heardIm, at, pressure);
    for (int i = 0; i < woofers; i++) {
      addProduct(rows, mode, sharesRe, sharesIm, (m * woofers + i) * n, 2 * i * n);
    }
  }

  /** Adds a row of the work space times a row of a table to another row of the work space. */
  private void addProduct(double[] rows, int from, double[] re, double[] im, int at, int to) {
    int n = points;
    for (int f = 0; f < n; f++) {
      rows[to + f] += rows[from + f] * re[at + f] - rows[from + n + f] * im[at + f];
      rows[to + n + f] += rows[from + f] * im[at + f] + rows[from + n + f] * re[at + f];
    }
  }

  private void finish(Woofer woofer, double[] rows, int pressure, StackModel.PerVolt out) {
    int n = points;
    double bl = woofer.forceFactorTm();
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    for (int f = 0; f < n; f++) {
      double pRe = rows[pressure + f];
      double pIm = rows[pressure + n + f];
      double largestVelocity = 0;
      double largestBack = 0;
      double totalRe = woofers;
      double totalIm = 0;
      for (int i = 0; i < woofers; i++) {
        double uRe = rows[2 * i * n + f];
        double uIm = rows[(2 * i + 1) * n + f];
        double backRe = 1 - bl * uRe;
        largestVelocity = Math.max(largestVelocity, uRe * uRe + uIm * uIm);
        largestBack = Math.max(largestBack, backRe * backRe + bl * uIm * bl * uIm);
        totalRe -= bl * uRe;
        totalIm -= bl * uIm;
      }
      // current of a coil (1 - Bl u)/Ze, of the stack (n - Bl sum u)/Ze
      double zeIm = omega[f] * inductance;
      double ze2 = resistance * resistance + zeIm * zeIm;
      double total2 = totalRe * totalRe + totalIm * totalIm;
      out.pressureSquared[f] = pRe * pRe + pIm * pIm;
      out.excursionSquared[f] = largestVelocity / (omega[f] * omega[f]);
      out.currentSquared[f] = largestBack / ze2;
      out.loadRe[f] = (resistance * totalRe + zeIm * totalIm) / total2;
      out.loadIm[f] = (zeIm * totalRe - resistance * totalIm) / total2;
    }
  }
}
