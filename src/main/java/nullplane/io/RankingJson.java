package nullplane.io;

import java.io.IOException;
import java.util.List;
import nullplane.acoustics.Piston;
import nullplane.driver.CoilBudget;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.network.SeriesCoil;
import nullplane.scoring.Assessment;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.GradePart;
import nullplane.scoring.Limit;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBalance;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.scoring.StackFigures;
import nullplane.search.ConvergencePoint;
import nullplane.search.FrontMember;
import nullplane.search.SearchOutcome;
import nullplane.tolerance.ToleranceStudy;

/**
 * A ranking as JSON: everything that is known of every ranked woofer, in SI at full precision, the
 * unit in each key's name. It holds nothing that changes from run to run (times, threads, folders),
 * so the same spec, seed and version give the same bytes. Source: RFC 8259.
 */
public final class RankingJson {
  private final JsonText json;

  RankingJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of the document, tolerance studies among them.
   *
   * @param spec the spec that was searched
   * @param outcome what the search found
   * @param tolerances studies of the ranked woofers, best first; may end early
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(
      ReadSpec spec, SearchOutcome outcome, List<ToleranceStudy> tolerances, String version) {
    return of(spec, outcome, tolerances, List.of(), version);
  }

  /**
   * Returns the bytes of the document, with tolerance studies and what sharing parts costs.
   *
   * @param spec the spec that was searched
   * @param outcome what the search found
   * @param tolerances studies of the ranked woofers, best first; may end early
   * @param families parts of the ranked woofers, best first; may end early
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(
      ReadSpec spec,
      SearchOutcome outcome,
      List<ToleranceStudy> tolerances,
      List<FamilyParts> families,
      String version) {
    return JsonText.of(
        json -> new RankingJson(json).document(spec, outcome, tolerances, families, version));
  }

  /**
   * Returns the bytes of the document.
   *
   * @param spec the spec that was searched
   * @param outcome what the search found
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(ReadSpec spec, SearchOutcome outcome, String version) {
    return of(spec, outcome, List.of(), version);
  }

  private void document(
      ReadSpec spec,
      SearchOutcome outcome,
      List<ToleranceStudy> tolerances,
      List<FamilyParts> families,
      String version)
      throws IOException {
    json.text("title", spec.spec().title());
    json.text("specSha256", spec.digest());
    json.text("version", version);
    json.whole("seed", outcome.seed());
    json.whole("evaluations", outcome.evaluations());
    json.whole("generations", outcome.generations());
    json.text("stopReason", outcome.stopReason());
    json.whole("restarts", outcome.restarts());
    json.objects("convergence", outcome.history(), this::point);
    json.objects("front", outcome.front(), this::member);
    int[] rank = {0};
    json.objects(
        "ranked",
        outcome.ranked(),
        assessment -> {
          rank[0]++;
          json.whole("rank", rank[0]);
          assessment(assessment);
          new FamilyJson(json)
              .write(
                  rank[0] <= families.size()
                      ? families.get(rank[0] - 1)
                      : FamilyParts.of(spec.spec(), assessment));
          if (rank[0] <= tolerances.size()) {
            ToleranceStudy study = tolerances.get(rank[0] - 1);
            json.object("tolerances", () -> new ToleranceJson(json).study(study));
          }
        });
  }

  /** Writes everything that is known of a woofer. */
  void assessment(Assessment assessment) throws IOException {
    assessment(assessment, true);
  }

  /** Writes what is known of a woofer, without the curves. */
  void figures(Assessment assessment) throws IOException {
    assessment(assessment, false);
  }

  private void assessment(Assessment assessment, boolean curves) throws IOException {
    json.text("name", assessment.woofer().name());
    json.flag("feasible", assessment.grade().feasible());
    json.number("costDb", assessment.grade().costDb());
    json.number("violation", assessment.grade().violation());
    json.texts("violations", assessment.violations());
    json.object("woofer", () -> woofer(assessment.woofer()));
    json.object("freeAir", () -> smallSignal(assessment.freeAir()));
    json.object("coilBudget", () -> budget(assessment.budget()));
    MotorJson.write(json, assessment);
    json.objects("gradeParts", assessment.parts(), this::part);
    double wooferKg = StackBalance.wooferMassKg(assessment.woofer(), assessment.motor());
    json.objects("stacks", assessment.stacks(), stack -> stack(stack, wooferKg, curves));
  }

  private void woofer(Woofer woofer) throws IOException {
    json.number("nominalM", woofer.nominalM());
    json.number("effectiveAreaM2", woofer.effectiveAreaM2());
    json.number("effectiveDiameterM", 2 * woofer.radiusM());
    WooferJson.parts(json, woofer);
  }

  private void smallSignal(SmallSignal set) throws IOException {
    json.number("fsHz", set.resonanceHz());
    json.number("qms", set.mechanicalQ());
    json.number("qes", set.electricalQ());
    json.number("qts", set.totalQ());
    json.number("mmsKg", set.movingMassKg());
    json.number("cmsMPerN", set.complianceMPerN());
    json.number("vasM3", set.equivalentVolumeM3());
    json.number("referenceEfficiency", set.referenceEfficiency());
  }

  private void budget(CoilBudget budget) throws IOException {
    json.number("windingHeightM", budget.windingHeightM());
    json.number("coilMassKg", budget.coilMassKg());
    json.number("remainderKg", budget.remainderKg());
    json.number("leastRemainderKg", budget.leastRemainderKg());
  }

  private void part(GradePart part) throws IOException {
    json.text("name", part.name());
    json.number("value", part.value());
    json.text("unit", part.unit());
    json.number("costDb", part.cost());
    json.text("reason", part.reason());
  }

  private void stack(StackAssessment stack, double wooferKg, boolean curves) throws IOException {
    json.text("name", stack.brief().name());
    json.number("levelDb", stack.brief().levelDb());
    json.number("loudestDb", stack.brief().loudestDb());
    json.number("panelWidthM", stack.brief().panel().outline().widthM());
    json.number("panelHeightM", stack.brief().panel().outline().heightM());
    if (stack.brief().panel().clearanceM().isPresent()) {
      json.number("clearanceM", stack.brief().panel().clearanceM().getAsDouble());
    } else {
      json.none("clearanceM");
    }
    json.objects("woofers", stack.brief().pistons(), this::piston);
    json.object(
        "wiring",
        () -> {
          json.whole("strings", stack.wiring().strings());
          json.whole("inSeries", stack.wiring().inSeries());
          json.text("words", stack.wiring().inWords());
          json.flag("fixedBySpec", stack.brief().wiring().isPresent());
        });
    json.object("coil", () -> coil(stack.coil()));
    json.object("network", () -> NetworkJson.write(json, stack.network()));
    json.object("figures", () -> figures(stack.figures()));
    json.object("stand", () -> stand(stack.brief(), wooferKg));
    if (curves) {
      json.object("curves", () -> curves(stack.curves()));
    }
    if (curves && stack.limits().isPresent()) {
      json.object("limits", () -> LimitJson.write(json, stack.limits().orElseThrow()));
    }
  }

  private void stand(StackBrief brief, double wooferKg) throws IOException {
    StackBalance balance = StackBalance.of(brief, wooferKg);
    json.number("massKg", balance.massKg());
    json.number("centreOfGravityM", balance.centreOfGravityM());
    json.number("leastBaseDepthM", balance.leastBaseDepthM());
    if (brief.stand().baseDepthM().isPresent()) {
      double depth = brief.stand().baseDepthM().getAsDouble();
      json.number("baseDepthM", depth);
      json.number("tippingRad", balance.tippingRad(depth));
    }
  }

  private void point(ConvergencePoint point) throws IOException {
    json.whole("generation", point.generation());
    json.whole("evaluations", point.evaluations());
    json.number("violation", point.violation());
    json.number("hypervolume", point.hypervolume());
    json.number("bestCostDb", point.bestCostDb());
    json.whole("frontSize", point.frontSize());
  }

  private void member(FrontMember member) throws IOException {
    if (member.rank().isPresent()) {
      json.whole("rank", member.rank().getAsInt());
    }
    json.object("woofer", () -> WooferJson.parts(json, member.woofer()));
    FamilyScore score = member.score();
    json.number("costDb", score.grade().costDb());
    json.number("shapeDb", score.shapeDb());
    json.number("outputMarginDb", score.outputMarginDb());
    json.number("correctionDb", score.correctionDb());
    json.number("materialDb", score.materialDb());
    json.number("corridorYield", member.corridorYield());
    json.number("outsideDb", score.outsideDb());
    json.objects("networks", member.networks(), network -> NetworkJson.write(json, network));
  }

  private void piston(Piston piston) throws IOException {
    json.number("xM", piston.xM());
    json.number("yM", piston.yM());
  }

  private void coil(SeriesCoil coil) throws IOException {
    json.number("inductanceH", coil.inductanceH());
    json.number("resistanceOhm", coil.resistanceOhm());
    json.number("copperKg", coil.copperKg());
  }

  private void figures(StackFigures f) throws IOException {
    json.number("rmsDeviationDb", f.rmsDeviationDb());
    json.number("meanDeviationDb", f.meanDeviationDb());
    json.number("worstExcessDb", f.worstExcessDb());
    json.number("worstExcessHz", f.worstExcessHz());
    json.number("outputMarginDb", f.outputMarginDb());
    json.number("outputMarginHz", f.outputMarginHz());
    json.text("outputLimit", f.outputLimit().word());
    json.number("leastLoadOhm", f.leastLoadOhm());
    json.number("leastLoadHz", f.leastLoadHz());
    json.number("correctionDb", f.correctionDb());
    json.number("lowCornerLiftDb", f.lowCornerLiftDb());
    json.number("networkBendDb", f.networkBendDb());
    json.number("levelLossDb", f.levelLossDb());
    json.number("travelShare", f.travelShare());
    json.number("panelFsHz", f.panelResonanceHz());
    json.number("panelQts", f.panelTotalQ());
  }

  private void curves(StackCurves c) throws IOException {
    json.curve("frequencyHz", c.frequencyHz());
    json.curve("levelDb", c.levelDb());
    json.curve("bareLevelDb", c.bareLevelDb());
    json.curve("impedanceReOhm", c.impedanceReOhm());
    json.curve("impedanceImOhm", c.impedanceImOhm());
    json.curve("excursionM", c.excursionM());
    json.curve("loudestDb", c.loudestDb());
    json.curve("excursionLimitDb", c.excursionLimitDb());
    json.curve("heatLimitDb", c.heatLimitDb());
    json.curve("amplifierLimitDb", c.amplifierLimitDb());
    json.texts("binding", c.binding().stream().map(Limit::word).toList());
  }
}
