package nullplane.search;

import java.util.List;
import nullplane.scoring.Assessment;

/**
 * What a search found.
 *
 * @param ranked distinct woofers, best first
 * @param front woofers with their networks none of which is better than another in every objective,
 *     in ascending order of shape; the ranked ones among them where they belong
 * @param evaluations families scored in all
 * @param generations generations evolved
 * @param restarts fresh populations, without the first
 * @param history how it went, first generation first; the objectives are those of a front member,
 *     in its order, then the cost
 * @param stopReason why the search stopped, in words
 * @param seed the seed it ran with
 */
public record SearchOutcome(
    List<Assessment> ranked,
    List<FrontMember> front,
    long evaluations,
    long generations,
    int restarts,
    List<ConvergencePoint> history,
    String stopReason,
    long seed) {
  /** Copies the lists. */
  public SearchOutcome {
    ranked = List.copyOf(ranked);
    front = List.copyOf(front);
    history = List.copyOf(history);
  }
}
