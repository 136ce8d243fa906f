package nullplane.scoring;

import java.util.Arrays;
import nullplane.driver.Woofer;

/**
 * A stack in one or two strings with two or more woofers in series in each, where the strings'
 * equations are solved in closed form.
 *
 * <p>Per frequency, with B the incidence of woofers on strings, m the mode, and y = 1/(z + L) a
 * mode's mobility: G = Q y Q^T B gives each woofer's velocity per string current over Bl, h y Q^T B
 * the pressure, and B^T G what the strings do to each other. All of these are sums over the modes,
 * so they stand one after the other in long rows, as in {@link ParallelStack}; each step is a loop
 * without branches that a compiler turns into vector instructions, and nothing is allocated.
 *
 * <p>Symbols and source as in {@link StackModel}. Immutable; work space belongs to the caller.
 */
final class StringStack {
  /** Most strings that are solved in closed form. */
  static final int MOST_STRINGS = 2;

  /** Work space: one row per quantity. */
  static final class Rows {
    private final double[] mechanicalIm;
    private final double[] mobilityRe;
    private final double[] mobilityIm;
    private final double[][] sumRe;
    private final double[][] sumIm;
    private final double[][] system;
    private final double[][] current;
    private final double[] movedRe;
    private final double[] movedIm;
    private final double[] velocity2;

    Rows(int points, int woofers) {
      int all = (1 + woofers) * points;
      mechanicalIm = new double[points];
      mobilityRe = new double[all];
      mobilityIm = new double[all];
      sumRe = new double[MOST_STRINGS][all];
      sumIm = new double[MOST_STRINGS][all];
      system = new double[6][points];
      current = new double[2 * MOST_STRINGS][all];
      movedRe = new double[all];
      movedIm = new double[all];
      velocity2 = new double[points];
    }
  }

  private final int points;
  private final int woofers;
  private final int strings;
  private final int inSeries;
  private final double[] omega;
  private final double[] perOmega;
  private final double[][] lambdaRe;
  private final double[][] lambdaIm;
  private final double[][][] sharesRe;
  private final double[][][] sharesIm;

  /**
   * @param omega angular frequencies (rad/s)
   * @param lambda modes' radiation impedances, interleaved complex, frequency by frequency (N s/m)
   * @param modes woofers' shares in the modes, interleaved, by frequency, woofer and mode (1)
   * @param listening modes' pressures per velocity, interleaved, by frequency and mode (Pa s/m)
   * @param onStrings modes' shares summed over each string's woofers, interleaved, by frequency,
   *     mode and string (1)
   * @param wiring one or two strings
   */
  StringStack(
      double[] omega,
      double[] lambda,
      double[] modes,
      double[] listening,
      double[] onStrings,
      Wiring wiring) {
    this.points = omega.length;
    this.woofers = wiring.woofers();
    this.strings = wiring.strings();
    this.inSeries = wiring.inSeries();
    this.omega = omega;
    this.perOmega = Arrays.stream(omega).map(w -> 1 / w).toArray();
    this.lambdaRe = new double[woofers][points];
    this.lambdaIm = new double[woofers][points];
    // for each string the pressure first, then the woofers
    this.sharesRe = new double[woofers][strings][(1 + woofers) * points];
    this.sharesIm = new double[woofers][strings][(1 + woofers) * points];
    for (int f = 0; f < points; f++) {
      for (int m = 0; m < woofers; m++) {
        int mode = f * woofers + m;
        lambdaRe[m][f] = lambda[2 * mode];
        lambdaIm[m][f] = lambda[2 * mode + 1];
        for (int s = 0; s < strings; s++) {
          double re = onStrings[2 * (mode * strings + s)];
          double im = onStrings[2 * (mode * strings + s) + 1];
          put(m, s, f, re, im, listening[2 * mode], listening[2 * mode + 1]);
          for (int i = 0; i < woofers; i++) {
            int vector = 2 * ((f * woofers + i) * woofers + m);
            put(m, s, (1 + i) * points + f, re, im, modes[vector], modes[vector + 1]);
          }
        }
      }
    }
  }

  private void put(int mode, int string, int at, double aRe, double aIm, double bRe, double bIm) {
    sharesRe[mode][string][at] = aRe * bRe - aIm * bIm;
    sharesIm[mode][string][at] = aRe * bIm + aIm * bRe;
  }

  /**
   * Computes the stack per volt at its terminals.
   *
   * @param woofer the woofer
   * @param out work space of at least this stack's size; overwritten
   */
  void respond(Woofer woofer, StackModel.PerVolt out) {
    Rows rows = out.stringRows;
    int all = (1 + woofers) * points;
    fillMechanical(woofer, rows.mechanicalIm);
    for (int s = 0; s < strings; s++) {
      Arrays.fill(rows.sumRe[s], 0, all, 0);
      Arrays.fill(rows.sumIm[s], 0, all, 0);
    }
    double[] re = rows.mobilityRe;
    double[] im = rows.mobilityIm;
    for (int m = 0; m < woofers; m++) {
      invert(woofer.lossNsPerM(), rows.mechanicalIm, lambdaRe[m], lambdaIm[m], re, im);
      repeat(re);
      repeat(im);
      for (int s = 0; s < strings; s++) {
        addDifference(re, sharesRe[m][s], im, sharesIm[m][s], rows.sumRe[s], all);
        addSum(re, sharesIm[m][s], im, sharesRe[m][s], rows.sumIm[s], all);
      }
    }
    for (int s = 0; s < strings; s++) {
      for (int t = 0; t <= s; t++) {
        gather(rows, s, t, rows.system[2 * (s + t)], rows.system[2 * (s + t) + 1]);
      }
    }
    solve(woofer, rows, out);
    Arrays.fill(rows.movedRe, 0, all, 0);
    Arrays.fill(rows.movedIm, 0, all, 0);
    for (int s = 0; s < strings; s++) {
      double[] iRe = rows.current[2 * s];
      double[] iIm = rows.current[2 * s + 1];
      repeat(iRe);
      repeat(iIm);
      addDifference(iRe, rows.sumRe[s], iIm, rows.sumIm[s], rows.movedRe, all);
      addSum(iRe, rows.sumIm[s], iIm, rows.sumRe[s], rows.movedIm, all);
    }
    finish(woofer.forceFactorTm(), rows, out);
  }

  /** Repeats the first row for every quantity. */
  private void repeat(double[] row) {
    for (int i = 1; i <= woofers; i++) {
      System.arraycopy(row, 0, row, i * points, points);
    }
  }

  private void fillMechanical(Woofer woofer, double[] im) {
    double mass = woofer.bareMassKg();
    double stiffness = woofer.stiffnessNPerM();
    for (int f = 0; f < points; f++) {
      im[f] = omega[f] * mass - stiffness * perOmega[f];
    }
  }

  private void invert(
      double loss,
      double[] mechanicalIm,
      double[] ownRe,
      double[] ownIm,
      double[] outRe,
      double[] outIm) {
    for (int f = 0; f < points; f++) {
      double re = loss + ownRe[f];
      double im = mechanicalIm[f] + ownIm[f];
      double perSquare = 1 / (re * re + im * im);
      outRe[f] = re * perSquare;
      outIm[f] = -im * perSquare;
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
   * Adds up what a unit current in string s moves in string t; woofer i belongs to string i modulo
   * their number.
   */
  private void gather(Rows rows, int s, int t, double[] re, double[] im) {
    Arrays.fill(re, 0, points, 0);
    Arrays.fill(im, 0, points, 0);
    for (int i = t; i < woofers; i += strings) {
      addRow(rows.sumRe[s], (1 + i) * points, re, points);
      addRow(rows.sumIm[s], (1 + i) * points, im, points);
    }
  }

  private static void addRow(double[] a, int offset, double[] sum, int count) {
    for (int f = 0; f < count; f++) {
      sum[f] += a[offset + f];
    }
  }

  /** Currents of the strings, by Cramer's rule, and the load. */
  private void solve(Woofer woofer, Rows rows, StackModel.PerVolt out) {
    double bl2 = woofer.forceFactorTm() * woofer.forceFactorTm();
    double ohm = inSeries * woofer.resistanceOhm();
    double henry = inSeries * woofer.inductanceH();
    for (int s = 0; s < strings; s++) {
      addOwn(bl2, ohm, henry, rows.system[4 * s], rows.system[4 * s + 1]);
    }
    if (strings == 1) {
      solveOne(rows.system[0], rows.system[1], rows.current[0], rows.current[1], out);
    } else {
      scale(bl2, rows.system[2], rows.system[3]);
      solveTwo(rows.system, rows.current, out);
    }
  }

  /** Turns a string's motion into its impedance. */
  private void addOwn(double bl2, double ohm, double henry, double[] re, double[] im) {
    for (int f = 0; f < points; f++) {
      re[f] = ohm + bl2 * re[f];
      im[f] = omega[f] * henry + bl2 * im[f];
    }
  }

  private void scale(double bl2, double[] re, double[] im) {
    for (int f = 0; f < points; f++) {
      re[f] *= bl2;
      im[f] *= bl2;
    }
  }

  private void solveOne(
      double[] ownRe, double[] ownIm, double[] iRe, double[] iIm, StackModel.PerVolt out) {
    for (int f = 0; f < points; f++) {
      double re = ownRe[f];
      double im = ownIm[f];
      double perSquare = 1 / (re * re + im * im);
      iRe[f] = re * perSquare;
      iIm[f] = -im * perSquare;
      out.loadRe[f] = re;
      out.loadIm[f] = im;
      out.currentSquared[f] = perSquare;
    }
  }

  private void solveTwo(double[][] system, double[][] current, StackModel.PerVolt out) {
    double[] oneRe = system[0];
    double[] oneIm = system[1];
    double[] betweenRe = system[2];
    double[] betweenIm = system[3];
    double[] twoRe = system[4];
    double[] twoIm = system[5];
    double[] i1Re = current[0];
    double[] i1Im = current[1];
    double[] i2Re = current[2];
    double[] i2Im = current[3];
    for (int f = 0; f < points; f++) {
      double m = betweenRe[f];
      double n = betweenIm[f];
      double detRe = oneRe[f] * twoRe[f] - oneIm[f] * twoIm[f] - (m * m - n * n);
      double detIm = oneRe[f] * twoIm[f] + oneIm[f] * twoRe[f] - 2 * m * n;
      double perDet2 = 1 / (detRe * detRe + detIm * detIm);
      detRe *= perDet2;
      detIm *= perDet2;
      double aRe = twoRe[f] - m;
      double aIm = twoIm[f] - n;
      double bRe = oneRe[f] - m;
      double bIm = oneIm[f] - n;
      i1Re[f] = aRe * detRe + aIm * detIm;
      i1Im[f] = aIm * detRe - aRe * detIm;
      i2Re[f] = bRe * detRe + bIm * detIm;
      i2Im[f] = bIm * detRe - bRe * detIm;
    }
    fillLoad(i1Re, i1Im, i2Re, i2Im, out.loadRe, out.loadIm);
    fillCurrent(i1Re, i1Im, i2Re, i2Im, out.currentSquared);
  }

  private void fillLoad(
      double[] aRe, double[] aIm, double[] bRe, double[] bIm, double[] loadRe, double[] loadIm) {
    for (int f = 0; f < points; f++) {
      double re = aRe[f] + bRe[f];
      double im = aIm[f] + bIm[f];
      double perSquare = 1 / (re * re + im * im);
      loadRe[f] = re * perSquare;
      loadIm[f] = -im * perSquare;
    }
  }

  private void fillCurrent(
      double[] aRe, double[] aIm, double[] bRe, double[] bIm, double[] squared) {
    for (int f = 0; f < points; f++) {
      double one = aRe[f] * aRe[f] + aIm[f] * aIm[f];
      double two = bRe[f] * bRe[f] + bIm[f] * bIm[f];
      squared[f] = Math.max(one, two);
    }
  }

  /** Pressure and greatest excursion; the rows hold them over Bl. */
  private void finish(double bl, Rows rows, StackModel.PerVolt out) {
    double[] re = rows.movedRe;
    double[] im = rows.movedIm;
    for (int f = 0; f < points; f++) {
      out.pressureRe[f] = bl * re[f];
      out.pressureIm[f] = bl * im[f];
      out.pressureSquared[f] = bl * bl * (re[f] * re[f] + im[f] * im[f]);
    }
    double[] velocity2 = rows.velocity2;
    Arrays.fill(velocity2, 0, points, 0);
    for (int i = 1; i <= woofers; i++) {
      raise(re, im, i * points, velocity2, points);
    }
    for (int f = 0; f < points; f++) {
      out.excursionSquared[f] = bl * bl * velocity2[f] * (perOmega[f] * perOmega[f]);
    }
  }

  private static void raise(double[] re, double[] im, int offset, double[] greatest, int count) {
    for (int f = 0; f < count; f++) {
      double square = re[offset + f] * re[offset + f] + im[offset + f] * im[offset + f];
      greatest[f] = Math.max(greatest[f], square);
    }
  }
}
