package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

/** Patterns in what a fit leaves; why a resonance is not determined is in {@link WooferFitTest}. */
class DeterminationTest {

  private static boolean patterned(int points, double noise, IntToDoubleFunction left) {
    Curve error = Curve.of(IntStream.range(0, points).mapToDouble(left).toArray());
    Curve axis = Curve.logSpaced(10, 1000, points);
    return Determination.hasPattern(
        List.of(
            new SweepFit.ResidualCurve(
                axis, Curve.logSpaced(8, 9, points), error, Optional.empty(), Curve.of())),
        noise);
  }

  /**
   * Correlation of neighbours: a wave of a period of 20 points has cos(2 pi/20) = 0.95, alternating
   * signs -1, and noise of 400 points 0 within 0.05 (Bartlett 1946).
   */
  @Test
  void aWaveIsAPatternAndNoiseIsNot() {
    assertThat(patterned(400, 0.01, i -> 0.01 * Math.sin(2 * Math.PI * i / 20))).isTrue();
    assertThat(patterned(400, 0.01, i -> i % 2 == 0 ? 0.01 : -0.01)).isFalse();
    Random random = new Random(1);
    for (int draw = 0; draw < 50; draw++) {
      assertThat(patterned(400, 0.01, i -> 0.01 * random.nextGaussian())).isFalse();
    }
  }

  /**
   * A correlation of 0.56 is nothing at 36 points, where four times 1/sqrt(n) is 0.67, and a
   * pattern at 108, where that is 0.38.
   */
  @Test
  void theMoreThePointsTheFainterThePatternThatIsSeen() {
    // of neighbouring signs the mean product is -1/3
    int[] signs = {1, 1, -1, 1, -1, -1};
    IntToDoubleFunction threes = i -> 0.01 * signs[i / 3 % 6];
    // with each sign three times, two of three products are 1 and the third -1/3: 0.56
    assertThat(patterned(36, 0.01, threes)).isFalse();
    assertThat(patterned(108, 0.01, threes)).isTrue();
  }

  @Test
  void roundingAndFewPointsAreNoGround() {
    IntToDoubleFunction steady = i -> 1e-7;
    assertThat(patterned(100, 1e-7, steady)).isFalse();
    assertThat(patterned(29, 0.01, i -> 0.01)).isFalse();
    assertThat(patterned(30, 0.01, i -> 0.01)).isTrue();
  }
}
