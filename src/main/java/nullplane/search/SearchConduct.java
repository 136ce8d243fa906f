package nullplane.search;

/**
 * How a search runs.
 *
 * @param seed seed of all chance
 * @param evaluations woofers to score before it stops, 1000 or more
 * @param threads scoring tasks to run at once; has no influence on the result
 */
public record SearchConduct(long seed, long evaluations, int threads) {
  /** Evaluations of a search that is not told otherwise. */
  public static final long USUAL_EVALUATIONS = 60_000;

  /** Checks the counts. */
  public SearchConduct {
    if (evaluations < 1000) {
      throw new IllegalArgumentException(
          "a search of " + evaluations + " evaluations; allowed: 1000 or more");
    }
    if (threads < 1) {
      throw new IllegalArgumentException(threads + " threads; allowed: 1 or more");
    }
  }
}
