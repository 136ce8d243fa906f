package nullplane.acoustics;

import java.util.Arrays;
import java.util.List;
import nullplane.units.Air;
import org.jspecify.annotations.Nullable;

/**
 * The panel's equations on one grid at one frequency, solved for unit velocity of each piston.
 *
 * <p>Symbols: q pressure jump front minus rear (Pa), rho air density (kg/m3), w angular frequency
 * (rad/s), k wave number (1/m).
 */
final class GridSolution {
  private final UniformGrid grid;
  private final double waveNumber;
  private final boolean overFloor;
  private final double floorBelowCentreM;
  private final List<double[]> heard;
  private final List<SinePart> parts;
  private final ComplexMatrix impedance;
  private double @Nullable [][] knownJumps;
  private final double omegaRho;

  /**
   * Solves.
   *
   * @param panel the panel
   * @param setup grid, rim and loads
   * @param air the air
   * @param frequencyHz frequency (Hz)
   * @param tolerance relative residual (1)
   */
  GridSolution(Panel panel, GridSetup setup, Air air, double frequencyHz, double tolerance) {
    this.grid = setup.grid();
    this.heard = setup.heard();
    this.waveNumber = air.waveNumber(frequencyHz);
    this.overFloor = panel.clearanceM().isPresent();
    this.floorBelowCentreM = panel.centreHeightM();
    this.omegaRho = 2 * Math.PI * frequencyHz * air.densityKgPerM3();
    KernelTable direct = KernelTable.direct(grid, waveNumber);
    KernelTable image = overFloor ? KernelTable.image(grid, floorBelowCentreM, waveNumber) : null;
    if (setup.inSineWaves().isEmpty()) {
      this.parts = List.of();
      double[][] jumps =
          setup.folds()
              ? solveFolded(setup, direct, image, tolerance)
              : solveWhole(setup, direct, image, tolerance);
      this.knownJumps = jumps;
      this.impedance = impedanceOf(jumps);
    } else {
      PanelSpectrum spectrum = new PanelSpectrum(direct, image);
      this.parts =
          setup.inSineWaves().stream()
              .map(problem -> new SinePart(problem, spectrum, tolerance))
              .toList();
      this.impedance = impedanceOf(parts, setup.standsOnFloor());
    }
  }

  /** The pressure jumps in sine waves, and what is left of the right-hand sides. */
  private static final class SinePart {
    private final SineProblem problem;
    private final SineVectors jumps;
    private final SineVectors residual;

    SinePart(SineProblem problem, PanelSpectrum spectrum, double tolerance) {
      SineOperator operator = new SineOperator(problem, spectrum);
      SineGradients solver =
          new SineGradients(operator, operator.inverseDiagonal(), problem.vectors());
      this.problem = problem;
      this.jumps = solver.solve(problem.driven(), tolerance);
      this.residual = solver.residual();
    }

    /** Adds h_i^T q_j + share q_i^T r_j for every pair, interleaved. */
    void addForces(double share, double[] sums) {
      int count = problem.vectors();
      int length = problem.nodesY();
      for (int r = 0; r < jumps.re.length; r++) {
        double[] heard = problem.heard()[r];
        double[] re = jumps.re[r];
        double[] im = jumps.im[r];
        double[] leftRe = residual.re[r];
        double[] leftIm = residual.im[r];
        for (int i = 0; i < count; i++) {
          for (int j = 0; j < count; j++) {
            double sumRe = 0;
            double sumIm = 0;
            for (int y = 0; y < length; y++) {
              int own = i * length + y;
              int other = j * length + y;
              sumRe +=
                  heard[own] * re[other]
                      + share * (re[own] * leftRe[other] - im[own] * leftIm[other]);
              sumIm +=
                  heard[own] * im[other]
                      + share * (re[own] * leftIm[other] + im[own] * leftRe[other]);
            }
            sums[2 * (i * count + j)] += sumRe;
            sums[2 * (i * count + j) + 1] += sumIm;
          }
        }
      }
    }
  }

  /** Returns the pressure jumps at the nodes, without the factor j w rho, interleaved complex. */
  private double[][] jumps() {
    double[][] known = knownJumps;
    if (known == null) {
      known = new double[heard.size()][2 * grid.unknowns()];
      for (SinePart part : parts) {
        part.problem.addTo(part.jumps, known);
      }
      knownJumps = known;
    }
    return known;
  }

  private double[][] solveWhole(
      GridSetup setup, KernelTable direct, @Nullable KernelTable image, double tolerance) {
    ConjugateGradients solver =
        new ConjugateGradients(
            new ToeplitzOperator(direct, image),
            new SinePreconditioner(grid, waveNumber),
            setup.rim(),
            grid.unknowns(),
            0);
    double[][] solutions = new double[setup.driven().size()][];
    for (int j = 0; j < solutions.length; j++) {
      solutions[j] = solver.solve(setup.driven().get(j), tolerance);
    }
    return solutions;
  }

  /**
   * Solves on the left half and the middle column; the right half is the left one's mirror image.
   */
  private double[][] solveFolded(
      GridSetup setup, KernelTable direct, @Nullable KernelTable image, double tolerance) {
    int columns = (grid.nodesX() + 1) / 2;
    ConjugateGradients solver =
        new ConjugateGradients(
            new FoldedOperator(direct, image),
            new FoldedPreconditioner(grid, waveNumber),
            setup.rim().leftHalf(grid),
            columns * grid.nodesY(),
            columns);
    double[][] solutions = new double[setup.driven().size()][];
    for (int j = 0; j < solutions.length; j++) {
      double[] half = solver.solve(Rim.leftHalf(setup.driven().get(j), grid), tolerance);
      double[] whole = new double[2 * grid.unknowns()];
      for (int n = 0; n < grid.unknowns(); n++) {
        int row = n / grid.nodesX();
        int column = n % grid.nodesX();
        int from = 2 * (row * columns + Math.min(column, grid.nodesX() - 1 - column));
        whole[2 * n] = half[from];
        whole[2 * n + 1] = half[from + 1];
      }
      solutions[j] = whole;
    }
    return solutions;
  }

  /** Returns the radiation impedance matrix, both faces (N s/m): Z = j w rho b^T A^{-1} b. */
  ComplexMatrix impedance() {
    return impedance;
  }

  /**
   * The impedance from solutions that still have a residual r: with b^T A^{-1} b = b_i^T q_j +
   * q_i^T r_j + (error of q_i)^T A (error of q_j) it is in error by the square of theirs alone. On
   * a panel that stands on the floor the force on the real piston is half of that on both, so half
   * of the correction counts.
   */
  private ComplexMatrix impedanceOf(List<SinePart> solved, boolean standsOnFloor) {
    int count = heard.size();
    double[] sums = new double[2 * count * count];
    for (SinePart part : solved) {
      part.addForces(standsOnFloor ? 0.5 : 1, sums);
    }
    double[] re = new double[count * count];
    double[] im = new double[count * count];
    for (int n = 0; n < re.length; n++) {
      re[n] = -omegaRho * sums[2 * n + 1];
      im[n] = omegaRho * sums[2 * n];
    }
    return new ComplexMatrix(count, count, re, im);
  }

  private ComplexMatrix impedanceOf(double[][] jumps) {
    int count = jumps.length;
    double[] re = new double[count * count];
    double[] im = new double[count * count];
    for (int i = 0; i < count; i++) {
      double[] load = heard.get(i);
      for (int j = 0; j < count; j++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int n = 0; n < load.length; n++) {
          sumRe += load[n] * jumps[j][2 * n];
          sumIm += load[n] * jumps[j][2 * n + 1];
        }
        re[i * count + j] = -omegaRho * sumIm;
        im[i * count + j] = omegaRho * sumRe;
      }
    }
    return new ComplexMatrix(count, count, re, im);
  }

  /**
   * Returns the pressure at points per velocity of each piston (Pa s/m), points x pistons.
   *
   * <p>p(r) = INT q dG/dz' dS' with dG/dz' = (z/R)(jk + 1/R) G. Over one hat the kernel is taken as
   * a plane wave towards the point, whose integral is a product of squared sincs; valid for points
   * several cells away from the panel. The image's jump is the panel's own, mirrored.
   */
  ComplexMatrix pressureAt(List<FieldPoint> points) {
    int count = heard.size();
    double[] re = new double[points.size() * count];
    double[] im = new double[points.size() * count];
    double[] kernel = new double[2 * grid.unknowns()];
    for (int p = 0; p < points.size(); p++) {
      FieldPoint point = points.get(p);
      Arrays.fill(kernel, 0);
      addPointKernel(kernel, point.xM(), point.yM(), point.zM());
      if (overFloor) {
        addPointKernel(kernel, point.xM(), -point.yM() - 2 * floorBelowCentreM, point.zM());
      }
      applyKernel(kernel, p, re, im);
    }
    return new ComplexMatrix(points.size(), count, re, im);
  }

  private void addPointKernel(double[] kernel, double x, double y, double z) {
    double area = grid.stepX() * grid.stepY();
    for (int row = 0; row < grid.nodesY(); row++) {
      double dy = y - grid.nodeY(row);
      for (int column = 0; column < grid.nodesX(); column++) {
        double dx = x - grid.nodeX(column);
        double distance = Math.sqrt(dx * dx + dy * dy + z * z);
        double spread =
            squaredSinc(0.5 * waveNumber * grid.stepX() * dx / distance)
                * squaredSinc(0.5 * waveNumber * grid.stepY() * dy / distance);
        double scale = area * spread * z / (4 * Math.PI * distance * distance);
        double cos = Math.cos(waveNumber * distance);
        double sin = Math.sin(waveNumber * distance);
        // (jk + 1/R) (cos - j sin)
        int n = 2 * (row * grid.nodesX() + column);
        kernel[n] += scale * (cos / distance + waveNumber * sin);
        kernel[n + 1] += scale * (waveNumber * cos - sin / distance);
      }
    }
  }

  /**
   * Returns r p e^{+jkr} far away per velocity of each piston (Pa s), directions x pistons; phase
   * reference the panel's centre.
   *
   * <p>From p = INT q dG/dz' dS' for large r: r p e^{jkr} = (jk cos/4 pi) INT q e^{jk(x sx + y sy)}
   * dS, exact over each hat. Over a floor the image is included.
   *
   * @param directions the directions
   * @param referenceY the phase reference, above the grid's centre (m)
   */
  ComplexMatrix farFieldAt(List<Direction> directions, double referenceY) {
    int count = heard.size();
    double[] re = new double[directions.size() * count];
    double[] im = new double[directions.size() * count];
    double[] kernel = new double[2 * grid.unknowns()];
    for (int d = 0; d < directions.size(); d++) {
      Direction direction = directions.get(d);
      Arrays.fill(kernel, 0);
      double reference = -waveNumber * referenceY * direction.alongY();
      addPlaneKernel(kernel, direction.alongX(), direction.alongY(), direction.alongZ(), reference);
      if (overFloor) {
        double imagePhase = reference - 2 * waveNumber * floorBelowCentreM * direction.alongY();
        addPlaneKernel(
            kernel, direction.alongX(), -direction.alongY(), direction.alongZ(), imagePhase);
      }
      applyKernel(kernel, d, re, im);
    }
    return new ComplexMatrix(directions.size(), count, re, im);
  }

  private void addPlaneKernel(
      double[] kernel, double alongX, double alongY, double alongZ, double phaseOffset) {
    double scale =
        waveNumber
            * alongZ
            / (4 * Math.PI)
            * grid.stepX()
            * grid.stepY()
            * squaredSinc(0.5 * waveNumber * grid.stepX() * alongX)
            * squaredSinc(0.5 * waveNumber * grid.stepY() * alongY);
    for (int row = 0; row < grid.nodesY(); row++) {
      double phaseY = waveNumber * alongY * grid.nodeY(row) + phaseOffset;
      for (int column = 0; column < grid.nodesX(); column++) {
        double phase = phaseY + waveNumber * alongX * grid.nodeX(column);
        int n = 2 * (row * grid.nodesX() + column);
        kernel[n] -= scale * Math.sin(phase);
        kernel[n + 1] += scale * Math.cos(phase);
      }
    }
  }

  /** Sums kernel x jump for every piston; the jump carries the factor j w rho. */
  private void applyKernel(double[] kernel, int row, double[] re, double[] im) {
    double[][] jumps = jumps();
    int count = jumps.length;
    for (int j = 0; j < count; j++) {
      double sumRe = 0;
      double sumIm = 0;
      double[] jump = jumps[j];
      for (int n = 0; n < kernel.length; n += 2) {
        sumRe += kernel[n] * jump[n] - kernel[n + 1] * jump[n + 1];
        sumIm += kernel[n] * jump[n + 1] + kernel[n + 1] * jump[n];
      }
      re[row * count + j] = -omegaRho * sumIm;
      im[row * count + j] = omegaRho * sumRe;
    }
  }

  /** (sin t/t)^2, near 0 by its series 1 - t^2/3 + 2 t^4/45 - t^6/315 + ..., to 1e-11. */
  private static double squaredSinc(double t) {
    double s = t * t;
    if (s < 0.25) {
      return 1
          + s
              * (-1.0 / 3
                  + s * (2.0 / 45 + s * (-1.0 / 315 + s * (2.0 / 14175 + s * (-2.0 / 467775)))));
    }
    double sinc = Math.sin(t) / t;
    return sinc * sinc;
  }
}
