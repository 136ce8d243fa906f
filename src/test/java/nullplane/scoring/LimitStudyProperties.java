package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import nullplane.driver.Woofer;
import nullplane.units.Curve;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold of every woofer's limits. */
class LimitStudyProperties {
  private static SystemScorer scorer;

  @BeforeAll
  static void solve() {
    scorer = WorkshopSpecs.scorer(WorkshopSpecs.coilsOnly(WorkshopSpecs.singleAndPair()));
  }

  static Stream<Woofer> woofers() {
    Random random = new Random(41);
    return IntStream.range(0, 12)
        .mapToObj(
            i ->
                WorkshopSpecs.woofer(
                    scorer.spec().woofer(),
                    20 + 25 * random.nextDouble(),
                    0.3 + 1.1 * random.nextDouble(),
                    0.03 + 0.08 * random.nextDouble(),
                    0.004 + 0.01 * random.nextDouble()));
  }

  @ParameterizedTest
  @MethodSource("woofers")
  void limitsFitTogether(Woofer woofer) {
    Assessment assessment = scorer.assess(woofer);
    for (StackAssessment stack : assessment.stacks()) {
      LimitStudy limits = stack.limits().orElseThrow();
      // a cold coil loses nothing; its Q is the one that the figures state
      assertThat(limits.cold().bandLossDb()).isEqualTo(0, offset(1e-12));
      assertThat(limits.cold().panelTotalQ()).isEqualTo(stack.figures().panelTotalQ());
      // a hot one brakes less, and loses no more than its resistance alone would cost
      assertThat(limits.rated().panelTotalQ()).isGreaterThan(limits.cold().panelTotalQ());
      assertThat(limits.rated().bandLossDb()).isBetween(0.0, limits.rated().levelLossDb() + 0.01);
      // resonances lie below the band here, so the low end loses least
      assertThat(limits.rated().lowCornerGrowthDb()).isPositive();
      // the excursion that the scored curves hold at the target's voltage, scaled up
      double share = 0;
      StackCurves curves = stack.curves();
      for (int f = 0; f < curves.frequencyHz().size(); f++) {
        if (curves.frequencyHz().at(f) >= 40 && curves.frequencyHz().at(f) <= 200) {
          share = Math.max(share, curves.excursionM().at(f) / 2.83 / woofer.travelM());
        }
      }
      assertThat(limits.bandVoltage().voltageV()).isEqualTo(Math.min(28, 1 / share), offset(1e-9));
      assertThat(limits.fullVoltage().greatestShare() / 28)
          .isEqualTo(
              limits.bandVoltage().greatestShare() / limits.bandVoltage().voltageV(), offset(1e-9));
      double before = 0;
      for (LimitStudy.ProgrammeLevel programme : limits.programmes()) {
        assertThat(programme.voltageV())
            .isLessThanOrEqualTo(programme.amplifierVoltageV())
            .isLessThanOrEqualTo(programme.excursionVoltageV())
            .isLessThanOrEqualTo(programme.heatVoltageV());
        assertThat(programme.settled().riseK())
            .isLessThanOrEqualTo(programme.atFullVoltage().riseK() + 1e-6);
        assertThat(programme.warmWooferBandDb()).isLessThan(programme.wooferBandDb());
        assertThat(programme.wholeDb()).isGreaterThan(programme.wooferBandDb());
        // a higher crest factor leaves less of everything
        if (before > 0) {
          assertThat(programme.wholeDb()).isLessThanOrEqualTo(before);
        }
        before = programme.wholeDb();
      }
    }
  }

  /** Weights over the whole axis hold the whole power, and parts add up. */
  @Test
  void weightsHoldAllThePower() {
    double[] axis = Curve.logSpaced(5, 22_400, 90).toArray();
    ProgrammeSpectrum music = ProgrammeSpectrum.MUSIC;
    assertThat(sum(music.weights(axis, 5, 22_400))).isEqualTo(1, offset(1e-12));
    assertThat(sum(music.weights(axis, 5, 200)) + sum(music.weights(axis, 200, 22_400)))
        .isEqualTo(1, offset(1e-12));
    assertThat(music.shareBetween(0, 200))
        .isEqualTo(sum(music.weights(axis, 5, 200)), offset(1e-12));
    // ln f is straight over log f: its mean over one band is its middle's
    double[] one =
        music.weights(axis, ProgrammeSpectrum.lowerHz(10), ProgrammeSpectrum.upperHz(10));
    double mean = 0;
    for (int i = 0; i < axis.length; i++) {
      mean += one[i] * Math.log(axis[i]) / sum(one);
    }
    assertThat(mean).isEqualTo(Math.log(ProgrammeSpectrum.middleHz(10)), offset(1e-12));
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }
}
