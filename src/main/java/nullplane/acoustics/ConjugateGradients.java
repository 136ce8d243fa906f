package nullplane.acoustics;

import nullplane.faults.NumericalException;

/**
 * Preconditioned conjugate gradients for complex symmetric matrices: the bilinear form without
 * conjugation takes the place of the inner product.
 *
 * <p>Source: H. A. van der Vorst and J. B. M. Melissen, IEEE Trans. Magn. 26 (1990) 706. Valid for
 * A = A^T; breakdown (p^T A p = 0) is reported, not hidden. Vectors are interleaved complex.
 */
final class ConjugateGradients {
  private static final int MOST_ITERATIONS = 2000;

  private final VectorMap matrix;
  private final VectorMap preconditioner;
  private final int foldedColumns;
  private final Rim rim;
  private final double[] softened;
  private final double[] residual;
  private final double[] conditioned;
  private final double[] direction;
  private final double[] product;
  private int iterations;

  /**
   * @param matrix multiplies by A
   * @param preconditioner multiplies by an approximate inverse of A
   * @param rim springs and hats left out
   * @param unknowns number of unknowns
   * @param foldedColumns 0 for vectors over the whole grid; for ones over the left half and the
   *     middle column, the number of columns: all but the last of a row then count twice in the
   *     form
   */
  ConjugateGradients(
      VectorMap matrix, VectorMap preconditioner, Rim rim, int unknowns, int foldedColumns) {
    this.foldedColumns = foldedColumns;
    this.matrix = matrix;
    this.preconditioner = preconditioner;
    this.rim = rim;
    int length = 2 * unknowns;
    this.softened = new double[rim.plain() ? 0 : length];
    this.residual = new double[length];
    this.conditioned = new double[length];
    this.direction = new double[length];
    this.product = new double[length];
  }

  /**
   * Solves A x = b for a real right-hand side.
   *
   * @param rightHandSide b, one real value per unknown
   * @param tolerance relative residual to reach (1)
   * @return x, interleaved complex
   * @throws NumericalException if the residual is not reached
   */
  double[] solve(double[] rightHandSide, double tolerance) {
    int length = residual.length;
    double[] solution = new double[length];
    double scale = 0;
    for (int i = 0; i < rightHandSide.length; i++) {
      residual[2 * i] = rightHandSide[i];
      residual[2 * i + 1] = 0;
      scale += rightHandSide[i] * rightHandSide[i];
    }
    double target = tolerance * tolerance * scale;
    condition();
    System.arraycopy(conditioned, 0, direction, 0, length);
    double rhoRe = bilinearRe(residual, conditioned);
    double rhoIm = bilinearIm(residual, conditioned);
    double norm = scale;
    for (int iteration = 1; iteration <= MOST_ITERATIONS; iteration++) {
      matrix.apply(direction, product);
      rim.hold(direction, product);
      double curvatureRe = bilinearRe(direction, product);
      double curvatureIm = bilinearIm(direction, product);
      double curvature = curvatureRe * curvatureRe + curvatureIm * curvatureIm;
      if (!(curvature > 0)) {
        throw new NumericalException("panel solver", iteration, Math.sqrt(norm / scale));
      }
      double stepRe = (rhoRe * curvatureRe + rhoIm * curvatureIm) / curvature;
      double stepIm = (rhoIm * curvatureRe - rhoRe * curvatureIm) / curvature;
      norm = 0;
      for (int i = 0; i < length; i += 2) {
        solution[i] += stepRe * direction[i] - stepIm * direction[i + 1];
        solution[i + 1] += stepRe * direction[i + 1] + stepIm * direction[i];
        residual[i] -= stepRe * product[i] - stepIm * product[i + 1];
        residual[i + 1] -= stepRe * product[i + 1] + stepIm * product[i];
        norm += residual[i] * residual[i] + residual[i + 1] * residual[i + 1];
      }
      if (norm <= target) {
        iterations = iteration;
        return solution;
      }
      condition();
      double nextRe = bilinearRe(residual, conditioned);
      double nextIm = bilinearIm(residual, conditioned);
      double rho = rhoRe * rhoRe + rhoIm * rhoIm;
      double betaRe = (nextRe * rhoRe + nextIm * rhoIm) / rho;
      double betaIm = (nextIm * rhoRe - nextRe * rhoIm) / rho;
      for (int i = 0; i < length; i += 2) {
        double re = conditioned[i] + betaRe * direction[i] - betaIm * direction[i + 1];
        direction[i + 1] = conditioned[i + 1] + betaRe * direction[i + 1] + betaIm * direction[i];
        direction[i] = re;
      }
      rhoRe = nextRe;
      rhoIm = nextIm;
    }
    throw new NumericalException("panel solver", MOST_ITERATIONS, Math.sqrt(norm / scale));
  }

  /** Sets conditioned to the approximate inverse times the residual. */
  private void condition() {
    if (rim.plain()) {
      preconditioner.apply(residual, conditioned);
      return;
    }
    System.arraycopy(residual, 0, softened, 0, residual.length);
    rim.soften(softened);
    preconditioner.apply(softened, conditioned);
    rim.soften(conditioned);
  }

  /** Returns the iterations that the last solution took. */
  int iterations() {
    return iterations;
  }

  private double bilinearRe(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i += 2) {
      sum += a[i] * b[i] - a[i + 1] * b[i + 1];
    }
    if (foldedColumns == 0) {
      return sum;
    }
    double middle = 0;
    for (int i = 2 * (foldedColumns - 1); i < a.length; i += 2 * foldedColumns) {
      middle += a[i] * b[i] - a[i + 1] * b[i + 1];
    }
    return 2 * sum - middle;
  }

  private double bilinearIm(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i += 2) {
      sum += a[i] * b[i + 1] + a[i + 1] * b[i];
    }
    if (foldedColumns == 0) {
      return sum;
    }
    double middle = 0;
    for (int i = 2 * (foldedColumns - 1); i < a.length; i += 2 * foldedColumns) {
      middle += a[i] * b[i + 1] + a[i + 1] * b[i];
    }
    return 2 * sum - middle;
  }
}
