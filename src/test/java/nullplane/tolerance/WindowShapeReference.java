package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class WindowShapeReference {
  private static final double[] NO_CAPS = {1e9, 1e9, 1e9, 1e9};

  /**
   * One response: w_i = k (p_i/S_i^2)^(1/3) with sum (S_i w_i)^2 = r^2. Source: closed form by a
   * Lagrange multiplier.
   */
  @Test
  void oneResponseIsTheClosedForm() {
    double[] usual = {0.1, 0.15, 0.05, 0.05};
    double[] sensitivity = {7, -3, 0.5, 9};
    WindowShape shape = new WindowShape(usual, NO_CAPS);
    shape.add(sensitivity, 1.3);
    double[] expected = new double[4];
    double squares = 0;
    for (int i = 0; i < 4; i++) {
      expected[i] = Math.cbrt(usual[i] / (sensitivity[i] * sensitivity[i]));
      squares += Math.pow(sensitivity[i] * expected[i], 2);
    }
    double[] windows = shape.windows();
    Check shares =
        Validation.check(
            "windows for one response, four quantities",
            "Closed form by a Lagrange multiplier: w_i as (p_i/S_i^2)^(1/3).");
    for (int i = 0; i < 4; i++) {
      shares.add(expected[i] * 1.3 / Math.sqrt(squares), windows[i]);
    }
    shares.withinPercent(1e-5);
  }

  /**
   * Many responses and caps: no point of the permitted set is cheaper. Each trial takes windows at
   * random, widens them as far as the responses let them, and must cost at least as much. Source:
   * the problem is convex, so a local search around the solution would find a cheaper point if
   * there were one. Within 1e-6 of the cost, the iteration's own error.
   */
  @Test
  void nothingPermittedIsCheaper() {
    SplittableRandom random = new SplittableRandom(11);
    Check cheapest =
        Validation.check(
            "cost of permitted windows over that found, least of 4,000 trials, 20 problems",
            "The problem is convex: none is below 1.");
    for (int problem = 0; problem < 20; problem++) {
      double[] usual = {0.1, 0.15, 0.05, 0.15};
      double[] caps = {0.2, 0.3, 0.1, 0.3};
      double[][] responses = new double[30][4];
      WindowShape shape = new WindowShape(usual, caps);
      for (double[] response : responses) {
        for (int i = 0; i < 4; i++) {
          response[i] = 20 * (random.nextDouble() - 0.5);
        }
        response[3] = problem % 2 == 0 ? 0 : response[3];
        shape.add(response, 1);
      }
      double[] windows = shape.windows();
      assertThat(usage(windows, responses)).isLessThanOrEqualTo(1 + 1e-12);
      double cost = cost(usual, windows);
      double least = Double.MAX_VALUE;
      for (int trial = 0; trial < 4000; trial++) {
        double reach = trial % 2 == 0 ? 1 : 0.01;
        double[] other = windows.clone();
        for (int i = 0; i < 4; i++) {
          other[i] = Math.min(caps[i], other[i] * Math.exp(reach * (random.nextDouble() - 0.5)));
        }
        double widen = 1 / Math.sqrt(usage(other, responses));
        for (int i = 0; i < 4; i++) {
          other[i] = Math.min(caps[i], other[i] * widen);
        }
        assertThat(cost(usual, other)).isGreaterThan(cost * (1 - 1e-6));
        least = Math.min(least, cost(usual, other) / cost);
      }
      cheapest.add(1, least);
    }
    cheapest.coarse(3, 1e-2).atLeast(1 - 1e-6);
  }

  private static double cost(double[] usual, double[] windows) {
    double sum = 0;
    for (int i = 0; i < usual.length; i++) {
      sum += usual[i] / windows[i];
    }
    return sum;
  }

  private static double usage(double[] windows, double[][] responses) {
    return Arrays.stream(responses)
        .mapToDouble(
            response -> {
              double sum = 0;
              for (int i = 0; i < windows.length; i++) {
                sum += Math.pow(response[i] * windows[i], 2);
              }
              return sum;
            })
        .max()
        .orElseThrow();
  }
}
