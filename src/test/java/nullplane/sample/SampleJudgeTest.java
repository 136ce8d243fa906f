package nullplane.sample;

import static nullplane.sample.MakerBriefs.AIR;
import static nullplane.sample.MakerBriefs.VOLTAGE_V;
import static nullplane.sample.MakerBriefs.WOOFER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.Instant;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import nullplane.driver.Woofer;
import nullplane.fit.AirLoad;
import nullplane.fit.BenchWoofer;
import nullplane.fit.Finding;
import nullplane.fit.ImpedanceSweep;
import nullplane.fit.MassAnchor;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.scoring.Assessment;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Sweeps of known circuits, judged; the stacks' air is made up in closed form. */
class SampleJudgeTest {
  private static final double FREE_KG =
      8.0 / 3 * AIR.densityKgPerM3() * Math.pow(WOOFER.effectiveAreaM2() / Math.PI, 1.5);
  private static final double ADDED_KG = 0.03;
  private static final Curve AXIS = Curve.logSpaced(8, 3000, 90);
  private static final BriefEntry BRIEF =
      new BriefEntry("b1", "Village hall", "hall 300", List.of());

  private static BriefStacks stacks;
  private static SampleJudge judge;

  @BeforeAll
  static void make() {
    stacks = PlainStacks.stacks();
    judge = new SampleJudge(stacks, PanelAir.NONE);
  }

  private static BenchWoofer bench(Woofer w, double inductanceH) {
    return new BenchWoofer(
        w.resistanceOhm(),
        w.bareMassKg(),
        w.stiffnessNPerM(),
        w.lossNsPerM(),
        w.forceFactorTm(),
        BenchWoofer.plain(inductanceH));
  }

  private static ImpedanceSweep sweep(Woofer woofer, double inductanceH, double addedKg) {
    return bench(woofer, inductanceH).sweep(AXIS, FREE_KG, addedKg, 0, new Random(1));
  }

  private static MassAnchor added(Woofer woofer, double inductanceH) {
    return new MassAnchor.AddedMass(
        sweep(woofer, inductanceH, ADDED_KG), AirLoad.freeAir(), ADDED_KG, 0);
  }

  private static MeasuredSample sample(String name, Woofer woofer, boolean golden) {
    return sample(name, woofer, WOOFER.inductanceH(), OptionalDouble.empty(), golden);
  }

  private static MeasuredSample sample(
      String name, Woofer woofer, double inductanceH, OptionalDouble rest, boolean golden) {
    return new MeasuredSample(
        name,
        sweep(woofer, inductanceH, 0),
        added(woofer, inductanceH),
        rest,
        Optional.empty(),
        golden,
        List.of());
  }

  private static SampleOutcome judged(Set<Lever> locked, MeasuredSample... samples) {
    return judge.judge(List.of(samples), locked, List.of("as measured"), Optional.empty());
  }

  private static double figure(BenchFigure figure, Woofer woofer) {
    return figure.of(woofer, AIR, VOLTAGE_V);
  }

  private static void assertLike(Woofer found, Woofer expected) {
    assertThat(found.resistanceOhm()).isCloseTo(expected.resistanceOhm(), withinPercentage(0.01));
    assertThat(found.bareMassKg()).isCloseTo(expected.bareMassKg(), withinPercentage(0.01));
    assertThat(found.stiffnessNPerM()).isCloseTo(expected.stiffnessNPerM(), withinPercentage(0.01));
    assertThat(found.lossNsPerM()).isCloseTo(expected.lossNsPerM(), withinPercentage(0.01));
    assertThat(found.forceFactorTm()).isCloseTo(expected.forceFactorTm(), withinPercentage(0.01));
    assertThat(found.inductanceH()).isCloseTo(expected.inductanceH(), withinPercentage(0.01));
    assertThat(found.travelM()).isCloseTo(expected.travelM(), within(1e-12));
    assertThat(found.powerW()).isEqualTo(expected.powerW());
  }

  /** Half as stiff again: fs and all Q rise by sqrt(1.5), Vas falls to 2/3. */
  @Test
  void stiffSampleFailsWhereItsCircuitIsOff() {
    Woofer stiff = MakerBriefs.off(1, 1.5, 1, 1);
    SampleOutcome outcome = judged(Set.of(), sample("A", stiff, false));
    SampleResult result = outcome.samples().get(0);
    double root = Math.sqrt(1.5);
    expect(result, "fs", 32 * root);
    expect(result, "qts", 0.8 * root);
    expect(result, "qms", 5 * root);
    expect(result, "qes", root / (1 / 0.8 - 1 / 5.0));
    expect(result, "re", WOOFER.resistanceOhm());
    expect(result, "moving-mass", 0.06);
    expect(result, "mms", 0.06 + FREE_KG);
    expect(result, "le", 0.9e-3);
    // all keys, not the windows' alone
    assertThat(result.figures()).containsOnlyKeys(BenchFigure.values());
    assertThat(keys(result, Decision.FAIL)).containsExactly("fs", "qts", "qes", "qms", "vas");
    assertThat(keys(result, Decision.CANNOT_TELL)).isEmpty();
    assertThat(keys(result, Decision.PASS)).contains("re", "mms", "bl", "level", "kms");
    assertThat(result.notMeasured()).containsExactly("rest-position");
    assertThat(result.decision()).isEqualTo(Decision.FAIL);
    assertThat(result.estimate("gap-height")).isEmpty();
    assertLike(result.woofer().orElseThrow(), stiff);
    assertThat(result.massAssumed()).isFalse();
    assertThat(result.golden()).isFalse();
    assertThat(outcome.decision()).isEqualTo(Decision.FAIL);
    assertThat(outcome.count(Decision.FAIL)).isEqualTo(1);
    assertThat(outcome.count(Decision.PASS)).isZero();
    assertThat(outcome.spreads()).isEmpty();
    assertThat(outcome.notes()).containsExactly("as measured");
    assertThat(outcome.story()).isEmpty();
    assertThat(outcome.asked()).isSameAs(stacks.asked());
    assertThat(outcome.nominal()).isEqualTo(stacks.withBriefParts(WOOFER));
    // in the stacks it does what its circuit does
    Woofer own = result.woofer().orElseThrow();
    assertThat(result.briefParts()).isEqualTo(stacks.withBriefParts(own));
    assertThat(result.briefParts().get(0).meanDeviationDb())
        .isCloseTo(stacks.withBriefParts(stiff).get(0).meanDeviationDb(), within(1e-3));
    assertThat(result.grade()).hasValue(stacks.scorer().assess(own).grade());
    assertThat(result.bestParts())
        .isEqualTo(BriefStacks.withBestParts(stacks.scorer().assess(own)));
  }

  private static void expect(SampleResult result, String key, double expected) {
    assertThat(result.estimate(key).orElseThrow().value())
        .as(key)
        .isCloseTo(expected, withinPercentage(0.01));
  }

  private static List<String> keys(SampleResult result, Decision decision) {
    return result.with(decision).stream().map(check -> check.value().key()).toList();
  }

  /** A suspension 50 % too stiff is all that is wrong, so it is all that is asked for. */
  @Test
  void requestBringsTheSampleIntoTheWindows() {
    Woofer stiff = MakerBriefs.off(1, 1.5, 1, 1);
    SampleOutcome outcome = judged(Set.of(), sample("A", stiff, false));
    ChangeRequest request = outcome.request().orElseThrow();
    assertThat(request.basis()).isEqualTo("sample A");
    assertThat(request.change().levers()).containsExactly(Lever.STIFFNESS);
    assertThat(request.asksForSomething()).isTrue();
    assertThat(request.stillOutside()).isEmpty();
    assertThat(request.expected()).isEqualTo(request.change());
    double share = 1 + request.change().stiffnessShare();
    for (BenchFigure figure : BenchFigure.values()) {
      double after = figure(figure, MakerBriefs.off(1, 1.5 * share, 1, 1));
      assertThat(request.after().get(figure.key())).isCloseTo(after, withinPercentage(0.01));
      assertThat(stacks.brief().window(figure.key()).accepts(after)).isTrue();
    }
    Woofer own = outcome.samples().get(0).woofer().orElseThrow();
    assertThat(request.woofer()).isEqualTo(own);
    assertThat(request.changed()).isEqualTo(request.change().applyTo(own));
    assertThat(request.stacksBefore()).isEqualTo(stacks.withBriefParts(own));
    assertThat(request.stacksAfter()).isEqualTo(stacks.withBriefParts(request.changed()));
    Assessment before = stacks.scorer().assess(own);
    Assessment after = stacks.scorer().assess(request.changed());
    assertThat(request.gradeBefore()).isEqualTo(before.grade());
    assertThat(request.gradeAfter()).isEqualTo(after.grade());
    assertThat(request.bestBefore()).isEqualTo(BriefStacks.withBestParts(before));
    assertThat(request.bestAfter()).isEqualTo(BriefStacks.withBestParts(after));
    // nothing can be asked of a maker who can move nothing
    ChangeRequest none =
        judged(EnumSet.allOf(Lever.class), sample("A", stiff, false)).request().orElseThrow();
    assertThat(none.asksForSomething()).isFalse();
    assertThat(none.locked()).hasSize(Lever.values().length);
    assertThat(none.stillOutside()).containsExactly("fs", "qts", "qes", "qms", "vas");
  }

  @Test
  void sampleOnTargetPassesAndNothingIsAskedFor() {
    SampleOutcome outcome =
        judged(
            Set.of(), sample("A", WOOFER, WOOFER.inductanceH(), OptionalDouble.of(0.2e-3), false));
    SampleResult result = outcome.samples().get(0);
    assertThat(result.decision()).isEqualTo(Decision.PASS);
    assertThat(result.notMeasured()).isEmpty();
    assertThat(result.estimate("rest-position"))
        .hasValue(new Finding.Estimate(0.2e-3, 0, 0.2e-3, 0.2e-3));
    assertThat(outcome.request()).isEmpty();
    assertThat(outcome.decision()).isEqualTo(Decision.PASS);
  }

  /**
   * Two samples: their parts in the geometric mean, so that fs and Q are the means of theirs; the
   * golden one is judged but decides nothing.
   */
  @Test
  void severalSamplesAreAskedForTheirMean() {
    Woofer a = MakerBriefs.off(0.98, 1.5, 1.02, 1.01);
    Woofer b = MakerBriefs.off(1.02, 1.8, 0.97, 0.99);
    SampleOutcome outcome =
        judged(
            Set.of(Lever.FLUX),
            sample("A", a, 0.80e-3, OptionalDouble.of(0.1e-3), false),
            sample("B", b, 0.96e-3, OptionalDouble.of(0.9e-3), false),
            sample("G", MakerBriefs.off(1, 3, 1, 1), true));
    assertThat(outcome.samples()).hasSize(3);
    assertThat(outcome.judged()).extracting(SampleResult::name).containsExactly("A", "B");
    assertThat(outcome.samples().get(2).golden()).isTrue();
    assertThat(outcome.count(Decision.FAIL)).isEqualTo(2);
    ChangeRequest request = outcome.request().orElseThrow();
    assertThat(request.basis()).isEqualTo("the mean of 2 samples");
    double shorter = WOOFER.travelM() - 0.1e-3;
    assertLike(
        request.woofer(),
        new Woofer(
            "mean",
            WOOFER.nominalM(),
            WOOFER.effectiveAreaM2(),
            Math.sqrt(a.resistanceOhm() * b.resistanceOhm()),
            0.88e-3,
            Math.sqrt(a.bareMassKg() * b.bareMassKg()),
            Math.sqrt(a.stiffnessNPerM() * b.stiffnessNPerM()),
            WOOFER.lossNsPerM(),
            Math.sqrt(a.forceFactorTm() * b.forceFactorTm()),
            Math.sqrt(shorter * (WOOFER.travelM() - 0.9e-3)),
            WOOFER.powerW()));
    // 0.5 mm on the average, which is at the limit and stays
    assertThat(request.before().get("rest-position")).isCloseTo(0.5e-3, within(1e-12));
    // the scatter from unit to unit narrows what is aimed at: |a - b|/sqrt(2) of every figure
    Map<BenchFigure, Double> scatter = new EnumMap<>(BenchFigure.class);
    for (BenchFigure figure : BenchFigure.values()) {
      double apart = figure(figure, a) - figure(figure, b);
      scatter.put(figure, Math.abs(apart) / Math.sqrt(2));
    }
    scatter.put(BenchFigure.LE, 0.16e-3 / Math.sqrt(2));
    assertThat(request.change()).isEqualTo(planned(request.woofer(), scatter, Set.of(Lever.FLUX)));
    assertThat(request.change())
        .isNotEqualTo(planned(request.woofer(), Map.of(), Set.of(Lever.FLUX)));

    BatchSpread fs = spread(outcome, "fs");
    double first = figure(BenchFigure.FS, a);
    double second = figure(BenchFigure.FS, b);
    assertThat(fs.count()).isEqualTo(2);
    assertThat(fs.mean()).isCloseTo((first + second) / 2, withinPercentage(0.01));
    assertThat(fs.deviation()).isCloseTo((second - first) / Math.sqrt(2), withinPercentage(0.1));
    assertThat(fs.least()).isCloseTo(first, withinPercentage(0.01));
    assertThat(fs.greatest()).isCloseTo(second, withinPercentage(0.01));
    // six deviations of Vas are more than its window, those of the mass are not
    assertThat(outcome.notes()).anyMatch(note -> note.startsWith("vas: the samples scatter"));
    assertThat(outcome.notes()).noneMatch(note -> note.startsWith("re: "));
  }

  /** Three samples of one kind, Bl 3.5 % up and down: that is the deviation to be kept clear. */
  @Test
  void scatterOfThreeSamplesNarrowsTheAim() {
    List<Woofer> woofers =
        List.of(
            MakerBriefs.off(1, 1, 1.1 * 0.965, 1),
            MakerBriefs.off(1, 1, 1.1, 1),
            MakerBriefs.off(1, 1, 1.1 * 1.035, 1));
    ChangeRequest request =
        judged(
                Set.of(),
                sample("A", woofers.get(0), false),
                sample("B", woofers.get(1), false),
                sample("C", woofers.get(2), false))
            .request()
            .orElseThrow();
    Map<BenchFigure, Double> scatter = new EnumMap<>(BenchFigure.class);
    Map<BenchFigure, Double> twice = new EnumMap<>(BenchFigure.class);
    for (BenchFigure figure : BenchFigure.values()) {
      double[] x = woofers.stream().mapToDouble(woofer -> figure(figure, woofer)).toArray();
      double middle = (x[0] + x[1] + x[2]) / 3;
      double squares = 0;
      for (double one : x) {
        squares += Math.pow(one - middle, 2);
      }
      scatter.put(figure, Math.sqrt(squares / 2));
      twice.put(figure, 2 * Math.sqrt(squares / 2));
    }
    assertThat(request.basis()).isEqualTo("the mean of 3 samples");
    assertThat(request.change()).isEqualTo(planned(request.woofer(), scatter, Set.of()));
    assertThat(request.change()).isNotEqualTo(planned(request.woofer(), twice, Set.of()));
  }

  private static Change planned(
      Woofer woofer, Map<BenchFigure, Double> uncertainty, Set<Lever> locked) {
    return RequestPlan.of(
            stacks.brief(), woofer, uncertainty, OptionalDouble.empty(), locked, AIR, VOLTAGE_V)
        .change();
  }

  private static BatchSpread spread(SampleOutcome outcome, String key) {
    return outcome.spreads().stream()
        .filter(spread -> spread.value().key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  /** Golden samples decide only where there is nothing else. */
  @Test
  void goldenSamplesAloneDecide() {
    SampleOutcome alone = judged(Set.of(), sample("G", MakerBriefs.off(1, 1.5, 1, 1), true));
    assertThat(alone.decision()).isEqualTo(Decision.FAIL);
    SampleOutcome beside =
        judged(
            Set.of(), sample("A", WOOFER, false), sample("G", MakerBriefs.off(1, 1.5, 1, 1), true));
    assertThat(beside.decision()).isEqualTo(Decision.PASS);
    assertThat(beside.request()).isEmpty();
    assertThat(beside.spreads()).isEmpty();
  }

  /** Without an anchor fs, Q and Re are known, and Bl follows with the brief's mass. */
  @Test
  void massIsTakenFromTheBriefWhereItIsNotKnown() {
    Woofer light = MakerBriefs.off(0.9, 1, 1, 1);
    MeasuredSample sample =
        new MeasuredSample(
            "A",
            sweep(light, 0.9e-3, 0),
            new MassAnchor.None(),
            OptionalDouble.empty(),
            Optional.empty(),
            false,
            List.of("read as it is"));
    SampleResult result = judged(Set.of(), sample).samples().get(0);
    assertThat(result.massAssumed()).isTrue();
    assertThat(result.notes().get(0)).isEqualTo("read as it is");
    assertThat(result.notes()).anyMatch(note -> note.contains("taken from the brief"));
    assertThat(result.decision()).isEqualTo(Decision.CANNOT_TELL);
    assertThat(keys(result, Decision.CANNOT_TELL))
        .containsExactly("moving-mass", "mms", "bl", "vas", "level");
    // fs and Q of the light one with the brief's mass: K, R and Bl^2 go with M, Q with neither
    double heavier = (0.06 + FREE_KG) / (0.9 * 0.06 + FREE_KG);
    Woofer found = result.woofer().orElseThrow();
    assertThat(found.bareMassKg()).isEqualTo(0.06);
    assertThat(found.stiffnessNPerM())
        .isCloseTo(light.stiffnessNPerM() * heavier, withinPercentage(0.01));
    assertThat(found.lossNsPerM()).isCloseTo(light.lossNsPerM() * heavier, withinPercentage(0.01));
    assertThat(found.forceFactorTm())
        .isCloseTo(light.forceFactorTm() * Math.sqrt(heavier), withinPercentage(0.01));
  }

  /** The travel is that of the shorter side, and a hundredth where nothing is left. */
  @Test
  void restPositionCostsTravel() {
    SampleOutcome outcome =
        judged(
            Set.of(), sample("A", WOOFER, WOOFER.inductanceH(), OptionalDouble.of(-1.2e-3), false));
    SampleResult result = outcome.samples().get(0);
    assertThat(keys(result, Decision.FAIL)).containsExactly("rest-position");
    assertThat(result.woofer().orElseThrow().travelM())
        .isCloseTo(WOOFER.travelM() - 1.2e-3, within(1e-15));
    ChangeRequest request = outcome.request().orElseThrow();
    assertThat(request.change().levers()).containsExactly(Lever.REST_POSITION);
    assertThat(request.change().restMoveM()).isCloseTo(1.2e-3, within(1e-15));
    assertThat(request.changed().travelM()).isCloseTo(WOOFER.travelM(), within(1e-12));
    assertThat(request.after().get("rest-position")).isCloseTo(0, within(1e-15));
  }

  /** Beyond its travel a coil has next to none; moved back it has all of it, and no more. */
  @Test
  void coilAtRestBeyondItsTravelIsMovedBack() {
    SampleOutcome outcome =
        judged(
            Set.of(),
            sample(
                "A",
                MakerBriefs.off(1, 1.5, 1, 1.1),
                WOOFER.inductanceH(),
                OptionalDouble.of(0.02),
                false));
    assertThat(outcome.samples().get(0).woofer().orElseThrow().travelM())
        .isCloseTo(WOOFER.travelM() / 100, within(1e-15));
    ChangeRequest request = outcome.request().orElseThrow();
    assertThat(request.change().restMoveM()).isCloseTo(-0.02, within(1e-15));
    double wound = request.change().winding().orElseThrow().travelM();
    assertThat(request.changed().travelM()).isCloseTo(WOOFER.travelM() + wound, within(1e-12));
  }

  /** A sweep without the resonance makes no woofer; its rest position is judged all the same. */
  @Test
  void sampleWithoutResonanceIsNoWoofer() {
    Curve high = Curve.logSpaced(300, 3000, 40);
    MeasuredSample sample =
        new MeasuredSample(
            "A",
            bench(WOOFER, 0.9e-3).sweep(high, FREE_KG, 0, 0, new Random(1)),
            new MassAnchor.None(),
            OptionalDouble.of(2e-3),
            Optional.empty(),
            false,
            List.of());
    SampleOutcome outcome = judged(Set.of(), sample);
    SampleResult result = outcome.samples().get(0);
    assertThat(result.woofer()).isEmpty();
    assertThat(result.bestParts()).isEmpty();
    assertThat(result.briefParts()).isEmpty();
    assertThat(result.grade()).isEmpty();
    assertThat(result.notes()).noneMatch(note -> note.contains("taken from the brief"));
    assertThat(outcome.decision()).isEqualTo(Decision.FAIL);
    assertThat(outcome.request()).isEmpty();
    // beside one that is a woofer, that one is what is changed
    assertThat(judged(Set.of(), sample, sample("B", WOOFER, false)).request().orElseThrow().basis())
        .isEqualTo("sample B");
  }

  private static RoundStamp stamp(String measurements) {
    return new RoundStamp(1, Instant.ofEpochSecond(7), "b1", measurements, "0.1.0");
  }

  /** Two rounds: what the first asked for, and what the maker made of it. */
  @Test
  void roundsAreKeptAndTeach() {
    OpenRound first = OpenRound.next(RoundHistory.NONE, BRIEF, stamp("m1"));
    SampleOutcome asked =
        judge.judge(
            List.of(sample("A", MakerBriefs.off(1, 2, 1, 1), false)),
            Set.of(Lever.MASS),
            List.of(),
            Optional.of(first));
    ChangeRequest request = asked.request().orElseThrow();
    assertThat(request.response().knowsAnything()).isFalse();
    RoundHistory history = asked.story().orElseThrow().history();
    assertThat(history.briefs()).containsExactly(BRIEF);
    ProjectRound round = history.last().orElseThrow();
    assertThat(round.number()).isEqualTo(1);
    assertThat(round.samples()).hasSize(1);
    assertThat(round.samples().get(0).mounting()).isEqualTo("free air");
    assertThat(round.samples().get(0).values()).isEqualTo(asked.samples().get(0).figures());
    RequestEntry end = round.end().orElseThrow();
    assertThat(end.decision()).isEqualTo(Decision.FAIL);
    assertThat(end.basis()).isEqualTo("sample A");
    assertThat(end.asked()).isEqualTo(AskedChange.of(request.change()));
    assertThat(end.gains()).containsExactly(Map.entry(Lever.STIFFNESS, 1.0));
    assertThat(end.predicted()).isEqualTo(request.after());
    assertThat(end.stillOutside()).isEqualTo(request.stillOutside());
    assertThat(end.locked()).containsExactly(Lever.MASS);

    // the maker goes half of the way, in the logarithm
    double share = Math.sqrt(1 + request.change().stiffnessShare());
    Woofer half = MakerBriefs.off(1, 2 * share, 1, 1);
    SampleOutcome next =
        judge.judge(
            List.of(sample("B", half, false)),
            Set.of(),
            List.of(),
            Optional.of(OpenRound.next(history, BRIEF, stamp("m2"))));
    ProjectStory story = next.story().orElseThrow();
    assertThat(story.history().rounds()).hasSize(2);
    assertThat(story.moves()).hasSize(1);
    assertThat(story.moves().get(0).achieved(Lever.STIFFNESS, 1).orElseThrow())
        .isCloseTo(share - 1, within(1e-4));
    // gain 0.5 from the data, 1 from what makers usually do: weighted by x^2/(2 0.05^2) and 1/0.3^2
    double x = Math.log(share * share);
    double data = x * x / (2 * 0.05 * 0.05);
    double prior = 1 / (0.3 * 0.3);
    double gain = (0.5 * data + prior) / (data + prior);
    ChangeRequest learned = next.request().orElseThrow();
    assertThat(learned.response().used(Lever.STIFFNESS)).isCloseTo(gain, within(1e-3));
    assertThat(story.response()).isEqualTo(learned.response());
    assertThat(learned.change().levers()).contains(Lever.STIFFNESS);
    assertThat(1 + learned.expected().stiffnessShare())
        .isCloseTo(Math.pow(1 + learned.change().stiffnessShare(), gain), within(1e-3));
    assertThat(learned.changed()).isEqualTo(learned.expected().applyTo(learned.woofer()));
    RequestEntry again = story.history().last().orElseThrow().end().orElseThrow();
    assertThat(again.gains().get(Lever.STIFFNESS)).isCloseTo(gain, within(1e-3));
    assertThat(again.predicted()).isEqualTo(learned.after());
  }

  /** A golden sample whose suspension has softened by 2 % between rounds. */
  @Test
  void goldenSampleThatMovedIsTold() {
    SampleOutcome before =
        judge.judge(
            List.of(sample("A", WOOFER, false), sample("G", WOOFER, true)),
            Set.of(),
            List.of(),
            Optional.of(OpenRound.next(RoundHistory.NONE, BRIEF, stamp("m1"))));
    RequestEntry end =
        before.story().orElseThrow().history().last().orElseThrow().end().orElseThrow();
    assertThat(end.decision()).isEqualTo(Decision.PASS);
    assertThat(end.asked()).isEqualTo(AskedChange.NONE);
    assertThat(end.basis()).isEmpty();
    assertThat(end.predicted()).isEmpty();
    assertThat(before.story().orElseThrow().drifts()).isEmpty();
    SampleOutcome after =
        judge.judge(
            List.of(sample("A", WOOFER, false), sample("G", MakerBriefs.off(1, 0.98, 1, 1), true)),
            Set.of(),
            List.of(),
            Optional.of(
                OpenRound.next(before.story().orElseThrow().history(), BRIEF, stamp("m2"))));
    ProjectStory story = after.story().orElseThrow();
    assertThat(story.drifts()).hasSize(BenchFigure.values().length);
    assertThat(story.moves()).isEmpty();
    GoldenDrift stiffness =
        story.significantDrifts().stream()
            .filter(drift -> drift.figure() == BenchFigure.KMS)
            .findFirst()
            .orElseThrow();
    assertThat(stiffness.drift()).isCloseTo(-0.02 * WOOFER.stiffnessNPerM(), withinPercentage(0.1));
    assertThat(story.significantDrifts())
        .extracting(GoldenDrift::figure)
        .contains(BenchFigure.FS, BenchFigure.VAS)
        .doesNotContain(BenchFigure.RE);
  }

  /** On a panel the place is told, and the values hold for free air. */
  @Test
  void samplesOnAPanelAreToldSo() {
    Curve solved = Curve.logSpaced(8, 3000, 60);
    SampleJudge onPanel = new SampleJudge(stacks, stack -> PlainStacks.pair(solved));
    // still neighbours hold the air of the other place; open ones need the second fit
    for (PanelPlace.Others others : PanelPlace.Others.values()) {
      MeasuredSample sample =
          new MeasuredSample(
              "A",
              bench(WOOFER, 0.9e-3).sweep(AXIS, hz -> onPair(hz, others), 0, 0, new Random(1)),
              new MassAnchor.BareMass(0.06, 0),
              OptionalDouble.empty(),
              Optional.of(new PanelPlace("pair", 2, others)),
              false,
              List.of());
      SampleOutcome outcome =
          onPanel.judge(
              List.of(sample),
              Set.of(),
              List.of(),
              Optional.of(OpenRound.next(RoundHistory.NONE, BRIEF, stamp("m1"))));
      SampleResult result = outcome.samples().get(0);
      assertThat(result.estimate("fs").orElseThrow().value()).isCloseTo(32, withinPercentage(0.1));
      assertThat(result.estimate("qms").orElseThrow().value()).isCloseTo(5, withinPercentage(0.1));
      String place = "on the panel of stack pair, place 2, others " + others.word();
      assertThat(result.notes().get(0)).startsWith("measured " + place);
      ProjectRound round = outcome.story().orElseThrow().history().last().orElseThrow();
      assertThat(round.samples().get(0).mounting()).isEqualTo(place);
    }
  }

  /** Force on a cone per velocity; beside an open woofer by Cramer's rule. */
  private static Complex onPair(double hz, PanelPlace.Others others) {
    double w = 2 * Math.PI * hz;
    Complex own = new Complex(0, w * PlainStacks.OWN_KG);
    Complex mutual = new Complex(0, w * PlainStacks.MUTUAL_KG);
    Complex free =
        own.add(
            new Complex(
                WOOFER.lossNsPerM(), w * WOOFER.bareMassKg() - WOOFER.stiffnessNPerM() / w));
    return others == PanelPlace.Others.STILL
        ? own
        : own.subtract(mutual.multiply(mutual).divide(free));
  }

  /** With noise, half of every figure's 95 % interval is kept clear of the windows. */
  @Test
  void intervalsOfOneSampleNarrowWhatIsAimedAt() {
    Woofer stiff = MakerBriefs.off(1, 1.5, 1, 1);
    Random chance = new Random(4);
    BenchWoofer bench = bench(stiff, 0.9e-3);
    double noise = 0.06;
    MeasuredSample sample =
        new MeasuredSample(
            "A",
            bench.sweep(AXIS, FREE_KG, 0, noise, chance),
            new MassAnchor.AddedMass(
                bench.sweep(AXIS, FREE_KG, ADDED_KG, noise, chance),
                AirLoad.freeAir(),
                ADDED_KG,
                0),
            OptionalDouble.empty(),
            Optional.empty(),
            false,
            List.of());
    SampleOutcome outcome = judged(Set.of(), sample);
    Map<BenchFigure, Double> half = new EnumMap<>(BenchFigure.class);
    outcome
        .samples()
        .get(0)
        .figures()
        .forEach((figure, e) -> half.put(figure, (e.upper95() - e.lower95()) / 2));
    ChangeRequest request = outcome.request().orElseThrow();
    assertThat(request.change()).isEqualTo(planned(request.woofer(), half, Set.of()));
    assertThat(request.change()).isNotEqualTo(planned(request.woofer(), Map.of(), Set.of()));
  }

  @Test
  void noSampleIsRefused() {
    assertThatThrownBy(() -> judged(Set.of())).isInstanceOf(IllegalArgumentException.class);
  }
}
