package nullplane.judging;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.ScorersBySize;

/**
 * Two woofers side by side on one spec.
 *
 * @param first the first, with the best network of each stack
 * @param second the second
 * @param difference which parameter makes which part of the difference
 * @param firstDecays how a cone of the first comes to rest in each stack, its network in place
 * @param secondDecays the same for the second
 */
public record Comparison(
    Assessment first,
    Assessment second,
    WooferDifference difference,
    List<ConeDecay> firstDecays,
    List<ConeDecay> secondDecays) {
  /** Copies the lists. */
  public Comparison {
    firstDecays = List.copyOf(firstDecays);
    secondDecays = List.copyOf(secondDecays);
  }

  /**
   * Compares two woofers.
   *
   * @param first the first
   * @param second the second
   * @param scorers scorers for both sizes
   */
  public static Comparison of(Woofer first, Woofer second, ScorersBySize scorers) {
    Assessment one = scorers.of(first).assess(first);
    Assessment other = scorers.of(second).assess(second);
    return new Comparison(
        one,
        other,
        WooferDifference.between(first, second, scorers),
        decaysOf(one),
        decaysOf(other));
  }

  private static List<ConeDecay> decaysOf(Assessment woofer) {
    return woofer.stacks().stream()
        .map(
            stack ->
                new ConeDecay(stack.figures().panelResonanceHz(), stack.figures().panelTotalQ()))
        .toList();
  }
}
