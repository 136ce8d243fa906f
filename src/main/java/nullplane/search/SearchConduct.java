package nullplane.search;

import java.time.Duration;
import java.util.Optional;

/**
 * How a search runs.
 *
 * @param seed seed of all chance
 * @param evaluations families to score before it stops, 1000 or more
 * @param time time to take before it stops; empty for no limit. Where it stops then depends on the
 *     machine
 * @param threads scoring tasks to run at once; has no influence on the result
 */
public record SearchConduct(long seed, long evaluations, Optional<Duration> time, int threads) {
  /** Evaluations of a search that is not told otherwise. */
  public static final long USUAL_EVALUATIONS = 60_000;

  /** A search without a limit in time. */
  public SearchConduct(long seed, long evaluations, int threads) {
    this(seed, evaluations, Optional.empty(), threads);
  }

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
