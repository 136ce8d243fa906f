package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import nullplane.driver.Woofer;
import nullplane.scoring.Amplifier;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FixedStacks;
import nullplane.scoring.Grade;
import nullplane.scoring.ScoringAxis;
import nullplane.scoring.StackAcoustics;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class ToleranceStudyTest {
  private static final ToleranceConduct CONDUCT = ToleranceConduct.usual(1).withUnits(10_000, 64);
  private static final Batches BATCHES = new Batches(BatchRunner.sequential(), 500);

  private static final DesignSpec SPEC = WorkshopSpecs.coilsOnly(WorkshopSpecs.singleAndPair());

  private static List<StackAcoustics> acoustics;
  private static SystemScorer scorer;
  private static Assessment best;
  private static ToleranceStudy study;

  @BeforeAll
  static void design() {
    acoustics = WorkshopSpecs.acoustics(SPEC, ScoringAxis.of(SPEC));
    scorer = scorerOf(SPEC, acoustics);
    best = scorer.assess(bestOfAGrid(scorer));
    study = ToleranceStudy.of(scorer, best, CONDUCT, BatchRunner.sequential());
  }

  private static SystemScorer scorerOf(DesignSpec spec, List<StackAcoustics> solved) {
    return new SystemScorer(spec, ScoringAxis.of(spec), solved, WorkshopSpecs.AIR);
  }

  /** The best of a coarse grid: a woofer that nearly keeps the corridor, as a search would find. */
  private static Woofer bestOfAGrid(SystemScorer of) {
    SystemScorer.Workspace space = of.newWorkspace();
    Woofer bestSoFar = woofer(of, 30, 0.8, 0.05);
    Grade bestGrade = of.grade(bestSoFar, space);
    for (double fs = 24; fs <= 45; fs += 4) {
      for (double qts = 0.5; qts <= 1.5; qts += 0.1) {
        for (double mass = 0.035; mass <= 0.08; mass += 0.009) {
          Woofer candidate = woofer(of, fs, qts, mass);
          Grade grade = of.grade(candidate, space);
          if (grade.compareTo(bestGrade) < 0) {
            bestGrade = grade;
            bestSoFar = candidate;
          }
        }
      }
    }
    return bestSoFar;
  }

  private static Woofer woofer(SystemScorer of, double fs, double qts, double massKg) {
    return WorkshopSpecs.woofer(of.spec().woofer(), fs, qts, massKg, 0.007);
  }

  /**
   * The windows hold: of 100,000 units drawn inside with other chance at least 95 % are good in
   * every stack; drawn half as wide again they are not.
   */
  @Test
  void windowsHoldAndWiderOnesDoNot() {
    assertThat(study.windows().hold()).isTrue();
    WindowCheck within = drawn(study, 1, 101);
    assertThat(within.share()).isBetween(0.95, 0.97);
    assertThat(within.leastStackShare()).isGreaterThanOrEqualTo(0.95);
    assertThat(drawn(study, 1.5, 102).leastStackShare()).isLessThan(0.95);
    assertThat(study.windows().wider().leastStackShare()).isLessThan(0.95);
  }

  private static WindowCheck drawn(ToleranceStudy of, double factor, long seed) {
    FixedStacks stacks = FixedStacks.of(scorer, best);
    Woofer nominal = best.woofer();
    double[] halfWidths =
        of.windows().windows().stream().mapToDouble(AcceptanceWindow::halfWidth).toArray();
    return WindowTrial.of(
            stacks,
            new PermittedResponse(stacks, nominal, CONDUCT.allowanceDb()),
            nominal,
            new WindowFill(nominal, of.spread(), stacks.air()),
            halfWidths,
            factor,
            new UnitChance(seed, UnitChance.Purpose.CHECK, WindowFill.DEVIATES),
            100_000,
            BATCHES)
        .check();
  }

  /** Each window is as wide as its quantity allows: none is at a limit that nothing set. */
  @Test
  void everyWindowIsSetByTheYieldOrByTwiceTheUsual() {
    for (AcceptanceWindow window : study.windows().windows()) {
      double twice = 2 * window.quantity().practice().lower();
      assertThat(window.halfWidth()).isBetween(0.002, twice + 1e-12);
      assertThat(window.limit() == WindowLimit.TWICE_USUAL)
          .isEqualTo(window.halfWidth() > twice - 1e-9);
      assertThat(window.accepts(window.nominal())).isTrue();
      assertThat(window.accepts(window.upper() * 1.001)).isFalse();
    }
    assertThat(study.windows().accept(best.woofer(), WorkshopSpecs.AIR)).isTrue();
    assertThat(study.windows().acceptedShare()).isBetween(0.1, 1.0);
  }

  /** More spread, less yield; no spread, all good. */
  @Test
  void yieldFallsWithSpread() {
    assertThat(yieldAt(1e-3)).isEqualTo(1);
    double usual = study.production().share();
    assertThat(yieldAt(1)).isEqualTo(usual);
    assertThat(yieldAt(0.5)).isGreaterThan(usual);
    assertThat(yieldAt(1.5)).isLessThan(usual - 0.02);
    StackYield binding = study.production().binding();
    assertThat(binding.share()).isBetween(usual, 1.0);
    assertThat(study.production().stacks())
        .allSatisfy(stack -> assertThat(stack.share()).isGreaterThanOrEqualTo(binding.share()));
  }

  private static double yieldAt(double factor) {
    FixedStacks stacks = FixedStacks.of(scorer, best);
    UnitChance chance = ProductionSpread.chance(CONDUCT.seed());
    ProductionSpread spread = ProductionSpread.usual().times(factor);
    return ProductionRun.of(
            stacks,
            best.woofer(),
            new PermittedResponse(stacks, best.woofer(), CONDUCT.allowanceDb()),
            CONDUCT.units(),
            unit -> spread.unit(best.woofer(), chance, unit),
            BATCHES)
        .share();
  }

  /** Units are judged against the definition, written out: corridor, or 1 dB about the nominal. */
  @Test
  void whatIsPermittedFollowsItsDefinition() {
    for (int s = 0; s < 2; s++) {
      StackYield stack = study.production().stacks().get(s);
      double wanted = scorer.spec().stacks().get(s).levelDb();
      StackAssessment assessed = best.stacks().get(s);
      for (int b = 0; b < stack.nominalDb().size(); b++) {
        double own = stack.nominalDb().at(b);
        assertThat(stack.permittedLowerDb().at(b))
            .isCloseTo(Math.min(wanted - 2, own - 1), within(1e-12));
        assertThat(stack.permittedUpperDb().at(b))
            .isCloseTo(Math.max(wanted + 2, own + 1), within(1e-12));
        assertThat(stack.lowDb().at(b)).isLessThan(own);
        assertThat(stack.highDb().at(b)).isGreaterThan(own);
      }
      assertThat(stack.nominalExcessDb())
          .isCloseTo(assessed.figures().worstExcessDb(), within(1e-9));
      assertThat(stack.nominalInside()).isEqualTo(assessed.figures().worstExcessDb() == 0);
      assertThat(stack.lowOutputMarginDb()).isLessThan(stack.nominalOutputMarginDb());
    }
  }

  /** Same bits in any order of the batches and for any size. */
  @Test
  void theResultDoesNotDependOnHowItRan() {
    BatchRunner backwards =
        (parts, task) -> {
          List<Integer> order = new ArrayList<>(IntStream.range(0, parts).boxed().toList());
          Collections.reverse(order);
          order.forEach(task::accept);
        };
    BatchRunner atOnce = (parts, task) -> IntStream.range(0, parts).parallel().forEach(task);
    ToleranceConduct few = CONDUCT.withUnits(600, 16);
    ToleranceStudy usual = ToleranceStudy.of(scorer, best, few, BatchRunner.sequential());
    assertThat(ToleranceStudy.of(scorer, best, few, backwards)).isEqualTo(usual);
    assertThat(ToleranceStudy.of(scorer, best, few, atOnce)).isEqualTo(usual);
    for (int size : new int[] {1, 7, 5_000}) {
      assertThat(
              ToleranceStudy.of(
                  scorer,
                  best,
                  ProductionSpread.usual(),
                  few,
                  new Batches(BatchRunner.sequential(), size)))
          .isEqualTo(usual);
    }
    ToleranceConduct otherSeed = ToleranceConduct.usual(2).withUnits(600, 16);
    assertThat(ToleranceStudy.of(scorer, best, otherSeed, BatchRunner.sequential()).production())
        .isNotEqualTo(usual.production());
  }

  /** A woofer that leaves the corridor is said to, and its units are held to its own level. */
  @Test
  void aNominalOutsideTheCorridorIsSaidPlainly() {
    Assessment off = scorer.assess(woofer(scorer, 24, 0.5, 0.08));
    ToleranceStudy of =
        ToleranceStudy.of(scorer, off, CONDUCT.withUnits(1_500, 64), BatchRunner.sequential());
    StackYield single = of.production().stacks().get(0);
    assertThat(single.nominalInside()).isFalse();
    assertThat(of.findings())
        .anyMatch(f -> f.startsWith("In stack single the woofer as designed itself leaves"));
    assertThat(of.windows().hold()).isTrue();
  }

  /** Where the load has little room, Re is held tighter, and a load too low is not judged. */
  @Test
  void theLoadIsHeldWhereItCanBe() {
    double load =
        best.stacks().stream().mapToDouble(s -> s.figures().leastLoadOhm()).min().orElseThrow();
    ToleranceStudy near = withLowestLoad(load / 1.02);
    assertThat(near.production().binding().loadBinds()).isTrue();
    assertThat(near.windows().hold()).isTrue();
    assertThat(near.windows().of(MeasuredQuantity.RESISTANCE).halfWidth())
        .isLessThan(0.6 * study.windows().of(MeasuredQuantity.RESISTANCE).halfWidth());
    ToleranceStudy below = withLowestLoad(load * 1.02);
    assertThat(below.production().stacks()).anyMatch(stack -> !stack.loadJudged());
    assertThat(below.findings()).anyMatch(f -> f.contains("load of units is not judged"));
  }

  /** The study with another amplifier; wirings stay those of the best woofer. */
  private static ToleranceStudy withLowestLoad(double ohm) {
    List<StackAcoustics> wired = new ArrayList<>();
    for (int s = 0; s < acoustics.size(); s++) {
      StackBrief brief = best.stacks().get(s).brief();
      wired.add(
          new StackAcoustics(
              new StackBrief(
                  brief.name(),
                  brief.panel(),
                  brief.pistons(),
                  brief.levelDb(),
                  brief.loudestDb(),
                  Optional.of(best.stacks().get(s).wiring())),
              acoustics.get(s).response()));
    }
    DesignSpec spec =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            wired.stream().map(StackAcoustics::brief).toList(),
            SPEC.listening(),
            SPEC.target(),
            new Amplifier(28, ohm));
    return ToleranceStudy.of(
        scorerOf(spec, wired), best, CONDUCT.withUnits(2_000, 64), BatchRunner.sequential());
  }

  /** First-order shares add up to no more than all, totals to no less; loss of error 0.1. */
  @Test
  void influencesAreRankedAndShareTheVariance() {
    ToleranceStudy of =
        ToleranceStudy.of(scorer, best, CONDUCT.withUnits(500, 1024), BatchRunner.sequential());
    List<Influence> ranking = of.influences();
    for (int i = 1; i < ranking.size(); i++) {
      assertThat(ranking.get(i).largestDeviationDb())
          .isLessThanOrEqualTo(ranking.get(i - 1).largestDeviationDb());
    }
    for (int s = 0; s < 2; s++) {
      int stack = s;
      double first = ranking.stream().mapToDouble(i -> i.stacks().get(stack).firstOrder()).sum();
      double total = ranking.stream().mapToDouble(i -> i.stacks().get(stack).total()).sum();
      assertThat(first).isBetween(0.0, 1.1);
      assertThat(total).isGreaterThan(0.9);
    }
    // 15 % of an inductance that is a small part of the impedance in the band: the least of all
    assertThat(ranking.get(ranking.size() - 1).variable()).isEqualTo(ProductionVariable.INDUCTANCE);
  }
}
