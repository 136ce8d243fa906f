package nullplane.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.FixedStacks;
import nullplane.scoring.SystemScorer;
import nullplane.tolerance.CorridorYield;

/** Puts the compromises that a search found and the ranked woofers into one front. */
final class FrontKeeper {
  /** Units that each member's yield is counted over: its standard error is below 2.5 %. */
  private static final int UNITS = 400;

  private final SystemScorer scorer;
  private final SearchPlan plan;
  private final CandidateScorer candidates;
  private final long seed;
  private final SystemScorer.Workspace space;

  FrontKeeper(SystemScorer scorer, SearchPlan plan, CandidateScorer candidates, long seed) {
    this.scorer = scorer;
    this.plan = plan;
    this.candidates = candidates;
    this.seed = seed;
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
    return withYields(
        all.stream()
            .filter(
                one ->
                    one.rank().isPresent()
                        || all.stream().noneMatch(other -> beats(other.score(), one.score())))
            .sorted(Comparator.comparingDouble(member -> member.score().shapeDb()))
            .toList());
  }

  private List<FrontMember> withYields(List<FrontMember> front) {
    double[] shares = new double[front.size()];
    candidates.spread(
        shares.length,
        (i, thread) -> {
          FrontMember member = front.get(i);
          shares[i] =
              CorridorYield.of(
                  FixedStacks.of(scorer, member.woofer(), member.wirings(), member.networks()),
                  member.woofer(),
                  UNITS,
                  seed);
        });
    List<FrontMember> known = new ArrayList<>();
    for (FrontMember member : front) {
      known.add(member.withCorridorYield(shares[known.size()]));
    }
    return known;
  }

  private FrontMember member(Woofer woofer, Winding winding, FamilyScore score, OptionalInt rank) {
    return new FrontMember(
        woofer.withName(rank.isPresent() ? "Woofer " + rank.getAsInt() : "compromise"),
        winding,
        scorer.wirings(space),
        scorer.networks(space),
        score,
        0,
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
