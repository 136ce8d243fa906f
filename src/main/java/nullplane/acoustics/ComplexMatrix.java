package nullplane.acoustics;

import java.util.Arrays;
import java.util.List;

/** An immutable complex matrix, row by row. */
public final class ComplexMatrix {
  private final int rows;
  private final int columns;
  private final double[] re;
  private final double[] im;

  /**
   * Copies the parts in.
   *
   * @param rows number of rows
   * @param columns number of columns
   * @param re real parts, row by row, rows x columns
   * @param im imaginary parts, row by row, rows x columns
   * @throws IllegalArgumentException if a length does not match
   */
  public ComplexMatrix(int rows, int columns, double[] re, double[] im) {
    if (re.length != rows * columns || im.length != rows * columns) {
      throw new IllegalArgumentException(
          "a " + rows + " x " + columns + " matrix from " + re.length + " and " + im.length);
    }
    this.rows = rows;
    this.columns = columns;
    this.re = re.clone();
    this.im = im.clone();
  }

  /** Returns the number of rows. */
  public int rows() {
    return rows;
  }

  /** Returns the number of columns. */
  public int columns() {
    return columns;
  }

  /** Returns a real part (unit of the matrix); indices count from 0. */
  public double re(int row, int column) {
    return re[row * columns + column];
  }

  /** Returns an imaginary part (unit of the matrix); indices count from 0. */
  public double im(int row, int column) {
    return im[row * columns + column];
  }

  /** Returns a modulus (unit of the matrix); indices count from 0. */
  public double modulus(int row, int column) {
    return Math.hypot(re(row, column), im(row, column));
  }

  /** Returns the largest modulus in the matrix (unit of the matrix). */
  public double largestModulus() {
    double largest = 0;
    for (int i = 0; i < re.length; i++) {
      largest = Math.max(largest, Math.hypot(re[i], im[i]));
    }
    return largest;
  }

  /**
   * Returns a weighted sum of matrices of one shape.
   *
   * @param matrices the matrices, one or more
   * @param weights one per matrix (1)
   */
  static ComplexMatrix sum(List<ComplexMatrix> matrices, double[] weights) {
    ComplexMatrix first = matrices.get(0);
    double[] newRe = new double[first.re.length];
    double[] newIm = new double[first.im.length];
    for (int k = 0; k < weights.length; k++) {
      ComplexMatrix matrix = matrices.get(k);
      for (int i = 0; i < newRe.length; i++) {
        newRe[i] += weights[k] * matrix.re[i];
        newIm[i] += weights[k] * matrix.im[i];
      }
    }
    return new ComplexMatrix(first.rows, first.columns, newRe, newIm);
  }

  /** Returns the mean of this square matrix and its transpose, which a reciprocal quantity is. */
  ComplexMatrix symmetric() {
    double[] newRe = new double[re.length];
    double[] newIm = new double[im.length];
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        newRe[i * columns + j] = 0.5 * (re(i, j) + re(j, i));
        newIm[i * columns + j] = 0.5 * (im(i, j) + im(j, i));
      }
    }
    return new ComplexMatrix(rows, columns, newRe, newIm);
  }

  /**
   * Returns this matrix plus a factor times the difference to a coarser result: one step of
   * extrapolation to the limit.
   *
   * @param coarse the same quantity on a coarser grid
   * @param factor weight of the difference (1)
   */
  ComplexMatrix extrapolatedFrom(ComplexMatrix coarse, double factor) {
    double[] newRe = new double[re.length];
    double[] newIm = new double[im.length];
    for (int i = 0; i < re.length; i++) {
      newRe[i] = re[i] + factor * (re[i] - coarse.re[i]);
      newIm[i] = im[i] + factor * (im[i] - coarse.im[i]);
    }
    return new ComplexMatrix(rows, columns, newRe, newIm);
  }

  /**
   * Returns the largest modulus of the difference to another matrix of the same shape, as a share
   * of the largest modulus in this one (1); 0 for an empty matrix.
   */
  double largestDifference(ComplexMatrix other) {
    return largestDifference(other, 0);
  }

  /**
   * Returns the largest modulus of the difference to another matrix of the same shape, as a share
   * of the largest modulus in this one or of a given scale, whichever is larger (1); 0 for an empty
   * matrix.
   */
  double largestDifference(ComplexMatrix other, double leastScale) {
    double largest = 0;
    for (int i = 0; i < re.length; i++) {
      largest = Math.max(largest, Math.hypot(re[i] - other.re[i], im[i] - other.im[i]));
    }
    double scale = Math.max(leastScale, largestModulus());
    return scale > 0 ? largest / scale : 0;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ComplexMatrix matrix
        && rows == matrix.rows
        && columns == matrix.columns
        && Arrays.equals(re, matrix.re)
        && Arrays.equals(im, matrix.im);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * rows + columns) + 17 * Arrays.hashCode(re) + Arrays.hashCode(im);
  }

  @Override
  public String toString() {
    return rows + " x " + columns + " re " + Arrays.toString(re) + " im " + Arrays.toString(im);
  }
}
