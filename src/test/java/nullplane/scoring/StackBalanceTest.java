package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import nullplane.driver.RoundWireCoil;
import nullplane.driver.Woofer;
import nullplane.motor.Former;
import nullplane.motor.MagnetMaterial;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;

class StackBalanceTest {

  /** 45 kg/m2 of 0.3 m squared, or 33 kg/m2 of it with magnet and moving parts: common practice. */
  @Test
  void aWooferWeighsItsFrameItsMagnetAndWhatMoves() {
    Woofer woofer = new Woofer("w", 0.3, 0.053, 6, 0, 0.07, 1500, 2, 10, 0.008, 100);
    assertThat(StackBalance.wooferMassKg(woofer, Optional.empty())).isCloseTo(4.05, within(1e-12));
    assertThat(StackBalance.usualWooferMassKg(0.3)).isCloseTo(4.05, within(1e-12));
    MotorDesign motor =
        new MotorDesign(
            new Winding(
                new Former(0.05, 0.09e-3),
                new RoundWireCoil(4, 0.0516, 0.024, 0.30e-3, 0.334e-3, ConductorMaterial.COPPER),
                0.008),
            1,
            MagnetMaterial.FERRITE);
    assertThat(StackBalance.wooferMassKg(woofer, Optional.of(motor)))
        .isCloseTo(33 * 0.09 + 0.07 + motor.magnetMassKg(), within(1e-12));
  }

  /** A base of depth d under a height h tips at atan(d/2h); the test asks for 10 degrees. */
  @Test
  void theBaseThatTheTestAsksForJustStandsIt() {
    StackBalance balance = new StackBalance(12, 0.8);
    double least = balance.leastBaseDepthM();
    assertThat(least).isCloseTo(2 * 0.8 * 0.17632698, within(1e-7));
    assertThat(PanelStability.standsTest(balance.tippingRad(1.0001 * least))).isTrue();
    assertThat(PanelStability.standsTest(balance.tippingRad(0.9999 * least))).isFalse();
    // 13 % of the weight at 1.5 m
    assertThat(PanelStability.halfBaseForPushM(1.5)).isCloseTo(0.195, within(1e-12));
  }
}
