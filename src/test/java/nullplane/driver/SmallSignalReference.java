package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.units.Air;
import nullplane.validation.Check;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Small-signal figures against handbooks; the rows are in reference/handbook_checks.csv. */
@Tag("reference")
class SmallSignalReference {
  private static final Air AIR = Air.standard();

  /** R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: both routes to eta0 are one. */
  @Test
  void ts03TwoEfficiencyFormulasAgree() {
    Check both =
        HandbookRow.of("TS03")
            .check("both formulas of efficiency, 2,000 woofers in two mountings, their ratio");
    Woofers.random(3, 2_000)
        .forEach(
            woofer -> {
              for (Mounting mounting : Mounting.values()) {
                SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
                double other =
                    SmallSignal.efficiencyFromVolume(
                        set.resonanceHz(), set.equivalentVolumeM3(), set.electricalQ(), AIR);
                both.add(1, other / set.referenceEfficiency());
              }
            });
    both.within(1e-9);
  }

  /** R. H. Small, Closed-Box Loudspeaker Systems II (1973), design example. Table: 0.5 %. */
  @Test
  void ts08TextbookExample() {
    HandbookRow row = HandbookRow.of("TS08");
    Air air = new Air(1.18, row.figure("345"));
    double fs = row.figure("19");
    double vas = row.figure("540") * 1e-3;
    double omega = 2 * Math.PI * fs;
    Check totalQ = row.check("total Q, for three areas");
    Check efficiency = row.check("reference efficiency, for three areas").in("%");
    // Any area gives the same set: the example states none.
    for (double area : new double[] {0.05, 0.08, 0.12}) {
      double kms = 1.18 * 345 * 345 * area * area / vas;
      double mass = kms / (omega * omega);
      Woofer shell = Woofers.plain(1, 1, 1, 1, 6, area);
      double bare = mass - Mounting.INFINITE_BAFFLE.airMassKg(shell.radiusM(), air);
      double rms = omega * mass / row.figure("3.7");
      double bl = Math.sqrt(omega * mass * 6 / row.figure("0.35"));
      SmallSignal set =
          SmallSignal.of(Woofers.plain(bare, kms, rms, bl, 6, area), Mounting.INFINITE_BAFFLE, air);
      assertThat(set.resonanceHz()).isEqualTo(19, offset(1e-9));
      totalQ.add(row.figure("0.3198"), set.totalQ());
      efficiency.add(row.figure("1.017"), set.referenceEfficiency() * 100);
    }
    totalQ.withinPercent(0.02);
    efficiency.withinPercent(0.05);
  }

  /** Definition p^2 = W rho c/(2 pi r^2). Figures printed to 0.001 dB; table: 0.005 dB. */
  @Test
  void ts09LevelOfOneWatt() {
    HandbookRow row = HandbookRow.of("TS09");
    row.check("level of 1 W at efficiency 1, 1 m, half space, air of 1.2041 kg/m3")
        .expected(row.figure("112.160"), "dB")
        .computed(SmallSignal.levelAtOneWatt(1, new Air(1.2041, 343.2)))
        .within(0.001);
    row.check("level of 1 W at efficiency 1, 1 m, half space, air of 1.18 kg/m3")
        .expected(row.figure("112.095"), "dB")
        .computed(SmallSignal.levelAtOneWatt(1, new Air(1.18, 345)))
        .within(0.001);
  }

  /** Small 1972, 4 pi^2/c^3. Table: 0.01 %. */
  @Test
  void ts10EfficiencyConstant() {
    HandbookRow row = HandbookRow.of("TS10");
    row.check("4 pi^2/c^3 at 343.2 m/s")
        .expected(row.figure("9.7660e-7"), "s3/m3")
        .computed(SmallSignal.efficiencyFromVolume(1, 1, 1, new Air(1.2, 343.2)))
        .withinPercent(0.01);
    row.check("4 pi^2/c^3 at 345 m/s")
        .expected(row.figure("9.6140e-7"), "s3/m3")
        .computed(SmallSignal.efficiencyFromVolume(1, 1, 1, new Air(1.2, 345)))
        .withinPercent(0.01);
  }

  /** Definition, 10 lg(U^2/Re) over 1 W. Figures printed to 0.001 dB; table: 0.01 dB. */
  @Test
  void ts11VoltageAgainstOneWatt() {
    HandbookRow row = HandbookRow.of("TS11");
    String[] resistances = {"6.0", "3.5", "2.7"};
    String[] at283 = {"1.254", "3.595", "4.722"};
    String[] atRootEight = {"1.249", "3.590", "4.717"};
    for (int i = 0; i < resistances.length; i++) {
      double re = row.figure(resistances[i]);
      row.check("2.83 V over 1 W into " + resistances[i] + " ohm")
          .expected(row.figure(at283[i]), "dB")
          .computed(SmallSignal.levelOverOneWatt(2.83, re))
          .within(0.001);
      row.check("sqrt 8 V over 1 W into " + resistances[i] + " ohm")
          .expected(row.figure(atRootEight[i]), "dB")
          .computed(SmallSignal.levelOverOneWatt(Math.sqrt(8), re))
          .within(0.001);
    }
  }

  /** Small 1972 and IEC 60268-5, added-mass method; the set of AM03 to its printed digits. */
  @Test
  void am01AddedMassMovesTheResonance() {
    HandbookRow row = HandbookRow.of("AM01");
    Woofer woofer = benchWoofer();
    SmallSignal before = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
    SmallSignal after = SmallSignal.of(loaded(woofer, 0.030), Mounting.FREE_AIR, AIR);
    row.check("resonance without added mass")
        .expected(row.figure("30.0"), "Hz")
        .computed(before.resonanceHz())
        .withinPercent(0.01);
    row.check("resonance with 30 g added")
        .expected(row.figure("24.0"), "Hz")
        .computed(after.resonanceHz())
        .withinPercent(0.01);
    double ratio = before.resonanceHz() / after.resonanceHz();
    row.check("moving mass from the two resonances")
        .expected(row.figure("53.333"), "g")
        .computed(30 / (ratio * ratio - 1))
        .withinPercent(0.001);
  }

  /** Definition of Q. Table: 1e-9. */
  @Test
  void am04AddedMassScalesQ() {
    HandbookRow row = HandbookRow.of("AM04");
    Woofer woofer = benchWoofer();
    SmallSignal before = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
    double added = (row.figure("1.5625") - 1) * before.movingMassKg();
    SmallSignal after = SmallSignal.of(loaded(woofer, added), Mounting.FREE_AIR, AIR);
    double factor = row.figure("1.25");
    row.check("ratios of fs, Qms, Qes and Qts with an added mass")
        .add(factor, before.resonanceHz() / after.resonanceHz())
        .add(factor, after.mechanicalQ() / before.mechanicalQ())
        .add(factor, after.electricalQ() / before.electricalQ())
        .add(factor, after.totalQ() / before.totalQ())
        .within(1e-9);
    assertThat(after.equivalentVolumeM3()).isEqualTo(before.equivalentVolumeM3());
  }

  /** Small 1972, three-point method, exact where Le = 0. Figures printed to five digits. */
  @Test
  void am02ImpedanceCurveOfTheBenchWoofer() {
    HandbookRow row = HandbookRow.of("AM02");
    MountedWoofer bench = new MountedWoofer(benchWoofer(), Mounting.FREE_AIR, AIR);
    row.check("impedance at resonance")
        .expected(row.figure("60"), "ohm")
        .computed(bench.impedanceModulusOhm(30))
        .withinPercent(0.02);
    double crossing = row.figure("18.974");
    row.check("impedance at the two crossings")
        .in("ohm")
        .add(crossing, bench.impedanceModulusOhm(row.figure("21.9774")))
        .add(crossing, bench.impedanceModulusOhm(row.figure("40.9511")))
        .withinPercent(0.02);
    SmallSignal set = SmallSignal.of(bench.woofer(), Mounting.FREE_AIR, AIR);
    row.check("mechanical Q")
        .expected(row.figure("5.000"), "")
        .computed(set.mechanicalQ())
        .withinPercent(0.02);
    row.check("electrical Q")
        .expected(row.figure("0.55556"), "")
        .computed(set.electricalQ())
        .withinPercent(0.02);
    row.check("total Q")
        .expected(row.figure("0.50000"), "")
        .computed(set.totalQ())
        .withinPercent(0.02);
  }

  /**
   * The woofer of rows AM01 to AM03: 53.333 g with air, 0.52775 mm/N, 2.0106 N s/m, 10.4195 T m.
   */
  private static Woofer benchWoofer() {
    HandbookRow row = HandbookRow.of("AM03");
    double area = 0.053;
    double airMass = Mounting.FREE_AIR.airMassKg(Math.sqrt(area / Math.PI), AIR);
    return Woofers.plain(
        row.figure("53.333") * 1e-3 - airMass,
        1e3 / row.figure("0.52775"),
        row.figure("2.0106"),
        row.figure("10.4195"),
        row.figure("6"),
        area);
  }

  private static Woofer loaded(Woofer woofer, double addedKg) {
    return Woofers.plain(
        woofer.bareMassKg() + addedKg,
        woofer.stiffnessNPerM(),
        woofer.lossNsPerM(),
        woofer.forceFactorTm(),
        woofer.resistanceOhm(),
        woofer.effectiveAreaM2());
  }
}
