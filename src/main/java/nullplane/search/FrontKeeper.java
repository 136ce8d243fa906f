package nullplane.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.SystemScorer;

/** Puts the compromises that a search found and the ranked woofers into one front. */
final class FrontKeeper {
  private final SystemScorer scorer;
  private final SearchPlan plan;
  private final SystemScorer.Workspace space;

  FrontKeeper(SystemScorer scorer, SearchPlan plan) {
    this.scorer = scorer;
    this.plan = plan;
    this.space = scorer.newWorkspace();
  }

  /**
   * Returns the members that no other one beats in every objective.
   *
   * @param found what the search kept
   * @param ranked the ranked woofers, best first
   */
  List<FrontMember> front(List<Candidate> found, List<ScoredGenes> ranked) {
    List<FrontMember> all = new ArrayList<>();
    for (ScoredGenes entry : ranked) {
      Woofer woofer = plan.woofer(entry.genes());
      Winding winding = plan.winding(entry.genes());
      FamilyScore score = scorer.score(woofer, winding, space);
      all.add(member(woofer, winding, score, OptionalInt.of(all.size() + 1)));
    }
    for (Candidate candidate : found) {
      if (candidate.merit().isFeasible()) {
        double[] genes = candidate.genes().toArray();
        Woofer woofer = plan.woofer(genes);
        Winding winding = plan.winding(genes);
        FamilyScore score = scorer.score(woofer, winding, genes, SearchPlan.GENES, space);
        all.add(member(woofer, winding, score, OptionalInt.empty()));
      }
    }
    return all.stream()
        .filter(
            one ->
                one.rank().isPresent()
                    || all.stream().noneMatch(other -> beats(other.score(), one.score())))
        .sorted(Comparator.comparingDouble(member -> member.score().shapeDb()))
        .toList();
  }

  private FrontMember member(Woofer woofer, Winding winding, FamilyScore score, OptionalInt rank) {
    return new FrontMember(
        woofer.withName(rank.isPresent() ? "Woofer " + rank.getAsInt() : "compromise"),
        winding,
        scorer.wirings(space),
        scorer.networks(space),
        score,
        rank);
  }

  /** Whether a score is nowhere worse and somewhere better in the objectives besides the cost. */
  private static boolean beats(FamilyScore a, FamilyScore b) {
    boolean nowhereWorse =
        a.shapeDb() <= b.shapeDb()
            && a.outputMarginDb() >= b.outputMarginDb()
            && a.correctionDb() <= b.correctionDb()
            && a.materialDb() <= b.materialDb();
    boolean somewhereBetter =
        a.shapeDb() < b.shapeDb()
            || a.outputMarginDb() > b.outputMarginDb()
            || a.correctionDb() < b.correctionDb()
            || a.materialDb() < b.materialDb();
    return nowhereWorse && somewhereBetter;
  }
}
