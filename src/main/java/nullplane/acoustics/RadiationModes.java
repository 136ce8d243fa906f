package nullplane.acoustics;

import java.util.Arrays;
import nullplane.faults.NumericalException;

/**
 * The modes in which a stack of identical pistons radiates: Z = Q L Q^T with Q^T Q = 1, no
 * conjugation, since a radiation impedance matrix is complex symmetric.
 *
 * <p>With one mechanical impedance z per piston, (z 1 + Z)^{-1} = Q (z 1 + L)^{-1} Q^T: a driver
 * costs one complex division per mode.
 *
 * <p>Found by Jacobi rotations with complex angles. Source: P. J. Eberlein, J. SIAM 10 (1962) 74,
 * for the method; valid unless a mode is self-orthogonal (q^T q = 0), which is reported.
 */
public final class RadiationModes {
  private static final int MOST_SWEEPS = 60;
  private static final double TOLERANCE = 1e-15;
  private static final double NEGLIGIBLE = 1e-36;

  private final int count;
  private final double[] valueRe;
  private final double[] valueIm;
  private final double[] vectorRe;
  private final double[] vectorIm;

  private RadiationModes(
      int count, double[] valueRe, double[] valueIm, double[] vectorRe, double[] vectorIm) {
    this.count = count;
    this.valueRe = valueRe;
    this.valueIm = valueIm;
    this.vectorRe = vectorRe;
    this.vectorIm = vectorIm;
  }

  /**
   * Returns the modes of an impedance matrix; what asymmetry rounding left in it is averaged out.
   *
   * @param impedance square, symmetric but for rounding (N s/m)
   * @throws NumericalException if the rotations do not converge
   */
  public static RadiationModes of(ComplexMatrix impedance) {
    int n = impedance.rows();
    ComplexMatrix reciprocal = impedance.symmetric();
    double[] aRe = new double[n * n];
    double[] aIm = new double[n * n];
    double[] qRe = new double[n * n];
    double[] qIm = new double[n * n];
    for (int i = 0; i < n; i++) {
      qRe[i * n + i] = 1;
      for (int j = 0; j < n; j++) {
        aRe[i * n + j] = reciprocal.re(i, j);
        aIm[i * n + j] = reciprocal.im(i, j);
      }
    }
    double scale = impedance.largestModulus();
    for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      double offDiagonal = 0;
      for (int p = 0; p < n - 1; p++) {
        for (int q = p + 1; q < n; q++) {
          offDiagonal = Math.max(offDiagonal, Math.hypot(aRe[p * n + q], aIm[p * n + q]));
          rotate(n, p, q, aRe, aIm, qRe, qIm);
        }
      }
      if (offDiagonal <= TOLERANCE * scale && orthonormal(qRe, qIm, n)) {
        double[] valueRe = new double[n];
        double[] valueIm = new double[n];
        for (int m = 0; m < n; m++) {
          valueRe[m] = aRe[m * n + m];
          valueIm[m] = aIm[m * n + m];
        }
        return new RadiationModes(n, valueRe, valueIm, qRe, qIm);
      }
    }
    throw new NumericalException("radiation modes", MOST_SWEEPS, residual(aRe, aIm, n) / scale);
  }

  /** Whether Q^T Q is the unit matrix but for rounding; a self-orthogonal mode spoils it. */
  private static boolean orthonormal(double[] qRe, double[] qIm, int n) {
    for (int a = 0; a < n; a++) {
      for (int b = a; b < n; b++) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < n; i++) {
          re += qRe[i * n + a] * qRe[i * n + b] - qIm[i * n + a] * qIm[i * n + b];
          im += qRe[i * n + a] * qIm[i * n + b] + qIm[i * n + a] * qRe[i * n + b];
        }
        if (!(Math.hypot(re - (a == b ? 1 : 0), im) < 1e-9)) {
          return false;
        }
      }
    }
    return true;
  }

  private static double residual(double[] aRe, double[] aIm, int n) {
    double largest = 0;
    for (int p = 0; p < n; p++) {
      for (int q = p + 1; q < n; q++) {
        largest = Math.max(largest, Math.hypot(aRe[p * n + q], aIm[p * n + q]));
      }
    }
    return largest;
  }

  /**
   * One rotation that makes entry (p, q) zero: t = 1/(d +- sqrt(d^2 + 1)), d = (a_qq - a_pp)/2a_pq.
   */
  private static void rotate(
      int n, int p, int q, double[] aRe, double[] aIm, double[] qRe, double[] qIm) {
    double bRe = aRe[p * n + q];
    double bIm = aIm[p * n + q];
    double b2 = bRe * bRe + bIm * bIm;
    double diagonal =
        Math.max(
            Math.hypot(aRe[p * n + p], aIm[p * n + p]), Math.hypot(aRe[q * n + q], aIm[q * n + q]));
    if (b2 <= NEGLIGIBLE * diagonal * diagonal) {
      return;
    }
    double gapRe = aRe[q * n + q] - aRe[p * n + p];
    double gapIm = aIm[q * n + q] - aIm[p * n + p];
    double dRe = 0.5 * (gapRe * bRe + gapIm * bIm) / b2;
    double dIm = 0.5 * (gapIm * bRe - gapRe * bIm) / b2;
    double[] root = squareRoot(dRe * dRe - dIm * dIm + 1, 2 * dRe * dIm);
    double sign = dRe * root[0] + dIm * root[1] >= 0 ? 1 : -1;
    double sumRe = dRe + sign * root[0];
    double sumIm = dIm + sign * root[1];
    double sum2 = sumRe * sumRe + sumIm * sumIm;
    double tRe = sumRe / sum2;
    double tIm = -sumIm / sum2;
    double[] norm = squareRoot(1 + tRe * tRe - tIm * tIm, 2 * tRe * tIm);
    double norm2 = norm[0] * norm[0] + norm[1] * norm[1];
    double cRe = norm[0] / norm2;
    double cIm = -norm[1] / norm2;
    double sRe = tRe * cRe - tIm * cIm;
    double sIm = tRe * cIm + tIm * cRe;
    for (int k = 0; k < n; k++) {
      turn(aRe, aIm, k * n + p, k * n + q, cRe, cIm, sRe, sIm);
    }
    for (int k = 0; k < n; k++) {
      turn(aRe, aIm, p * n + k, q * n + k, cRe, cIm, sRe, sIm);
      turn(qRe, qIm, k * n + p, k * n + q, cRe, cIm, sRe, sIm);
    }
    aRe[p * n + q] = 0;
    aIm[p * n + q] = 0;
    aRe[q * n + p] = 0;
    aIm[q * n + p] = 0;
  }

  /** Replaces (x, y) by (c x - s y, s x + c y). */
  private static void turn(
      double[] re, double[] im, int x, int y, double cRe, double cIm, double sRe, double sIm) {
    double xRe = re[x];
    double xIm = im[x];
    double yRe = re[y];
    double yIm = im[y];
    re[x] = cRe * xRe - cIm * xIm - sRe * yRe + sIm * yIm;
    im[x] = cRe * xIm + cIm * xRe - sRe * yIm - sIm * yRe;
    re[y] = sRe * xRe - sIm * xIm + cRe * yRe - cIm * yIm;
    im[y] = sRe * xIm + sIm * xRe + cRe * yIm + cIm * yRe;
  }

  /** Principal square root of a complex number. */
  private static double[] squareRoot(double re, double im) {
    double modulus = Math.hypot(re, im);
    double rootRe = Math.sqrt(0.5 * (modulus + Math.abs(re)));
    if (rootRe == 0) {
      return new double[] {0, 0};
    }
    double other = im / (2 * rootRe);
    return re >= 0
        ? new double[] {rootRe, other}
        : new double[] {Math.abs(other), Math.copySign(rootRe, im)};
  }

  /** Returns the number of modes, which is the number of pistons. */
  public int count() {
    return count;
  }

  /** Returns the real part of a mode's radiation impedance (N s/m). */
  public double valueRe(int mode) {
    return valueRe[mode];
  }

  /** Returns the imaginary part of a mode's radiation impedance (N s/m). */
  public double valueIm(int mode) {
    return valueIm[mode];
  }

  /** Returns the real part of a piston's share in a mode (1). */
  public double vectorRe(int piston, int mode) {
    return vectorRe[piston * count + mode];
  }

  /** Returns the imaginary part of a piston's share in a mode (1). */
  public double vectorIm(int piston, int mode) {
    return vectorIm[piston * count + mode];
  }

  @Override
  public String toString() {
    return "radiation modes " + Arrays.toString(valueRe) + " + j " + Arrays.toString(valueIm);
  }
}
