package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.StackBrief;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import nullplane.scoring.WorkshopSpecs;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Full evaluations of a family a second: three stacks of one, two and four woofers with the wirings
 * and networks that the genes name.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class FamilyBenchmark {
  private static final int BATCH = 2000;

  /** Threads that score. */
  @Param("2")
  public int threads;

  private final List<double[]> batch = new ArrayList<>();
  private CandidateScorer candidates;
  private ExecutorService executor;

  /** Solves the panels and draws the candidates. */
  @Setup
  public void prepare() {
    StackBrief four =
        WorkshopSpecs.column("four", 0.44, 1.9, 0.13, 82, 98, -0.72, -0.40, 0.40, 0.72);
    StackBrief wired =
        new StackBrief(
            four.name(),
            four.panel(),
            four.pistons(),
            four.levelDb(),
            four.loudestDb(),
            Optional.of(new Wiring(2, 2)));
    SystemScorer scorer =
        WorkshopSpecs.scorer(
            WorkshopSpecs.spec(
                WorkshopSpecs.brief300(),
                WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 76, 86, -0.25),
                WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, 82, 92, -0.45, 0.45),
                wired));
    SearchPlan plan = new SearchPlan(scorer.spec().woofer(), scorer.windings(), scorer.air());
    executor = Executors.newFixedThreadPool(threads);
    candidates = new CandidateScorer(scorer, plan, threads, executor);
    Random random = new Random(1);
    for (int i = 0; i < BATCH; i++) {
      batch.add(random.doubles(SearchPlan.GENES + scorer.networkChoices().size()).toArray());
    }
  }

  /** Ends the threads. */
  @TearDown
  public void end() {
    executor.shutdownNow();
  }

  /** A batch of families; the figure counts families. */
  @Benchmark
  @OperationsPerInvocation(BATCH)
  public List<FamilyScore> families() {
    return candidates.score(batch);
  }
}
