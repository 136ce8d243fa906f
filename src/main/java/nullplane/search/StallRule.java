package nullplane.search;

/**
 * When a search gives a population up, and when it gives up.
 *
 * @param window generations without progress after which a population is given up, 10 or more
 * @param gain the least relative gain of hypervolume (or the least relative loss of violation,
 *     while nothing is feasible) that counts as progress (1), 0 or more and below 1
 * @param restarts the search ends when this many fresh populations in a row brought no progress; 0
 *     ends it with the first
 */
public record StallRule(int window, double gain, int restarts) {
  /** The rule of a search that is not told otherwise. */
  public static final StallRule USUAL = new StallRule(100, 1e-4, 3);

  /** Checks the ranges. */
  public StallRule {
    if (window < 10) {
      throw new IllegalArgumentException(
          "a window of " + window + " generations; allowed: 10 or more");
    }
    if (!(gain >= 0) || !(gain < 1)) {
      throw new IllegalArgumentException("least gain " + gain + "; allowed: 0 or more, below 1");
    }
    if (restarts < 0) {
      throw new IllegalArgumentException(restarts + " restarts; allowed: 0 or more");
    }
  }

  /** How often progress is measured (generations): ten times per window. */
  int stride() {
    return window / 10;
  }
}
