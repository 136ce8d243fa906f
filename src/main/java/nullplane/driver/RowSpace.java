package nullplane.driver;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The space that rows of numbers span, by orthogonal steps: tells whether a row lies in it, how it
 * is made of the others, and solves for the smallest vector with given products.
 *
 * <p>Source: modified Gram-Schmidt process with one repetition, A. Bjorck, Numerical Methods for
 * Least Squares Problems (1996), ch. 2.4.
 */
final class RowSpace {
  private final int columns;
  private final double share;
  private final List<double[]> directions = new ArrayList<>();
  private final List<double[]> triangle = new ArrayList<>();

  /**
   * @param columns length of the rows
   * @param share what may be left of a row, as a share of its length, when it counts as lying in
   *     the space (1)
   */
  RowSpace(int columns, double share) {
    this.columns = columns;
    this.share = share;
  }

  /** Returns the number of independent rows taken. */
  int rank() {
    return directions.size();
  }

  /** Takes a row into the space; returns false, and takes nothing, if it lies there already. */
  boolean add(double[] row) {
    double[] rest = row.clone();
    double[] shares = takeOut(rest);
    double length = length(rest);
    if (length <= share * length(row)) {
      return false;
    }
    double[] line = new double[shares.length + 1];
    System.arraycopy(shares, 0, line, 0, shares.length);
    line[shares.length] = length;
    for (int c = 0; c < columns; c++) {
      rest[c] /= length;
    }
    directions.add(rest);
    triangle.add(line);
    return true;
  }

  /** Returns whether a row lies in the space. */
  boolean contains(double[] row) {
    double[] rest = row.clone();
    takeOut(rest);
    return length(rest) <= share * length(row);
  }

  /** Returns how much of each row taken makes up a row, if it lies in the space (1). */
  Optional<double[]> parts(double[] row) {
    double[] rest = row.clone();
    double[] parts = takeOut(rest);
    if (length(rest) > share * length(row)) {
      return Optional.empty();
    }
    for (int i = parts.length - 1; i >= 0; i--) {
      double sum = parts[i];
      for (int k = i + 1; k < parts.length; k++) {
        sum -= triangle.get(k)[i] * parts[k];
      }
      parts[i] = sum / triangle.get(i)[i];
    }
    return Optional.of(parts);
  }

  /** Returns the shortest vector whose products with the rows taken are the given ones. */
  double[] shortest(double[] products) {
    double[] shares = new double[rank()];
    double[] vector = new double[columns];
    for (int i = 0; i < shares.length; i++) {
      double[] line = triangle.get(i);
      double sum = products[i];
      for (int k = 0; k < i; k++) {
        sum -= line[k] * shares[k];
      }
      shares[i] = sum / line[i];
      double[] direction = directions.get(i);
      for (int c = 0; c < columns; c++) {
        vector[c] += shares[i] * direction[c];
      }
    }
    return vector;
  }

  /** Takes the space's part out of a row; returns the part's shares of the directions. */
  private double[] takeOut(double[] row) {
    double[] shares = new double[directions.size()];
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < shares.length; i++) {
        double[] direction = directions.get(i);
        double product = 0;
        for (int c = 0; c < columns; c++) {
          product += row[c] * direction[c];
        }
        for (int c = 0; c < columns; c++) {
          row[c] -= product * direction[c];
        }
        shares[i] += product;
      }
    }
    return shares;
  }

  private static double length(double[] row) {
    double sum = 0;
    for (double value : row) {
      sum += value * value;
    }
    return Math.sqrt(sum);
  }
}
