package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.TreeSet;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class SobolIndicesReference {
  private static final String ISHIGAMI = "T. Ishigami and T. Homma 1990, closed form; a 7, b 0.1.";
  private static final Batches BATCHES = new Batches(BatchRunner.sequential(), 100);

  /**
   * Ishigami's function sin x1 + a sin^2 x2 + b x3^4 sin x1 on (-pi, pi)^3, a 7, b 0.1. Source: T.
   * Ishigami, T. Homma 1990; closed form: V1 = (1 + b pi^4/5)^2/2, V2 = a^2/8, V13 = b^2 pi^8
   * 8/225, V the sum. Beside it a sum of inputs, whose indices are the squared weights. Within
   * 0.005 at 4096 samples: a low-discrepancy estimate errs by some (log N)^k/N, plain chance by
   * 0.016.
   */
  @Test
  void findsTheIndicesOfIshigamisFunction() {
    double a = 7;
    double b = 0.1;
    double v1 = 0.5 * Math.pow(1 + b * Math.pow(Math.PI, 4) / 5, 2);
    double v2 = a * a / 8;
    double v13 = b * b * Math.pow(Math.PI, 8) * 8 / 225;
    double v = v1 + v2 + v13;
    SobolIndices.Model model =
        (point, outputs) -> {
          double x1 = Math.PI * (2 * point[0] - 1);
          double x2 = Math.PI * (2 * point[1] - 1);
          double x3 = Math.PI * (2 * point[2] - 1);
          outputs[0] =
              Math.sin(x1) + a * Math.sin(x2) * Math.sin(x2) + b * Math.pow(x3, 4) * Math.sin(x1);
          outputs[1] = 100 + 1 * point[0] + 2 * point[1] + 3 * point[2];
        };
    var indices = SobolIndices.of(() -> model, 3, 2, 4096, BATCHES);
    SobolIndices ishigami = indices.get(0);
    Validation.check("mean of Ishigami's function, 4,096 samples", ISHIGAMI)
        .expected(a / 2, "")
        .computed(ishigami.mean())
        .within(0.01);
    Validation.check("variance of Ishigami's function", ISHIGAMI)
        .expected(v, "")
        .computed(ishigami.variance())
        .withinPercent(0.5);
    double[] first = {v1 / v, v2 / v, 0};
    double[] total = {(v1 + v13) / v, v2 / v, v13 / v};
    Check sum =
        Validation.check(
            "first-order and total indices of a weighted sum", "Closed form: squared weights.");
    for (int i = 0; i < 3; i++) {
      Validation.check("first-order index of input " + (i + 1), ISHIGAMI)
          .expected(first[i], "")
          .computed(ishigami.firstOrder().at(i))
          .within(0.005);
      Validation.check("total index of input " + (i + 1), ISHIGAMI)
          .expected(total[i], "")
          .computed(ishigami.total().at(i))
          .within(0.005);
      double weight = (i + 1) * (i + 1) / 14.0;
      sum.add(weight, indices.get(1).firstOrder().at(i));
      sum.add(weight, indices.get(1).total().at(i));
    }
    sum.within(0.002);
  }

  @Test
  void aConstantHasNoSensitivity() {
    var indices = SobolIndices.of(() -> (point, outputs) -> outputs[0] = 3, 2, 1, 16, BATCHES);
    assertThat(indices.get(0).variance()).isZero();
    assertThat(indices.get(0).total().at(1)).isZero();
    assertThat(indices.get(0).firstOrder().at(1)).isZero();
    assertThat(indices.get(0).total().size()).isEqualTo(2);
  }

  /** Half a cell off the sequence's own points: none on the rim, each column in equal steps. */
  @Test
  void pointsLieInsideTheCube() {
    TreeSet<Double> first = new TreeSet<>();
    SobolIndices.of(
        () ->
            (point, outputs) -> {
              for (double share : point) {
                assertThat(share).isStrictlyBetween(0.0, 1.0);
              }
              first.add(point[0]);
            },
        3,
        1,
        16,
        BATCHES);
    assertThat(first).hasSize(16);
    assertThat(first.first()).isCloseTo(1.0 / 32, within(1e-15));
    assertThat(first.last()).isCloseTo(31.0 / 32, within(1e-15));
  }
}
