package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.faults.ModelRangeException;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Grade;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WooferBrief;
import nullplane.scoring.WorkshopSpecs;
import nullplane.units.Range;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WooferSearchTest {
  private static final int STEPS = 45;

  private static ExecutorService executor;
  private static SystemScorer pinnedMass;
  private static SystemScorer family;
  private static Grade gridBest;
  private static double gridResonance;
  private static double gridTotalQ;
  private static Winding gridWinding;

  @BeforeAll
  static void solve() {
    executor = Executors.newFixedThreadPool(4);
    WooferBrief brief =
        WorkshopSpecs.with(
            WorkshopSpecs.brief300(),
            new Range(22, 45),
            new Range(0.4, 1.4),
            Range.pinned(0.045),
            new Range(0.004, 0.014));
    pinnedMass =
        WorkshopSpecs.scorer(
            WorkshopSpecs.coilsOnly(
                WorkshopSpecs.spec(
                    brief,
                    WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 74, 84, -0.25),
                    WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, 80, 90, -0.45, 0.45))));
    family = WorkshopSpecs.scorer(WorkshopSpecs.singleAndPair());
    searchTheGrid(brief);
  }

  @AfterAll
  static void close() {
    executor.shutdown();
  }

  /** The truth: every winding, wiring and E12 coil on every point of a grid over fs and Qts. */
  private static void searchTheGrid(WooferBrief brief) {
    gridBest = new Grade(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    SystemScorer.Workspace space = pinnedMass.newWorkspace();
    for (Winding winding : pinnedMass.windings().windings()) {
      for (int i = 0; i <= STEPS; i++) {
        for (int j = 0; j <= STEPS; j++) {
          double fs = brief.resonanceHz().at((double) i / STEPS);
          double qts = brief.totalQ().at((double) j / STEPS);
          Woofer woofer = brief.woofer("grid", fs, qts, 0.045, winding, WorkshopSpecs.AIR);
          Grade grade = pinnedMass.grade(woofer, winding, space);
          if (grade.compareTo(gridBest) < 0) {
            gridBest = grade;
            gridResonance = fs;
            gridTotalQ = qts;
            gridWinding = winding;
          }
        }
      }
    }
  }

  /** On a small problem the search finds the best of an exhaustive grid, within the grid's step. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void findsTheBestOfTheGrid(long seed) {
    SearchOutcome outcome =
        WooferSearch.run(pinnedMass, new SearchConduct(seed, 3000, 2), executor, SearchWatch.NONE);
    Assessment best = outcome.ranked().get(0);
    assertThat(gridBest.feasible()).isTrue();
    assertThat(best.grade().feasible()).isTrue();
    assertThat(best.grade().costDb()).isLessThanOrEqualTo(gridBest.costDb());
    assertThat(best.motor().orElseThrow().winding()).isEqualTo(gridWinding);
    SmallSignal found = SmallSignal.of(best.woofer(), Mounting.FREE_AIR, WorkshopSpecs.AIR);
    assertThat(Math.abs(found.resonanceHz() - gridResonance)).isLessThan(23.0 / STEPS);
    assertThat(Math.abs(found.totalQ() - gridTotalQ)).isLessThan(1.0 / STEPS);
  }

  @Test
  void threadsNeverShow() {
    SearchOutcome one = run(1, 7);
    SearchOutcome two = run(2, 7);
    SearchOutcome four = run(4, 7);
    assertThat(two).isEqualTo(one);
    assertThat(four).isEqualTo(one);
    assertThat(run(2, 8)).isNotEqualTo(one);
  }

  private static SearchOutcome run(int threads, long seed) {
    return WooferSearch.run(
        family, new SearchConduct(seed, 4000, threads), executor, SearchWatch.NONE);
  }

  @Test
  void rankedWoofersAreBuildableDistinctAndInOrder() {
    SearchOutcome outcome = run(2, 11);
    DesignSpec spec = family.spec();
    assertThat(outcome.ranked()).hasSize(WooferSearch.RANKED);
    for (int i = 0; i < outcome.ranked().size(); i++) {
      Assessment entry = outcome.ranked().get(i);
      assertThat(entry.grade().feasible()).isTrue();
      assertThat(entry.violations()).isEmpty();
      assertThat(entry.woofer().name()).isEqualTo("Woofer " + (i + 1));
      assertThat(spec.woofer().bareMassKg().contains(entry.woofer().bareMassKg())).isTrue();
      MotorDesign motor = entry.motor().orElseThrow();
      assertThat(entry.woofer().resistanceOhm()).isEqualTo(motor.winding().resistanceOhm());
      assertThat(entry.woofer().travelM()).isEqualTo(motor.winding().travelM());
      assertThat(entry.woofer().forceFactorTm() / motor.forceFactorTm())
          .isEqualTo(1, within(1e-12));
      assertThat(spec.woofer().travelM().contains(motor.winding().travelM())).isTrue();
      assertThat(spec.woofer().coil().fluxT().contains(motor.fluxT())).isTrue();
      for (int j = 0; j < i; j++) {
        assertThat(outcome.ranked().get(j).grade()).isLessThanOrEqualTo(entry.grade());
        assertThat(
                Distinctness.distinct(
                    outcome.ranked().get(j).woofer(), entry.woofer(), WorkshopSpecs.AIR))
            .isTrue();
      }
    }
  }

  /**
   * The same woofer scored on its own, as from a data sheet, gets the search's grade to the last
   * bit, since its winding is found again.
   */
  @Test
  void aRankedWooferScoresTheSameOnItsOwn() {
    Assessment best = run(2, 3).ranked().get(0);
    assertThat(family.grade(best.woofer(), family.newWorkspace())).isEqualTo(best.grade());
    assertThat(family.assess(best.woofer())).isEqualTo(best);
  }

  @Test
  void stopsOnRequestWithTheBestSoFar() {
    SearchWatch watch =
        new SearchWatch() {
          private int generations;

          @Override
          public boolean stopWanted() {
            return generations >= 3;
          }

          @Override
          public void generationDone(long evaluations, long budget, Grade best) {
            generations++;
          }
        };
    SearchOutcome outcome =
        WooferSearch.run(family, new SearchConduct(1, 1_000_000, 2), executor, watch);
    assertThat(outcome.generations()).isEqualTo(3);
    assertThat(outcome.stopReason()).startsWith("stopped on request");
    assertThat(outcome.ranked()).isNotEmpty();
  }

  /** A stop that was wanted before the search began still leaves something to rank. */
  @Test
  void evolvesOneGenerationAtLeast() {
    SearchWatch watch =
        new SearchWatch() {
          @Override
          public boolean stopWanted() {
            return true;
          }

          @Override
          public void generationDone(long evaluations, long budget, Grade best) {}
        };
    SearchOutcome outcome =
        WooferSearch.run(family, new SearchConduct(1, 1_000_000, 2), executor, watch);
    assertThat(outcome.generations()).isEqualTo(1);
    assertThat(outcome.ranked()).isNotEmpty();
  }

  /** Deviation in the sixth digit still finds the winding; a rounded sheet is held to the least. */
  @Test
  void aSheetWithoutItsWindingSoundsTheSame() {
    Assessment best = run(2, 3).ranked().get(0);
    Woofer w = best.woofer();
    Woofer rounded = WorkshopSpecs.limited(w, w.travelM() * (1 - 1e-3), w.powerW());
    Assessment sheet = family.assess(rounded);
    assertThat(sheet.motor()).isEmpty();
    for (int s = 0; s < 2; s++) {
      assertThat(sheet.stacks().get(s).curves().levelDb())
          .isEqualTo(best.stacks().get(s).curves().levelDb());
      assertThat(sheet.stacks().get(s).coil()).isEqualTo(best.stacks().get(s).coil());
    }
    assertThat(family.windings().matching(w.resistanceOhm() * (1 + 5e-6), w.travelM()))
        .contains(best.motor().orElseThrow().winding());
    assertThat(family.windings().matching(w.resistanceOhm(), w.travelM() * (1 - 1e-3))).isEmpty();
  }

  @Test
  void aSearchWithoutAnyWindingIsRefused() {
    WooferBrief brief =
        WorkshopSpecs.with(
            WorkshopSpecs.brief300(),
            new Range(40, 45),
            new Range(0.2, 0.25),
            Range.pinned(0.03),
            new Range(0.060, 0.061));
    SystemScorer none =
        WorkshopSpecs.scorer(
            WorkshopSpecs.spec(
                brief, WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 74, 84, -0.25)));
    assertThatThrownBy(
            () -> WooferSearch.run(none, new SearchConduct(1, 2000, 2), executor, SearchWatch.NONE))
        .isInstanceOf(ModelRangeException.class)
        .hasMessageContaining("no coil of stock wire");
  }

  @Test
  void whereNothingIsBuildableTheNearestIsShown() {
    WooferBrief brief =
        WorkshopSpecs.with(
            WorkshopSpecs.brief300(),
            new Range(40, 45),
            new Range(0.2, 0.25),
            Range.pinned(0.03),
            Range.pinned(0.0125));
    SystemScorer impossible =
        WorkshopSpecs.scorer(
            WorkshopSpecs.spec(
                brief, WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 74, 84, -0.25)));
    SearchOutcome outcome =
        WooferSearch.run(impossible, new SearchConduct(1, 2000, 2), executor, SearchWatch.NONE);
    Assessment nearest = outcome.ranked().get(0);
    assertThat(nearest.grade().feasible()).isFalse();
    assertThat(nearest.violations()).isNotEmpty();
  }
}
