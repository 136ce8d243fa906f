package nullplane.sample;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.FixedStacks;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import nullplane.units.Curve;

/** The stacks of a spec, with the parts of a brief or with those that suit a woofer best. */
public final class BriefStacks {
  private final SystemScorer scorer;
  private final SampleBrief brief;
  private final FixedStacks fixed;
  private final Assessment asked;

  /**
   * @param scorer scores woofers of the brief's piston size
   * @param brief the brief; its stacks must be the spec's
   * @throws IllegalArgumentException if the brief has other stacks than the spec, or a wiring that
   *     the spec does not allow
   */
  public BriefStacks(SystemScorer scorer, SampleBrief brief) {
    this.scorer = scorer;
    this.brief = brief;
    this.asked = scorer.assess(brief.woofer());
    List<SampleBrief.StackParts> stacks = brief.stacks();
    if (asked.stacks().size() != stacks.size()) {
      throw new IllegalArgumentException(
          asked.stacks().size() + " stacks in the spec, " + stacks.size() + " in the brief");
    }
    for (int s = 0; s < stacks.size(); s++) {
      String own = asked.stacks().get(s).brief().name();
      if (!own.equals(stacks.get(s).name())) {
        throw new IllegalArgumentException(
            "stack " + stacks.get(s).name() + " of the brief is " + own + " in the spec");
      }
    }
    this.fixed =
        FixedStacks.of(
            scorer,
            brief.woofer(),
            stacks.stream().map(SampleBrief.StackParts::wiring).toList(),
            stacks.stream().map(SampleBrief.StackParts::network).toList());
  }

  /** Returns the scorer. */
  public SystemScorer scorer() {
    return scorer;
  }

  /** Returns what the brief's woofer does with the best available parts. */
  public Assessment asked() {
    return asked;
  }

  /** Returns the brief. */
  public SampleBrief brief() {
    return brief;
  }

  /**
   * Returns what a woofer does in every stack with the brief's parts.
   *
   * @param woofer the woofer; its area should be the brief's
   */
  public List<PartsFigures> withBriefParts(Woofer woofer) {
    List<Wiring> wirings = brief.stacks().stream().map(SampleBrief.StackParts::wiring).toList();
    List<Curve> bare = scorer.bareLevels(woofer, wirings, scorer.newWorkspace());
    FixedStacks.Workspace space = fixed.newWorkspace();
    Curve weights = scorer.axis().bandWeights();
    double corridorDb = scorer.spec().target().corridorDb();
    List<PartsFigures> all = new ArrayList<>();
    for (int s = 0; s < fixed.count(); s++) {
      double marginDb = fixed.respondWithOutputMargin(s, woofer, space);
      double squares = 0;
      double mean = 0;
      double excess = 0;
      double leastBare = Double.POSITIVE_INFINITY;
      double mostBare = Double.NEGATIVE_INFINITY;
      for (int b = 0; b < fixed.bandHz().size(); b++) {
        double deviation = space.levelDb(b) - fixed.wantedDb(s, b);
        squares += weights.at(b) * deviation * deviation;
        mean += weights.at(b) * deviation;
        excess = Math.max(excess, Math.abs(deviation) - corridorDb);
        if (fixed.isWorkingBand(s, b)) {
          double level = bare.get(s).at(scorer.axis().firstInBand() + b);
          leastBare = Math.min(leastBare, level);
          mostBare = Math.max(mostBare, level);
        }
      }
      SampleBrief.StackParts parts = brief.stacks().get(s);
      all.add(
          new PartsFigures(
              parts.name(),
              parts.wiring(),
              parts.network(),
              Math.sqrt(squares),
              mean,
              excess,
              marginDb,
              mostBare - leastBare,
              space.leastLoadOhm()));
    }
    return List.copyOf(all);
  }

  /**
   * Returns the figures of an assessment, which has the best available parts.
   *
   * @param assessment an assessment of the scorer
   */
  public static List<PartsFigures> withBestParts(Assessment assessment) {
    List<PartsFigures> all = new ArrayList<>();
    for (StackAssessment stack : assessment.stacks()) {
      StackFigures figures = stack.figures();
      all.add(
          new PartsFigures(
              stack.brief().name(),
              stack.wiring(),
              stack.network(),
              figures.rmsDeviationDb(),
              figures.meanDeviationDb(),
              figures.worstExcessDb(),
              figures.outputMarginDb(),
              figures.correctionDb(),
              figures.leastLoadOhm()));
    }
    return List.copyOf(all);
  }
}
