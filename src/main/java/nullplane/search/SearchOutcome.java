package nullplane.search;

import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.units.Curve;

/**
 * What a search found.
 *
 * @param ranked distinct woofers, best first
 * @param evaluations woofers scored in all
 * @param generations generations evolved
 * @param bestCostByGeneration cost of the best feasible woofer after each generation (dB); infinite
 *     where there was none yet
 * @param stopReason why the search stopped, in words
 * @param seed the seed it ran with
 */
public record SearchOutcome(
    List<Assessment> ranked,
    long evaluations,
    int generations,
    Curve bestCostByGeneration,
    String stopReason,
    long seed) {
  /** Copies the list. */
  public SearchOutcome {
    ranked = List.copyOf(ranked);
  }
}
