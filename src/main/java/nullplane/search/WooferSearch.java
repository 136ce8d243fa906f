package nullplane.search;

import io.jenetics.DoubleChromosome;
import io.jenetics.DoubleGene;
import io.jenetics.GaussianMutator;
import io.jenetics.Genotype;
import io.jenetics.MeanAlterer;
import io.jenetics.Mutator;
import io.jenetics.Phenotype;
import io.jenetics.TournamentSelector;
import io.jenetics.UniformCrossover;
import io.jenetics.engine.Engine;
import io.jenetics.engine.EvolutionResult;
import io.jenetics.util.ISeq;
import io.jenetics.util.RandomRegistry;
import io.jenetics.util.Seq;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import nullplane.driver.Woofer;
import nullplane.faults.ModelRangeException;
import nullplane.scoring.Assessment;
import nullplane.scoring.Grade;
import nullplane.scoring.SystemScorer;
import nullplane.units.Curve;

/**
 * Searches woofers: a genetic search, then a polish of the best by stepping along one quantity at a
 * time, then the same for the best woofer that differs from all ranked before it.
 *
 * <p>Candidates are compared feasible first (K. Deb, Comput. Methods Appl. Mech. Eng. 186 (2000)
 * 311). Evolution itself runs on one thread with one seeded source of chance; only scoring is
 * spread, and a grade depends on its candidate alone. So the same spec and seed give the same
 * result on any number of threads.
 */
public final class WooferSearch {
  /** How many distinct woofers are ranked. */
  public static final int RANKED = 5;

  private static final int POPULATION = 400;
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
    if (scorer.windings().windings().isEmpty()) {
      throw new ModelRangeException(
          "coil",
          "the combination of Re, travel, formers and gap heights",
          "no coil of stock wire has both this Re and this travel; widen either");
    }
    SearchPlan plan = new SearchPlan(scorer.spec().woofer(), scorer.windings(), scorer.air());
    return new WooferSearch(scorer, plan, conduct, executor, watch).search();
  }

  private SearchOutcome search() {
    List<Double> bestCosts = new ArrayList<>();
    boolean stopped = RandomRegistry.with(new Random(conduct.seed()), random -> evolve(bestCosts));
    List<Assessment> ranked = rank(stopped);
    String reason =
        stopped
            ? "stopped on request with the best so far"
            : "budget of "
                + conduct.evaluations()
                + " evaluations used, then the best ones polished";
    return new SearchOutcome(
        ranked,
        candidates.evaluations(),
        bestCosts.size(),
        Curve.of(bestCosts.stream().mapToDouble(Double::doubleValue).toArray()),
        reason,
        conduct.seed());
  }

  /**
   * Evolves until the budget is used; returns whether a stop was wanted before that. One generation
   * is always evolved, so that there is a best.
   */
  private boolean evolve(List<Double> bestCosts) {
    Genotype<DoubleGene> form = Genotype.of(DoubleChromosome.of(0, 1, SearchPlan.GENES));
    Engine<DoubleGene, Grade> engine =
        new Engine.Builder<DoubleGene, Grade>(this::evaluate, form)
            .minimizing()
            .populationSize(POPULATION)
            .survivorsFraction(0.25)
            .offspringSelector(new TournamentSelector<>(3))
            .survivorsSelector(new TournamentSelector<>(5))
            .alterers(
                new UniformCrossover<>(0.3, 0.5),
                new MeanAlterer<>(0.3),
                new GaussianMutator<>(0.4),
                new Mutator<>(0.05))
            .executor(Runnable::run)
            .build();
    Iterator<EvolutionResult<DoubleGene, Grade>> generations = engine.stream().iterator();
    Grade best = new Grade(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    while (candidates.evaluations() < conduct.evaluations()) {
      if (candidates.evaluations() > 0 && watch.stopWanted()) {
        return true;
      }
      Grade found = generations.next().bestFitness();
      best = found.compareTo(best) < 0 ? found : best;
      bestCosts.add(best.feasible() ? best.costDb() : Double.POSITIVE_INFINITY);
      watch.generationDone(candidates.evaluations(), conduct.evaluations(), best);
    }
    return false;
  }

  private ISeq<Phenotype<DoubleGene, Grade>> evaluate(
      Seq<Phenotype<DoubleGene, Grade>> population) {
    List<double[]> fresh = new ArrayList<>();
    for (Phenotype<DoubleGene, Grade> individual : population) {
      if (individual.nonEvaluated()) {
        fresh.add(genesOf(individual.genotype()));
      }
    }
    Iterator<Grade> grades = candidates.score(fresh).iterator();
    List<Phenotype<DoubleGene, Grade>> evaluated = new ArrayList<>();
    for (Phenotype<DoubleGene, Grade> individual : population) {
      evaluated.add(individual.nonEvaluated() ? individual.withFitness(grades.next()) : individual);
    }
    return ISeq.of(evaluated);
  }

  private static double[] genesOf(Genotype<DoubleGene> genotype) {
    double[] genes = new double[SearchPlan.GENES];
    for (int i = 0; i < genes.length; i++) {
      genes[i] = genotype.chromosome().get(i).doubleValue();
    }
    return genes;
  }

  /** Picks, polishes and assesses distinct woofers, best first. */
  private List<Assessment> rank(boolean hurry) {
    List<ScoredGenes> found = new ArrayList<>(candidates.archive());
    Collections.sort(found);
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
    List<Assessment> ranked = new ArrayList<>();
    for (ScoredGenes entry : chosen) {
      Woofer woofer = plan.woofer(entry.genes()).withName("Woofer " + (ranked.size() + 1));
      ranked.add(scorer.assess(woofer, plan.winding(entry.genes())));
    }
    return ranked;
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
    List<Grade> grades = candidates.score(trials);
    ScoredGenes best = known;
    for (int i = 0; i < trials.size(); i++) {
      if (grades.get(i).compareTo(best.grade()) < 0) {
        best = new ScoredGenes(trials.get(i), grades.get(i));
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
