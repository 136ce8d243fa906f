package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.driver.Woofer;
import nullplane.io.SpecReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class FixedStacksTest {
  private static DesignSpec spec;
  private static SystemScorer scorer;
  private static Woofer woofer;

  @BeforeAll
  static void solve() {
    spec = WorkshopSpecs.singleAndPair();
    scorer = WorkshopSpecs.scorer(spec);
    woofer = WorkshopSpecs.woofer(spec.woofer(), 36, 0.9, 0.05, 0.008);
  }

  /** The woofer a stack was fixed for does in it what its assessment says. */
  @Test
  void givesWhatTheAssessmentGives() {
    Assessment assessment = scorer.assess(woofer);
    FixedStacks stacks = FixedStacks.of(scorer, assessment);
    FixedStacks.Workspace space = stacks.newWorkspace();
    ScoringAxis axis = ScoringAxis.of(spec);
    for (int s = 0; s < stacks.count(); s++) {
      StackAssessment stack = assessment.stacks().get(s);
      double margin = stacks.respondWithOutputMargin(s, woofer, space);
      assertThat(margin).isCloseTo(stack.figures().outputMarginDb(), within(1e-9));
      assertThat(space.leastLoadOhm()).isCloseTo(stack.figures().leastLoadOhm(), within(1e-12));
      for (int b = 0; b < axis.pointsInBand(); b++) {
        int f = axis.firstInBand() + b;
        assertThat(stacks.bandHz().at(b)).isEqualTo(stack.curves().frequencyHz().at(f));
        assertThat(space.levelDb(b)).isCloseTo(stack.curves().levelDb().at(f), within(1e-9));
      }
    }
  }

  /** With a filter, its gain, a main driver to sum with, and a corner of one stack's own. */
  @Test
  void givesTheAssessmentsSumWithAMainDriver() {
    String text =
        """
        title: sum
        woofer: {nominal: 300 mm, effective-diameter: 260 mm}
        stacks:
          - name: single
            panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
            woofers: [{x: 0 cm, y: -10 cm}]
            upper-corner: 150 Hz
          - name: pair
            panel: {width: 44 cm, height: 150 cm, clearance: 4 cm}
            woofers: [{x: 0 cm, y: -45 cm}, {x: 0 cm, y: 45 cm}]
        listening: {distance: 2.5 m, height: 1 m}
        target: {level: 80 dB, loudest: 90 dB, low-corner: 60 Hz, upper-corner: 200 Hz}
        amplifier: {voltage: 28 V, lowest-load: 3 ohm}
        crossover: {kind: active, gain: -12 dB .. 6 dB, shapes: linkwitz-riley-2, correction: none}
        main-driver: {high-pass: {shape: linkwitz-riley-2}, behind: 7 cm}
        """;
    DesignSpec sum = SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "sum.yaml").spec();
    SystemScorer summing = WorkshopSpecs.scorer(sum);
    Assessment assessment = summing.assess(woofer);
    FixedStacks stacks = FixedStacks.of(summing, assessment);
    FixedStacks.Workspace space = stacks.newWorkspace();
    for (int s = 0; s < 2; s++) {
      StackAssessment stack = assessment.stacks().get(s);
      double margin = stacks.respondWithOutputMargin(s, woofer, space);
      assertThat(margin).isCloseTo(stack.figures().outputMarginDb(), within(1e-9));
      SumCurves curves = stack.curves().sum().orElseThrow();
      for (int b = 0; b < stacks.bandHz().size(); b++) {
        double hz = stacks.bandHz().at(b);
        assertThat(curves.frequencyHz().at(b)).isEqualTo(hz);
        assertThat(space.levelDb(b)).isCloseTo(curves.sumDb().at(b), within(1e-9));
        // a sum is wanted flat; the woofers work up to their corner
        assertThat(stacks.wantedDb(s, b)).isEqualTo(80);
        assertThat(stacks.isWorkingBand(s, b)).isEqualTo(hz < (s == 0 ? 150.01 : 200.01));
      }
    }
  }

  /**
   * A piston of 3 % more area, against the panel solved anew with that piston. The exchange of
   * units leaves out how the piston's size acts on its own loading, (ka)^2 times 1.5 % at the most:
   * ka is 0.5 at 200 Hz, so 0.4 % or 0.03 dB; the load moves by less.
   */
  @Test
  void takesInAnotherArea() {
    Assessment assessment = scorer.assess(woofer);
    FixedStacks stacks = FixedStacks.of(scorer, assessment);
    Woofer larger = withArea(woofer, 1.03 * woofer.effectiveAreaM2());
    ScoringAxis axis = ScoringAxis.of(spec);
    for (int s = 0; s < stacks.count(); s++) {
      StackBrief brief = spec.stacks().get(s);
      List<Piston> pistons =
          brief.pistons().stream()
              .map(p -> new Piston(p.xM(), p.yM(), p.radiusM() * Math.sqrt(1.03)))
              .toList();
      StackModel solved =
          new StackModel(
              new PanelSolver(brief.panel(), pistons, WorkshopSpecs.AIR)
                  .respond(
                      axis.frequencyHz(),
                      List.of(spec.listening().pointFor(brief.panel())),
                      List.of()),
              assessment.stacks().get(s).wiring());
      StackModel.PerVolt perVolt = new StackModel.PerVolt(axis.frequencyHz().size(), 2);
      solved.respond(larger, perVolt);
      DrivenNetwork driven =
          DrivenNetwork.of(
              assessment.stacks().get(s).network(),
              axis.frequencyHz(),
              perVolt.loadRe,
              perVolt.loadIm);
      FixedStacks.Workspace space = stacks.newWorkspace();
      stacks.respond(s, larger, space);
      double[] before = levels(stacks, s, woofer);
      for (int b = 0; b < axis.pointsInBand(); b++) {
        int f = axis.firstInBand() + b;
        double expected =
            StackEvaluator.levelOfSquared(perVolt.pressureSquared[f] * driven.passed(f))
                + 20 * Math.log10(spec.target().voltageV());
        assertThat(space.levelDb(b)).isCloseTo(expected, within(0.03));
      }
      // and it is no small matter: high in the band the level rises by nearly 3 %, 0.26 dB
      int last = axis.pointsInBand() - 1;
      assertThat(space.levelDb(last) - before[last]).isBetween(0.1, 0.26);
    }
  }

  private static double[] levels(FixedStacks stacks, int stack, Woofer of) {
    FixedStacks.Workspace space = stacks.newWorkspace();
    stacks.respond(stack, of, space);
    double[] levels = new double[stacks.bandHz().size()];
    for (int b = 0; b < levels.length; b++) {
      levels[b] = space.levelDb(b);
    }
    return levels;
  }

  private static Woofer withArea(Woofer w, double areaM2) {
    return new Woofer(
        w.name(),
        w.nominalM(),
        areaM2,
        w.resistanceOhm(),
        w.inductanceH(),
        w.bareMassKg(),
        w.stiffnessNPerM(),
        w.lossNsPerM(),
        w.forceFactorTm(),
        w.travelM(),
        w.powerW());
  }

  @Test
  void refusesAnotherSpecsAssessment() {
    DesignSpec one = WorkshopSpecs.spec(spec.woofer(), spec.stacks().get(0));
    SystemScorer other =
        new SystemScorer(
            one,
            ScoringAxis.of(one),
            WorkshopSpecs.acoustics(one, ScoringAxis.of(one)),
            WorkshopSpecs.AIR);
    assertThatThrownBy(() -> FixedStacks.of(other, scorer.assess(woofer)))
        .hasMessageContaining("1 stacks with wirings and networks of 2");
  }
}
