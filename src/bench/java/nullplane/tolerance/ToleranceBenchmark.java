package nullplane.tolerance;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.FixedStacks;
import nullplane.scoring.StackBrief;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import nullplane.scoring.WorkshopSpecs;
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
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time for 10,000 units in three stacks: one woofer, two in parallel, two strings of two.
 *
 * <ul>
 *   <li>{@code run}: the production run, with yields, curves and spreads.
 *   <li>{@code study}: all of it: run, windows with their checks, sensitivities, sampling plan.
 * </ul>
 *
 * <p>{@code threads} 1 runs on the caller's thread, 2 on the common pool of a machine with two
 * cores.
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="ToleranceBenchmark"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class ToleranceBenchmark {
  private static final ToleranceConduct CONDUCT = ToleranceConduct.usual(1);

  /** Threads that batches run on. */
  @Param({"1", "2"})
  public int threads;

  private SystemScorer scorer;
  private Assessment assessment;
  private FixedStacks stacks;
  private PermittedResponse permitted;
  private BatchRunner runner;

  /** Solves the panels and assesses a woofer that suits them. */
  @Setup
  public void prepare() {
    StackBrief four = WorkshopSpecs.column("four", 0.44, 1.9, 0.13, 80, 96, -0.72, -0.4, 0.4, 0.72);
    DesignSpec spec =
        WorkshopSpecs.spec(
            WorkshopSpecs.brief300(),
            WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 74, 86, -0.25),
            WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, 80, 92, -0.45, 0.45),
            new StackBrief(
                four.name(),
                four.panel(),
                four.pistons(),
                four.levelDb(),
                four.loudestDb(),
                Optional.of(new Wiring(2, 2))));
    scorer = WorkshopSpecs.scorer(spec);
    Woofer woofer = WorkshopSpecs.woofer(spec.woofer(), 38, 1.0, 0.035, 0.0073);
    assessment = scorer.assess(woofer);
    stacks = FixedStacks.of(scorer, assessment);
    permitted = new PermittedResponse(stacks, woofer, CONDUCT.allowanceDb());
    runner =
        threads == 1
            ? BatchRunner.sequential()
            : (parts, task) -> IntStream.range(0, parts).parallel().forEach(task);
  }

  /** The production run. */
  @Benchmark
  public ProductionYield run() {
    ProductionSpread spread = ProductionSpread.usual();
    UnitChance chance = ProductionSpread.chance(CONDUCT.seed());
    return ProductionRun.of(
        stacks,
        assessment.woofer(),
        permitted,
        CONDUCT.units(),
        unit -> spread.unit(assessment.woofer(), chance, unit),
        new Batches(runner, Batches.USUAL_SIZE));
  }

  /** The whole study. */
  @Benchmark
  public List<String> study() {
    return ToleranceStudy.of(scorer, assessment, CONDUCT, runner).findings();
  }
}
