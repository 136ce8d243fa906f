package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import nullplane.validation.Check;
import nullplane.validation.Validation;
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
    String orders = "Closed form: the six orders counted (L. S. Shapley 1953).";
    Validation.check("glove game: share of the left glove", orders)
        .expected(2.0 / 3, "")
        .computed(shares[0][0])
        .within(1e-15);
    Validation.check("glove game: share of each right glove", orders)
        .add(1.0 / 6, shares[1][0])
        .add(1.0 / 6, shares[2][0])
        .within(1e-15);
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
    String definition = "Definition of Shapley values (L. S. Shapley 1953).";
    Check sums = Validation.check("shares of a sum of nine", definition);
    Check product = Validation.check("shares of a product of two among nine", definition);
    for (int i = 0; i < 9; i++) {
      sums.add(i + 1, shares[i][0]);
      product.add(i < 2 ? 4 : 0, shares[i][1]);
    }
    sums.within(1e-12);
    product.within(1e-12);
  }

  @Test
  void tooManyChangesAreRefused() {
    assertThatThrownBy(() -> ShapleyValues.of(17, state -> new double[1]))
        .hasMessageContaining("17 changes");
  }
}
