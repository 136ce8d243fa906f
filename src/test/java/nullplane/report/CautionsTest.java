package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Limit;
import nullplane.scoring.PanelStand;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackBrief;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CautionsTest {
  private static final DesignSpec SPEC = InventedRun.spec();
  private static final Assessment WOOFER = InventedRun.outcome(SPEC).ranked().get(0);

  /** NIOSH Publication 98-126 (1998), table 1-1: level and longest time per day. */
  @ParameterizedTest
  @CsvSource({
    "85, 480",
    "88, 240",
    "91, 120",
    "94, 60",
    "97, 30",
    "100, 15",
    "103, 7.5",
    "106, 3.75"
  })
  void exposureTimesAreThoseOfTheTable(double level, double minutes) {
    assertThat(NoiseExposure.minutesPerDay(level)).isCloseTo(minutes, within(1e-9));
  }

  /** ka = 2 pi f a/c = 1.5 with a = 0.13 m and c = 343.2 m/s gives 630 Hz. */
  @Test
  void pistonLimitIsComputedFromTheCone() {
    assertThat(new Cautions(SPEC, WOOFER).pistonLimitHz()).isCloseTo(630.3, within(0.1));
    assertThat(new Cautions(SPEC, WOOFER).model())
        .anyMatch(text -> text.contains("630 Hz"))
        .anyMatch(text -> text.contains("rigid"));
  }

  @Test
  void figuresCallForTheirCautions() {
    assertThat(new Cautions(SPEC, WOOFER).sentences())
        .anyMatch(text -> text.startsWith("Heat: the series coil") && text.contains(" W into heat"))
        .anyMatch(
            text ->
                text.startsWith("Magnets: ")
                    && text.contains("pacemakers and data carriers")
                    && text.contains("fingers"))
        .anyMatch(text -> text.contains("local codes"))
        .anyMatch(text -> text.contains("does not replace a measured sample"));
  }

  private static Assessment with(Curve loudestDb, Curve heatDb, Curve amplifierDb) {
    StackAssessment stack = WOOFER.stacks().get(0);
    StackCurves old = stack.curves();
    StackCurves curves =
        new StackCurves(
            Curve.of(50, 100),
            loudestDb,
            loudestDb,
            Curve.of(6, 6),
            Curve.of(0, 0),
            Curve.of(0, 0),
            loudestDb,
            loudestDb,
            heatDb,
            amplifierDb,
            List.of(Limit.AMPLIFIER, Limit.AMPLIFIER),
            old.sum());
    return new Assessment(
        WOOFER.woofer(),
        WOOFER.freeAir(),
        WOOFER.budget(),
        WOOFER.motor(),
        List.of(
            new StackAssessment(
                stack.brief(), stack.wiring(), stack.network(), stack.figures(), curves)),
        WOOFER.grade(),
        WOOFER.parts(),
        WOOFER.violations());
  }

  /**
   * At 94 dB: NIOSH Publication 98-126, table 1-1: 1 h a day. ITU-T H.870 (from memory): 1.6 Pa2 h
   * at 1.0024 Pa are 1.59 h, 0.51 Pa2 h are 30.5 min. IEC 61672-1, table 3: 50 Hz -30.2 dB, 100 Hz
   * -19.1 dB.
   */
  @Test
  void hearingStatesBothRulesAtTheLoudestLevel() {
    Curve loudest = Curve.of(94, 85.5);
    assertThat(new Cautions(SPEC, with(loudest, loudest, loudest)).sentences())
        .anyMatch(
            text ->
                text.startsWith("Hearing: ")
                    && text.contains("94.0 dB at 50.0 Hz")
                    && text.contains("takes off 30.3 dB")
                    && text.contains(" 1.00 h a day;")
                    && text.contains(" 1.59 h a week, children 30.5 min"));
    Curve low = Curve.of(60, 84);
    assertThat(new Cautions(SPEC, with(low, low, low)).sentences())
        .anyMatch(
            text ->
                text.startsWith("Hearing: ")
                    && text.contains("takes off 19.1 dB")
                    && !text.contains("NIOSH"));
    Curve quiet = Curve.of(60, 74.9);
    assertThat(new Cautions(SPEC, with(quiet, quiet, quiet)).sentences())
        .noneMatch(text -> text.startsWith("Hearing: "));
  }

  /** 3.01 dB more than the rated heat's level are twice the power. */
  @Test
  void anAmplifierThatOverheatsVoiceCoilsIsSaid() {
    Curve heat = Curve.of(90, 90);
    assertThat(new Cautions(SPEC, with(heat, heat, Curve.of(80, 93.0103))).sentences())
        .anyMatch(
            text ->
                text.startsWith("Heat: the amplifier can put 2.00 times the rated power")
                    && text.contains("at 100 Hz"));
    assertThat(new Cautions(SPEC, with(heat, heat, heat)).sentences())
        .noneMatch(text -> text.startsWith("Heat: the amplifier"));
  }

  /** Three stacks of 1.1, 1.5 and 2.3 m: all are tall; the base of one is known and too shallow. */
  @Test
  void tippingStatesTheBaseThatHolds() {
    assertThat(new Cautions(SPEC, WOOFER).sentences())
        .anyMatch(
            text ->
                text.startsWith("Stability: ")
                    && text.contains("single needs a base at least ")
                    && text.contains("four needs a base at least ")
                    && text.contains("18 mm birch plywood of 12.0 kg/m"));
    assertThat(stability(OptionalDouble.of(0.05)))
        .hasValueSatisfying(
            text -> assertThat(text).contains("single tips at ").contains("base of 50.0 mm"));
    assertThat(stability(OptionalDouble.of(0.5))).isEmpty();
  }

  private static Optional<String> stability(OptionalDouble baseDepthM) {
    StackBrief old = SPEC.stacks().get(0);
    StackBrief stack =
        new StackBrief(
            old.name(),
            old.panel(),
            old.pistons(),
            old.levelDb(),
            old.loudestDb(),
            old.wiring(),
            old.upperCornerHz(),
            old.main(),
            new PanelStand(OptionalDouble.of(6), baseDepthM));
    return StabilityCaution.of(List.of(stack), WOOFER.woofer(), WOOFER.motor());
  }

  @Test
  void aLoadBelowTheAmplifiersIsSaid() {
    DesignSpec strict =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            SPEC.stacks(),
            SPEC.listening(),
            SPEC.target(),
            new nullplane.scoring.Amplifier(28, 4));
    assertThat(new Cautions(SPEC, WOOFER).sentences())
        .noneMatch(text -> text.startsWith("Amplifier: "));
    assertThat(new Cautions(strict, WOOFER).sentences())
        .anyMatch(text -> text.startsWith("Amplifier: ") && text.contains("below"));
  }
}
