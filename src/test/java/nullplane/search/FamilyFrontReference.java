package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import nullplane.units.Curve;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Woofer and networks of two stacks for two objectives, shape and correction, against the NSGA-II
 * of a general-purpose library (the MOEA Framework, version 5.0) at equal evaluations and sizes.
 */
@Tag("reference")
class FamilyFrontReference {
  private static final int SEEDS = 11;
  private static final int EVALUATIONS = 5000;
  private static final int SIZE = 100;

  private static ExecutorService executor;
  private static ParetoProblem problem;

  @BeforeAll
  static void pose() {
    executor = Executors.newFixedThreadPool(2);
    SystemScorer scorer = WorkshopSpecs.scorer(WorkshopSpecs.singleAndPair());
    SearchPlan plan = new SearchPlan(scorer.spec().woofer(), scorer.windings(), scorer.air());
    problem =
        new ShapeAndCorrection(
            new CandidateScorer(scorer, plan, 2, executor),
            SearchPlan.GENES + scorer.networkGenes());
  }

  @AfterAll
  static void close() {
    executor.shutdown();
  }

  /** The two objectives, each in dB; worst values worth having 6 dB and 3 dB, by judgement. */
  private record ShapeAndCorrection(CandidateScorer candidates, int genes)
      implements ParetoProblem {
    @Override
    public int objectives() {
      return 2;
    }

    @Override
    public Curve reference() {
      return Curve.of(6, 3);
    }

    @Override
    public String digest() {
      return "shape and correction";
    }

    @Override
    public List<Merit> evaluate(List<double[]> batch) {
      List<Merit> merits = new ArrayList<>();
      for (FamilyScore score : candidates.score(batch)) {
        merits.add(
            new Merit(score.grade().violation(), Curve.of(score.shapeDb(), score.correctionDb())));
      }
      return merits;
    }
  }

  private static double median(LongFunction<List<Curve>> front) {
    double[] volumes =
        LongStream.rangeClosed(1, SEEDS)
            .mapToDouble(seed -> Hypervolume.of(front.apply(seed), problem.reference()))
            .sorted()
            .toArray();
    return volumes[SEEDS / 2];
  }

  @Test
  void noLessVolumeThanALibrary() {
    double ours =
        median(
            seed ->
                ParetoSearch.run(
                        problem,
                        ParetoConduct.of(seed, EVALUATIONS).withSizes(SIZE, SIZE),
                        List.of(),
                        ParetoWatch.NONE,
                        StateKeeper.NONE)
                    .front()
                    .stream()
                    .map(candidate -> candidate.merit().objectives())
                    .toList());
    double theirs = median(seed -> LibraryNsga2.front(problem, SIZE, EVALUATIONS, seed));
    assertThat(ours).as("library %.4f", theirs).isGreaterThanOrEqualTo(theirs);
  }
}
