package nullplane.scoring;

import java.util.Arrays;
import nullplane.driver.Woofer;

/**
 * A stack with all woofers in parallel, where the mode sum closes: u = (Bl V/Ze) Q (z + Bl^2/Ze +
 * L)^{-1} Q^T 1.
 *
 * <p>This is where a search spends its time. Each quantity has a row of its own, one value per
 * frequency, and each step is a short loop over whole rows: without branches, every row read at the
 * same index, no more than six rows. The compiler of Java 17 turns such loops into vector
 * instructions; it leaves a loop scalar that reads a row at an offset, or more rows than that.
 * Nothing is allocated. The force per volt Bl/Ze multiplies all quantities and comes in at the end.
 *
 * <p>Symbols and source as in {@link StackModel}; s = u Ze/Bl. Immutable; work space belongs to the
 * caller.
 */
final class ParallelStack {
  /** Work space: one row per quantity, the mobilities one per mode. */
  static final class Rows {
    private final double[] forceRe;
    private final double[] forceIm;
    private final double[] force2;
    private final double[] dampedRe;
    private final double[] dampedIm;
    private final double[][] mobilityRe;
    private final double[][] mobilityIm;
    private final double[] pressureRe;
    private final double[] pressureIm;
    private final double[] sRe;
    private final double[] sIm;
    private final double[] totalRe;
    private final double[] totalIm;
    private final double[] velocity2;
    private final double[] back2;

    Rows(int points, int woofers) {
      forceRe = new double[points];
      forceIm = new double[points];
      force2 = new double[points];
      dampedRe = new double[points];
      dampedIm = new double[points];
      mobilityRe = new double[woofers][points];
      mobilityIm = new double[woofers][points];
      pressureRe = new double[points];
      pressureIm = new double[points];
      sRe = new double[points];
      sIm = new double[points];
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
  private final double[][] pressureSharesRe;
  private final double[][] pressureSharesIm;
  private final double[][][] sharesRe;
  private final double[][][] sharesIm;

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
    // rows by mode; those of a woofer's velocity by woofer and mode
    this.pressureSharesRe = new double[woofers][points];
    this.pressureSharesIm = new double[woofers][points];
    this.sharesRe = new double[woofers][woofers][points];
    this.sharesIm = new double[woofers][woofers][points];
    for (int f = 0; f < points; f++) {
      for (int m = 0; m < woofers; m++) {
        int from = 2 * (f * woofers + m);
        lambdaRe[m][f] = lambda[from];
        lambdaIm[m][f] = lambda[from + 1];
        double oneRe = sums[from];
        double oneIm = sums[from + 1];
        pressureSharesRe[m][f] = oneRe * listening[from] - oneIm * listening[from + 1];
        pressureSharesIm[m][f] = oneRe * listening[from + 1] + oneIm * listening[from];
        for (int i = 0; i < woofers; i++) {
          double qRe = modes[2 * ((f * woofers + i) * woofers + m)];
          double qIm = modes[2 * ((f * woofers + i) * woofers + m) + 1];
          sharesRe[i][m][f] = oneRe * qRe - oneIm * qIm;
          sharesIm[i][m][f] = oneRe * qIm + oneIm * qRe;
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
    fillForce(woofer, rows);
    fillDamped(woofer, rows);
    for (int m = 0; m < woofers; m++) {
      invert(
          rows.dampedRe,
          rows.dampedIm,
          lambdaRe[m],
          lambdaIm[m],
          rows.mobilityRe[m],
          rows.mobilityIm[m],
          points);
    }
    sumModes(rows, pressureSharesRe, pressureSharesIm, rows.pressureRe, rows.pressureIm);
    gather(woofer, rows);
    finish(woofer, rows, out);
  }

  /** Force per volt Bl/Ze and its squared modulus Bl^2/|Ze|^2. */
  private void fillForce(Woofer woofer, Rows rows) {
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] force2 = rows.force2;
    double bl = woofer.forceFactorTm();
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double square = resistance * resistance;
    for (int f = 0; f < points; f++) {
      double zeIm = omega[f] * inductance;
      double perZe = bl * (1 / (square + zeIm * zeIm));
      force2[f] = bl * perZe;
      forceRe[f] = perZe * resistance;
      forceIm[f] = -perZe * zeIm;
    }
  }

  /** Mechanical impedance with the motor's damping, z + Bl^2/Ze. */
  private void fillDamped(Woofer woofer, Rows rows) {
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] dampedRe = rows.dampedRe;
    double[] dampedIm = rows.dampedIm;
    double bl = woofer.forceFactorTm();
    double loss = woofer.lossNsPerM();
    double mass = woofer.bareMassKg();
    double stiffness = woofer.stiffnessNPerM();
    for (int f = 0; f < points; f++) {
      dampedRe[f] = loss + bl * forceRe[f];
      dampedIm[f] = omega[f] * mass - stiffness * perOmega[f] + bl * forceIm[f];
    }
  }

  /** A mode's velocity per force for a share of one: the inverse of its impedance. */
  private static void invert(
      double[] dampedRe,
      double[] dampedIm,
      double[] ownRe,
      double[] ownIm,
      double[] mobilityRe,
      double[] mobilityIm,
      int count) {
    for (int f = 0; f < count; f++) {
      double re = dampedRe[f] + ownRe[f];
      double im = dampedIm[f] + ownIm[f];
      double perSquare = 1 / (re * re + im * im);
      mobilityRe[f] = re * perSquare;
      mobilityIm[f] = -im * perSquare;
    }
  }

  /** Sums the modes' mobilities, each times its share. */
  private void sumModes(
      Rows rows, double[][] sharesRe, double[][] sharesIm, double[] sumRe, double[] sumIm) {
    double[][] mobilityRe = rows.mobilityRe;
    double[][] mobilityIm = rows.mobilityIm;
    multiply(mobilityRe[0], mobilityIm[0], sharesRe[0], sharesIm[0], sumRe, sumIm, points);
    for (int m = 1; m < woofers; m++) {
      addProduct(mobilityRe[m], mobilityIm[m], sharesRe[m], sharesIm[m], sumRe, sumIm, points);
    }
  }

  /** Sets a row to the complex product of two. */
  private static void multiply(
      double[] aRe,
      double[] aIm,
      double[] bRe,
      double[] bIm,
      double[] productRe,
      double[] productIm,
      int count) {
    for (int f = 0; f < count; f++) {
      productRe[f] = aRe[f] * bRe[f] - aIm[f] * bIm[f];
      productIm[f] = aRe[f] * bIm[f] + aIm[f] * bRe[f];
    }
  }

  /** Adds the complex product of two rows to one. */
  private static void addProduct(
      double[] aRe,
      double[] aIm,
      double[] bRe,
      double[] bIm,
      double[] sumRe,
      double[] sumIm,
      int count) {
    for (int f = 0; f < count; f++) {
      sumRe[f] += aRe[f] * bRe[f] - aIm[f] * bIm[f];
      sumIm[f] += aRe[f] * bIm[f] + aIm[f] * bRe[f];
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
    // the first woofer sets the rows, the others add to them
    sumModes(rows, sharesRe[0], sharesIm[0], totalRe, totalIm);
    fillSquare(totalRe, totalIm, velocity2, points);
    fillBack(totalRe, totalIm, ownRe, omega, perOmegaIm, back2, points);
    for (int i = 1; i < woofers; i++) {
      sumModes(rows, sharesRe[i], sharesIm[i], rows.sRe, rows.sIm);
      addAndRaise(rows.sRe, rows.sIm, totalRe, totalIm, velocity2, points);
      raiseBack(rows.sRe, rows.sIm, ownRe, omega, perOmegaIm, back2, points);
    }
  }

  /** Sets a row to |s|^2. */
  private static void fillSquare(double[] sRe, double[] sIm, double[] square, int count) {
    for (int f = 0; f < count; f++) {
      square[f] = sRe[f] * sRe[f] + sIm[f] * sIm[f];
    }
  }

  /** Adds s to the total, and raises a row to |s|^2 where that is greater. */
  private static void addAndRaise(
      double[] sRe,
      double[] sIm,
      double[] totalRe,
      double[] totalIm,
      double[] greatest,
      int count) {
    for (int f = 0; f < count; f++) {
      totalRe[f] += sRe[f];
      totalIm[f] += sIm[f];
      greatest[f] = Math.max(greatest[f], sRe[f] * sRe[f] + sIm[f] * sIm[f]);
    }
  }

  /** Sets a row to |Ze/Bl^2 - s|^2. */
  private static void fillBack(
      double[] sRe,
      double[] sIm,
      double ownRe,
      double[] omega,
      double perOmegaIm,
      double[] square,
      int count) {
    for (int f = 0; f < count; f++) {
      double backRe = ownRe - sRe[f];
      double backIm = omega[f] * perOmegaIm - sIm[f];
      square[f] = backRe * backRe + backIm * backIm;
    }
  }

  /** Raises a row to |Ze/Bl^2 - s|^2 where that is greater. */
  private static void raiseBack(
      double[] sRe,
      double[] sIm,
      double ownRe,
      double[] omega,
      double perOmegaIm,
      double[] greatest,
      int count) {
    for (int f = 0; f < count; f++) {
      double backRe = ownRe - sRe[f];
      double backIm = omega[f] * perOmegaIm - sIm[f];
      greatest[f] = Math.max(greatest[f], backRe * backRe + backIm * backIm);
    }
  }

  /** Puts in the force per volt. */
  private void finish(Woofer woofer, Rows rows, StackModel.PerVolt out) {
    double[] pRe = rows.pressureRe;
    double[] pIm = rows.pressureIm;
    multiply(rows.forceRe, rows.forceIm, pRe, pIm, out.pressureRe, out.pressureIm, points);
    fillPressureSquared(rows.force2, pRe, pIm, out.pressureSquared, points);
    fillSquares(rows, out);
    fillCurrent(woofer, rows);
    fillLoad(woofer, rows, out);
  }

  private static void fillPressureSquared(
      double[] force2, double[] pRe, double[] pIm, double[] squared, int count) {
    for (int f = 0; f < count; f++) {
      squared[f] = force2[f] * (pRe[f] * pRe[f] + pIm[f] * pIm[f]);
    }
  }

  /** Squared excursion; squared current of a coil, (1 - Bl u)/Ze. */
  private void fillSquares(Rows rows, StackModel.PerVolt out) {
    double[] force2 = rows.force2;
    double[] velocity2 = rows.velocity2;
    double[] back2 = rows.back2;
    double[] excursionSquared = out.excursionSquared;
    double[] currentSquared = out.currentSquared;
    for (int f = 0; f < points; f++) {
      excursionSquared[f] = force2[f] * velocity2[f] * (perOmega[f] * perOmega[f]);
      currentSquared[f] = back2[f] * (force2[f] * force2[f]);
    }
  }

  /** Turns the sum of s into the stack's current times Ze, n - Bl sum u. */
  private void fillCurrent(Woofer woofer, Rows rows) {
    double bl = woofer.forceFactorTm();
    double[] forceRe = rows.forceRe;
    double[] forceIm = rows.forceIm;
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
    for (int f = 0; f < points; f++) {
      double re = totalRe[f];
      double im = totalIm[f];
      totalRe[f] = woofers - bl * (forceRe[f] * re - forceIm[f] * im);
      totalIm[f] = -bl * (forceRe[f] * im + forceIm[f] * re);
    }
  }

  /** The stack's impedance, Ze/(n - Bl sum u). */
  private void fillLoad(Woofer woofer, Rows rows, StackModel.PerVolt out) {
    double resistance = woofer.resistanceOhm();
    double inductance = woofer.inductanceH();
    double[] totalRe = rows.totalRe;
    double[] totalIm = rows.totalIm;
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
