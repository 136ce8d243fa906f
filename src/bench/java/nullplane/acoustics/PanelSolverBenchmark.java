package nullplane.acoustics;

import java.util.List;
import java.util.concurrent.TimeUnit;
import nullplane.units.Air;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
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
 * Time per frequency for four woofers (pistons of 13 cm radius) on a panel of 0.5 m x 1.7 m, 4 cm
 * over the floor, on one thread.
 *
 * <ul>
 *   <li>{@code wholeSolve}: what the program does for one frequency: two grids or more, four
 *       woofers each, the listening point, and the extrapolation to the usual accuracy.
 *   <li>{@code coarseFast}: the coarse grid alone: tables, spectrum, four iterative solutions.
 *   <li>{@code coarseDense}: the same equations from the same tables as a full matrix, solved for
 *       the same four woofers by EJML's complex dense LU.
 *   <li>{@code fineFast}, {@code fineDense}: the same on the finer of the two grids. The full
 *       matrix of 3103 unknowns takes a minute, so it is timed by single calls, in milliseconds all
 *       the same.
 * </ul>
 *
 * <p>Dense over fast is the gain; take both from one run. Before anything is timed, the two ways
 * are compared: their impedances must agree to 1e-6.
 *
 * <pre>
 *   mvn -P bench test-compile exec:exec -Dbench="PanelSolverBenchmark"
 *   mvn -P bench test-compile exec:exec -Dbench="PanelSolverBenchmark -p frequencyHz=100 -prof gc"
 * </pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class PanelSolverBenchmark {
  private static final Air AIR = Air.standard();

  /** That of the usual accuracy. */
  private static final double TOLERANCE = 1e-4;

  private final Panel panel = Panel.overFloor(0.5, 1.7, 0.04);
  private final List<Piston> pistons =
      List.of(
          new Piston(0, -0.64, 0.13),
          new Piston(0, -0.32, 0.13),
          new Piston(0, 0.32, 0.13),
          new Piston(0, 0.64, 0.13));
  private final List<FieldPoint> ear = List.of(new FieldPoint(0, 0.1, 3));

  /** Frequency (Hz). */
  @Param({"30", "100", "300", "1000"})
  public double frequencyHz;

  private PanelSolver solver;
  private GridSetup coarse;
  private GridSetup fine;

  /** Makes the panel and checks that both ways solve the same equations. */
  @Setup
  public void prepare() {
    solver = new PanelSolver(panel, pistons, AIR);
    GridChoice grids = GridChoice.of(panel, pistons, AIR.speedOfSoundMPerS() / frequencyHz);
    coarse = new GridSetup(PosedPanel.of(panel, pistons), grids.grid(0));
    fine = new GridSetup(PosedPanel.of(panel, pistons), grids.grid(1));
    double difference = coarseFast().largestDifference(coarseDense());
    if (!(difference < 1e-6)) {
      throw new IllegalStateException("the two solutions differ by " + difference);
    }
    System.out.printf(
        "%n# %d unknowns on the coarse grid, %d on the fine one; fast and dense differ by %.1e%n",
        coarse.grid().unknowns(), fine.grid().unknowns(), difference);
  }

  /** One frequency as the program solves it. */
  @Benchmark
  public PanelSolution wholeSolve() {
    return solver.solve(frequencyHz, ear, List.of());
  }

  /** The coarse grid by iteration in sine waves. */
  @Benchmark
  public ComplexMatrix coarseFast() {
    return new GridSolution(panel, coarse, AIR, frequencyHz, TOLERANCE).impedance();
  }

  /** The coarse grid as a full matrix. */
  @Benchmark
  public ComplexMatrix coarseDense() {
    return dense(coarse);
  }

  /** The fine grid by iteration in sine waves. */
  @Benchmark
  public ComplexMatrix fineFast() {
    return new GridSolution(panel, fine, AIR, frequencyHz, TOLERANCE).impedance();
  }

  /** The fine grid as a full matrix. */
  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Warmup(iterations = 1)
  @Measurement(iterations = 2)
  public ComplexMatrix fineDense() {
    return dense(fine);
  }

  private ComplexMatrix dense(GridSetup setup) {
    UniformGrid grid = setup.grid();
    List<double[]> loads = setup.driven();
    double waveNumber = AIR.waveNumber(frequencyHz);
    KernelTable direct = KernelTable.direct(grid, waveNumber);
    KernelTable image = KernelTable.image(grid, panel.centreHeightM(), waveNumber);
    int n = grid.unknowns();
    int width = grid.nodesX();
    ZMatrixRMaj matrix = new ZMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        int dx = Math.abs(i % width - j % width);
        int dy = Math.abs(i / width - j / width);
        int sum = i / width + j / width;
        matrix.data[2 * (i * n + j)] = direct.re(dx, dy) + image.re(dx, sum);
        matrix.data[2 * (i * n + j) + 1] = direct.im(dx, dy) + image.im(dx, sum);
      }
    }
    int count = loads.size();
    ZMatrixRMaj right = new ZMatrixRMaj(n, count);
    for (int i = 0; i < n; i++) {
      for (int c = 0; c < count; c++) {
        right.data[2 * (i * count + c)] = loads.get(c)[i];
      }
    }
    ZMatrixRMaj jumps = new ZMatrixRMaj(n, count);
    LinearSolverDense<ZMatrixRMaj> lu = LinearSolverFactory_ZDRM.lu(n);
    if (!lu.setA(matrix)) {
      throw new IllegalStateException("the full matrix is singular");
    }
    lu.solve(right, jumps);
    return impedance(jumps, loads);
  }

  /** Z = j w rho b^T A^{-1} b (N s/m). */
  private ComplexMatrix impedance(ZMatrixRMaj jumps, List<double[]> loads) {
    int count = loads.size();
    double omegaRho = 2 * Math.PI * frequencyHz * AIR.densityKgPerM3();
    double[] re = new double[count * count];
    double[] im = new double[count * count];
    for (int r = 0; r < count; r++) {
      for (int c = 0; c < count; c++) {
        for (int i = 0; i < jumps.numRows; i++) {
          re[r * count + c] -= omegaRho * loads.get(r)[i] * jumps.data[2 * (i * count + c) + 1];
          im[r * count + c] += omegaRho * loads.get(r)[i] * jumps.data[2 * (i * count + c)];
        }
      }
    }
    return new ComplexMatrix(count, count, re, im);
  }
}
