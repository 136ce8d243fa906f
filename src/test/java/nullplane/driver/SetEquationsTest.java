package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;

class SetEquationsTest {
  private static final double STEP = 1e-6;

  /** What each unknown's logarithm does to a figure's is the difference that it makes. */
  @Test
  void gradientsAreDifferences() {
    Random random = new Random(1);
    for (Mounting mounting : Mounting.values()) {
      SetEquations equations = new SetEquations(mounting, Air.standard());
      double[] x = equations.solve(List.of(), new double[0]).orElseThrow().clone();
      for (int draw = 0; draw < 5; draw++) {
        for (int i = 0; i < x.length; i++) {
          x[i] += 0.3 * random.nextGaussian();
        }
        for (Parameter parameter : Parameter.values()) {
          double[] gradient = equations.gradient(parameter, x);
          for (int i = 0; i < x.length; i++) {
            double[] up = x.clone();
            double[] down = x.clone();
            up[i] += STEP;
            down[i] -= STEP;
            double difference =
                (equations.log(parameter, up) - equations.log(parameter, down)) / (2 * STEP);
            assertThat(gradient[i])
                .as("%s by unknown %d", parameter, i)
                .isCloseTo(difference, within(1e-7));
          }
        }
      }
    }
  }

  /** In 1/Qts = 1/Qms + 1/Qes and in Mms = bare + air the members' shares add up to the whole. */
  @Test
  void sharesOfASumAddUp() {
    SetEquations equations = new SetEquations(Mounting.FREE_AIR, Air.standard());
    double[] x = equations.solve(List.of(), new double[0]).orElseThrow();
    double qms = Math.exp(equations.log(Parameter.MECHANICAL_Q, x));
    double qes = Math.exp(equations.log(Parameter.ELECTRICAL_Q, x));
    double qts = 1 / (1 / qms + 1 / qes);
    double bare = Math.exp(equations.log(Parameter.BARE_MASS, x));
    double total = Math.exp(equations.log(Parameter.MOVING_MASS, x));
    int sums = 0;
    for (Relation relation : Relation.values()) {
      if (relation.members().contains(Parameter.TOTAL_Q)
          && relation.members().contains(Parameter.MECHANICAL_Q)) {
        assertThat(equations.weight(relation, Parameter.MECHANICAL_Q, x))
            .isCloseTo(qts / qms, within(1e-12));
        assertThat(equations.weight(relation, Parameter.ELECTRICAL_Q, x))
            .isCloseTo(qts / qes, within(1e-12));
        sums++;
      }
      if (relation.members().contains(Parameter.BARE_MASS)
          && relation.members().contains(Parameter.MOVING_MASS)) {
        assertThat(equations.weight(relation, Parameter.BARE_MASS, x))
            .isCloseTo(bare / total, within(1e-12));
        // the air goes with Sd^1.5
        assertThat(equations.weight(relation, Parameter.AREA, x))
            .isCloseTo(1.5 * (total - bare) / total, within(1e-12));
        sums++;
      }
    }
    assertThat(sums).isEqualTo(2);
  }
}
