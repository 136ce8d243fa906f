package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import nullplane.driver.Woofer;
import nullplane.units.Range;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time to score one candidate on one stack of four woofers at 49 frequencies, on one thread. The
 * candidates are 256 woofers drawn evenly from the brief's ranges with a fixed seed, in turn.
 *
 * <ul>
 *   <li>{@code grade}: the full grade, every wiring (three for four woofers) with every coil.
 *   <li>{@code gradeWired}: the same with the wiring fixed to two strings of two.
 *   <li>{@code respondParallel}, {@code respondStrings}: the coupled circuit and the air alone, for
 *       all in parallel and for two strings of two.
 * </ul>
 *
 * <p>With {@code -prof gc}, {@code gc.alloc.rate.norm} is the bytes allocated per call.
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="GradeBenchmark -prof gc"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class GradeBenchmark {
  private static final int CANDIDATES = 256;

  private final Woofer[] candidates = new Woofer[CANDIDATES];
  private int next;
  private SystemScorer scorer;
  private SystemScorer wiredScorer;
  private SystemScorer.Workspace space;
  private SystemScorer.Workspace wiredSpace;
  private StackModel parallel;
  private StackModel strings;
  private StackModel.PerVolt perVolt;

  /** Solves the panel and draws the candidates. */
  @Setup
  public void prepare() {
    StackBrief free =
        WorkshopSpecs.column("four", 0.44, 1.9, 0.13, 82, 98, -0.72, -0.40, 0.40, 0.72);
    StackBrief wired =
        new StackBrief(
            free.name(),
            free.panel(),
            free.pistons(),
            free.levelDb(),
            free.loudestDb(),
            Optional.of(new Wiring(2, 2)));
    DesignSpec spec = WorkshopSpecs.spec(WorkshopSpecs.brief300(), free);
    int points = ScoringAxis.of(spec).frequencyHz().size();
    if (points != 49) {
      throw new IllegalStateException("the axis has " + points + " points, not 49");
    }
    scorer = WorkshopSpecs.scorer(spec);
    wiredScorer = WorkshopSpecs.scorer(WorkshopSpecs.spec(WorkshopSpecs.brief300(), wired));
    space = scorer.newWorkspace();
    wiredSpace = wiredScorer.newWorkspace();
    List<StackAcoustics> acoustics = WorkshopSpecs.acoustics(spec, ScoringAxis.of(spec));
    parallel = new StackModel(acoustics.get(0).response(), new Wiring(4, 1));
    strings = new StackModel(acoustics.get(0).response(), new Wiring(2, 2));
    perVolt = new StackModel.PerVolt(points, 4);
    Random random = new Random(1);
    WooferBrief brief = spec.woofer();
    for (int i = 0; i < CANDIDATES; i++) {
      candidates[i] =
          WorkshopSpecs.woofer(
              brief,
              drawn(brief.resonanceHz(), random),
              drawn(brief.totalQ(), random),
              drawn(brief.bareMassKg(), random),
              drawn(brief.travelM(), random));
    }
  }

  private static double drawn(Range range, Random random) {
    return range.at(random.nextDouble());
  }

  private Woofer candidate() {
    next = (next + 1) % CANDIDATES;
    return candidates[next];
  }

  /** Every wiring with every network. */
  @Benchmark
  public Grade grade() {
    return scorer.grade(candidate(), space);
  }

  /** Two strings of two with every network. */
  @Benchmark
  public Grade gradeWired() {
    return wiredScorer.grade(candidate(), wiredSpace);
  }

  /** The circuit with the air, all in parallel. */
  @Benchmark
  public StackModel.PerVolt respondParallel() {
    parallel.respond(candidate(), perVolt);
    return perVolt;
  }

  /** The circuit with the air, two strings of two. */
  @Benchmark
  public StackModel.PerVolt respondStrings() {
    strings.respond(candidate(), perVolt);
    return perVolt;
  }
}
