package nullplane.tolerance;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Curve;
import org.apache.commons.math3.random.SobolSequenceGenerator;

/**
 * Which share of an output's variance each input brings, alone and in all.
 *
 * <p>Symbols: A and B are N points of the unit cube of k inputs, taken from the two halves of a
 * Sobol sequence of 2k dimensions; AB_i is A with column i from B; V the variance of f over A and B
 * together. First-order index S_i = (1/N) sum f(B) (f(AB_i) - f(A))/V, the part of the variance
 * that goes if input i is fixed; total index T_i = (1/2N) sum (f(A) - f(AB_i))^2/V, the part that
 * stays if all others are fixed. Outputs are centred first, which lessens the error of S_i.
 *
 * <p>Source: A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259, table 2 (b) and (f); the
 * second is of M. J. W. Jansen, Comput. Phys. Commun. 117 (1999) 35. Sobol sequence: S. Joe, F. Y.
 * Kuo, SIAM J. Sci. Comput. 30 (2008) 2635; its points are moved by half a cell so that none lies
 * on the rim of the cube. Inputs must be independent.
 *
 * @param mean mean of the output (its unit)
 * @param variance variance V (its unit squared)
 * @param firstOrder S_i by input (1); may fall a little below 0 by the error of the estimate
 * @param total T_i by input (1)
 */
record SobolIndices(double mean, double variance, Curve firstOrder, Curve total) {

  /** What is analysed. */
  interface Model {
    /**
     * Computes outputs.
     *
     * @param point input, a share of each distribution (1), inside 0 to 1
     * @param outputs receives the outputs
     */
    void at(double[] point, double[] outputs);
  }

  /** Makes a model for one thread, with work space of its own. */
  interface ModelSource {
    /** Returns a model. */
    Model model();
  }

  /**
   * Estimates the indices of a model.
   *
   * @param source makes models
   * @param inputs k
   * @param outputs number of outputs
   * @param samples N, a power of two
   * @param batches how to run
   * @return one entry per output
   */
  static List<SobolIndices> of(
      ModelSource source, int inputs, int outputs, int samples, Batches batches) {
    double[][] points = points(2 * inputs, samples);
    // by output, then A, B, AB_1 .. AB_k, then sample
    double[][][] values = new double[outputs][inputs + 2][samples];
    batches.over(
        samples,
        (from, to) -> {
          Model model = source.model();
          double[] point = new double[inputs];
          double[] result = new double[outputs];
          for (int n = from; n < to; n++) {
            for (int m = 0; m < inputs + 2; m++) {
              for (int i = 0; i < inputs; i++) {
                boolean fromB = m == 1 || m == i + 2;
                point[i] = points[n][fromB ? inputs + i : i];
              }
              model.at(point, result);
              for (int o = 0; o < outputs; o++) {
                values[o][m][n] = result[o];
              }
            }
          }
        });
    List<SobolIndices> all = new ArrayList<>();
    for (double[][] output : values) {
      all.add(estimated(output));
    }
    return List.copyOf(all);
  }

  private static double[][] points(int dimensions, int samples) {
    SobolSequenceGenerator sequence = new SobolSequenceGenerator(dimensions);
    double[][] points = new double[samples][];
    for (int n = 0; n < samples; n++) {
      points[n] = sequence.nextVector();
      for (int d = 0; d < dimensions; d++) {
        points[n][d] += 0.5 / samples;
      }
    }
    return points;
  }

  private static SobolIndices estimated(double[][] values) {
    double[] a = values[0];
    double[] b = values[1];
    int samples = a.length;
    double sum = 0;
    for (int n = 0; n < samples; n++) {
      sum += a[n] + b[n];
    }
    double mean = sum / (2 * samples);
    double squares = 0;
    for (int n = 0; n < samples; n++) {
      squares += (a[n] - mean) * (a[n] - mean) + (b[n] - mean) * (b[n] - mean);
    }
    double variance = squares / (2 * samples);
    double[] first = new double[values.length - 2];
    double[] total = new double[values.length - 2];
    for (int i = 0; i < first.length; i++) {
      double[] mixed = values[i + 2];
      double alone = 0;
      double inAll = 0;
      for (int n = 0; n < samples; n++) {
        alone += (b[n] - mean) * (mixed[n] - a[n]); // Saltelli 2010 table 2 (b)
        inAll += (a[n] - mixed[n]) * (a[n] - mixed[n]); // table 2 (f)
      }
      first[i] = variance == 0 ? 0 : alone / samples / variance;
      total[i] = variance == 0 ? 0 : inAll / (2 * samples) / variance;
    }
    return new SobolIndices(mean, variance, Curve.of(first), Curve.of(total));
  }
}
