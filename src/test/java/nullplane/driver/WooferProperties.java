package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.stream.Stream;
import nullplane.units.Air;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class WooferProperties {
  private static final Air AIR = Air.standard();

  @ParameterizedTest
  @EnumSource(Mounting.class)
  void resonanceAndQualityFactorsGiveTheWooferBack(Mounting mounting) {
    Woofers.random(20_26, 3_000)
        .forEach(
            woofer -> {
              SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
              Woofer again =
                  Woofer.withResonance(
                      shellOf(woofer),
                      set.resonanceHz(),
                      set.mechanicalQ(),
                      set.totalQ(),
                      mounting,
                      AIR);
              // 1e-12 is some 5000 roundings; a route has about twenty.
              assertSame(again.stiffnessNPerM(), woofer.stiffnessNPerM());
              assertSame(again.lossNsPerM(), woofer.lossNsPerM());
              assertSame(again.forceFactorTm(), woofer.forceFactorTm());
              assertThat(again.bareMassKg()).isEqualTo(woofer.bareMassKg());
              SmallSignal setAgain = SmallSignal.of(again, mounting, AIR);
              assertSame(setAgain.totalQ(), set.totalQ());
              assertSame(setAgain.referenceEfficiency(), set.referenceEfficiency());
            });
  }

  @ParameterizedTest
  @MethodSource("someWoofers")
  void moreAirLowersResonanceAndRaisesQ(Woofer woofer) {
    SmallSignal free = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
    SmallSignal baffled = SmallSignal.of(woofer, Mounting.INFINITE_BAFFLE, AIR);
    assertThat(baffled.resonanceHz()).isLessThan(free.resonanceHz());
    assertThat(baffled.totalQ()).isGreaterThan(free.totalQ());
    // Kms and Bl belong to the woofer: fs Q/M and fs^2 M stay.
    assertSame(
        baffled.resonanceHz() * baffled.resonanceHz() * baffled.movingMassKg(),
        free.resonanceHz() * free.resonanceHz() * free.movingMassKg());
  }

  /** The impedance of a passive thing: real part above Re, peak Re (1 + Qms/Qes) at fs. */
  @ParameterizedTest
  @MethodSource("someWoofers")
  void impedanceIsPassiveAndPeaksAtResonance(Woofer woofer) {
    MountedWoofer mounted = new MountedWoofer(woofer, Mounting.FREE_AIR, AIR);
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
    assertSame(
        mounted.impedanceReOhm(set.resonanceHz()),
        woofer.resistanceOhm() * (1 + set.mechanicalQ() / set.electricalQ()));
    for (double f = 5; f < 2_000; f *= 1.3) {
      assertThat(mounted.impedanceReOhm(f)).isGreaterThan(woofer.resistanceOhm());
      assertThat(mounted.impedanceReOhm(f))
          .isLessThanOrEqualTo(mounted.impedanceReOhm(set.resonanceHz()) * (1 + 1e-12));
    }
    // At 0 Hz the suspension alone holds the coil: x/U = Bl/(Re Kms).
    assertThat(
            mounted.travelPerVoltM(1e-4)
                * woofer.resistanceOhm()
                * woofer.stiffnessNPerM()
                / woofer.forceFactorTm())
        .isEqualTo(1, offset(1e-4));
  }

  /**
   * Energy of a sine, per squared volt: the power taken is the heat of Re and of Rms; the reactive
   * power is 2w times the coil's field energy less what the mass has over the spring.
   */
  @ParameterizedTest
  @MethodSource("someWoofers")
  void powerIsHeatAndReactivePowerIsStoredEnergy(Woofer woofer) {
    MountedWoofer mounted = new MountedWoofer(woofer, Mounting.INFINITE_BAFFLE, AIR);
    double mass = woofer.bareMassKg() + 16.0 / 3 * 1.2041 * Math.pow(woofer.radiusM(), 3);
    for (double f = 5; f < 500; f *= 1.7) {
      double w = 2 * Math.PI * f;
      double travel = mounted.travelPerVoltM(f);
      double current = 1 / mounted.impedanceModulusOhm(f);
      double heat =
          woofer.resistanceOhm() * current * current
              + woofer.lossNsPerM() * (w * travel) * (w * travel);
      assertSame(mounted.impedanceReOhm(f) * current * current, heat);
      double field = woofer.inductanceH() * current * current;
      double kinetic = mass * (w * travel) * (w * travel);
      double elastic = woofer.stiffnessNPerM() * travel * travel;
      assertThat(mounted.impedanceImOhm(f) * current * current)
          .isEqualTo(w * (field - kinetic + elastic), offset(1e-11 * w * (kinetic + elastic)));
    }
  }

  static Stream<Woofer> someWoofers() {
    return Woofers.random(11, 200);
  }

  private static Woofer shellOf(Woofer woofer) {
    return new Woofer(
        woofer.name(),
        woofer.nominalM(),
        woofer.effectiveAreaM2(),
        woofer.resistanceOhm(),
        woofer.inductanceH(),
        woofer.bareMassKg(),
        1,
        1,
        1,
        woofer.travelM(),
        woofer.powerW());
  }

  private static void assertSame(double found, double expected) {
    assertThat(found / expected).isEqualTo(1, offset(1e-12));
  }
}
