package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fast products against the sums they stand for. */
class FastProductTest {
  private final UniformGrid grid = new UniformGrid(0.44, 0.7, 7, 11);

  private double[] randomVector(long seed) {
    return new Random(seed).doubles(2L * grid.unknowns(), -1, 1).toArray();
  }

  @Test
  void productIsTheDenseSumWithAndWithoutImage() {
    KernelTable direct = KernelTable.direct(grid, 5);
    KernelTable image = KernelTable.image(grid, 0.41, 5);
    double[] x = randomVector(7);
    int n = grid.unknowns();
    double[] fast = new double[2 * n];
    double[] fastFree = new double[2 * n];
    new ToeplitzOperator(direct, image).apply(x, fast);
    new ToeplitzOperator(direct, null).apply(x, fastFree);
    int width = grid.nodesX();
    for (int i = 0; i < n; i++) {
      double re = 0;
      double im = 0;
      double freeRe = 0;
      for (int j = 0; j < n; j++) {
        int dx = Math.abs(i % width - j % width);
        int dy = Math.abs(i / width - j / width);
        int sum = i / width + j / width;
        double aRe = direct.re(dx, dy) + image.re(dx, sum);
        double aIm = direct.im(dx, dy) + image.im(dx, sum);
        re += aRe * x[2 * j] - aIm * x[2 * j + 1];
        im += aRe * x[2 * j + 1] + aIm * x[2 * j];
        freeRe += direct.re(dx, dy) * x[2 * j] - direct.im(dx, dy) * x[2 * j + 1];
      }
      assertThat(fast[2 * i]).isCloseTo(re, within(1e-12));
      assertThat(fast[2 * i + 1]).isCloseTo(im, within(1e-12));
      assertThat(fastFree[2 * i]).isCloseTo(freeRe, within(1e-12));
    }
  }

  /** On the left half alone, mirrored vectors get the same product and the same inverse. */
  @Test
  void foldedMapsAreTheWholeOnesOnMirroredVectors() {
    for (int cells : new int[] {4, 8, 16, 20}) {
      UniformGrid even = new UniformGrid(0.44, 0.7, cells, 11);
      KernelTable direct = KernelTable.direct(even, 5);
      KernelTable image = KernelTable.image(even, 0.41, 5);
      int width = even.nodesX();
      int columns = (width + 1) / 2;
      double[] half = new Random(3).doubles(2L * columns * even.nodesY(), -1, 1).toArray();
      double[] whole = unfolded(half, even);
      double[] wholeOut = new double[whole.length];
      double[] halfOut = new double[half.length];
      new ToeplitzOperator(direct, image).apply(whole, wholeOut);
      new FoldedOperator(direct, image).apply(half, halfOut);
      assertThat(unfolded(halfOut, even)).containsExactly(wholeOut, within(1e-12));
      new ToeplitzOperator(direct, null).apply(whole, wholeOut);
      new FoldedOperator(direct, null).apply(half, halfOut);
      assertThat(unfolded(halfOut, even)).containsExactly(wholeOut, within(1e-12));
      new SinePreconditioner(even, 5).apply(whole, wholeOut);
      new FoldedPreconditioner(even, 5).apply(half, halfOut);
      double[] back = unfolded(halfOut, even);
      for (int i = 0; i < back.length; i++) {
        assertThat(back[i]).isCloseTo(wholeOut[i], within(1e-11 * Math.abs(wholeOut[i]) + 1e-9));
      }
    }
  }

  /** In sine waves, of both kinds together, a vector gets the product it gets at the nodes. */
  @ParameterizedTest
  @CsvSource({"7, 11", "8, 11", "8, 12", "5, 4", "16, 48"})
  void productInSineWavesIsThatAtTheNodes(int cellsX, int cellsY) {
    UniformGrid any = new UniformGrid(0.44, 0.7, cellsX, cellsY);
    KernelTable direct = KernelTable.direct(any, 5);
    KernelTable image = KernelTable.image(any, 0.41, 5);
    int n = any.unknowns();
    List<double[]> vectors =
        List.of(
            new Random(5).doubles(n, -1, 1).toArray(), new Random(6).doubles(n, -1, 1).toArray());
    for (KernelTable of : new KernelTable[] {null, image}) {
      double[][] inWaves = new double[2][2 * n];
      for (boolean mirrored : new boolean[] {true, false}) {
        SineProblem problem = new SineProblem(any, mirrored, vectors, vectors);
        int rows = problem.basisX().sines();
        SineVectors input = new SineVectors(rows, 2 * any.nodesY());
        SineVectors output = new SineVectors(rows, 2 * any.nodesY());
        for (int r = 0; r < rows; r++) {
          System.arraycopy(problem.driven()[r], 0, input.re[r], 0, 2 * any.nodesY());
        }
        SineOperator operator = new SineOperator(problem, new PanelSpectrum(direct, of));
        // twice: nothing may be left over from the first time
        operator.apply(input, output);
        operator.apply(input, output);
        problem.addTo(output, inWaves);
      }
      for (int v = 0; v < 2; v++) {
        double[] complex = new double[2 * n];
        for (int i = 0; i < n; i++) {
          complex[2 * i] = vectors.get(v)[i];
        }
        double[] atNodes = new double[2 * n];
        new ToeplitzOperator(direct, of).apply(complex, atNodes);
        assertThat(inWaves[v]).containsExactly(atNodes, within(1e-12));
      }
    }
  }

  /** The inverse diagonal is that of the matrix applied to one sine wave after the other. */
  @Test
  void inverseDiagonalIsThatOfTheProduct() {
    KernelTable direct = KernelTable.direct(grid, 5);
    KernelTable image = KernelTable.image(grid, 0.41, 5);
    List<double[]> one = List.of(new double[grid.unknowns()]);
    for (boolean mirrored : new boolean[] {true, false}) {
      SineProblem problem = new SineProblem(grid, mirrored, one, one);
      SineOperator operator = new SineOperator(problem, new PanelSpectrum(direct, image));
      SineVectors inverse = operator.inverseDiagonal();
      SineVectors input = new SineVectors(problem.basisX().sines(), grid.nodesY());
      SineVectors output = new SineVectors(problem.basisX().sines(), grid.nodesY());
      for (int r = 0; r < input.re.length; r++) {
        for (int y = 0; y < grid.nodesY(); y++) {
          input.re[r][y] = 1;
          operator.apply(input, output);
          input.re[r][y] = 0;
          double re = output.re[r][y];
          double im = output.im[r][y];
          assertThat(inverse.re[r][y] * re - inverse.im[r][y] * im).isCloseTo(1, within(1e-11));
          assertThat(inverse.re[r][y] * im + inverse.im[r][y] * re).isCloseTo(0, within(1e-11));
        }
      }
    }
  }

  /**
   * Entries against plain quadrature over the 4 x 4 cells of the spline, ten points each way, for
   * offsets whose cells do not touch R = 0: three cells and more.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 1.7, 16, 48, 6", "0.5, 1.7, 20, 72, 18", "2, 2, 40, 40, 10"})
  void entriesAreTheIntegralsTheyStandFor(
      double width, double height, int cellsX, int cellsY, double waveNumber) {
    UniformGrid any = new UniformGrid(width, height, cellsX, cellsY);
    KernelTable direct = KernelTable.direct(any, waveNumber);
    double own = Math.hypot(direct.re(0, 0), direct.im(0, 0));
    for (int y = 0; y < 16; y++) {
      for (int x = 0; x < 12; x++) {
        if (x > 2 || y > 2) {
          double[] entry = entry(any, x, y, waveNumber);
          assertThat(direct.re(x, y)).as("%d %d", x, y).isCloseTo(entry[0], within(5e-7 * own));
          assertThat(direct.im(x, y)).as("%d %d", x, y).isCloseTo(entry[1], within(5e-7 * own));
        }
      }
    }
  }

  private static double[] entry(UniformGrid grid, int offsetX, int offsetY, double waveNumber) {
    GaussRule rule = GaussRule.of(10);
    double hx = grid.stepX();
    double hy = grid.stepY();
    double[] sum = new double[2];
    for (int cell = 0; cell < 16; cell++) {
      for (int i = 0; i < rule.size(); i++) {
        for (int j = 0; j < rule.size(); j++) {
          double tx = cell % 4 - 2 + rule.point(i);
          double ty = cell / 4 - 2 + rule.point(j);
          double r = Math.hypot((offsetX + tx) * hx, (offsetY + ty) * hy);
          double weight =
              rule.weight(i)
                  * rule.weight(j)
                  * (-hy / hx * KernelTable.splineBend(tx) * KernelTable.spline(ty)
                      - hx / hy * KernelTable.spline(tx) * KernelTable.splineBend(ty)
                      - waveNumber
                          * waveNumber
                          * hx
                          * hy
                          * KernelTable.spline(tx)
                          * KernelTable.spline(ty))
                  * hx
                  * hy
                  / (4 * Math.PI * r);
          sum[0] += weight * Math.cos(waveNumber * r);
          sum[1] -= weight * Math.sin(waveNumber * r);
        }
      }
    }
    return sum;
  }

  /**
   * What the usual tolerance leaves: the impedance, corrected by the residual, is in error by the
   * square of the vectors' error; pressures stay below a thirtieth of the wanted accuracy.
   */
  @ParameterizedTest
  @CsvSource({"0, 0.04, 30", "0, 0.04, 1000", "0.05, 0.04, 300", "0.05, 0, 300"})
  void usualToleranceIsEnough(double x, double clearance, double frequencyHz) {
    Panel panel = Panel.overFloor(0.5, 1.1, clearance);
    List<Piston> pistons = List.of(new Piston(-x, -0.3, 0.13), new Piston(x, 0.25, 0.13));
    PosedPanel posed = PosedPanel.of(panel, pistons);
    Air air = Air.standard();
    UniformGrid coarse =
        GridChoice.of(posed.panel(), pistons, air.speedOfSoundMPerS() / frequencyHz).grid(0);
    GridSetup setup = new GridSetup(posed, coarse);
    GridSolution usual = new GridSolution(posed.panel(), setup, air, frequencyHz, 1e-4);
    GridSolution exact = new GridSolution(posed.panel(), setup, air, frequencyHz, 1e-11);
    assertThat(usual.impedance().largestDifference(exact.impedance())).isLessThan(1e-7);
    List<FieldPoint> points = List.of(new FieldPoint(0, 0.1, 3), new FieldPoint(1, 0.3, 1.5));
    assertThat(usual.pressureAt(points).largestDifference(exact.pressureAt(points)))
        .isLessThan(1e-4);
  }

  private static double[] unfolded(double[] half, UniformGrid grid) {
    int width = grid.nodesX();
    int columns = (width + 1) / 2;
    double[] whole = new double[2 * grid.unknowns()];
    for (int n = 0; n < grid.unknowns(); n++) {
      int column = Math.min(n % width, width - 1 - n % width);
      whole[2 * n] = half[2 * (n / width * columns + column)];
      whole[2 * n + 1] = half[2 * (n / width * columns + column) + 1];
    }
    return whole;
  }

  /** A sine wave of the grid comes back divided by its symbol. */
  @Test
  void preconditionerIsDiagonalInSineWaves() {
    int p = 3;
    int q = 4;
    double[] wave = new double[2 * grid.unknowns()];
    for (int row = 0; row < grid.nodesY(); row++) {
      for (int column = 0; column < grid.nodesX(); column++) {
        double value =
            Math.sin(Math.PI * p * (column + 1) / (grid.nodesX() + 1))
                * Math.sin(Math.PI * q * (row + 1) / (grid.nodesY() + 1));
        wave[2 * (row * grid.nodesX() + column)] = value;
        wave[2 * (row * grid.nodesX() + column) + 1] = -2 * value;
      }
    }
    double[] out = new double[wave.length];
    new SinePreconditioner(grid, 0).apply(wave, out);
    double tx = Math.PI * p / (grid.nodesX() + 1);
    double ty = Math.PI * q / (grid.nodesY() + 1);
    double hx = grid.stepX();
    double hy = grid.stepY();
    double symbol =
        ((2 - 2 * Math.cos(tx)) / (hx * hx) * (4 + 2 * Math.cos(ty)) / 6
                + (4 + 2 * Math.cos(tx)) / 6 * (2 - 2 * Math.cos(ty)) / (hy * hy))
            * hx
            * hy
            / (2 * Math.hypot(tx / hx, ty / hy));
    for (int i = 0; i < wave.length; i++) {
      assertThat(out[i]).isCloseTo(wave[i] / symbol, within(1e-11 / symbol));
    }
  }

  /** Direct and image entries of the same offset agree. */
  @Test
  void imageFarBelowIsTheDirectEntryAtThatDistance() {
    KernelTable direct = KernelTable.direct(new UniformGrid(0.44, 0.7, 7, 60), 5);
    UniformGrid tall = new UniformGrid(0.44, 0.7, 7, 60);
    // an image whose rows sum to s lies s steps plus the origin away; pick the origin on the grid
    double floor = 10 * tall.stepY() / 2 - tall.nodeY(0);
    KernelTable image = KernelTable.image(tall, floor, 5);
    for (int s = 0; s < 40; s++) {
      for (int x = 0; x < 5; x++) {
        assertThat(image.re(x, s)).isCloseTo(direct.re(x, s + 10), within(1e-12));
        assertThat(image.im(x, s)).isCloseTo(direct.im(x, s + 10), within(1e-12));
      }
    }
  }

  @Test
  void transformLengthsHaveSmallFactorsOnly() {
    assertThat(TransformLength.atLeast(1)).isEqualTo(1);
    assertThat(TransformLength.atLeast(7)).isEqualTo(8);
    assertThat(TransformLength.atLeast(121)).isEqualTo(125);
    assertThat(TransformLength.atLeast(226)).isEqualTo(240);
  }
}
