package nullplane.search;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.units.Curve;

/**
 * Searches the best compromises between several objectives under constraints, by NSGA-II with an
 * archive of all that was found. The archive is the result.
 *
 * <p>Evolution runs on the calling thread; candidates are evaluated in batches by the problem,
 * which may spread them. Chance depends on seed and generation alone, a merit on its candidate
 * alone: the same problem, seed and number of evaluations give the same bits on any number of
 * threads, and after any number of interruptions. A limit in time, or a stop on request, ends the
 * same course early.
 *
 * <p>With a {@link StallRule}, a population that makes no progress is given up for a fresh one; the
 * archive stays. Progress is the dominated volume up to the problem's reference.
 *
 * <p>Source: K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, A fast and elitist multiobjective genetic
 * algorithm: NSGA-II, IEEE Trans. Evol. Comput. 6 (2002) 182.
 */
public final class ParetoSearch {
  /** Version of the search; raise it whenever the same input gives another course. */
  static final int VERSION = 2;

  private static final StateCodec CODEC = new StateCodec(VERSION);

  private final ParetoProblem problem;
  private final ParetoConduct conduct;
  private final ParetoWatch watch;
  private final StateKeeper keeper;
  private final Evolution evolution;
  private final ParetoArchive archive;
  private final ConvergenceHistory history;
  private final List<double[]> seeds;
  private final long spentBeforeMillis;
  private final long startNanos = System.nanoTime();

  private List<Candidate> population;
  private Stall stall;
  private long generation;
  private long evaluations;

  private ParetoSearch(
      ParetoProblem problem,
      ParetoConduct conduct,
      List<double[]> seeds,
      SearchState state,
      ParetoWatch watch,
      StateKeeper keeper) {
    if (problem.genes() < 1 || problem.objectives() < 1) {
      throw new IllegalArgumentException(
          problem.genes() + " genes, " + problem.objectives() + " objectives; allowed: 1 or more");
    }
    if (problem.reference().size() != problem.objectives()) {
      throw new IllegalArgumentException(
          "a reference of "
              + problem.reference().size()
              + " numbers; allowed: as many as objectives, "
              + problem.objectives());
    }
    if (conduct.archive() < 2 * problem.objectives()) {
      throw new IllegalArgumentException(
          "an archive of " + conduct.archive() + "; allowed: twice the objectives or more");
    }
    this.problem = problem;
    this.conduct = conduct;
    this.watch = watch;
    this.keeper = keeper;
    this.seeds = seeds.stream().map(double[]::clone).toList();
    this.evolution = new Evolution(problem, conduct.seed(), conduct.population());
    this.archive = new ParetoArchive(conduct.archive(), state.archive());
    this.history = new ConvergenceHistory(state.historyStride(), state.history());
    this.spentBeforeMillis = state.spentMillis();
    this.population = state.population();
    this.stall = state.stall();
    this.generation = state.generation();
    this.evaluations = state.evaluations();
  }

  /**
   * Runs a search from its start.
   *
   * @param problem what is searched
   * @param conduct how it runs
   * @param seeds genes of candidates to start with, shares from 0 to 1; may be empty, and only as
   *     many as a population are used
   * @param watch hears of progress and may end the search
   * @param keeper keeps the state for a resumption
   * @return the front, and how it was found
   */
  public static ParetoOutcome run(
      ParetoProblem problem,
      ParetoConduct conduct,
      List<double[]> seeds,
      ParetoWatch watch,
      StateKeeper keeper) {
    SearchState start =
        new SearchState(
            problem.digest(),
            conduct.shape(),
            0,
            0,
            0,
            List.of(),
            List.of(),
            Stall.NONE,
            ConvergenceHistory.firstStride(problem.objectives()),
            List.of());
    return new ParetoSearch(problem, conduct, seeds, start, watch, keeper).search();
  }

  /**
   * Goes on with a search from a kept state, as if it had not been interrupted. Budgets may be
   * others than before; a search that was ended by its evaluations and is given more goes on from
   * there.
   *
   * @param problem what is searched, with the same digest
   * @param conduct how it runs; all but the budgets as before
   * @param state bytes that a {@link StateKeeper} got
   * @param watch hears of progress and may end the search
   * @param keeper keeps the state for another resumption
   * @return the front, and how it was found
   * @throws UnusableStateException if the state is damaged, or belongs to another problem, conduct
   *     or version
   */
  public static ParetoOutcome resume(
      ParetoProblem problem,
      ParetoConduct conduct,
      byte[] state,
      ParetoWatch watch,
      StateKeeper keeper)
      throws UnusableStateException {
    SearchState kept =
        CODEC.decode(
            state, problem.digest(), conduct.shape(), problem.genes(), problem.objectives());
    return new ParetoSearch(problem, conduct, List.of(), kept, watch, keeper).search();
  }

  private ParetoOutcome search() {
    long keptNanos = System.nanoTime();
    Optional<String> reason = reasonToStop();
    while (reason.isEmpty()) {
      evolve();
      assess();
      if (history.wants(generation)) {
        history.add(point());
      }
      watch.generationDone(evaluations, conduct.evaluations(), history.latest());
      if (Duration.ofNanos(System.nanoTime() - keptNanos).compareTo(keeper.interval()) >= 0) {
        keep();
        keptNanos = System.nanoTime();
      }
      reason = reasonToStop();
    }
    keep();
    return outcome(reason.get());
  }

  private Optional<String> reasonToStop() {
    if (conduct.stall().isPresent() && stall.ended(conduct.stall().get())) {
      return Optional.of(stalled(conduct.stall().get()));
    }
    if (evaluations >= conduct.evaluations()) {
      return Optional.of("budget of " + conduct.evaluations() + " evaluations used");
    }
    if (evaluations == 0) {
      return Optional.empty();
    }
    if (watch.stopWanted()) {
      return Optional.of(
          "stopped on request after " + evaluations + " evaluations, with the best so far");
    }
    if (conduct.time().isPresent() && spentMillis() >= conduct.time().get().toMillis()) {
      return Optional.of(
          "time of "
              + conduct.time().get().toMillis() / 1000.0
              + " s used, after "
              + evaluations
              + " evaluations");
    }
    return Optional.empty();
  }

  private String stalled(StallRule rule) {
    String measure =
        archive.feasible() ? "the front grew by less than " : "the violation fell by less than ";
    String window =
        measure
            + BigDecimal.valueOf(rule.gain()).movePointRight(2).stripTrailingZeros().toPlainString()
            + " % of its "
            + (archive.feasible() ? "hypervolume" : "value")
            + " in "
            + rule.window()
            + " generations";
    String restarts =
        rule.restarts() == 0
            ? ""
            : ", and " + rule.restarts() + " fresh populations in a row brought no more either";
    return "no more progress: " + window + restarts + "; " + evaluations + " evaluations";
  }

  private void evolve() {
    generation++;
    int count = (int) Math.min(conduct.population(), conduct.evaluations() - evaluations);
    List<double[]> genes =
        population.isEmpty()
            ? evolution.fresh(generation, generation == 1 ? seeds : List.of(), count)
            : evolution.children(generation, population, count);
    List<Candidate> children = evolution.evaluated(genes);
    evaluations += count;
    children.forEach(archive::offer);
    population = evolution.survivors(population, children);
  }

  /** Measures progress, and gives the population up if there was none for long. */
  private void assess() {
    if (conduct.stall().isEmpty()) {
      return;
    }
    StallRule rule = conduct.stall().get();
    if (generation % rule.stride() != 0) {
      return;
    }
    stall = stall.measured(mark(population), generation, rule.gain());
    if (generation - stall.bestGeneration() >= rule.window()) {
      stall = stall.givenUp(mark(archive.members()), generation, rule.gain());
      population = List.of();
    }
  }

  private Stall.Mark mark(List<Candidate> candidates) {
    double violation = Double.MAX_VALUE;
    List<Curve> feasible = new ArrayList<>();
    for (Candidate candidate : candidates) {
      violation = Math.min(violation, candidate.merit().violation());
      if (candidate.merit().isFeasible()) {
        feasible.add(candidate.merit().objectives());
      }
    }
    return new Stall.Mark(violation, Hypervolume.of(feasible, problem.reference()));
  }

  private ConvergencePoint point() {
    List<Candidate> members = archive.members();
    Stall.Mark mark = mark(members);
    double[] bests = members.get(0).merit().objectives().toArray();
    for (Candidate member : members) {
      for (int i = 0; i < bests.length; i++) {
        bests[i] = Math.min(bests[i], member.merit().objectives().at(i));
      }
    }
    return new ConvergencePoint(
        generation,
        evaluations,
        restarts(),
        mark.violation(),
        mark.hypervolume(),
        Curve.of(bests),
        members.size());
  }

  private int restarts() {
    return stall.restarts(conduct.stall().isPresent() && stall.ended(conduct.stall().get()));
  }

  private long spentMillis() {
    return conduct.time().isEmpty()
        ? spentBeforeMillis
        : spentBeforeMillis + (System.nanoTime() - startNanos) / 1_000_000;
  }

  private void keep() {
    SearchState state =
        new SearchState(
            problem.digest(),
            conduct.shape(),
            generation,
            evaluations,
            spentMillis(),
            population,
            archive.members(),
            stall,
            history.stride(),
            history.points());
    keeper.keep(CODEC.encode(state, problem.genes(), problem.objectives()));
  }

  private ParetoOutcome outcome(String reason) {
    List<ConvergencePoint> points = new ArrayList<>(history.points());
    if (points.isEmpty() || points.get(points.size() - 1).generation() != generation) {
      points.add(point());
    }
    return new ParetoOutcome(
        archive.thinned(), evaluations, generation, restarts(), points, reason, conduct.seed());
  }
}
