package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class ParetoSearchTest {
  private static final ParetoConduct SHORT =
      ParetoConduct.of(7, 1490).withSizes(20, 24).withStall(new StallRule(10, 0.05, 4));

  /** Keeps all states, after every generation. */
  private static final class Kept implements StateKeeper {
    final List<byte[]> states = new ArrayList<>();

    @Override
    public Duration interval() {
      return Duration.ZERO;
    }

    @Override
    public void keep(byte[] state) {
      states.add(state.clone());
    }

    byte[] last() {
      return states.get(states.size() - 1);
    }
  }

  private static ParetoWatch stopAfter(int generations) {
    return new ParetoWatch() {
      private int done;

      @Override
      public boolean stopWanted() {
        return done >= generations;
      }

      @Override
      public void generationDone(long evaluations, long budget, ConvergencePoint latest) {
        done++;
      }
    };
  }

  private static ParetoOutcome run(ParetoProblem problem, ParetoConduct conduct, Kept kept) {
    return ParetoSearch.run(problem, conduct, List.of(), ParetoWatch.NONE, kept);
  }

  @Test
  void resumedAfterAnyGenerationItEndsWithTheSameBytes() throws Exception {
    ParetoProblem problem = FrontProblems.tnk();
    Kept undisturbed = new Kept();
    ParetoOutcome expected = run(problem, SHORT, undisturbed);
    assertThat(expected.evaluations()).isEqualTo(1490);
    assertThat(expected.restarts()).as("a fresh population is part of the course").isPositive();
    for (byte[] state : undisturbed.states) {
      Kept resumed = new Kept();
      ParetoOutcome outcome = ParetoSearch.resume(problem, SHORT, state, ParetoWatch.NONE, resumed);
      assertThat(resumed.last()).isEqualTo(undisturbed.last());
      assertThat(outcome).isEqualTo(expected);
    }
  }

  @Test
  void stoppedAndResumedTimeAndAgainItEndsWithTheSameBytes() throws Exception {
    ParetoProblem problem = FrontProblems.dtlz2(3);
    Kept undisturbed = new Kept();
    ParetoOutcome expected = run(problem, SHORT, undisturbed);
    Kept kept = new Kept();
    ParetoOutcome outcome = ParetoSearch.run(problem, SHORT, List.of(), stopAfter(1), kept);
    assertThat(outcome.stopReason()).startsWith("stopped on request after 20 evaluations");
    while (outcome.evaluations() < expected.evaluations()) {
      outcome = ParetoSearch.resume(problem, SHORT, kept.last(), stopAfter(7), kept);
    }
    assertThat(kept.last()).isEqualTo(undisturbed.last());
    assertThat(outcome).isEqualTo(expected);
  }

  @Test
  void threadsDoNotShow() {
    FrontProblems.Posed serial = FrontProblems.zdt3();
    FrontProblems.Posed parallel =
        new FrontProblems.Posed(
            "ZDT3", 30, serial.reference(), g -> serial.evaluate(List.of(g)).get(0)) {
          @Override
          public List<Merit> evaluate(List<double[]> batch) {
            return batch.parallelStream().map(g -> serial.evaluate(List.of(g)).get(0)).toList();
          }
        };
    Kept one = new Kept();
    Kept many = new Kept();
    run(serial, SHORT, one);
    run(parallel, SHORT, many);
    assertThat(many.last()).isEqualTo(one.last());
  }

  @Test
  void aDamagedStateIsNeverUsed() {
    ParetoProblem problem = FrontProblems.bnh();
    Kept kept = new Kept();
    ParetoSearch.run(problem, SHORT, List.of(), stopAfter(1), kept);
    byte[] state = kept.last();
    for (int i = 0; i < state.length; i += 1 + i / 64) {
      byte[] damaged = state.clone();
      damaged[i] ^= 0x10;
      assertRefused(problem, SHORT, damaged, i < 7 ? "no kept state" : "damaged");
      assertRefused(problem, SHORT, Arrays.copyOf(state, i), "");
    }
    assertRefused(problem, SHORT, Arrays.copyOf(state, state.length + 8), "damaged");
  }

  @Test
  void aForeignStateIsNeverUsed() throws Exception {
    ParetoProblem problem = FrontProblems.zdt1();
    Kept kept = new Kept();
    ParetoSearch.run(problem, SHORT, List.of(), stopAfter(1), kept);
    byte[] state = kept.last();
    assertRefused(FrontProblems.zdt2(), SHORT, state, "another problem");
    assertRefused(problem, SHORT.withSizes(22, 24), state, "other settings (seed 7, population 20");
    assertRefused(
        problem, ParetoConduct.of(8, 1490).withSizes(20, 24), state, "other settings (seed 7");
    StateCodec later = new StateCodec(ParetoSearch.VERSION + 1);
    assertThatThrownBy(() -> later.decode(state, problem.digest(), SHORT.shape(), 30, 2))
        .isInstanceOf(UnusableStateException.class)
        .hasMessage("it was kept by version 2 of the search; this is version 3");
    // More evaluations are no other setting.
    ParetoConduct longer = new ParetoConduct(7, 3000, SHORT.time(), 20, 24, SHORT.stall());
    assertThat(
            ParetoSearch.resume(problem, longer, state, ParetoWatch.NONE, StateKeeper.NONE)
                .evaluations())
        .isEqualTo(3000);
  }

  private static void assertRefused(
      ParetoProblem problem, ParetoConduct conduct, byte[] state, String why) {
    assertThatThrownBy(
            () -> ParetoSearch.resume(problem, conduct, state, ParetoWatch.NONE, StateKeeper.NONE))
        .isInstanceOf(UnusableStateException.class)
        .hasMessageContaining(why);
  }

  /** A sum of squares about 0.3, over two continuous genes; the least is 0. */
  private static FrontProblems.Posed bowl() {
    return new FrontProblems.Posed(
        "bowl",
        2,
        Curve.of(2),
        g -> Merit.feasible(1 + Math.pow(g[0] - 0.3, 2) + Math.pow(g[1] - 0.3, 2)));
  }

  @Test
  void itSaysThatThereIsNoMoreProgress() {
    ParetoConduct conduct =
        ParetoConduct.of(3, 10_000_000).withSizes(40, 20).withStall(new StallRule(20, 1e-6, 2));
    ParetoOutcome outcome =
        ParetoSearch.run(bowl(), conduct, List.of(), ParetoWatch.NONE, StateKeeper.NONE);
    assertThat(outcome.stopReason())
        .startsWith("no more progress: the front grew by less than 0.0001 % of its hypervolume")
        .contains("in 20 generations, and 2 fresh populations in a row brought no more either");
    assertThat(outcome.restarts()).isGreaterThanOrEqualTo(2);
    assertThat(outcome.front()).hasSize(1);
    assertThat(outcome.front().get(0).merit().objectives().at(0)).isCloseTo(1, within(1e-6));
  }

  /** Two valleys: the wide one ends at 1.2, the narrow one at 1; fresh populations find it. */
  @Test
  void freshPopulationsLeaveALocalOptimum() {
    FrontProblems.Posed valleys =
        new FrontProblems.Posed(
            "valleys",
            1,
            Curve.of(2),
            g ->
                Merit.feasible(
                    1 + Math.min(0.2 + Math.abs(g[0] - 0.3), 20 * Math.abs(g[0] - 0.9))));
    int better = 0;
    for (int seed = 1; seed <= 10; seed++) {
      ParetoConduct still = ParetoConduct.of(seed, 4000).withSizes(4, 10);
      ParetoConduct fresh = still.withStall(new StallRule(10, 1e-3, 1000));
      double once = least(valleys, still);
      double often = least(valleys, fresh);
      assertThat(often).as("seed %d", seed).isLessThan(1.2);
      better += once >= 1.2 ? 1 : 0;
    }
    assertThat(better).as("seeds on which one population stays in the wide valley").isPositive();
  }

  private static double least(ParetoProblem problem, ParetoConduct conduct) {
    return ParetoSearch.run(problem, conduct, List.of(), ParetoWatch.NONE, StateKeeper.NONE)
        .front()
        .get(0)
        .merit()
        .objectives()
        .at(0);
  }

  @Test
  void timeEndsIt() {
    ParetoConduct conduct = ParetoConduct.of(1, Long.MAX_VALUE).withTime(Duration.ofMillis(50));
    ParetoOutcome outcome =
        ParetoSearch.run(
            FrontProblems.zdt1(), conduct, List.of(), ParetoWatch.NONE, StateKeeper.NONE);
    assertThat(outcome.stopReason()).startsWith("time of 0.05 s used, after ");
    assertThat(outcome.front()).isNotEmpty();
  }

  @Test
  void whenNothingIsFeasibleTheLeastViolatingIsGiven() {
    FrontProblems.Posed hopeless =
        new FrontProblems.Posed(
            "hopeless", 3, Curve.of(1, 1), g -> Merit.infeasible(1 + g[0] + g[1] + g[2], 2));
    ParetoOutcome outcome =
        ParetoSearch.run(
            hopeless, ParetoConduct.of(5, 4000), List.of(), ParetoWatch.NONE, StateKeeper.NONE);
    assertThat(outcome.front()).hasSize(1);
    assertThat(outcome.front().get(0).merit().violation()).isCloseTo(1, within(0.01));
    List<ConvergencePoint> history = outcome.history();
    assertThat(history.get(history.size() - 1).violation())
        .isEqualTo(outcome.front().get(0).merit().violation());
  }

  @Test
  void seedsAreTakenInFirst() {
    double[] best = new double[30];
    best[0] = 0.25;
    ParetoOutcome outcome =
        ParetoSearch.run(
            FrontProblems.zdt1(),
            ParetoConduct.of(1, 100),
            List.of(best),
            ParetoWatch.NONE,
            StateKeeper.NONE);
    assertThat(outcome.front())
        .contains(new Candidate(Curve.of(best), Merit.feasible(0.25, 1 - Math.sqrt(0.25))));
  }

  /**
   * Genes that count: of the front of all 12^4 candidates, evaluated one by one, a thousandth of
   * the volume at most is missed, on 20 of 20 seeds.
   */
  @Test
  void theFrontOfAProblemThatCountsIsFound() {
    int values = 12;
    FrontProblems.Posed counted =
        new FrontProblems.Posed(
            "counted",
            4,
            Curve.of(200, 200),
            g -> {
              int[] v =
                  IntStream.range(0, 4).map(i -> ParetoProblem.choice(g[i], values)).toArray();
              double low = 0;
              double high = 0;
              for (int i = 0; i < 4; i++) {
                low += Math.pow(v[i] - i, 2);
                high += Math.pow(v[i] - 11 + i, 2);
              }
              return v[0] * v[3] > 40
                  ? Merit.infeasible(v[0] * v[3] - 40, 2)
                  : Merit.feasible(low, high);
            }) {
          @Override
          public int choices(int gene) {
            return values;
          }
        };
    ParetoArchive all = new ParetoArchive(1000, List.of());
    for (int i = 0; i < values * values * values * values; i++) {
      double[] genes = new double[4];
      for (int j = 0, rest = i; j < 4; j++, rest /= values) {
        genes[j] = ParetoProblem.share(rest % values, values);
      }
      all.offer(new Candidate(Curve.of(genes), counted.evaluate(List.of(genes)).get(0)));
    }
    double whole = volume(all.members(), counted);
    assertThat(all.members()).hasSizeGreaterThan(40);
    for (int seed = 1; seed <= 20; seed++) {
      ParetoOutcome outcome =
          ParetoSearch.run(
              counted, ParetoConduct.of(seed, 4000), List.of(), ParetoWatch.NONE, StateKeeper.NONE);
      assertThat(volume(outcome.front(), counted))
          .as("seed %d", seed)
          .isBetween(0.999 * whole, whole);
    }
  }

  private static double volume(List<Candidate> front, ParetoProblem problem) {
    return Hypervolume.of(
        front.stream().map(candidate -> candidate.merit().objectives()).toList(),
        problem.reference());
  }

  @Test
  void whatIsKeptStaysBounded() {
    Kept kept = new Kept();
    ParetoConduct conduct = ParetoConduct.of(2, 6000).withSizes(4, 10);
    ParetoOutcome outcome =
        ParetoSearch.run(FrontProblems.dtlz2(2), conduct, List.of(), ParetoWatch.NONE, kept);
    assertThat(outcome.generations()).isEqualTo(1500);
    int most = kept.states.stream().mapToInt(s -> s.length).max().orElseThrow();
    // 4 of population, 15 of archive with 14 numbers each; 512 entries of the history.
    assertThat(most).isLessThan(8 * (19 * 14 + 512 * 7) + 400);
    assertThat(outcome.history())
        .hasSizeBetween(ConvergenceHistory.MOST / 2, ConvergenceHistory.MOST + 1);
    assertThat(outcome.history())
        .isSortedAccordingTo(java.util.Comparator.comparingLong(ConvergencePoint::generation));
    assertThat(outcome.history().get(outcome.history().size() - 1).evaluations()).isEqualTo(6000);
  }

  @Test
  void wrongInputIsToldApart() {
    assertThatThrownBy(() -> Merit.feasible(1, Double.NaN)).hasMessageContaining("objective 1");
    assertThatThrownBy(() -> ParetoConduct.of(1, 99)).hasMessageContaining("allowed");
    assertThatThrownBy(() -> ParetoConduct.of(1, 100).withSizes(5, 10))
        .hasMessageContaining("even");
    assertThatThrownBy(
            () ->
                ParetoSearch.run(
                    bowl(),
                    ParetoConduct.of(1, 100),
                    List.of(new double[] {0.5, 1.5}),
                    ParetoWatch.NONE,
                    StateKeeper.NONE))
        .hasMessage("gene 1 is 1.5; allowed: 0 to 1");
  }
}
