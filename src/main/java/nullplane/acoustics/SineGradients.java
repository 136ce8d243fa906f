package nullplane.acoustics;

import java.util.Arrays;
import nullplane.faults.NumericalException;

/**
 * {@link ConjugateGradients} for several right-hand sides side by side in the basis of sine waves,
 * where the preconditioner is diagonal. Each right-hand side has its own steps and stops for
 * itself; they share the work of the product.
 *
 * <p>Source: H. A. van der Vorst and J. B. M. Melissen, IEEE Trans. Magn. 26 (1990) 706. Valid for
 * A = A^T. An instance holds work space and serves one thread.
 */
final class SineGradients {
  private static final int MOST_ITERATIONS = 2000;

  private final SineOperator matrix;
  private final double[][] inverseRe;
  private final double[][] inverseIm;
  private final int rows;
  private final int vectors;
  private final int length;
  private final SineVectors residual;
  private final SineVectors direction;
  private final SineVectors product;
  private final SineVectors solution;
  private final double[] sum = new double[2];
  private int iterations;

  /**
   * @param matrix multiplies by A
   * @param inverse diagonal of an approximate inverse of A, one vector
   * @param vectors how many right-hand sides there are
   */
  SineGradients(SineOperator matrix, SineVectors inverse, int vectors) {
    this.matrix = matrix;
    this.inverseRe = inverse.re;
    this.inverseIm = inverse.im;
    this.rows = inverseRe.length;
    this.length = inverseRe[0].length;
    this.vectors = vectors;
    this.residual = new SineVectors(rows, vectors * length);
    this.direction = new SineVectors(rows, vectors * length);
    this.product = new SineVectors(rows, vectors * length);
    this.solution = new SineVectors(rows, vectors * length);
  }

  /**
   * Solves A x = b for real right-hand sides.
   *
   * @param loads the right-hand sides, laid out like {@link SineVectors}
   * @param tolerance relative residual to reach (1)
   * @return x; the instance's own, valid until the next call
   * @throws NumericalException if a residual is not reached
   */
  SineVectors solve(double[][] loads, double tolerance) {
    double[] target = new double[vectors];
    double[] norm = new double[vectors];
    double[] rhoRe = new double[vectors];
    double[] rhoIm = new double[vectors];
    for (int r = 0; r < rows; r++) {
      System.arraycopy(loads[r], 0, residual.re[r], 0, loads[r].length);
      Arrays.fill(residual.im[r], 0);
      Arrays.fill(direction.re[r], 0);
      Arrays.fill(direction.im[r], 0);
      Arrays.fill(solution.re[r], 0);
      Arrays.fill(solution.im[r], 0);
    }
    for (int v = 0; v < vectors; v++) {
      norm[v] = squareOf(residual, v);
      target[v] = tolerance * tolerance * norm[v];
      conditionedSquare(v);
      rhoRe[v] = sum[0];
      rhoIm[v] = sum[1];
      turn(v, 0, 0);
    }
    for (iterations = 0; anyAbove(norm, target); iterations++) {
      if (iterations == MOST_ITERATIONS) {
        throw new NumericalException("panel solver", iterations, worst(norm, target, tolerance));
      }
      matrix.apply(direction, product);
      for (int v = 0; v < vectors; v++) {
        if (norm[v] > target[v]) {
          norm[v] = step(v, rhoRe, rhoIm, worst(norm, target, tolerance));
        }
      }
    }
    return solution;
  }

  /** One step of one right-hand side; returns the square of its new residual. */
  private double step(int v, double[] rhoRe, double[] rhoIm, double reached) {
    bilinear(direction, product, v);
    double curvature = sum[0] * sum[0] + sum[1] * sum[1];
    if (!(curvature > 0)) {
      throw new NumericalException("panel solver", iterations, reached);
    }
    double stepRe = (rhoRe[v] * sum[0] + rhoIm[v] * sum[1]) / curvature;
    double stepIm = (rhoIm[v] * sum[0] - rhoRe[v] * sum[1]) / curvature;
    for (int r = 0; r < rows; r++) {
      addTimes(direction.re[r], direction.im[r], solution.re[r], v, stepRe, -stepIm);
      addTimes(direction.re[r], direction.im[r], solution.im[r], v, stepIm, stepRe);
      addTimes(product.re[r], product.im[r], residual.re[r], v, -stepRe, stepIm);
      addTimes(product.re[r], product.im[r], residual.im[r], v, -stepIm, -stepRe);
    }
    conditionedSquare(v);
    double rho = rhoRe[v] * rhoRe[v] + rhoIm[v] * rhoIm[v];
    double betaRe = (sum[0] * rhoRe[v] + sum[1] * rhoIm[v]) / rho;
    double betaIm = (sum[1] * rhoRe[v] - sum[0] * rhoIm[v]) / rho;
    rhoRe[v] = sum[0];
    rhoIm[v] = sum[1];
    turn(v, betaRe, betaIm);
    return squareOf(residual, v);
  }

  /** Adds two rows, each times a number, to a third, for one of the vectors. */
  private void addTimes(double[] a, double[] b, double[] to, int v, double ofA, double ofB) {
    int end = (v + 1) * length;
    for (int i = v * length; i < end; i++) {
      to[i] += ofA * a[i] + ofB * b[i];
    }
  }

  /** Direction = conditioned residual + beta x direction. */
  private void turn(int v, double betaRe, double betaIm) {
    int from = v * length;
    for (int r = 0; r < rows; r++) {
      double[] residualRe = residual.re[r];
      double[] residualIm = residual.im[r];
      double[] directionRe = direction.re[r];
      double[] directionIm = direction.im[r];
      double[] scaleRe = inverseRe[r];
      double[] scaleIm = inverseIm[r];
      for (int y = 0; y < length; y++) {
        int i = from + y;
        double re = directionRe[i];
        double im = directionIm[i];
        directionRe[i] =
            scaleRe[y] * residualRe[i] - scaleIm[y] * residualIm[i] + betaRe * re - betaIm * im;
        directionIm[i] =
            scaleRe[y] * residualIm[i] + scaleIm[y] * residualRe[i] + betaRe * im + betaIm * re;
      }
    }
  }

  /** Sets sum to residual^T x conditioned residual, without conjugation. */
  private void conditionedSquare(int v) {
    int from = v * length;
    double sumRe = 0;
    double sumIm = 0;
    for (int r = 0; r < rows; r++) {
      double[] residualRe = residual.re[r];
      double[] residualIm = residual.im[r];
      double[] scaleRe = inverseRe[r];
      double[] scaleIm = inverseIm[r];
      double rowRe = 0;
      double rowIm = 0;
      for (int y = 0; y < length; y++) {
        double re = residualRe[from + y];
        double im = residualIm[from + y];
        double squareRe = re * re - im * im;
        double squareIm = 2 * re * im;
        rowRe += scaleRe[y] * squareRe - scaleIm[y] * squareIm;
        rowIm += scaleRe[y] * squareIm + scaleIm[y] * squareRe;
      }
      sumRe += rowRe;
      sumIm += rowIm;
    }
    sum[0] = sumRe;
    sum[1] = sumIm;
  }

  /** Sets sum to a^T b, without conjugation. */
  private void bilinear(SineVectors a, SineVectors b, int v) {
    int end = (v + 1) * length;
    double sumRe = 0;
    double sumIm = 0;
    for (int r = 0; r < rows; r++) {
      double[] aRe = a.re[r];
      double[] aIm = a.im[r];
      double[] bRe = b.re[r];
      double[] bIm = b.im[r];
      double rowRe = 0;
      double rowIm = 0;
      for (int i = v * length; i < end; i++) {
        rowRe += aRe[i] * bRe[i] - aIm[i] * bIm[i];
        rowIm += aRe[i] * bIm[i] + aIm[i] * bRe[i];
      }
      sumRe += rowRe;
      sumIm += rowIm;
    }
    sum[0] = sumRe;
    sum[1] = sumIm;
  }

  private double squareOf(SineVectors a, int v) {
    int end = (v + 1) * length;
    double square = 0;
    for (int r = 0; r < rows; r++) {
      double[] re = a.re[r];
      double[] im = a.im[r];
      double row = 0;
      for (int i = v * length; i < end; i++) {
        row += re[i] * re[i] + im[i] * im[i];
      }
      square += row;
    }
    return square;
  }

  private static boolean anyAbove(double[] norm, double[] target) {
    for (int v = 0; v < norm.length; v++) {
      if (norm[v] > target[v]) {
        return true;
      }
    }
    return false;
  }

  /** Largest relative residual. */
  private static double worst(double[] norm, double[] target, double tolerance) {
    double largest = 0;
    for (int v = 0; v < norm.length; v++) {
      if (target[v] > 0) {
        largest = Math.max(largest, tolerance * Math.sqrt(norm[v] / target[v]));
      }
    }
    return largest;
  }

  /** Returns what is left of the right-hand sides after the last solution. */
  SineVectors residual() {
    return residual;
  }

  /** Returns the iterations that the last solution took. */
  int iterations() {
    return iterations;
  }
}
