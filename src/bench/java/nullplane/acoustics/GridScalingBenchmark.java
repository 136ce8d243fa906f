package nullplane.acoustics;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import nullplane.units.Air;
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
 * How time and memory grow with the number of unknowns, from about a thousand to a million, for one
 * piston of 13 cm radius, 10 cm off the middle of a free panel of 1 m x 1 m, at 100 Hz.
 *
 * <ul>
 *   <li>{@code product}: the panel's matrix times a vector, by transforms.
 *   <li>{@code solution}: everything for one woofer on one grid: tables, operator, iteration; in
 *       sine waves where {@link SineProblem#suits} says so, else at the nodes by transforms.
 * </ul>
 *
 * <p>At the start of each trial the number of iterations is printed, and the memory of the arrays
 * that a solution holds at the same time, from their sizes. {@code -prof gc} shows more: the
 * transforms take and drop work space with every product.
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="GridScalingBenchmark -prof gc"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1, time = 1)
@Measurement(iterations = 2, time = 1)
@Fork(value = 1, jvmArgsAppend = "-Xmx3g")
public class GridScalingBenchmark {
  private static final Air AIR = Air.standard();
  private static final double FREQUENCY_HZ = 100;
  private static final double TOLERANCE = 1e-5;

  private final Panel panel = Panel.inFreeSpace(1, 1);

  /** Cells each way, lengths that suit transforms; the unknowns are (cells - 1)^2. */
  @Param({"32", "100", "320", "1000"})
  public int cells;

  private UniformGrid grid;
  private GridSetup setup;
  private ToeplitzOperator operator;
  private double[] input;
  private double[] output;

  /** Makes the grid, its operator and a vector. */
  @Setup
  public void prepare() {
    grid = new UniformGrid(1, 1, cells, cells);
    setup = new GridSetup(PosedPanel.of(panel, List.of(new Piston(0.1, 0, 0.13))), grid);
    operator = new ToeplitzOperator(KernelTable.direct(grid, AIR.waveNumber(FREQUENCY_HZ)), null);
    input = new Random(1).doubles(2L * grid.unknowns(), -1, 1).toArray();
    output = new double[input.length];
    ConjugateGradients iteration =
        new ConjugateGradients(
            operator,
            new SinePreconditioner(grid, AIR.waveNumber(FREQUENCY_HZ)),
            setup.rim(),
            grid.unknowns(),
            0);
    iteration.solve(setup.driven().get(0), TOLERANCE);
    System.out.printf(
        "%n# %d unknowns, %d iterations, %.1f MB held%n",
        grid.unknowns(), iteration.iterations(), heldBytes() / 1e6);
  }

  /** Spectrum and work space; kernel table, symbol and load; four vectors and the solution. */
  private double heldBytes() {
    double period = TransformLength.atLeast(2 * grid.nodesX() - 1);
    return 8 * (4 * period * period + (2 + 1 + 1 + 5 * 2) * (double) grid.unknowns());
  }

  /** One product. */
  @Benchmark
  public double[] product() {
    operator.apply(input, output);
    return output;
  }

  /** One woofer on one grid, from nothing. */
  @Benchmark
  public GridSolution solution() {
    return new GridSolution(panel, setup, AIR, FREQUENCY_HZ, TOLERANCE);
  }
}
