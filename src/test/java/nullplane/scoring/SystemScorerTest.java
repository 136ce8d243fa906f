package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import nullplane.acoustics.PanelSolution;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.network.OfferRows;
import nullplane.units.Curve;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class SystemScorerTest {
  private static DesignSpec spec;
  private static SystemScorer scorer;

  @BeforeAll
  static void solve() {
    spec = WorkshopSpecs.singleAndPair();
    scorer = WorkshopSpecs.scorer(spec);
  }

  private static Woofer woofer(double fs, double qts, double massKg, double travelM) {
    return WorkshopSpecs.woofer(spec.woofer(), fs, qts, massKg, travelM);
  }

  @Test
  void partsAddUpToTheGrade() {
    for (double qts : new double[] {0.3, 0.7, 1.3}) {
      Assessment assessment = scorer.assess(woofer(32, qts, 0.05, 0.008));
      double sum = assessment.parts().stream().mapToDouble(GradePart::cost).sum();
      assertThat(sum).isCloseTo(assessment.grade().costDb(), within(1e-12));
    }
  }

  /** A winding brings the magnet in; what is heard stays the same to the last bit. */
  @Test
  void aWindingIsJudgedByFluxAndSteelToo() {
    for (Winding winding : scorer.windings().windings()) {
      Woofer wound = spec.woofer().woofer("wound", 40, 1.2, 0.05, winding, WorkshopSpecs.AIR);
      Assessment assessment = scorer.assess(wound, winding);
      MotorDesign motor = assessment.motor().orElseThrow();
      assertThat(assessment.parts()).extracting(GradePart::name).contains("magnet");
      double sum = assessment.parts().stream().mapToDouble(GradePart::cost).sum();
      assertThat(sum).isCloseTo(assessment.grade().costDb(), within(1e-12));
      assertThat(assessment.violations().stream().anyMatch(v -> v.startsWith("The gap would need")))
          .isEqualTo(motor.fluxT() > 1 || motor.fluxT() < 0.4);
      assertThat(scorer.assess(wound)).isEqualTo(assessment);
    }
    Winding longest = scorer.windings().windings().get(scorer.windings().windings().size() - 1);
    Woofer strong = spec.woofer().woofer("strong", 40, 0.3, 0.1, longest, WorkshopSpecs.AIR);
    Woofer stronger = spec.woofer().woofer("stronger", 40, 0.28, 0.1, longest, WorkshopSpecs.AIR);
    Assessment over = scorer.assess(strong, longest);
    assertThat(over.violations()).anyMatch(v -> v.startsWith("The gap would need"));
    assertThat(scorer.assess(stronger, longest).grade().violation())
        .isGreaterThan(over.grade().violation());
  }

  /** Nothing of an earlier candidate may show in a later one. */
  @Test
  void aGradeDependsOnItsWooferAlone() {
    Random random = new Random(5);
    SystemScorer.Workspace used = scorer.newWorkspace();
    for (int i = 0; i < 200; i++) {
      Woofer candidate =
          woofer(
              20 + 25 * random.nextDouble(),
              0.25 + 1.2 * random.nextDouble(),
              0.03 + 0.08 * random.nextDouble(),
              0.004 + 0.01 * random.nextDouble());
      Grade fresh = scorer.grade(candidate, scorer.newWorkspace());
      assertThat(scorer.grade(candidate, used)).isEqualTo(fresh);
    }
  }

  /** The early end of hopeless networks must not change what is chosen. */
  @Test
  void theChoiceOfNetworkIsTheBestOfAll() {
    ScoringAxis axis = ScoringAxis.of(spec);
    OfferRows offer = spec.networks().rows(axis.frequencyHz());
    StackEvaluator pair =
        new StackEvaluator(spec, WorkshopSpecs.acoustics(spec, axis).get(1), axis, offer);
    StackEvaluator.Workspace space = new StackEvaluator.Workspace(axis.frequencyHz().size(), 2);
    Random random = new Random(17);
    for (int i = 0; i < 12; i++) {
      Woofer candidate =
          woofer(20 + 25 * random.nextDouble(), 0.3 + random.nextDouble(), 0.05, 0.009);
      double bestViolation = Double.POSITIVE_INFINITY;
      double bestCost = Double.POSITIVE_INFINITY;
      StackChoice one = new StackChoice();
      for (int w = 0; w < pair.wirings(); w++) {
        for (int n = 0; n < offer.count(); n++) {
          pair.evaluate(candidate, w, n, space, one);
          if (one.violation < bestViolation
              || (one.violation == bestViolation && one.cost < bestCost)) {
            bestViolation = one.violation;
            bestCost = one.cost;
          }
        }
      }
      StackChoice all = new StackChoice();
      pair.choose(candidate, space, all);
      assertThat(all.violation).isEqualTo(bestViolation);
      assertThat(all.cost).isEqualTo(bestCost);
    }
  }

  /** Figures are read off the curves by their definitions. */
  @Test
  void figuresFollowFromTheCurves() {
    Assessment assessment = scorer.assess(woofer(33, 0.8, 0.055, 0.008));
    for (StackAssessment stack : assessment.stacks()) {
      StackCurves curves = stack.curves();
      StackFigures figures = stack.figures();
      Curve axis = curves.frequencyHz();
      double excess = 0;
      double margin = Double.POSITIVE_INFINITY;
      double squares = 0;
      double width = 0;
      for (int f = 0; f < axis.size(); f++) {
        assertThat(curves.loudestDb().at(f))
            .isLessThanOrEqualTo(curves.excursionLimitDb().at(f))
            .isLessThanOrEqualTo(curves.heatLimitDb().at(f))
            .isLessThanOrEqualTo(curves.amplifierLimitDb().at(f));
        if (axis.at(f) < 40 - 1e-9 || axis.at(f) > 200 + 1e-9) {
          continue;
        }
        double deviation = curves.levelDb().at(f) - stack.brief().levelDb();
        excess = Math.max(excess, Math.abs(deviation) - 2);
        margin = Math.min(margin, curves.loudestDb().at(f) - stack.brief().loudestDb());
        if (axis.at(f) < 200 - 1e-9) {
          double next = curves.levelDb().at(f + 1) - stack.brief().levelDb();
          double step = Math.log(axis.at(f + 1) / axis.at(f));
          squares += step * (deviation * deviation + next * next) / 2;
          width += step;
        }
      }
      assertThat(figures.worstExcessDb()).isCloseTo(Math.max(0, excess), within(1e-9));
      assertThat(figures.outputMarginDb()).isCloseTo(margin, within(1e-9));
      assertThat(figures.rmsDeviationDb()).isCloseTo(Math.sqrt(squares / width), within(1e-9));
    }
  }

  /**
   * At the excursion limit the cone moves by its travel: level and excursion at the reference
   * voltage scale together. Source: linearity.
   */
  @Test
  void excursionLimitIsTheVoltageThatMovesTheConeByItsTravel() {
    Assessment assessment = scorer.assess(woofer(33, 0.8, 0.055, 0.008));
    StackCurves curves = assessment.stacks().get(0).curves();
    for (int f = 0; f < curves.frequencyHz().size(); f++) {
      double scale = 20 * Math.log10(0.008 / curves.excursionM().at(f));
      assertThat(curves.excursionLimitDb().at(f))
          .isCloseTo(curves.levelDb().at(f) + scale, within(1e-9));
    }
  }

  /**
   * With a woofer so heavy that only its mass matters, the single stack's level is rho-independent
   * circuit theory: u = Bl V/(Re jw M) and p = h u. Source: Newton's and Ohm's laws.
   */
  @Test
  void levelOfAMassControlledWoofer() {
    ScoringAxis axis = ScoringAxis.of(spec);
    PanelSolution solution =
        WorkshopSpecs.acoustics(spec, axis).get(0).response().solutions().get(axis.lastInBand());
    Woofer heavy = new Woofer("heavy", 0.3, 0.0531, 5.6, 0, 200.0, 10, 0.001, 1.0, 0.01, 100);
    double omega = 2 * Math.PI * solution.frequencyHz();
    StackModel.PerVolt out = new StackModel.PerVolt(axis.frequencyHz().size(), 1);
    new StackModel(WorkshopSpecs.acoustics(spec, axis).get(0).response(), new Wiring(1, 1))
        .respond(heavy, out);
    double velocity = 1.0 / (5.6 * omega * 200);
    double pressure = velocity * solution.pressure().modulus(0, 0);
    assertThat(Math.sqrt(out.pressureSquared[axis.lastInBand()]) / pressure)
        .isCloseTo(1, within(1e-3));
  }

  @Test
  void anUnbuildableWooferIsAValueWithADistanceAndAReason() {
    Assessment light = scorer.assess(woofer(40, 0.3, 0.03, 0.014));
    Assessment worse = scorer.assess(woofer(40, 0.25, 0.03, 0.014));
    assertThat(light.grade().feasible()).isFalse();
    assertThat(light.violations()).anyMatch(v -> v.contains("at least 23.9 g is needed"));
    assertThat(worse.grade().violation()).isGreaterThan(light.grade().violation());
    assertThat(worse.grade()).isGreaterThan(light.grade());
  }

  @Test
  void aLoadBelowTheAmplifiersIsNamed() {
    StackBrief pair = spec.stacks().get(1);
    StackBrief fixed =
        new StackBrief(
            pair.name(),
            pair.panel(),
            pair.pistons(),
            pair.levelDb(),
            pair.loudestDb(),
            java.util.Optional.of(new Wiring(2, 1)));
    DesignSpec greedy =
        new DesignSpec(
            "greedy",
            spec.woofer(),
            List.of(fixed),
            spec.listening(),
            spec.target(),
            new Amplifier(28, 8));
    Assessment assessment =
        WorkshopSpecs.scorer(WorkshopSpecs.coilsOnly(greedy)).assess(woofer(33, 0.8, 0.055, 0.008));
    assertThat(assessment.grade().feasible()).isFalse();
    assertThat(assessment.violations())
        .anyMatch(v -> v.startsWith("Stack pair loads the amplifier with"));
  }

  /** Air on the panel is heavier than a free disc's, so the resonance is lower. Common practice. */
  @Test
  void resonanceFallsOnThePanel() {
    Assessment assessment = scorer.assess(woofer(33, 0.8, 0.055, 0.008));
    for (StackAssessment stack : assessment.stacks()) {
      assertThat(stack.figures().panelResonanceHz()).isBetween(29.0, 32.8);
    }
  }

  @Test
  void acousticsOfAnotherAxisAreRefused() {
    ScoringAxis axis = ScoringAxis.of(spec);
    ScoringAxis other = ScoringAxis.of(withTarget(new Target(2.83, 41, 200, 2)));
    List<StackAcoustics> acoustics = WorkshopSpecs.acoustics(spec, axis);
    assertThatThrownBy(() -> new SystemScorer(spec, other, acoustics, WorkshopSpecs.AIR))
        .hasMessageContaining("another frequency axis");
  }

  @Test
  void theAxisHoldsTheCornersAndItsWeightsSumToOne() {
    ScoringAxis axis = ScoringAxis.of(withTarget(new Target(2.83, 37, 180, 2)));
    assertThat(axis.frequencyHz().at(axis.firstInBand())).isEqualTo(37);
    assertThat(axis.frequencyHz().at(axis.lastInBand())).isEqualTo(180);
    assertThat(axis.frequencyHz().at(0)).isEqualTo(20);
    assertThat(axis.frequencyHz().at(axis.frequencyHz().size() - 1)).isEqualTo(1000);
    assertThat(axis.frequencyHz().size()).isBetween(40, 60);
    assertThat(axis.bandWeights().stream().sum()).isCloseTo(1, within(1e-12));
    for (int i = 1; i < axis.frequencyHz().size(); i++) {
      assertThat(axis.frequencyHz().at(i)).isGreaterThan(axis.frequencyHz().at(i - 1));
    }
  }

  private static DesignSpec withTarget(Target target) {
    return new DesignSpec(
        "other", spec.woofer(), spec.stacks(), spec.listening(), target, spec.amplifier());
  }

  @Test
  void wiringsInWords() {
    assertThat(Wiring.allOf(4))
        .extracting(Wiring::inWords)
        .containsExactly(
            "all in parallel", "2 strings in parallel, 2 in series in each", "all in series");
    assertThat(new Wiring(1, 1).inWords()).isEqualTo("single");
  }
}
