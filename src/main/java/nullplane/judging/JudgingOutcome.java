package nullplane.judging;

import java.util.List;
import java.util.Optional;
import nullplane.scoring.Assessment;

/**
 * Given woofers in the order of their worth on a spec.
 *
 * @param ranked the woofers, best first
 * @param misfits woofers that cannot be put on the panels, each with the reason
 * @param best the best buildable woofer that a search found, to measure the others by
 */
public record JudgingOutcome(
    List<Judgement> ranked, List<Misfit> misfits, Optional<Assessment> best) {
  /** Copies the lists. */
  public JudgingOutcome {
    ranked = List.copyOf(ranked);
    misfits = List.copyOf(misfits);
  }

  /**
   * A woofer that does not fit.
   *
   * @param name its name
   * @param reason why, in one sentence
   */
  public record Misfit(String name, String reason) {}
}
