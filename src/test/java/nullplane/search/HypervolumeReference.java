package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import nullplane.units.Curve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("reference")
class HypervolumeReference {
  static LongStream seeds() {
    return LongStream.rangeClosed(1, 60);
  }

  /** Volume of a union of boxes by the principle of inclusion and exclusion. */
  private static double byInclusion(List<Curve> points, Curve reference) {
    double sum = 0;
    for (int set = 1; set < 1 << points.size(); set++) {
      double box = 1;
      for (int j = 0; j < reference.size(); j++) {
        double worst = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
          worst = (set >> i & 1) == 1 ? Math.max(worst, points.get(i).at(j)) : worst;
        }
        box *= Math.max(0, reference.at(j) - worst);
      }
      sum += Integer.bitCount(set) % 2 == 1 ? box : -box;
    }
    return sum;
  }

  /** Points on a coarse grid, so that some are equal in places, and some beyond the reference. */
  @ParameterizedTest
  @MethodSource("seeds")
  void agreesWithInclusionAndExclusion(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int objectives = 1 + (int) (seed % 6);
    List<Curve> points = new ArrayList<>();
    for (int i = 0; i < 11; i++) {
      double[] point = new double[objectives];
      for (int j = 0; j < objectives; j++) {
        point[j] = seed % 2 == 0 ? random.nextInt(7) - 1 : 6 * random.nextDouble() - 1;
      }
      points.add(Curve.of(point));
    }
    double[] corner = new double[objectives];
    java.util.Arrays.fill(corner, 5);
    Curve reference = Curve.of(corner);
    double expected = byInclusion(points, reference);
    // Inclusion and exclusion adds some 2000 boxes of up to 6^6.
    assertThat(Hypervolume.of(points, reference)).isCloseTo(expected, within(1e-8));
  }

  /**
   * n^2 points of the plane f1 + f2 + f3 = 1 lie as corners of a stair of cubes; its volume is that
   * of the cubes of side 1/n above it, counted.
   */
  @Test
  void aStairOfCubesIsCounted() {
    int n = 24;
    List<Curve> points = new ArrayList<>();
    long above = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        for (int k = 0; k < n; k++) {
          above += i + j + k >= n - 1 ? 1 : 0;
          if (i + j + k == n - 1) {
            points.add(Curve.of((double) i / n, (double) j / n, (double) k / n));
          }
        }
      }
    }
    assertThat(Hypervolume.of(points, Curve.of(1, 1, 1)))
        .isCloseTo(above / Math.pow(n, 3), within(1e-12));
  }

  @Test
  void nothingWithinTheReferenceIsNothing() {
    assertThat(Hypervolume.of(List.of(), Curve.of(1, 1))).isZero();
    assertThat(Hypervolume.of(List.of(Curve.of(1, 0)), Curve.of(1, 1))).isZero();
  }
}
