package nullplane.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import nullplane.units.Curve;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("reference")
class HypervolumeReference {
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
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void agreesWithInclusionAndExclusion(int objectives) {
    Check volumes =
        Validation.check(
            "hypervolumes of 11 points, objectives: " + objectives,
            "Principle of inclusion and exclusion.");
    for (long seed = 1; seed <= 10; seed++) {
      compare(objectives, seed, volumes);
    }
    // Inclusion and exclusion adds some 2000 boxes of up to 6^6.
    volumes.within(1e-8);
  }

  private static void compare(int objectives, long seed, Check volumes) {
    SplittableRandom random = new SplittableRandom(6 * seed + objectives);
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
    volumes.add(expected, Hypervolume.of(points, reference));
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
    Validation.check("hypervolume of a stair of cubes, three objectives", "Cubes counted.")
        .expected(above / Math.pow(n, 3), "")
        .computed(Hypervolume.of(points, Curve.of(1, 1, 1)))
        .within(1e-12);
  }

  @Test
  void nothingWithinTheReferenceIsNothing() {
    assertThat(Hypervolume.of(List.of(), Curve.of(1, 1))).isZero();
    assertThat(Hypervolume.of(List.of(Curve.of(1, 0)), Curve.of(1, 1))).isZero();
  }
}
