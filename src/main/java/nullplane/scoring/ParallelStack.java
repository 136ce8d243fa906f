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
  /** Work space: one row per quantity, each as long as the frequency axis. */
  static final class Rows {
    private final double[] forceRe;
    private final double[] forceIm;
    private final double[] dampedRe;
    private final double[] dampedIm;
    private final double[] modeRe;
    private final double[] modeIm;
    private final double[] pressureRe;
    private final double[] pressureIm;
    private final double[][] velocityRe;
    private final double[][] velocityIm;
    private final double[] velocity2;
    private final double[] back2;
    private final double[] totalRe;
    private final double[] totalIm;

    Rows(int points, int woofers) {
      forceRe = new double[points];
      forceIm = new double[points];
      dampedRe = new double[points];
      dampedIm = new double[points];
      modeRe = new double[points];
      modeIm = new double[points];
      pressureRe = new double[points];
      pressureIm = new double[points];
      velocityRe = new double[woofers][points];
      velocityIm = new double[woofers][points];
      velocity2 = new double[points];
      back2 = new double[points];
      totalRe = new double[points];
      totalIm = new double[points];
    }
  }

  private final int points;
  private final int woofers;
  private final double[] omega;
  private final double[][] lambdaRe;
  private final double[][] lambdaIm;
  private final double[][] heardRe;
  private final double[][] heardIm;
  private final double[][] sharesRe;
  private final double[][] sharesIm;

  /**
   * @param omega angular frequencies (rad/s)
   * @param lambda modes' radiation impedances, interleaved complex, frequency by frequency (N s/m)
   * @param modes woofers' shares in the modes, interleaved, by frequency, woofer and mode (1)
   * @param listening modes' pressures per velocity, interleaved, by frequency and mode (Pa s/m)
   * @param sums modes' shares summed over the woofers, interleaved, by frequency and mode (1)
   * @param woofers number of woofers
   */
  ParallelStack(
      double[] omega,
      double[] lambda,
      double[] modes,
      double[] listening,
      double[] sums,
      int woofers) {
    this.points = omega.length;
    this.woofers = woofers;
    this.omega = omega;
    this.lambdaRe = new double[woofers][points];
    this.lambdaIm = new double[woofers][points];
    this.heardRe = new double[woofers][points];
    this.heardIm = new double[woofers][points];
    this.sharesRe = new double[woofers * woofers][points];
    this.sharesIm = new double[woofers * woofers][points];
    for (int f = 0; f < points; f++) {
      for (int m = 0; m < woofers; m++) {
        int from = 2 * (f * woofers + m);
        lambdaRe[m][f] = lambda[from];
        lambdaIm[m][f] = lambda[from + 1];
        double oneRe = sums[from];
        double oneIm = sums[from + 1];
        heardRe[m][f] = oneRe * listening[from] - oneIm * listening[from + 1];
        heardIm[m][f] = oneRe * listening[from + 1] + oneIm * listening[from];
        for (int i = 0; i < woofers; i++) {
          double qRe = modes[2 * ((f * woofers + i) * woofers + m)];
          double qIm = modes[2 * ((f * woofers + i) * woofers + m) + 1];
          sharesRe[m * woofers + i][f] = oneRe * qRe - oneIm * qIm;
          sharesIm[m * woofers + i][f] = oneRe * qIm + oneIm * qRe;
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
    Rows rows = out.rows;
    fillDrive(woofer, omega, rows.forceRe, rows.forceIm, rows.dampedRe, rows.dampedIm);
    Arrays.fill(rows.pressureRe, 0);
    Arrays.fill(rows.pressureIm, 0);
    for (int i = 0; i < woofers; i++) {
      Arrays.fill(rows.velocityRe[i], 0);
      Arrays.fill(rows.velocityIm[i], 0);
    }
    for (int m = 0; m < woofers; m++) {
      moveMode(lambdaRe[m], lambdaIm[m], rows);
      addProduct(
          rows.modeRe, rows.modeIm, heardRe[m], heardIm[m], rows.pressureRe, rows.pressureIm);
      for (int i = 0; i < woofers; i++) {
        addProduct(
            rows.modeRe,
            rows.modeIm,
            sharesRe[m * woofers + i],
            sharesIm[m * woofers + i],
            rows.velocityRe[i],
            rows.velocityIm[i]);
      }
    }
    gather(woofer.forceFactorTm(), rows);
    finish(woofer, rows, out);
  }

  /** Force per volt Bl/Ze, and the mechanical impedance with the motor's damping, z + Bl^2/Ze. */
  private static void fillDrive(
      Woofer woofer,
      double[] omega,
      double[] forceRe,
      double[] forceIm,
      double[] dampedRe,
      double[] dampedIm) {
    double bl = woofer.forceFactorTm();
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double loss = woofer.lossNsPerM();
    double mass = woofer.bareMassKg();
    double stiffness = woofer.stiffnessNPerM();
    for (int f = 0; f < omega.length; f++) {
      double w = omega[f];
      double zeIm = w * inductance;
      double perZe2 = bl / (resistance * resistance + zeIm * zeIm);
      double re = perZe2 * resistance;
      double im = -perZe2 * zeIm;
      forceRe[f] = re;
      forceIm[f] = im;
      dampedRe[f] = loss + bl * re;
      dampedIm[f] = w * mass - stiffness / w + bl * im;
    }
  }

  /** A mode's velocity per volt for a share of one: force over impedance. */
  private void moveMode(double[] ownRe, double[] ownIm, Rows rows) {
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] dampedRe = rows.dampedRe;
    double[] dampedIm = rows.dampedIm;
    double[] modeRe = rows.modeRe;
    double[] modeIm = rows.modeIm;
    for (int f = 0; f < points; f++) {
      double sumRe = dampedRe[f] + ownRe[f];
      double sumIm = dampedIm[f] + ownIm[f];
      double perSquare = 1 / (sumRe * sumRe + sumIm * sumIm);
      modeRe[f] = (forceRe[f] * sumRe + forceIm[f] * sumIm) * perSquare;
      modeIm[f] = (forceIm[f] * sumRe - forceRe[f] * sumIm) * perSquare;
    }
  }

  /** Adds the product of two complex rows to a third. */
  private static void addProduct(
      double[] aRe, double[] aIm, double[] bRe, double[] bIm, double[] sumRe, double[] sumIm) {
    int n = bRe.length;
    for (int f = 0; f < n; f++) {
      sumRe[f] += aRe[f] * bRe[f] - aIm[f] * bIm[f];
      sumIm[f] += aRe[f] * bIm[f] + aIm[f] * bRe[f];
    }
  }

  /** Greatest squared velocity and 1 - Bl u over the woofers, and n - Bl sum u. */
  private void gather(double bl, Rows rows) {
    double[] velocity2 = rows.velocity2;
    double[] back2 = rows.back2;
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
    Arrays.fill(velocity2, 0);
    Arrays.fill(back2, 0);
    Arrays.fill(totalRe, woofers);
    Arrays.fill(totalIm, 0);
    for (int i = 0; i < woofers; i++) {
      double[] uRe = rows.velocityRe[i];
      double[] uIm = rows.velocityIm[i];
      for (int f = 0; f < points; f++) {
        totalRe[f] -= bl * uRe[f];
        totalIm[f] -= bl * uIm[f];
      }
      for (int f = 0; f < points; f++) {
        double square = uRe[f] * uRe[f] + uIm[f] * uIm[f];
        double re = 1 - bl * uRe[f];
        double im = bl * uIm[f];
        double back = re * re + im * im;
        if (square > velocity2[f]) {
          velocity2[f] = square;
        }
        if (back > back2[f]) {
          back2[f] = back;
        }
      }
    }
  }

  /** Currents: of a coil (1 - Bl u)/Ze, of the stack (n - Bl sum u)/Ze. */
  private void finish(Woofer woofer, Rows rows, StackModel.PerVolt out) {
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double[] pRe = rows.pressureRe;
    double[] pIm = rows.pressureIm;
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
    double[] velocity2 = rows.velocity2;
    double[] back2 = rows.back2;
    double[] pressureSquared = out.pressureSquared;
    double[] excursionSquared = out.excursionSquared;
    double[] currentSquared = out.currentSquared;
    double[] loadRe = out.loadRe;
    double[] loadIm = out.loadIm;
    double[] w = omega;
    for (int f = 0; f < points; f++) {
      pressureSquared[f] = pRe[f] * pRe[f] + pIm[f] * pIm[f];
      excursionSquared[f] = velocity2[f] / (w[f] * w[f]);
    }
    for (int f = 0; f < points; f++) {
      double zeIm = w[f] * inductance;
      double perTotal2 = 1 / (totalRe[f] * totalRe[f] + totalIm[f] * totalIm[f]);
      currentSquared[f] = back2[f] / (resistance * resistance + zeIm * zeIm);
      loadRe[f] = (resistance * totalRe[f] + zeIm * totalIm[f]) * perTotal2;
      loadIm[f] = (zeIm * totalRe[f] - resistance * totalIm[f]) * perTotal2;
    }
  }
}
