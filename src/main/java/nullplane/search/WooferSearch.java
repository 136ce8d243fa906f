package nullplane.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import nullplane.driver.Woofer;
import nullplane.faults.ModelRangeException;
import nullplane.scoring.Assessment;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.Grade;
import nullplane.scoring.SystemScorer;

/**
 * Searches woofers together with their networks: NSGA-II over all objectives, then a polish of the
 * best by the priorities, stepping along one quantity at a time with the best networks for each
 * woofer, then the same for the best woofer that differs from all ranked before it.
 *
 * <p>Evolution runs on one thread with one seeded source of chance; only scoring is spread, and a
 * score depends on its candidate alone. So the same spec and seed give the same result on any
 * number of threads, and after any number of interruptions that are resumed.
 */
public final class WooferSearch {
  /** How many distinct woofers are ranked. */
  public static final int RANKED = 5;

  private static final int POPULATION = 100;
  private static final int ARCHIVE = 120;
  private static final double FIRST_STEP = 0.04;
  private static final double AGAIN_STEP = 0.005;
  private static final double LAST_STEP = 1e-4;
  private static final int MOST_POLISH_ROUNDS = 400;
  private static final int MOST_REWINDINGS = 20;

  private final SystemScorer scorer;
  private final SearchPlan plan;
  private final SearchConduct conduct;
  private final SearchWatch watch;
  private final CandidateScorer candidates;
  private long polishEvaluations;
  private boolean hurry;

  private WooferSearch(
      SystemScorer scorer,
      SearchPlan plan,
      SearchConduct conduct,
      ExecutorService executor,
      SearchWatch watch) {
    this.scorer = scorer;
    this.plan = plan;
    this.conduct = conduct;
    this.watch = watch;
    this.candidates = new CandidateScorer(scorer, plan, conduct.threads(), executor);
  }

  /**
   * Runs a search.
   *
   * @param scorer scores a woofer on the spec
   * @param conduct seed, budget, threads
   * @param executor runs the scoring tasks
   * @param watch hears of progress and may end the search
   * @return the ranked woofers and how they were found; infeasible ones are ranked only when
   *     nothing feasible was found
   * @throws ModelRangeException if the spec admits no winding of stock wire
   */
  public static SearchOutcome run(
      SystemScorer scorer, SearchConduct conduct, ExecutorService executor, SearchWatch watch) {
    return run(scorer, conduct, executor, watch, SearchMemory.NONE);
  }

  /**
   * Runs a search that can be resumed.
   *
   * @param scorer scores a woofer on the spec
   * @param conduct seed, budget, threads
   * @param executor runs the scoring tasks
   * @param watch hears of progress and may end the search
   * @param memory keeps the search's state, and gives that of an earlier run that was cut off
   * @return the same to the bit as that of an undisturbed run
   * @throws ModelRangeException if the spec admits no winding of stock wire
   */
  public static SearchOutcome run(
      SystemScorer scorer,
      SearchConduct conduct,
      ExecutorService executor,
      SearchWatch watch,
      SearchMemory memory) {
    if (scorer.windings().windings().isEmpty()) {
      throw new ModelRangeException(
          "coil",
          "the combination of Re, travel, formers and gap heights",
          "no coil of stock wire has both this Re and this travel; widen either");
    }
    SearchPlan plan = new SearchPlan(scorer.spec().woofer(), scorer.windings(), scorer.air());
    return new WooferSearch(scorer, plan, conduct, executor, watch).search(memory);
  }

  private SearchOutcome search(SearchMemory memory) {
    FamilyProblem problem =
        new FamilyProblem(candidates, plan, scorer.networkChoices(), memory.digest());
    ParetoConduct pareto =
        new ParetoConduct(
            conduct.seed(),
            conduct.evaluations(),
            conduct.time(),
            POPULATION,
            ARCHIVE,
            Optional.of(StallRule.USUAL));
    ParetoOutcome outcome = memory.run(problem, pareto, watching());
    List<ScoredGenes> ranked = rank(outcome.front());
    List<Assessment> assessments = new ArrayList<>();
    for (ScoredGenes entry : ranked) {
      Woofer woofer = plan.woofer(entry.genes()).withName("Woofer " + (assessments.size() + 1));
      assessments.add(scorer.assess(woofer, plan.winding(entry.genes())));
    }
    return new SearchOutcome(
        assessments,
        new FrontKeeper(scorer, plan, candidates, conduct.seed()).front(outcome.front(), ranked),
        outcome.evaluations() + polishEvaluations,
        outcome.generations(),
        outcome.restarts(),
        outcome.history(),
        outcome.stopReason() + (hurry ? "" : ", then the best ones polished"),
        conduct.seed());
  }

  private ParetoWatch watching() {
    return new ParetoWatch() {
      @Override
      public boolean stopWanted() {
        hurry |= watch.stopWanted();
        return hurry;
      }

      @Override
      public void generationDone(long evaluations, long budget, ConvergencePoint latest) {
        watch.generationDone(
            evaluations, budget, new Grade(latest.violation(), latest.bestCostDb()));
      }
    };
  }

  /** Picks and polishes distinct woofers, best first. */
  private List<ScoredGenes> rank(List<Candidate> front) {
    List<ScoredGenes> found = withBestNetworks(front);
    boolean anyFeasible = !found.isEmpty() && found.get(0).grade().feasible();
    List<Woofer> taken = new ArrayList<>();
    List<ScoredGenes> chosen = new ArrayList<>();
    for (int rank = 0; rank < RANKED; rank++) {
      ScoredGenes best = null;
      for (ScoredGenes candidate : found) {
        if (anyFeasible && !candidate.grade().feasible()) {
          break;
        }
        if (isDistinct(plan.woofer(candidate.genes()), taken)) {
          best = candidate;
          break;
        }
      }
      if (best == null) {
        break;
      }
      ScoredGenes polished = hurry ? best : polish(best, taken);
      chosen.add(polished);
      taken.add(plan.woofer(polished.genes()));
    }
    Collections.sort(chosen);
    return chosen;
  }

  /** Woofers of the front, each with the networks that suit the priorities best, best first. */
  private List<ScoredGenes> withBestNetworks(List<Candidate> front) {
    List<double[]> woofers = new ArrayList<>();
    for (Candidate candidate : front) {
      woofers.add(Arrays.copyOf(candidate.genes().toArray(), SearchPlan.GENES));
    }
    List<FamilyScore> scores = candidates.scoreBest(woofers);
    polishEvaluations += woofers.size();
    List<ScoredGenes> found = new ArrayList<>();
    for (int i = 0; i < woofers.size(); i++) {
      found.add(new ScoredGenes(woofers.get(i), scores.get(i).grade()));
    }
    Collections.sort(found);
    return found;
  }

  private boolean isDistinct(Woofer woofer, List<Woofer> taken) {
    for (Woofer other : taken) {
      if (!Distinctness.distinct(woofer, other, plan.air())) {
        return false;
      }
    }
    return true;
  }

  /**
   * Climbs, then tries every winding of about the same travel, and climbs again from where one of
   * them is better.
   */
  private ScoredGenes polish(ScoredGenes start, List<Woofer> taken) {
    ScoredGenes best = climb(start, FIRST_STEP, taken);
    for (int round = 0; round < MOST_REWINDINGS; round++) {
      ScoredGenes rewound = bestOf(best, plan.rewound(best.genes()), taken);
      if (rewound.equals(best)) {
        return best;
      }
      best = climb(rewound, AGAIN_STEP, taken);
    }
    return best;
  }

  /** Steps along each free gene, both ways, halving the step when nothing gains. */
  private ScoredGenes climb(ScoredGenes start, double firstStep, List<Woofer> taken) {
    ScoredGenes best = start;
    double step = firstStep;
    for (int round = 0; round < MOST_POLISH_ROUNDS && step >= LAST_STEP; round++) {
      ScoredGenes better = bestOf(best, neighbours(best.genes(), step), taken);
      if (better.equals(best)) {
        step /= 2;
      }
      best = better;
    }
    return best;
  }

  /** Returns the best of a known candidate and others that are distinct from those taken. */
  private ScoredGenes bestOf(ScoredGenes known, List<double[]> others, List<Woofer> taken) {
    List<double[]> trials = new ArrayList<>();
    for (double[] trial : others) {
      if (isDistinct(plan.woofer(trial), taken)) {
        trials.add(trial);
      }
    }
    List<FamilyScore> scores = candidates.scoreBest(trials);
    polishEvaluations += trials.size();
    ScoredGenes best = known;
    for (int i = 0; i < trials.size(); i++) {
      if (scores.get(i).grade().compareTo(best.grade()) < 0) {
        best = new ScoredGenes(trials.get(i), scores.get(i).grade());
      }
    }
    return best;
  }

  /** Single steps and pairs of steps, so that a narrow valley across two quantities is followed. */
  private List<double[]> neighbours(double[] genes, double step) {
    List<double[]> all = new ArrayList<>();
    for (int a = 0; a < SearchPlan.GENES; a++) {
      if (!plan.isFree(a)) {
        continue;
      }
      for (int signA = -1; signA <= 1; signA += 2) {
        addMoved(all, genes, a, signA * step, a, 0);
        for (int b = 0; b < a; b++) {
          if (plan.isFree(b)) {
            addMoved(all, genes, a, signA * step, b, step);
            addMoved(all, genes, a, signA * step, b, -step);
          }
        }
      }
    }
    return all;
  }

  private void addMoved(List<double[]> all, double[] genes, int a, double byA, int b, double byB) {
    double[] moved = genes.clone();
    moved[a] = plan.moved(moved, a, byA);
    if (b != a) {
      moved[b] = plan.moved(moved, b, byB);
    }
    all.add(moved);
  }
}
