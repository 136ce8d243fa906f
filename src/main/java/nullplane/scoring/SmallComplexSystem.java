package nullplane.scoring;

/**
 * Gaussian elimination for a few complex equations in place, without pivoting and without
 * allocation.
 *
 * <p>Valid for the string systems of {@link StackModel}, whose real parts are positive definite
 * (coil resistance plus passive load), so that no pivot can vanish.
 */
final class SmallComplexSystem {
  private SmallComplexSystem() {}

  /**
   * Solves A x = b; x replaces b, A is destroyed.
   *
   * @param a interleaved complex, row by row, n x n
   * @param b interleaved complex, n
   * @param n number of equations
   */
  static void solve(double[] a, double[] b, int n) {
    for (int p = 0; p < n; p++) {
      double pivotRe = a[2 * (p * n + p)];
      double pivotIm = a[2 * (p * n + p) + 1];
      double pivot2 = pivotRe * pivotRe + pivotIm * pivotIm;
      for (int row = p + 1; row < n; row++) {
        double headRe = a[2 * (row * n + p)];
        double headIm = a[2 * (row * n + p) + 1];
        double factorRe = (headRe * pivotRe + headIm * pivotIm) / pivot2;
        double factorIm = (headIm * pivotRe - headRe * pivotIm) / pivot2;
        for (int column = p + 1; column < n; column++) {
          subtractProduct(a, row * n + column, a, p * n + column, factorRe, factorIm);
        }
        subtractProduct(b, row, b, p, factorRe, factorIm);
      }
    }
    for (int row = n - 1; row >= 0; row--) {
      for (int column = row + 1; column < n; column++) {
        subtractProduct(
            b, row, b, column, a[2 * (row * n + column)], a[2 * (row * n + column) + 1]);
      }
      double pivotRe = a[2 * (row * n + row)];
      double pivotIm = a[2 * (row * n + row) + 1];
      double pivot2 = pivotRe * pivotRe + pivotIm * pivotIm;
      double re = (b[2 * row] * pivotRe + b[2 * row + 1] * pivotIm) / pivot2;
      b[2 * row + 1] = (b[2 * row + 1] * pivotRe - b[2 * row] * pivotIm) / pivot2;
      b[2 * row] = re;
    }
  }

  private static void subtractProduct(
      double[] target, int t, double[] source, int s, double factorRe, double factorIm) {
    double re = source[2 * s];
    double im = source[2 * s + 1];
    target[2 * t] -= factorRe * re - factorIm * im;
    target[2 * t + 1] -= factorRe * im + factorIm * re;
  }
}
