package nullplane.acoustics;

import java.util.Arrays;

/**
 * A real matrix times many vectors at once, each row of the vectors an array of its own.
 *
 * <p>Four rows are combined at a time, with one index for all arrays: a compiler turns that loop
 * into vector instructions, so that for some hundred rows a plain matrix beats a fast transform.
 * Immutable.
 */
final class RowCombination {
  private final int outputs;
  private final int inputs;
  private final double[] weights;

  /**
   * @param outputs rows that come out
   * @param inputs rows that go in
   * @param weights the matrix, row by row
   */
  private RowCombination(int outputs, int inputs, double[] weights) {
    this.outputs = outputs;
    this.inputs = inputs;
    this.weights = weights;
  }

  /** An entry of a matrix. */
  interface Entry {
    double at(int output, int input);
  }

  /**
   * Makes a matrix.
   *
   * @param outputs rows that come out
   * @param inputs rows that go in
   * @param entry its entries
   */
  static RowCombination of(int outputs, int inputs, Entry entry) {
    double[] weights = new double[outputs * inputs];
    for (int i = 0; i < outputs; i++) {
      for (int j = 0; j < inputs; j++) {
        weights[i * inputs + j] = entry.at(i, j);
      }
    }
    return new RowCombination(outputs, inputs, weights);
  }

  /** Returns the transposed matrix. */
  RowCombination transposed() {
    return of(inputs, outputs, (i, j) -> weights[j * inputs + i]);
  }

  /** Returns the matrix of the squares of all entries. */
  RowCombination squared() {
    return of(outputs, inputs, (i, j) -> weights[i * inputs + j] * weights[i * inputs + j]);
  }

  /** Returns an entry. */
  double weight(int output, int input) {
    return weights[output * inputs + input];
  }

  /** Sets the output rows to the combinations of the input rows. */
  void apply(double[][] in, double[][] out, int lanes) {
    for (int i = 0; i < outputs; i++) {
      Arrays.fill(out[i], 0, lanes, 0);
    }
    add(in, out, lanes);
  }

  /** Adds the combinations of the input rows to the output rows. */
  void add(double[][] in, double[][] out, int lanes) {
    for (int i = 0; i < outputs; i++) {
      double[] row = out[i];
      int w = i * inputs;
      for (int j = 0; j + 4 <= inputs; j += 4) {
        addFour(
            in[j],
            in[j + 1],
            in[j + 2],
            in[j + 3],
            row,
            lanes,
            weights[w + j],
            weights[w + j + 1],
            weights[w + j + 2],
            weights[w + j + 3]);
      }
      int rest = inputs % 4;
      if (rest > 0) {
        int j = inputs - rest;
        // a row that is not there counts nothing; the first stands in for it
        addFour(
            in[j],
            in[rest > 1 ? j + 1 : j],
            in[rest > 2 ? j + 2 : j],
            in[j],
            row,
            lanes,
            weights[w + j],
            rest > 1 ? weights[w + j + 1] : 0,
            rest > 2 ? weights[w + j + 2] : 0,
            0);
      }
    }
  }

  private static void addFour(
      double[] a,
      double[] b,
      double[] c,
      double[] d,
      double[] sum,
      int lanes,
      double ofA,
      double ofB,
      double ofC,
      double ofD) {
    for (int i = 0; i < lanes; i++) {
      sum[i] += ofA * a[i] + ofB * b[i] + ofC * c[i] + ofD * d[i];
    }
  }
}
