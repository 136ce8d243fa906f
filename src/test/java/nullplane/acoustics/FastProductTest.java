package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

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

  /** The table does not change when far cells are near ones: neighbouring rules agree. */
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
