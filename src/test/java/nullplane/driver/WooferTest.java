package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WooferTest {
  private final Woofer woofer = Woofers.tuned(0.3, 0.0531, 0.06, 30, 0.8, 0.008);

  @Test
  void totalQMustStayBelowMechanicalQ() {
    assertThatThrownBy(
            () -> Woofer.withResonance(woofer, 30, 2, 2, Mounting.FREE_AIR, Air.standard()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("Qts is 2.0")
        .hasMessageContaining("below Qms");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void rejectsValuesThatNoWooferHas(double value) {
    assertThatThrownBy(() -> Woofers.plain(value, 1_000, 1, 5, 6, 0.05))
        .hasMessageContaining("bare moving mass")
        .hasMessageContaining("kg");
    assertThatThrownBy(() -> Woofers.plain(0.05, 1_000, 1, 5, value, 0.05))
        .hasMessageContaining("Re is")
        .hasMessageContaining("ohm");
    assertThatThrownBy(
            () -> Woofer.withResonance(woofer, value, 5, 1, Mounting.FREE_AIR, Air.standard()))
        .hasMessageContaining("fs");
  }

  @Test
  void renamingKeepsEverythingElse() {
    Woofer renamed = woofer.withName("village hall");
    assertThat(renamed.name()).isEqualTo("village hall");
    assertThat(renamed.withName(woofer.name())).isEqualTo(woofer);
  }

  @Test
  void motorStrengthIsForceFactorSquaredOverResistance() {
    assertThat(Woofers.plain(0.05, 1_000, 1, 9, 6, 0.05).motorStrengthNsPerM()).isEqualTo(13.5);
  }
}
