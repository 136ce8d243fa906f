package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class ShapleyValuesReference {

  /**
   * Glove game: one left glove, two right gloves, a pair is worth 1. Shapley values 2/3, 1/6, 1/6
   * (textbook example; follows from counting the six orders by hand).
   */
  @Test
  void sharesOfTheGloveGame() {
    double[][] shares =
        ShapleyValues.of(3, state -> new double[] {(state & 1) != 0 && (state & 6) != 0 ? 1 : 0});
    assertThat(shares[0][0]).isCloseTo(2.0 / 3, within(1e-15));
    assertThat(shares[1][0]).isCloseTo(1.0 / 6, within(1e-15));
    assertThat(shares[2][0]).isCloseTo(1.0 / 6, within(1e-15));
  }

  /**
   * A product of two changes is shared equally; a sum goes to each change alone (by definition).
   */
  @Test
  void sharesOfSumsAndProducts() {
    double[][] shares =
        ShapleyValues.of(
            9,
            state -> {
              double sum = 0;
              for (int i = 0; i < 9; i++) {
                sum += (state >> i & 1) * (i + 1);
              }
              return new double[] {sum, (state & 3) == 3 ? 8 : 0};
            });
    for (int i = 0; i < 9; i++) {
      assertThat(shares[i][0]).isCloseTo(i + 1, within(1e-12));
      assertThat(shares[i][1]).isCloseTo(i < 2 ? 4 : 0, within(1e-12));
    }
  }

  @Test
  void tooManyChangesAreRefused() {
    assertThatThrownBy(() -> ShapleyValues.of(17, state -> new double[1]))
        .hasMessageContaining("17 changes");
  }
}
