package nullplane.search;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Candidates searched per second on a spec of three stacks (one, two and four woofers of 300 mm on
 * 44 cm panels, wirings free), evolution and polish included, panels solved before. Read the line
 * {@code search:candidates}; the other one counts whole searches.
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="SearchBenchmark"
 *   mvn -P bench test-compile exec:exec -Dbench="SearchBenchmark -p threads=1"
 * </pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class SearchBenchmark {
  private static final long EVALUATIONS = 10_000;

  /** Threads that score. */
  @Param("2")
  public int threads;

  private SystemScorer scorer;
  private ExecutorService executor;
  private long seed;

  /** Counts candidates. */
  @State(Scope.Thread)
  @AuxCounters(AuxCounters.Type.OPERATIONS)
  public static class Counted {
    /** Candidates scored. */
    public long candidates;
  }

  /** Solves the panels. */
  @Setup
  public void prepare() {
    scorer =
        WorkshopSpecs.scorer(
            WorkshopSpecs.spec(
                WorkshopSpecs.brief300(),
                WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 76, 86, -0.25),
                WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, 82, 92, -0.45, 0.45),
                WorkshopSpecs.column("four", 0.44, 1.9, 0.13, 82, 98, -0.72, -0.40, 0.40, 0.72)));
    executor = Executors.newFixedThreadPool(threads);
  }

  /** Ends the threads. */
  @TearDown
  public void end() {
    executor.shutdownNow();
  }

  /** One search with a seed of its own. */
  @Benchmark
  public SearchOutcome search(Counted counted) {
    seed++;
    SearchOutcome outcome =
        WooferSearch.run(
            scorer, new SearchConduct(seed, EVALUATIONS, threads), executor, SearchWatch.NONE);
    counted.candidates += outcome.evaluations();
    return outcome;
  }
}
