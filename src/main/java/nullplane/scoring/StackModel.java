package nullplane.scoring;

import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.RadiationModes;
import nullplane.driver.Woofer;
import org.jspecify.annotations.Nullable;

/**
 * A stack of identical woofers in one wiring, coupled through the panel's full radiation impedance.
 *
 * <p>Symbols: z = Rms + jw M + Kms/(jw) mechanical impedance of a woofer without air; Ze = Re + jw
 * Le; Z = Q L Q^T radiation impedance; u velocities, i coil currents. Woofers in a string share the
 * string's current I: i = B I with B the incidence of woofers on strings. Force balance (z 1 + Z) u
 * = Bl i; string voltage V = s Ze I + Bl B^T u with s woofers in series. Hence
 *
 * <pre>
 *   [s Ze 1 + Bl^2 B^T Q (z 1 + L)^{-1} Q^T B] I = V 1
 * </pre>
 *
 * a system of as many equations as strings. With all in parallel the mode sum closes; see {@link
 * ParallelStack}. One or two strings are solved in closed form; see {@link StringStack}.
 *
 * <p>Source: derived from force balance and Kirchhoff's laws; R. H. Small, J. Audio Eng. Soc. 20(5)
 * (1972) 383, for the driver. Immutable; work space belongs to the caller.
 */
final class StackModel {
  private final Wiring wiring;
  private final int points;
  private final int woofers;
  private final double[] omega;
  private final double[] lambda;
  private final double[] modes;
  private final double[] listening;
  private final double[] onStrings;
  private final @Nullable ParallelStack parallel;
  private final @Nullable StringStack closed;

  /**
   * @param response the panel's acoustics; point 0 is the listening point
   * @param wiring the wiring
   */
  StackModel(PanelResponse response, Wiring wiring) {
    this.wiring = wiring;
    this.points = response.frequencyHz().size();
    this.woofers = wiring.woofers();
    int n = woofers;
    boolean allInParallel = wiring.inSeries() == 1;
    // with all in parallel only the sum over the strings is needed
    int strings = allInParallel ? 1 : wiring.strings();
    this.omega = new double[points];
    this.lambda = new double[2 * points * n];
    this.modes = new double[2 * points * n * n];
    this.listening = new double[2 * points * n];
    this.onStrings = new double[2 * points * n * strings];
    for (int f = 0; f < points; f++) {
      PanelSolution solution = response.solutions().get(f);
      omega[f] = 2 * Math.PI * response.frequencyHz().at(f);
      RadiationModes radiation = RadiationModes.of(solution.impedance());
      for (int m = 0; m < n; m++) {
        int at = 2 * (f * n + m);
        lambda[at] = radiation.valueRe(m);
        lambda[at + 1] = radiation.valueIm(m);
        for (int i = 0; i < n; i++) {
          double qRe = radiation.vectorRe(i, m);
          double qIm = radiation.vectorIm(i, m);
          int vector = 2 * ((f * n + i) * n + m);
          modes[vector] = qRe;
          modes[vector + 1] = qIm;
          double hRe = solution.pressure().re(0, i);
          double hIm = solution.pressure().im(0, i);
          listening[at] += hRe * qRe - hIm * qIm;
          listening[at + 1] += hRe * qIm + hIm * qRe;
          int string = 2 * ((f * n + m) * strings + i % strings);
          onStrings[string] += qRe;
          onStrings[string + 1] += qIm;
        }
      }
    }
    this.parallel =
        allInParallel ? new ParallelStack(omega, lambda, modes, listening, onStrings, n) : null;
    this.closed =
        !allInParallel && wiring.strings() <= StringStack.MOST_STRINGS
            ? new StringStack(omega, lambda, modes, listening, onStrings, wiring)
            : null;
  }

  /** Returns the wiring. */
  Wiring wiring() {
    return wiring;
  }

  /** What a stack does per volt at its own terminals; one value per frequency. */
  static final class PerVolt {
    /** Squared modulus of the pressure at the listening point ((Pa/V)^2). */
    final double[] pressureSquared;

    /** Real part of the pressure at the listening point (Pa/V). */
    final double[] pressureRe;

    /** Imaginary part of the pressure at the listening point (Pa/V). */
    final double[] pressureIm;

    /** Greatest squared modulus of a cone's excursion ((m/V)^2). */
    final double[] excursionSquared;

    /** Greatest squared modulus of a coil's current ((A/V)^2). */
    final double[] currentSquared;

    /** Real part of the stack's impedance (ohm). */
    final double[] loadRe;

    /** Imaginary part of the stack's impedance (ohm). */
    final double[] loadIm;

    /** Work space. */
    final ParallelStack.Rows rows;

    /** Work space. */
    final StringStack.Rows stringRows;

    private final double[] mobility;
    private final double[] system;
    private final double[] current;
    private final double[] drive;

    PerVolt(int points, int woofers) {
      pressureSquared = new double[points];
      pressureRe = new double[points];
      pressureIm = new double[points];
      excursionSquared = new double[points];
      currentSquared = new double[points];
      loadRe = new double[points];
      loadIm = new double[points];
      rows = new ParallelStack.Rows(points, woofers);
      stringRows = new StringStack.Rows(points, woofers);
      mobility = new double[2 * woofers];
      system = new double[2 * woofers * woofers];
      current = new double[2 * woofers];
      drive = new double[2 * woofers];
    }
  }

  /**
   * Computes the stack per volt at its terminals.
   *
   * @param woofer the woofer
   * @param out work space of at least this stack's size; overwritten
   */
  void respond(Woofer woofer, PerVolt out) {
    if (parallel != null) {
      parallel.respond(woofer, out);
      return;
    }
    if (closed != null) {
      closed.respond(woofer, out);
      return;
    }
    double bl = woofer.forceFactorTm();
    for (int f = 0; f < points; f++) {
      double w = omega[f];
      respondInStrings(
          f,
          bl,
          woofer.resistanceOhm(),
          w * woofer.inductanceH(),
          woofer.lossNsPerM(),
          w * woofer.bareMassKg() - woofer.stiffnessNPerM() / w,
          out);
    }
  }

  private void respondInStrings(
      int f, double bl, double zeRe, double zeIm, double zRe, double zIm, PerVolt out) {
    int n = woofers;
    int strings = wiring.strings();
    double[] mobility = out.mobility;
    for (int m = 0; m < n; m++) {
      int at = 2 * (f * n + m);
      double sumRe = zRe + lambda[at];
      double sumIm = zIm + lambda[at + 1];
      double sum2 = sumRe * sumRe + sumIm * sumIm;
      mobility[2 * m] = sumRe / sum2;
      mobility[2 * m + 1] = -sumIm / sum2;
    }
    fillStringSystem(f, bl, zeRe, zeIm, out);
    for (int s = 0; s < strings; s++) {
      out.current[2 * s] = 1;
      out.current[2 * s + 1] = 0;
    }
    SmallComplexSystem.solve(out.system, out.current, strings);
    double totalRe = 0;
    double totalIm = 0;
    double largestCurrent = 0;
    for (int s = 0; s < 2 * strings; s += 2) {
      double iRe = out.current[s];
      double iIm = out.current[s + 1];
      totalRe += iRe;
      totalIm += iIm;
      largestCurrent = Math.max(largestCurrent, iRe * iRe + iIm * iIm);
    }
    double pressureRe = 0;
    double pressureIm = 0;
    for (int m = 0; m < n; m++) {
      double sumRe = 0;
      double sumIm = 0;
      int string = 2 * (f * n + m) * strings;
      for (int s = 0; s < 2 * strings; s += 2) {
        sumRe +=
            onStrings[string + s] * out.current[s] - onStrings[string + s + 1] * out.current[s + 1];
        sumIm +=
            onStrings[string + s] * out.current[s + 1] + onStrings[string + s + 1] * out.current[s];
      }
      double aRe = bl * (mobility[2 * m] * sumRe - mobility[2 * m + 1] * sumIm);
      double aIm = bl * (mobility[2 * m] * sumIm + mobility[2 * m + 1] * sumRe);
      out.drive[2 * m] = aRe;
      out.drive[2 * m + 1] = aIm;
      int at = 2 * (f * n + m);
      pressureRe += aRe * listening[at] - aIm * listening[at + 1];
      pressureIm += aRe * listening[at + 1] + aIm * listening[at];
    }
    double largestVelocity = 0;
    for (int i = 0; i < n; i++) {
      double uRe = 0;
      double uIm = 0;
      int vector = 2 * (f * n + i) * n;
      for (int m = 0; m < 2 * n; m += 2) {
        uRe += modes[vector + m] * out.drive[m] - modes[vector + m + 1] * out.drive[m + 1];
        uIm += modes[vector + m] * out.drive[m + 1] + modes[vector + m + 1] * out.drive[m];
      }
      largestVelocity = Math.max(largestVelocity, uRe * uRe + uIm * uIm);
    }
    double total2 = totalRe * totalRe + totalIm * totalIm;
    out.loadRe[f] = totalRe / total2;
    out.loadIm[f] = -totalIm / total2;
    out.pressureRe[f] = pressureRe;
    out.pressureIm[f] = pressureIm;
    out.pressureSquared[f] = pressureRe * pressureRe + pressureIm * pressureIm;
    out.excursionSquared[f] = largestVelocity / (omega[f] * omega[f]);
    out.currentSquared[f] = largestCurrent;
  }

  /** Fills s Ze 1 + Bl^2 B^T Q (z + L)^{-1} Q^T B. */
  private void fillStringSystem(int f, double bl, double zeRe, double zeIm, PerVolt out) {
    int n = woofers;
    int strings = wiring.strings();
    double[] system = out.system;
    double[] mobility = out.mobility;
    for (int a = 0; a < strings; a++) {
      for (int b = a; b < strings; b++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int m = 0; m < n; m++) {
          int string = 2 * (f * n + m) * strings;
          double aRe = onStrings[string + 2 * a];
          double aIm = onStrings[string + 2 * a + 1];
          double bRe = onStrings[string + 2 * b];
          double bIm = onStrings[string + 2 * b + 1];
          double pRe = aRe * bRe - aIm * bIm;
          double pIm = aRe * bIm + aIm * bRe;
          sumRe += pRe * mobility[2 * m] - pIm * mobility[2 * m + 1];
          sumIm += pRe * mobility[2 * m + 1] + pIm * mobility[2 * m];
        }
        double own = a == b ? wiring.inSeries() : 0;
        double re = bl * bl * sumRe + own * zeRe;
        double im = bl * bl * sumIm + own * zeIm;
        system[2 * (a * strings + b)] = re;
        system[2 * (a * strings + b) + 1] = im;
        system[2 * (b * strings + a)] = re;
        system[2 * (b * strings + a) + 1] = im;
      }
    }
  }
}
