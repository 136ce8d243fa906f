package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import nullplane.HandbookRow;
import nullplane.units.Air;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Completed sheets against handbooks; the rows are in reference/handbook_checks.csv. */
@Tag("reference")
class CompletionReference {
  private static final Air AIR = Air.standard();

  /** R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: both routes to eta0 are one. Table: 1e-9. */
  @Test
  void ts03BothRoutesToEfficiencyAgree() {
    Check both =
        HandbookRow.of("TS03")
            .check("completed sheet: efficiency by motor and by volume, 300 woofers, their ratio");
    Woofers.random(33, 300)
        .forEach(
            woofer -> {
              SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
              CompletedSet motor =
                  Completion.of(
                      StatedSet.in(Mounting.FREE_AIR)
                          .with(Parameter.FORCE_FACTOR, woofer.forceFactorTm())
                          .with(Parameter.AREA, woofer.effectiveAreaM2())
                          .with(Parameter.MOVING_MASS, set.movingMassKg())
                          .with(Parameter.RESISTANCE, woofer.resistanceOhm()),
                      AIR);
              CompletedSet volume =
                  Completion.of(
                      StatedSet.in(Mounting.FREE_AIR)
                          .with(Parameter.RESONANCE, set.resonanceHz())
                          .with(Parameter.VOLUME, set.equivalentVolumeM3())
                          .with(Parameter.ELECTRICAL_Q, set.electricalQ()),
                      AIR);
              double one = motor.value(Parameter.EFFICIENCY).orElseThrow();
              double other = volume.value(Parameter.EFFICIENCY).orElseThrow();
              both.add(1, one / other);
              assertThat(motor.values()).doesNotContainKey(Parameter.RESONANCE);
              assertThat(volume.values()).doesNotContainKey(Parameter.AREA);
            });
    both.within(1e-9);
  }

  /**
   * R. H. Small, Closed-Box Loudspeaker Systems II (1973), design example: four figures, no area,
   * no mass, no resistance. Table: 0.5 %; figures printed to four digits.
   */
  @Test
  void ts08TextbookExampleFromFourFigures() {
    HandbookRow row = HandbookRow.of("TS08");
    CompletedSet set =
        Completion.of(
            StatedSet.in(Mounting.INFINITE_BAFFLE)
                .with(Parameter.RESONANCE, row.figure("19"))
                .with(Parameter.MECHANICAL_Q, row.figure("3.7"))
                .with(Parameter.ELECTRICAL_Q, row.figure("0.35"))
                .with(Parameter.VOLUME, row.figure("540") * 1e-3),
            new Air(1.18, row.figure("345")));
    row.check("completed sheet: total Q from four figures")
        .expected(row.figure("0.3198"), "")
        .computed(set.value(Parameter.TOTAL_Q).orElseThrow())
        .withinPercent(0.02);
    row.check("completed sheet: efficiency from four figures")
        .expected(row.figure("1.017"), "%")
        .computed(set.value(Parameter.EFFICIENCY).orElseThrow() * 100)
        .withinPercent(0.05);
    assertThat(set.settled()).isFalse();
  }

  /** Definition p^2 = W rho c/(2 pi r^2). Figures printed to 0.001 dB; table: 0.005 dB. */
  @Test
  void ts09LevelOfFullEfficiency() {
    HandbookRow row = HandbookRow.of("TS09");
    row.check("completed sheet: level of 1 W at efficiency 1, two airs")
        .in("dB")
        .add(row.figure("112.160"), level(new Air(1.2041, 343.2)))
        .add(row.figure("112.095"), level(new Air(1.18, 345)))
        .within(0.001);
  }

  private static double level(Air air) {
    return Completion.of(StatedSet.in(Mounting.FREE_AIR).with(Parameter.EFFICIENCY, 1), air)
        .value(Parameter.LEVEL_ONE_WATT)
        .orElseThrow();
  }

  /** R. H. Small 1972, 4 pi^2/c^3: eta0 of 1 Hz, 1 m3 and Qes 1. Table: 0.01 %. */
  @Test
  void ts10EfficiencyConstant() {
    HandbookRow row = HandbookRow.of("TS10");
    StatedSet unit =
        StatedSet.in(Mounting.FREE_AIR)
            .with(Parameter.RESONANCE, 1)
            .with(Parameter.VOLUME, 1)
            .with(Parameter.ELECTRICAL_Q, 1);
    Check constant = row.check("completed sheet: 4 pi^2/c^3, two airs").in("s3/m3");
    constant.add(
        row.figure("9.7660e-7"),
        Completion.of(unit, new Air(1.2, 343.2)).value(Parameter.EFFICIENCY).orElseThrow());
    constant.add(
        row.figure("9.6140e-7"),
        Completion.of(unit, new Air(1.2, 345)).value(Parameter.EFFICIENCY).orElseThrow());
    constant.withinPercent(0.01);
  }

  /** Definition, 10 lg(U^2/Re) over 1 W. Figures printed to 0.001 dB; table: 0.01 dB. */
  @Test
  void ts11VoltageAgainstOneWatt() {
    HandbookRow row = HandbookRow.of("TS11");
    String[] resistances = {"6.0", "3.5", "2.7"};
    Check voltage = row.check("completed sheet: 2.83 V over 1 W, three resistances").in("dB");
    String[] differences = {"1.254", "3.595", "4.722"};
    for (int i = 0; i < resistances.length; i++) {
      CompletedSet set =
          Completion.of(
              StatedSet.in(Mounting.FREE_AIR)
                  .with(Parameter.RESISTANCE, row.figure(resistances[i]))
                  .with(Parameter.LEVEL_ONE_WATT, 90),
              AIR);
      voltage.add(
          row.figure(differences[i]), set.value(Parameter.LEVEL_VOLTAGE).orElseThrow() - 90);
    }
    voltage.within(0.001);
  }

  /** Definitions of Qes and Qms, after AM01 and AM02. Table: 0.05 %. */
  @Test
  void am03FullSetOfTheBenchWoofer() {
    HandbookRow row = HandbookRow.of("AM03");
    CompletedSet set =
        Completion.of(
            StatedSet.in(Mounting.FREE_AIR)
                .with(Parameter.MOVING_MASS, row.figure("53.333") * 1e-3)
                .with(Parameter.RESISTANCE, row.figure("6"))
                .with(Parameter.ELECTRICAL_Q, row.figure("0.55556"))
                .with(Parameter.MECHANICAL_Q, HandbookRow.of("AM02").figure("5.000"))
                .with(Parameter.RESONANCE, row.figure("30")),
            AIR);
    row.check("force factor")
        .expected(row.figure("10.4195"), "T m")
        .computed(set.value(Parameter.FORCE_FACTOR).orElseThrow())
        .withinPercent(0.01);
    row.check("compliance")
        .expected(row.figure("0.52775"), "mm/N")
        .computed(set.value(Parameter.COMPLIANCE).orElseThrow() * 1e3)
        .withinPercent(0.01);
    row.check("mechanical loss")
        .expected(row.figure("2.0106"), "N s/m")
        .computed(set.value(Parameter.LOSS).orElseThrow())
        .withinPercent(0.01);
  }

  /** Circuit theory. Table: 0.01 %. */
  @Test
  void in02InductanceWithEddyCurrents() {
    HandbookRow row = HandbookRow.of("IN02");
    CoilInductance coil =
        new CoilInductance.WithEddyCurrents(
            row.figure("0.4") * 1e-3, row.figure("1.2") * 1e-3, row.figure("4"));
    double omega = 2 * Math.PI * 1000 * row.figure("1");
    row.check("real part of a coil with eddy currents")
        .expected(3.1215, "ohm")
        .computed(coil.reOhm(omega))
        .withinPercent(0.01);
    row.check("imaginary part of a coil with eddy currents")
        .expected(4.1693, "ohm")
        .computed(coil.imOhm(omega))
        .withinPercent(0.01);
  }

  /**
   * W. M. Leach, J. Audio Eng. Soc. 50(6) (2002) 442: K (jw)^n turns by n 90 degrees and rises n 20
   * dB a decade; at n = 1 it is a plain inductance.
   */
  @Test
  void semiInductanceTurnsAndRisesByItsExponent() {
    String source = "W. M. Leach, J. Audio Eng. Soc. 50(6) (2002) 442: K (jw)^n.";
    Check modulus = Validation.check("semi-inductance: modulus at 1 kHz", source).in("ohm");
    Check angle = Validation.check("semi-inductance: angle n 90 degrees", source).in("deg");
    Check rise = Validation.check("semi-inductance: rise over a decade, 10^n", source);
    for (double exponent : new double[] {0.5, 0.7, 1}) {
      CoilInductance coil = CoilInductance.SemiInductance.ofModulus(6.5, 1000, exponent);
      double omega = 2 * Math.PI * 1000;
      modulus.add(6.5, Math.hypot(coil.reOhm(omega), coil.imOhm(omega)));
      angle.add(90 * exponent, Math.toDegrees(Math.atan2(coil.imOhm(omega), coil.reOhm(omega))));
      rise.add(
          Math.pow(10, exponent), Math.hypot(coil.reOhm(10 * omega), coil.imOhm(10 * omega)) / 6.5);
    }
    modulus.withinPercent(1e-9);
    angle.withinPercent(1e-9);
    rise.withinPercent(1e-9);
    assertThat(CoilInductance.SemiInductance.ofModulus(2 * Math.PI, 1000, 1).inductanceAt(50))
        .isCloseTo(1e-3, withinPercentage(1e-9));
    // 45 degrees: as much reactance as resistance, and half the inductance at four times the rate
    CoilInductance half = CoilInductance.SemiInductance.ofModulus(6.5, 1000, 0.5);
    double milli = 6.5 / Math.sqrt(2) / (2 * Math.PI);
    assertThat(half.inductanceAt(1000) * 1e3).isCloseTo(milli, withinPercentage(1e-9));
    assertThat(half.inductanceAt(4000) * 1e3).isCloseTo(milli / 2, withinPercentage(1e-9));
    CoilInductance plain = new CoilInductance.Plain(1e-3);
    assertThat(plain.inductanceAt(300)).isEqualTo(1e-3);
    assertThat(plain.imOhm(5000)).isCloseTo(5, withinPercentage(1e-9));
    assertThat(plain.reOhm(5000)).isZero();
  }

  /** Lamb (1932) art. 102 and its double for a baffle; the set must be that of the mounting. */
  @Test
  void airOfAMountingGivesTheSetOfThatMounting() {
    Check ratios =
        Validation.check(
            "fs, Qms, Qes, Qts with a disc's air over those of the mounting, 200 woofers, two"
                + " mountings",
            "H. Lamb, Hydrodynamics (1932), art. 102: (8/3) rho a^3, twice that in a baffle.");
    Woofers.random(12, 200)
        .forEach(
            woofer -> {
              double disc = 8.0 / 3 * 1.2041 * Math.pow(woofer.radiusM(), 3);
              for (Mounting mounting : Mounting.values()) {
                SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
                LoadedResonance loaded =
                    LoadedResonance.of(woofer, mounting == Mounting.FREE_AIR ? disc : 2 * disc);
                assertThat(LoadedResonance.of(woofer, mounting, AIR).resonanceHz())
                    .isCloseTo(loaded.resonanceHz(), withinPercentage(1e-9));
                ratios.add(1, loaded.resonanceHz() / set.resonanceHz());
                ratios.add(1, loaded.mechanicalQ() / set.mechanicalQ());
                ratios.add(1, loaded.electricalQ() / set.electricalQ());
                ratios.add(1, loaded.totalQ() / set.totalQ());
              }
            });
    ratios.within(1e-12);
  }
}
