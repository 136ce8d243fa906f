package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class StackChoiceTest {

  private static StackChoice choice(double violation, double cost, int wiring, int network) {
    StackChoice choice = new StackChoice();
    choice.violation = violation;
    choice.cost = cost;
    choice.wiring = wiring;
    choice.network = network;
    return choice;
  }

  private static void isBetter(StackChoice one, StackChoice other) {
    assertThat(one.betterThan(other)).isTrue();
    assertThat(other.betterThan(one)).isFalse();
  }

  /** Violation, then cost, then the earlier wiring and network, whichever is asked first. */
  @Test
  void theOrderIsOneOfTheChoicesAlone() {
    isBetter(choice(0, 9, 1, 9), choice(0.1, 1, 0, 0));
    isBetter(choice(0, 1, 1, 9), choice(0, 9, 0, 0));
    isBetter(choice(0, 1, 0, 9), choice(0, 1, 1, 0));
    isBetter(choice(0, 1, 1, 3), choice(0, 1, 1, 4));
    assertThat(choice(0, 1, 1, 3).betterThan(choice(0, 1, 1, 3))).isFalse();
  }

  @Test
  void aGainIsNoCorrection() {
    StackChoice choice = choice(0, 1, 0, 0);
    choice.bend = 2;
    choice.loss = 3;
    assertThat(choice.correctionDb()).isEqualTo(5);
    choice.loss = -3;
    assertThat(choice.correctionDb()).isEqualTo(2);
  }
}
