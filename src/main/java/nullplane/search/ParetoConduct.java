package nullplane.search;

import java.time.Duration;
import java.util.Optional;

/**
 * How a search for several objectives runs. Everything but the budgets shapes what is evolved.
 *
 * @param seed seed of all chance
 * @param evaluations candidates to evaluate before it stops, as many as a population or more
 * @param time time to take before it stops, counted over all resumed parts; empty for no limit.
 *     Where it stops then depends on the machine
 * @param population candidates that live at once, an even number from 4 up
 * @param archive candidates that the front is given with at most, 10 or more
 * @param stall when to start afresh and when to stop; empty for never
 */
public record ParetoConduct(
    long seed,
    long evaluations,
    Optional<Duration> time,
    int population,
    int archive,
    Optional<StallRule> stall) {
  /** The population of a search that is not told otherwise. */
  public static final int USUAL_POPULATION = 100;

  /** The size of the front of a search that is not told otherwise. */
  public static final int USUAL_ARCHIVE = 400;

  /** The largest population and archive. */
  public static final int MOST = 10_000;

  /** Checks the ranges. */
  public ParetoConduct {
    if (population < 4 || population > MOST || population % 2 != 0) {
      throw new IllegalArgumentException(
          "a population of " + population + "; allowed: even numbers from 4 to " + MOST);
    }
    if (evaluations < population) {
      throw new IllegalArgumentException(
          evaluations + " evaluations; allowed: the population (" + population + ") or more");
    }
    if (archive < 10 || archive > MOST) {
      throw new IllegalArgumentException(
          "an archive of " + archive + "; allowed: from 10 to " + MOST);
    }
    if (time.isPresent() && (time.get().isNegative() || time.get().isZero())) {
      throw new IllegalArgumentException("a time of " + time.get() + "; allowed: above 0");
    }
  }

  /**
   * Returns a conduct with the usual sizes, no limit in time, that stops by its budget alone.
   *
   * @param seed seed of all chance
   * @param evaluations candidates to evaluate
   */
  public static ParetoConduct of(long seed, long evaluations) {
    return new ParetoConduct(
        seed, evaluations, Optional.empty(), USUAL_POPULATION, USUAL_ARCHIVE, Optional.empty());
  }

  /** Returns a copy with a limit in time. */
  public ParetoConduct withTime(Duration limit) {
    return new ParetoConduct(seed, evaluations, Optional.of(limit), population, archive, stall);
  }

  /** Returns a copy with other sizes of population and archive. */
  public ParetoConduct withSizes(int newPopulation, int newArchive) {
    return new ParetoConduct(seed, evaluations, time, newPopulation, newArchive, stall);
  }

  /** Returns a copy that starts afresh and stops by a rule. */
  public ParetoConduct withStall(StallRule rule) {
    return new ParetoConduct(seed, evaluations, time, population, archive, Optional.of(rule));
  }

  /** Returns what shapes the evolution, in words; budgets do not. */
  String shape() {
    return "seed "
        + seed
        + ", population "
        + population
        + ", archive "
        + archive
        + stall
            .map(
                rule ->
                    ", window "
                        + rule.window()
                        + ", least gain "
                        + rule.gain()
                        + ", restarts "
                        + rule.restarts())
            .orElse(", no stop rule");
  }
}
