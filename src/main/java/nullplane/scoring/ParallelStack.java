package nullplane.scoring;

import java.util.Arrays;
import nullplane.driver.Woofer;

/**
 * A stack with all woofers in parallel, where the mode sum closes: u = (Bl V/Ze) Q (z + Bl^2/Ze +
 * L)^{-1} Q^T 1.
 *
 * <p>This is where a search spends its time. The pressure and the woofers' velocities are sums over
 * the same modes, so they stand one after the other in one long row per quantity; what is common to
 * them is copied along. Each step is a loop without branches that reads four or five rows at one
 * index, which a compiler turns into vector instructions; nothing is allocated. The force per volt
 * Bl/Ze multiplies all of them and comes in at the end.
 *
 * <p>Symbols and source as in {@link StackModel}. Immutable; work space belongs to the caller.
 */
final class ParallelStack {
  /** Work space: one row per quantity. */
  static final class Rows {
    private final double[] forceRe;
    private final double[] forceIm;
    private final double[] force2;
    private final double[] perZe2;
    private final double[] dampedRe;
    private final double[] dampedIm;
    private final double[] mobilityRe;
    private final double[] mobilityIm;
    private final double[] sumRe;
    private final double[] sumIm;
    private final double[] totalRe;
    private final double[] totalIm;
    private final double[] velocity2;
    private final double[] back2;

    Rows(int points, int woofers) {
      int all = points * (1 + woofers);
      forceRe = new double[points];
      forceIm = new double[points];
      force2 = new double[points];
      perZe2 = new double[points];
      dampedRe = new double[points];
      dampedIm = new double[points];
      mobilityRe = new double[all];
      mobilityIm = new double[all];
      sumRe = new double[all];
      sumIm = new double[all];
      totalRe = new double[points];
      totalIm = new double[points];
      velocity2 = new double[points];
      back2 = new double[points];
    }
  }

  private final int points;
  private final int woofers;
  private final double[] omega;
  private final double[] perOmega;
  private final double[][] lambdaRe;
  private final double[][] lambdaIm;
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
    this.perOmega = Arrays.stream(omega).map(w -> 1 / w).toArray();
    this.lambdaRe = new double[woofers][points];
    this.lambdaIm = new double[woofers][points];
    // the pressure first, then the woofers
    this.sharesRe = new double[woofers][points * (1 + woofers)];
    this.sharesIm = new double[woofers][points * (1 + woofers)];
    for (int f = 0; f < points; f++) {
      for (int m = 0; m < woofers; m++) {
        int from = 2 * (f * woofers + m);
        lambdaRe[m][f] = lambda[from];
        lambdaIm[m][f] = lambda[from + 1];
        double oneRe = sums[from];
        double oneIm = sums[from + 1];
        sharesRe[m][f] = oneRe * listening[from] - oneIm * listening[from + 1];
        sharesIm[m][f] = oneRe * listening[from + 1] + oneIm * listening[from];
        for (int i = 0; i < woofers; i++) {
          double qRe = modes[2 * ((f * woofers + i) * woofers + m)];
          double qIm = modes[2 * ((f * woofers + i) * woofers + m) + 1];
          sharesRe[m][(1 + i) * points + f] = oneRe * qRe - oneIm * qIm;
          sharesIm[m][(1 + i) * points + f] = oneRe * qIm + oneIm * qRe;
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
    int all = points * (1 + woofers);
    fillDrive(woofer, rows);
    Arrays.fill(rows.sumRe, 0, all, 0);
    Arrays.fill(rows.sumIm, 0, all, 0);
    for (int m = 0; m < woofers; m++) {
      invert(lambdaRe[m], lambdaIm[m], rows);
      for (int i = 1; i <= woofers; i++) {
        System.arraycopy(rows.mobilityRe, 0, rows.mobilityRe, i * points, points);
        System.arraycopy(rows.mobilityIm, 0, rows.mobilityIm, i * points, points);
      }
      addDifference(rows.mobilityRe, sharesRe[m], rows.mobilityIm, sharesIm[m], rows.sumRe, all);
      addSum(rows.mobilityRe, sharesIm[m], rows.mobilityIm, sharesRe[m], rows.sumIm, all);
    }
    gather(woofer, rows);
    finish(woofer, rows, out);
  }

  /** Force per volt Bl/Ze, and the mechanical impedance with the motor's damping, z + Bl^2/Ze. */
  private void fillDrive(Woofer woofer, Rows rows) {
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] perZe2 = rows.perZe2;
    double[] dampedRe = rows.dampedRe;
    double[] dampedIm = rows.dampedIm;
    double[] force2 = rows.force2;
    double bl = woofer.forceFactorTm();
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double loss = woofer.lossNsPerM();
    double mass = woofer.bareMassKg();
    double stiffness = woofer.stiffnessNPerM();
    double square = resistance * resistance;
    for (int f = 0; f < points; f++) {
      double zeIm = omega[f] * inductance;
      perZe2[f] = 1 / (square + zeIm * zeIm);
    }
    for (int f = 0; f < points; f++) {
      double perZe = bl * perZe2[f];
      force2[f] = bl * perZe;
      forceRe[f] = perZe * resistance;
      forceIm[f] = -perZe * (omega[f] * inductance);
    }
    for (int f = 0; f < points; f++) {
      dampedRe[f] = loss + bl * forceRe[f];
      dampedIm[f] = omega[f] * mass - stiffness * perOmega[f] + bl * forceIm[f];
    }
  }

  /** A mode's velocity per force for a share of one: the inverse of its impedance. */
  private void invert(double[] ownRe, double[] ownIm, Rows rows) {
    double[] dampedRe = rows.dampedRe;
    double[] dampedIm = rows.dampedIm;
    double[] mobilityRe = rows.mobilityRe;
    double[] mobilityIm = rows.mobilityIm;
    for (int f = 0; f < points; f++) {
      double re = dampedRe[f] + ownRe[f];
      double im = dampedIm[f] + ownIm[f];
      double perSquare = 1 / (re * re + im * im);
      mobilityRe[f] = re * perSquare;
      mobilityIm[f] = -im * perSquare;
    }
  }

  /** Adds a b - c d. */
  private static void addDifference(
      double[] a, double[] b, double[] c, double[] d, double[] sum, int count) {
    for (int i = 0; i < count; i++) {
      sum[i] += a[i] * b[i] - c[i] * d[i];
    }
  }

  /** Adds a b + c d. */
  private static void addSum(
      double[] a, double[] b, double[] c, double[] d, double[] sum, int count) {
    for (int i = 0; i < count; i++) {
      sum[i] += a[i] * b[i] + c[i] * d[i];
    }
  }

  /**
   * Greatest |s|^2 and |Ze/Bl^2 - s|^2 over the woofers, and the sum of s. With u = (Bl/Ze) s, 1 -
   * Bl u = (Bl^2/Ze) (Ze/Bl^2 - s).
   */
  private void gather(Woofer woofer, Rows rows) {
    double bl = woofer.forceFactorTm();
    double ownRe = woofer.resistanceOhm() / (bl * bl);
    double perOmegaIm = woofer.inductanceH() / (bl * bl);
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
    double[] velocity2 = rows.velocity2;
    double[] back2 = rows.back2;
    Arrays.fill(totalRe, 0, points, 0);
    Arrays.fill(totalIm, 0, points, 0);
    Arrays.fill(velocity2, 0, points, 0);
    Arrays.fill(back2, 0, points, 0);
    for (int i = 1; i <= woofers; i++) {
      addRow(rows.sumRe, i * points, totalRe, points);
      addRow(rows.sumIm, i * points, totalIm, points);
      raise(rows.sumRe, rows.sumIm, i * points, velocity2, points);
      raiseBack(rows.sumRe, rows.sumIm, i * points, ownRe, omega, perOmegaIm, back2, points);
    }
  }

  private static void addRow(double[] a, int offset, double[] sum, int count) {
    for (int f = 0; f < count; f++) {
      sum[f] += a[offset + f];
    }
  }

  /** Raises a row to |s|^2 where that is greater. */
  private static void raise(double[] re, double[] im, int offset, double[] greatest, int count) {
    for (int f = 0; f < count; f++) {
      double square = re[offset + f] * re[offset + f] + im[offset + f] * im[offset + f];
      greatest[f] = Math.max(greatest[f], square);
    }
  }

  /** Raises a row to |Ze/Bl^2 - s|^2 where that is greater. */
  private static void raiseBack(
      double[] re,
      double[] im,
      int offset,
      double ownRe,
      double[] omega,
      double perOmegaIm,
      double[] greatest,
      int count) {
    for (int f = 0; f < count; f++) {
      double backRe = ownRe - re[offset + f];
      double backIm = omega[f] * perOmegaIm - im[offset + f];
      greatest[f] = Math.max(greatest[f], backRe * backRe + backIm * backIm);
    }
  }

  /**
   * Squares, with |Bl/Ze|^2 = Bl^2/|Ze|^2; currents: of a coil (1 - Bl u)/Ze, of the stack (n - Bl
   * sum u)/Ze.
   */
  private void finish(Woofer woofer, Rows rows, StackModel.PerVolt out) {
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double bl = woofer.forceFactorTm();
    double[] pRe = rows.sumRe;
    double[] pIm = rows.sumIm;
    double[] force2 = rows.force2;
    double[] velocity2 = rows.velocity2;
    double[] back2 = rows.back2;
    double[] pressureSquared = out.pressureSquared;
    double[] excursionSquared = out.excursionSquared;
    double[] currentSquared = out.currentSquared;
    for (int f = 0; f < points; f++) {
      pressureSquared[f] = force2[f] * (pRe[f] * pRe[f] + pIm[f] * pIm[f]);
    }
    for (int f = 0; f < points; f++) {
      excursionSquared[f] = force2[f] * velocity2[f] * (perOmega[f] * perOmega[f]);
      currentSquared[f] = back2[f] * (force2[f] * force2[f]);
    }
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] pressureRe = out.pressureRe;
    double[] pressureIm = out.pressureIm;
    for (int f = 0; f < points; f++) {
      pressureRe[f] = forceRe[f] * pRe[f] - forceIm[f] * pIm[f];
      pressureIm[f] = forceRe[f] * pIm[f] + forceIm[f] * pRe[f];
    }
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
    for (int f = 0; f < points; f++) {
      double re = totalRe[f];
      double im = totalIm[f];
      totalRe[f] = woofers - bl * (forceRe[f] * re - forceIm[f] * im);
      totalIm[f] = -bl * (forceRe[f] * im + forceIm[f] * re);
    }
    double[] loadRe = out.loadRe;
    double[] loadIm = out.loadIm;
    for (int f = 0; f < points; f++) {
      double re = totalRe[f];
      double im = totalIm[f];
      double zeIm = omega[f] * inductance;
      double perTotal2 = 1 / (re * re + im * im);
      loadRe[f] = (resistance * re + zeIm * im) * perTotal2;
      loadIm[f] = (zeIm * re - resistance * im) * perTotal2;
    }
  }
}
