package nullplane.judging;

import java.util.function.IntFunction;

/**
 * Splits the difference between two states into the shares of what makes it, so that the shares add
 * up to the whole difference whatever the order in which the changes are made.
 *
 * <p>Source: L. S. Shapley, A value for n-person games, in Contributions to the Theory of Games II
 * (Princeton, 1953) 307: the share of i is the sum over sets S without i of |S|! (n - |S| - 1)!/n!
 * times v(S with i) - v(S). Exact: all 2^n states are evaluated.
 */
final class ShapleyValues {
  /** More changes than this make too many states. */
  static final int MOST_CHANGES = 16;

  private ShapleyValues() {}

  /**
   * Returns the shares.
   *
   * @param changes number of changes n, 1 to 16
   * @param value the state's figures when the changes whose bits are set have been made; every
   *     state has equally many figures
   * @return shares by change and figure, n x figures (unit of the figures)
   * @throws IllegalArgumentException if the number of changes is out of range
   */
  static double[][] of(int changes, IntFunction<double[]> value) {
    if (changes < 1 || changes > MOST_CHANGES) {
      throw new IllegalArgumentException(changes + " changes; allowed: 1 to " + MOST_CHANGES);
    }
    double[][] states = new double[1 << changes][];
    for (int state = 0; state < states.length; state++) {
      states[state] = value.apply(state);
    }
    double[] weights = weightsBySize(changes);
    int figures = states[0].length;
    double[][] shares = new double[changes][figures];
    for (int i = 0; i < changes; i++) {
      int bit = 1 << i;
      for (int state = 0; state < states.length; state++) {
        if ((state & bit) == 0) {
          double weight = weights[Integer.bitCount(state)];
          double[] before = states[state];
          double[] after = states[state | bit];
          for (int f = 0; f < figures; f++) {
            shares[i][f] += weight * (after[f] - before[f]);
          }
        }
      }
    }
    return shares;
  }

  /** |S|! (n - |S| - 1)!/n! for |S| from 0 to n - 1: 1/(n binomial(n - 1, |S|)). */
  private static double[] weightsBySize(int changes) {
    double[] weights = new double[changes];
    double binomial = 1;
    for (int size = 0; size < changes; size++) {
      weights[size] = 1 / (changes * binomial);
      binomial = binomial * (changes - 1 - size) / (size + 1);
    }
    return weights;
  }
}
