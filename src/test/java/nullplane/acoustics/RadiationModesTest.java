package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import nullplane.faults.NumericalException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RadiationModesTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 8, 16})
  void modesRebuildTheMatrix(int n) {
    Random random = new Random(41 + n);
    double[] re = new double[n * n];
    double[] im = new double[n * n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double coupling = i == j ? 1 : 0.2 / (i - j);
        re[i * n + j] = coupling * (0.1 + 0.05 * random.nextDouble());
        im[i * n + j] = coupling * (2 + 0.3 * random.nextDouble());
        re[j * n + i] = re[i * n + j];
        im[j * n + i] = im[i * n + j];
      }
    }
    assertRebuilt(new ComplexMatrix(n, n, re, im));
  }

  /** Four alike at the corners of a square: two modes share a value. */
  @Test
  void sharedValuesAreNoObstacle() {
    double[] re = new double[16];
    double[] im = new double[16];
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < 4; j++) {
        int apart = Math.min((i - j + 4) % 4, (j - i + 4) % 4);
        re[i * 4 + j] = new double[] {0.3, 0.2, 0.15}[apart];
        im[i * 4 + j] = new double[] {3, 0.4, 0.2}[apart];
      }
    }
    assertRebuilt(new ComplexMatrix(4, 4, re, im));
  }

  @Test
  void anUncoupledMatrixKeepsItsDiagonal() {
    ComplexMatrix diagonal =
        new ComplexMatrix(2, 2, new double[] {1, 0, 0, 2}, new double[] {3, 1e-170, 1e-170, 4});
    assertRebuilt(diagonal);
  }

  /** [[1, j], [j, -1]] has the single, self-orthogonal vector (1, j). */
  @Test
  void aSelfOrthogonalModeIsReported() {
    ComplexMatrix defective =
        new ComplexMatrix(2, 2, new double[] {1, 0, 0, -1}, new double[] {0, 1, 1, 0});
    assertThatThrownBy(() -> RadiationModes.of(defective)).isInstanceOf(NumericalException.class);
  }

  private static void assertRebuilt(ComplexMatrix matrix) {
    RadiationModes modes = RadiationModes.of(matrix);
    int n = modes.count();
    double scale = matrix.largestModulus();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double re = 0;
        double im = 0;
        for (int m = 0; m < n; m++) {
          double pRe =
              modes.vectorRe(i, m) * modes.vectorRe(j, m)
                  - modes.vectorIm(i, m) * modes.vectorIm(j, m);
          double pIm =
              modes.vectorRe(i, m) * modes.vectorIm(j, m)
                  + modes.vectorIm(i, m) * modes.vectorRe(j, m);
          re += pRe * modes.valueRe(m) - pIm * modes.valueIm(m);
          im += pRe * modes.valueIm(m) + pIm * modes.valueRe(m);
        }
        assertThat(re).isCloseTo(matrix.re(i, j), within(1e-12 * scale));
        assertThat(im).isCloseTo(matrix.im(i, j), within(1e-12 * scale));
      }
    }
  }
}
