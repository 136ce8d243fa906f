package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import nullplane.scoring.FamilyScore;
import nullplane.units.Curve;

/**
 * Woofer and networks together as a problem of several objectives: shape, output, correction,
 * material, and the cost that the priorities make of all. Genes: those of the {@link SearchPlan},
 * then those of the networks.
 */
final class FamilyProblem implements ParetoProblem {
  /**
   * Worst values still worth having, in decibels: 6 of shape, 12 that lack at the loudest, 3 of
   * weighted correction, 3 of weighted material, 12 of cost. By judgement.
   */
  private static final Curve REFERENCE = Curve.of(6, 12, 3, 3, 12);

  private final CandidateScorer candidates;
  private final SearchPlan plan;
  private final List<Integer> networkChoices;
  private final String digest;

  /**
   * @param candidates scores families
   * @param plan what the woofer's genes mean
   * @param networkChoices how many values each gene of the networks has
   * @param digest differs whenever the same genes may get other scores
   */
  FamilyProblem(
      CandidateScorer candidates, SearchPlan plan, List<Integer> networkChoices, String digest) {
    this.candidates = candidates;
    this.plan = plan;
    this.networkChoices = List.copyOf(networkChoices);
    this.digest = digest;
  }

  @Override
  public int genes() {
    return SearchPlan.GENES + networkChoices.size();
  }

  @Override
  public int choices(int gene) {
    return gene < SearchPlan.GENES
        ? plan.choices(gene)
        : networkChoices.get(gene - SearchPlan.GENES);
  }

  @Override
  public int objectives() {
    return REFERENCE.size();
  }

  @Override
  public Curve reference() {
    return REFERENCE;
  }

  @Override
  public String digest() {
    return digest;
  }

  @Override
  public List<Merit> evaluate(List<double[]> batch) {
    List<Merit> merits = new ArrayList<>();
    for (FamilyScore score : candidates.score(batch)) {
      merits.add(
          new Merit(
              score.grade().violation(),
              Curve.of(
                  score.shapeDb(),
                  -score.outputMarginDb(),
                  score.correctionDb(),
                  score.materialDb(),
                  score.grade().costDb())));
    }
    return merits;
  }
}
