package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.units.Air;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Small-signal figures against handbooks; the rows are in reference/handbook_checks.csv. */
@Tag("reference")
class SmallSignalReference {
  private static final Air AIR = Air.standard();

  /** R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: both routes to eta0 are one. */
  @Test
  void ts03TwoEfficiencyFormulasAgree() {
    assertThat(HandbookRow.of("TS03")).isNotNull();
    Woofers.random(3, 2_000)
        .forEach(
            woofer -> {
              for (Mounting mounting : Mounting.values()) {
                SmallSignal set = SmallSignal.of(woofer, mounting, AIR);
                double other =
                    SmallSignal.efficiencyFromVolume(
                        set.resonanceHz(), set.equivalentVolumeM3(), set.electricalQ(), AIR);
                assertThat(other / set.referenceEfficiency()).isEqualTo(1, offset(1e-9));
              }
            });
  }

  /** R. H. Small, Closed-Box Loudspeaker Systems II (1973), design example. Table: 0.5 %. */
  @Test
  void ts08TextbookExample() {
    HandbookRow row = HandbookRow.of("TS08");
    Air air = new Air(1.18, row.figure("345"));
    double fs = row.figure("19");
    double vas = row.figure("540") * 1e-3;
    double omega = 2 * Math.PI * fs;
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
      assertThat(set.totalQ()).isCloseTo(row.figure("0.3198"), withinPercentage(0.02));
      assertThat(set.referenceEfficiency() * 100)
          .isCloseTo(row.figure("1.017"), withinPercentage(0.05));
    }
  }

  /** Definition p^2 = W rho c/(2 pi r^2). Figures printed to 0.001 dB; table: 0.005 dB. */
  @Test
  void ts09LevelOfOneWatt() {
    HandbookRow row = HandbookRow.of("TS09");
    assertThat(SmallSignal.levelAtOneWatt(1, new Air(1.2041, 343.2)))
        .isEqualTo(row.figure("112.160"), offset(0.001));
    assertThat(SmallSignal.levelAtOneWatt(1, new Air(1.18, 345)))
        .isEqualTo(row.figure("112.095"), offset(0.001));
  }

  /** Small 1972, 4 pi^2/c^3. Table: 0.01 %. */
  @Test
  void ts10EfficiencyConstant() {
    HandbookRow row = HandbookRow.of("TS10");
    assertThat(SmallSignal.efficiencyFromVolume(1, 1, 1, new Air(1.2, 343.2)))
        .isCloseTo(row.figure("9.7660e-7"), withinPercentage(0.01));
    assertThat(SmallSignal.efficiencyFromVolume(1, 1, 1, new Air(1.2, 345)))
        .isCloseTo(row.figure("9.6140e-7"), withinPercentage(0.01));
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
      assertThat(SmallSignal.levelOverOneWatt(2.83, re))
          .isEqualTo(row.figure(at283[i]), offset(0.001));
      assertThat(SmallSignal.levelOverOneWatt(Math.sqrt(8), re))
          .isEqualTo(row.figure(atRootEight[i]), offset(0.001));
    }
  }

  /** Small 1972 and IEC 60268-5, added-mass method; the set of AM03 to its printed digits. */
  @Test
  void am01AddedMassMovesTheResonance() {
    HandbookRow row = HandbookRow.of("AM01");
    Woofer woofer = benchWoofer();
    SmallSignal before = SmallSignal.of(woofer, Mounting.FREE_AIR, AIR);
    SmallSignal after = SmallSignal.of(loaded(woofer, 0.030), Mounting.FREE_AIR, AIR);
    assertThat(before.resonanceHz()).isCloseTo(row.figure("30.0"), withinPercentage(0.01));
    assertThat(after.resonanceHz()).isCloseTo(row.figure("24.0"), withinPercentage(0.01));
    double ratio = before.resonanceHz() / after.resonanceHz();
    assertThat(30 / (ratio * ratio - 1)).isCloseTo(row.figure("53.333"), withinPercentage(0.001));
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
    assertThat(before.resonanceHz() / after.resonanceHz()).isEqualTo(factor, offset(1e-9));
    assertThat(after.mechanicalQ() / before.mechanicalQ()).isEqualTo(factor, offset(1e-9));
    assertThat(after.electricalQ() / before.electricalQ()).isEqualTo(factor, offset(1e-9));
    assertThat(after.totalQ() / before.totalQ()).isEqualTo(factor, offset(1e-9));
    assertThat(after.equivalentVolumeM3()).isEqualTo(before.equivalentVolumeM3());
  }

  /** Small 1972, three-point method, exact where Le = 0. Figures printed to five digits. */
  @Test
  void am02ImpedanceCurveOfTheBenchWoofer() {
    HandbookRow row = HandbookRow.of("AM02");
    MountedWoofer bench = new MountedWoofer(benchWoofer(), Mounting.FREE_AIR, AIR);
    assertThat(bench.impedanceModulusOhm(30)).isCloseTo(row.figure("60"), withinPercentage(0.02));
    double crossing = row.figure("18.974");
    assertThat(bench.impedanceModulusOhm(row.figure("21.9774")))
        .isCloseTo(crossing, withinPercentage(0.02));
    assertThat(bench.impedanceModulusOhm(row.figure("40.9511")))
        .isCloseTo(crossing, withinPercentage(0.02));
    SmallSignal set = SmallSignal.of(bench.woofer(), Mounting.FREE_AIR, AIR);
    assertThat(set.mechanicalQ()).isCloseTo(row.figure("5.000"), withinPercentage(0.02));
    assertThat(set.electricalQ()).isCloseTo(row.figure("0.55556"), withinPercentage(0.02));
    assertThat(set.totalQ()).isCloseTo(row.figure("0.50000"), withinPercentage(0.02));
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
