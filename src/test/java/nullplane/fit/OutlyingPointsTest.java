package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class OutlyingPointsTest {

  private static int[] outlying(double[] distance, boolean phased) {
    boolean[] out = OutlyingPoints.in(distance, phased);
    return IntStream.range(0, out.length).filter(i -> out[i]).toArray();
  }

  /** On a straight line the median of a point's neighbours is the point itself. */
  @Test
  void aSteadySlopeHidesNoOutlier() {
    double[] distance = IntStream.range(0, 40).mapToDouble(i -> 4e-5 * i).toArray();
    assertThat(outlying(distance, false)).isEmpty();
    distance[17] += 2e-4;
    assertThat(outlying(distance, false)).containsExactly(17);
  }

  /** Deviations that do no harm are left, whatever the spread. */
  @Test
  void whatDoesNoHarmIsLeftIn() {
    double[] distance = new double[40];
    distance[11] = 0.99e-4;
    assertThat(outlying(distance, false)).isEmpty();
    distance[11] = 1.01e-4;
    assertThat(outlying(distance, false)).containsExactly(11);
  }

  @Test
  void theFirstAndTheLastPointAreSeen() {
    for (int at : new int[] {0, 39}) {
      double[] distance = new double[40];
      distance[at] = 1e-3;
      assertThat(outlying(distance, false)).containsExactly(at);
    }
  }

  /** Modulus and phase of a point count together, as the length of the error. */
  @Test
  void modulusAndPhaseOfAPointCountTogether() {
    double[] distance = new double[80];
    distance[2 * 9] = 0.8e-4;
    assertThat(outlying(distance, true)).isEmpty();
    distance[2 * 9 + 1] = 0.8e-4;
    assertThat(outlying(distance, true)).containsExactly(9);
  }

  /** The spread of normal noise is 1.4826 times its median size (Hampel 1974): six of it remain. */
  @Test
  void normalNoiseHasNoOutliers() {
    Random random = new Random(2);
    double[] distance = IntStream.range(0, 2000).mapToDouble(i -> random.nextGaussian()).toArray();
    assertThat(outlying(distance, false)).isEmpty();
    // a point less the median of six others scatters by 1.1 of the noise, so six are 6.7
    distance[1000] = 12;
    distance[1500] = -12;
    assertThat(outlying(distance, false)).containsExactly(1000, 1500);
    distance[1000] = 4;
    distance[1500] = -4;
    assertThat(outlying(distance, false)).isEmpty();
  }

  @Test
  void oneLonePointIsKept() {
    assertThat(outlying(new double[] {0}, false)).isEmpty();
  }
}
