package nullplane.search;

import java.util.List;

/**
 * What a search for several objectives found.
 *
 * @param front candidates none of which dominates another, in ascending order of their objectives;
 *     when nothing feasible was found, the least violating one alone
 * @param evaluations candidates evaluated in all
 * @param generations generations evolved
 * @param restarts fresh populations, without the first
 * @param history how it went, first generation first, evenly thinned; ends with the last generation
 * @param stopReason why the search stopped, in words
 * @param seed the seed it ran with
 */
public record ParetoOutcome(
    List<Candidate> front,
    long evaluations,
    long generations,
    int restarts,
    List<ConvergencePoint> history,
    String stopReason,
    long seed) {
  /** Copies the lists. */
  public ParetoOutcome {
    front = List.copyOf(front);
    history = List.copyOf(history);
  }
}
