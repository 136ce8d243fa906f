package nullplane.sample;

import static nullplane.sample.PlainStacks.AMPLIFIER_V;
import static nullplane.sample.PlainStacks.CORRIDOR_DB;
import static nullplane.sample.PlainStacks.HIGH_HZ;
import static nullplane.sample.PlainStacks.LOUDEST_DB;
import static nullplane.sample.PlainStacks.LOW_HZ;
import static nullplane.sample.PlainStacks.PAIR_DB;
import static nullplane.sample.PlainStacks.PAIR_HZ;
import static nullplane.sample.PlainStacks.PAIR_RISE;
import static nullplane.sample.PlainStacks.PAIR_WANTED_DB;
import static nullplane.sample.PlainStacks.SINGLE_DB;
import static nullplane.sample.PlainStacks.SINGLE_RISE;
import static nullplane.sample.PlainStacks.SINGLE_WANTED_DB;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.network.LowPassBranch;
import nullplane.scoring.Assessment;
import nullplane.scoring.Wiring;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A level that is a straight line over log frequency: mean, scatter and ends in closed form. */
class BriefStacksTest {
  private static final Offset<Double> ROUNDING = within(1e-9);
  private static BriefStacks stacks;

  @BeforeAll
  static void make() {
    stacks = PlainStacks.stacks();
  }

  private static double octaves(double from, double to) {
    return Math.log(to / from) / Math.log(2);
  }

  /**
   * Mean square of a straight line by the trapezoidal rule: d^2 + S^2/12, and of each part h of the
   * band that n cells divide another S^2 h^3/(6 n^2) (remainder of the rule, exact for a parabola).
   */
  private static double rms(double middle, double rise) {
    double band = octaves(LOW_HZ, HIGH_HZ);
    double spread = rise * band;
    double low = octaves(LOW_HZ, PAIR_HZ) / band;
    // 28 cells a decade: 11 to 100 Hz, 8 above
    double remainder = Math.pow(low, 3) / (6 * 11 * 11) + Math.pow(1 - low, 3) / (6 * 8 * 8);
    return Math.sqrt(middle * middle + spread * spread * (1 / 12.0 + remainder));
  }

  @Test
  void straightLinesAreWorkedOutByHand() {
    List<PartsFigures> all = stacks.withBriefParts(MakerBriefs.WOOFER);
    double band = octaves(LOW_HZ, HIGH_HZ);
    PartsFigures single = all.get(0);
    double off = SINGLE_DB - SINGLE_WANTED_DB;
    assertThat(single.stack()).isEqualTo("single");
    assertThat(single.wiring()).isEqualTo(new Wiring(1, 1));
    assertThat(single.meanDeviationDb()).isCloseTo(off, ROUNDING);
    assertThat(single.rmsDeviationDb()).isCloseTo(rms(off, SINGLE_RISE), ROUNDING);
    assertThat(single.worstExcessDb())
        .isCloseTo(off + SINGLE_RISE * band / 2 - CORRIDOR_DB, ROUNDING);
    assertThat(single.correctionDb()).isCloseTo(SINGLE_RISE * band, ROUNDING);
    // travel and heat allow more than the amplifier gives
    double lowest = SINGLE_DB - SINGLE_RISE * band / 2;
    double louder = 20 * Math.log10(AMPLIFIER_V / MakerBriefs.VOLTAGE_V);
    assertThat(single.outputMarginDb()).isCloseTo(lowest + louder - LOUDEST_DB, ROUNDING);

    PartsFigures pair = all.get(1);
    double quiet = PAIR_DB - PAIR_WANTED_DB;
    assertThat(pair.wiring()).isEqualTo(new Wiring(2, 1));
    assertThat(pair.meanDeviationDb()).isCloseTo(quiet, ROUNDING);
    assertThat(pair.rmsDeviationDb()).isCloseTo(rms(quiet, PAIR_RISE), ROUNDING);
    assertThat(pair.worstExcessDb())
        .isCloseTo(-quiet - PAIR_RISE * band / 2 - CORRIDOR_DB, ROUNDING);
    // above its own corner the pair does not work: the slope up to there
    assertThat(pair.correctionDb()).isCloseTo(-PAIR_RISE * octaves(LOW_HZ, PAIR_HZ), ROUNDING);
    Curve axis = stacks.scorer().axis().frequencyHz();
    assertThat(single.leastLoadOhm()).isCloseTo(leastOhm(axis, PlainStacks.OWN_KG), ROUNDING);
    // two alike in parallel, both moving
    assertThat(pair.leastLoadOhm())
        .isCloseTo(leastOhm(axis, PlainStacks.OWN_KG + PlainStacks.MUTUAL_KG) / 2, ROUNDING);
  }

  /** Re + jw Le + Bl^2/(Rms + j(w M - Kms/w)), the least modulus of an axis. */
  private static double leastOhm(Curve axis, double airKg) {
    Woofer woofer = MakerBriefs.WOOFER;
    return axis.stream()
        .map(
            hz -> {
              double w = 2 * Math.PI * hz;
              double mass = woofer.bareMassKg() + airKg;
              return new Complex(woofer.lossNsPerM(), w * mass - woofer.stiffnessNPerM() / w)
                  .reciprocal()
                  .multiply(Math.pow(woofer.forceFactorTm(), 2))
                  .add(new Complex(woofer.resistanceOhm(), w * woofer.inductanceH()))
                  .abs();
            })
        .min()
        .orElseThrow();
  }

  /** Another woofer moves the level by the ratio of its velocity. */
  @Test
  void anotherWooferMovesTheLevelByItsVelocity() {
    Woofer other = MakerBriefs.off(1.1, 1, 0.9, 1);
    double sum = 0;
    double weights = 0;
    int cells = 2000;
    for (int i = 0; i <= cells; i++) {
      double hz = LOW_HZ * Math.pow(HIGH_HZ / LOW_HZ, i / (double) cells);
      double weight = i == 0 || i == cells ? 0.5 : 1;
      weights += weight;
      sum +=
          weight
              * 20
              * Math.log10(
                  PlainStacks.velocityPerVolt(other, PlainStacks.OWN_KG, hz)
                      / PlainStacks.velocityPerVolt(MakerBriefs.WOOFER, PlainStacks.OWN_KG, hz));
    }
    double off = SINGLE_DB - SINGLE_WANTED_DB;
    // 19 cells instead of 2000: the curve bends by some dB, over 12 * 19^2
    assertThat(stacks.withBriefParts(other).get(0).meanDeviationDb())
        .isCloseTo(off + sum / weights, within(2e-3));
  }

  /** With the wiring and the network that the assessment chose, both ways are one. */
  @Test
  void bestPartsAreThoseOfTheAssessment() {
    Assessment asked = stacks.asked();
    List<PartsFigures> best = BriefStacks.withBestParts(asked);
    SampleBrief brief = stacks.brief();
    BriefStacks same =
        new BriefStacks(
            stacks.scorer(),
            with(
                brief,
                best.stream()
                    .map(b -> new SampleBrief.StackParts(b.stack(), b.wiring(), b.network()))
                    .toList()));
    List<PartsFigures> again = same.withBriefParts(brief.woofer());
    assertThat(best).hasSize(2);
    for (int s = 0; s < best.size(); s++) {
      PartsFigures one = best.get(s);
      PartsFigures other = again.get(s);
      assertThat(one.rmsDeviationDb()).isCloseTo(other.rmsDeviationDb(), ROUNDING);
      assertThat(one.meanDeviationDb()).isCloseTo(other.meanDeviationDb(), ROUNDING);
      assertThat(one.worstExcessDb()).isCloseTo(other.worstExcessDb(), ROUNDING);
      assertThat(one.outputMarginDb()).isCloseTo(other.outputMarginDb(), ROUNDING);
      assertThat(one.correctionDb()).isCloseTo(other.correctionDb(), ROUNDING);
      assertThat(one.leastLoadOhm()).isCloseTo(other.leastLoadOhm(), ROUNDING);
    }
  }

  private static SampleBrief with(SampleBrief brief, List<SampleBrief.StackParts> stacks) {
    return MakerBriefs.with(brief, brief.values(), stacks);
  }

  @Test
  void aBriefOfOtherStacksIsRefused() {
    SampleBrief brief = stacks.brief();
    assertThatThrownBy(
            () -> new BriefStacks(stacks.scorer(), with(brief, brief.stacks().subList(0, 1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2 stacks in the spec, 1 in the brief");
    SampleBrief.StackParts named =
        new SampleBrief.StackParts("hall", new Wiring(2, 1), LowPassBranch.NONE);
    assertThatThrownBy(
            () ->
                new BriefStacks(
                    stacks.scorer(), with(brief, List.of(brief.stacks().get(0), named))))
        .hasMessageContaining("stack hall of the brief is pair in the spec");
  }
}
