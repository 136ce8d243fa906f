package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;

class ActiveBranchTest {
  private static final Curve BAND = SampleStacks.BAND;
  private static final ActiveLimits LIMITS =
      new ActiveLimits(
          new Range(0.25, 2),
          List.of(FilterAlignment.BUTTERWORTH_2, FilterAlignment.LINKWITZ_RILEY_4),
          new Range(80, 300),
          new Range(20, 100),
          new Range(0.5, 4),
          new Range(0.5, 2));

  /** By the form: g at the bottom, sqrt g at the middle, 1 at the top. */
  @Test
  void shelfMeetsItsThreePoints() {
    ComplexCurve shelf = new Correction.Shelf(50, 3).response(Curve.of(1e-4, 50, 1e8));
    assertThat(shelf.modulus(0)).isEqualTo(3, offset(1e-9));
    assertThat(shelf.modulus(1)).isEqualTo(Math.sqrt(3), offset(1e-12));
    assertThat(shelf.modulus(2)).isEqualTo(1, offset(1e-9));
  }

  /** By the form: g and no phase at f0, 1 far from it, alike at f0 x and f0/x. */
  @Test
  void peakIsSymmetricAndMeetsItsGain() {
    ComplexCurve peak =
        new Correction.Peaking(40, 2, 0.4).response(Curve.of(1e-4, 20, 40, 80, 1e9));
    assertThat(peak.modulus(2)).isEqualTo(0.4, offset(1e-12));
    assertThat(peak.phaseRad(2)).isEqualTo(0, offset(1e-12));
    assertThat(peak.modulus(0)).isEqualTo(1, offset(1e-9));
    assertThat(peak.modulus(4)).isEqualTo(1, offset(1e-9));
    assertThat(peak.modulus(1)).isEqualTo(peak.modulus(3), offset(1e-12)).isLessThan(0.99);
    assertThat(peak.phaseRad(1)).isEqualTo(-peak.phaseRad(3), offset(1e-12));
  }

  @Test
  void cutIsTheInverseOfLift() {
    for (List<Correction> pair :
        List.<List<Correction>>of(
            List.of(new Correction.Shelf(60, 2.5), new Correction.Shelf(60, 0.4)),
            List.of(new Correction.Peaking(60, 3, 2.5), new Correction.Peaking(60, 3, 0.4)))) {
      ComplexCurve lift = pair.get(0).response(BAND);
      ComplexCurve cut = pair.get(1).response(BAND);
      for (int f = 0; f < BAND.size(); f++) {
        assertThat(lift.modulus(f) * cut.modulus(f)).isEqualTo(1, offset(1e-12));
        assertThat(lift.phaseRad(f) + cut.phaseRad(f)).isEqualTo(0, offset(1e-12));
      }
    }
  }

  /** The product of its links, whatever the load; the amplifier feels the stack itself. */
  @Test
  void rowsAreTheProductAndLeaveTheLoadAlone() {
    CrossoverFilter filter = new CrossoverFilter(FilterAlignment.BUTTERWORTH_4, 150);
    Correction correction = new Correction.Peaking(35, 2, 0.6);
    ActiveBranch branch = new ActiveBranch(1.4, Optional.of(filter), Optional.of(correction));
    ComplexCurve stack = SampleStacks.stack(new Random(3));
    LoadRows load = SampleStacks.load(stack);
    LoadRows scratch = new LoadRows(BAND.size());
    double[] re = new double[BAND.size()];
    double[] im = new double[BAND.size()];
    double[] squared = new double[BAND.size()];
    NetworkRows rows = branch.rows(BAND);
    assertThat(rows.amplifierBehind()).isTrue();
    assertThat(LowPassBranch.NONE.rows(BAND).amplifierBehind()).isFalse();
    rows.transfer(load, scratch, re, im);
    rows.transferSquared(load, scratch, squared);
    ComplexCurve low = filter.lowPass(BAND);
    ComplexCurve peak = correction.response(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      double modulus = 1.4 * low.modulus(f) * peak.modulus(f);
      assertThat(Math.hypot(re[f], im[f]) / modulus).isEqualTo(1, offset(1e-12));
      assertThat(squared[f] / (modulus * modulus)).isEqualTo(1, offset(1e-12));
      double turn = Math.atan2(im[f], re[f]) - low.phaseRad(f) - peak.phaseRad(f);
      assertThat(Math.IEEEremainder(turn, 2 * Math.PI)).isEqualTo(0, offset(1e-12));
    }
    rows.inputImpedance(load, scratch, re, im);
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < BAND.size(); f++) {
      assertThat(re[f]).isEqualTo(stack.re().at(f), offset(1e-10));
      assertThat(im[f]).isEqualTo(stack.im().at(f), offset(1e-10));
      least = Math.min(least, stack.modulus(f));
    }
    double[] again = new double[BAND.size()];
    assertThat(Math.sqrt(rows.pass(load, scratch, again))).isEqualTo(least, offset(1e-10));
    assertThat(again).isEqualTo(squared);
    assertThat(branch.partCount()).isEqualTo(2);
    assertThatThrownBy(() -> branch.rows(Curve.of(0, 10))).hasMessageContaining("frequency");
    assertThat(ActiveBranch.NONE.none()).isTrue();
    assertThat(branch.none()).isFalse();
  }

  @Test
  void settingsStayWithinTheLimits() {
    Random random = new Random(11);
    for (int i = 0; i < 300; i++) {
      ActiveBranch branch =
          LIMITS.branch(
              new ActiveLimits.Setting(
                  share(random),
                  random.nextInt(3),
                  share(random),
                  ActiveLimits.CorrectionKind.values()[random.nextInt(3)],
                  share(random),
                  share(random),
                  share(random)));
      assertThat(LIMITS.excess(branch)).isZero();
    }
  }

  /** Any share, and often an end. */
  private static double share(Random random) {
    return Math.min(1, Math.max(0, random.nextDouble() * 1.4 - 0.2));
  }

  /** Half the way by ratio is the geometric mean: 0.7071 of 0.25 to 2, 154.92 of 80 to 300 Hz. */
  @Test
  void sharesWalkByRatio() {
    ActiveBranch middle =
        LIMITS.branch(
            new ActiveLimits.Setting(
                0.5, 1, 0.5, ActiveLimits.CorrectionKind.PEAKING, 0.5, 0.5, 0.5));
    assertThat(middle.gain()).isEqualTo(0.70711, offset(1e-5));
    assertThat(middle.lowPass().orElseThrow().cornerHz()).isEqualTo(154.919, offset(1e-3));
    Correction.Peaking peak = (Correction.Peaking) middle.correction().orElseThrow();
    assertThat(peak.frequencyHz()).isEqualTo(44.721, offset(1e-3));
    assertThat(peak.q()).isEqualTo(Math.sqrt(2), offset(1e-12));
    assertThat(peak.gain()).isEqualTo(1, offset(1e-12));
    for (double share : new double[] {-0.1, 1.1, Double.NaN}) {
      assertThatThrownBy(
              () ->
                  LIMITS.branch(
                      new ActiveLimits.Setting(
                          share, 0, 0, ActiveLimits.CorrectionKind.NONE, 0, 0, 0)))
          .hasMessageContaining("allowed: 0 .. 1");
    }
  }

  @Test
  void excessIsTheSumOfLogarithms() {
    ActiveBranch outside =
        new ActiveBranch(
            4,
            Optional.of(new CrossoverFilter(FilterAlignment.BUTTERWORTH_2, 40)),
            Optional.of(new Correction.Peaking(40, 8, 1)));
    assertThat(LIMITS.excess(outside)).isEqualTo(3 * Math.log(2), offset(1e-12));
    ActiveBranch elsewhere =
        new ActiveBranch(1, Optional.empty(), Optional.of(new Correction.Peaking(400, 0.25, 0.25)));
    assertThat(LIMITS.excess(elsewhere)).isEqualTo(4 * Math.log(2), offset(1e-12));
    ActiveBranch strange =
        new ActiveBranch(
            1,
            Optional.of(new CrossoverFilter(FilterAlignment.BUTTERWORTH_1, 100)),
            Optional.empty());
    assertThat(LIMITS.excess(strange)).isInfinite();
    assertThatThrownBy(() -> new Correction.Shelf(40, 0)).hasMessageContaining("shelf gain");
    assertThatThrownBy(
            () ->
                LIMITS.branch(
                    new ActiveLimits.Setting(0, 3, 0, ActiveLimits.CorrectionKind.NONE, 0, 0, 0)))
        .hasMessageContaining("allowed: 0 .. 2");
  }
}
