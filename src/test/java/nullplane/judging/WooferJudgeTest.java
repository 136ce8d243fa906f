package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.driver.Cause;
import nullplane.driver.Contradiction;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.Route;
import nullplane.driver.Woofer;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One fault at a time, planted in a woofer that otherwise suits the panels. */
class WooferJudgeTest {
  private static final DesignSpec SPEC = WorkshopSpecs.singleAndPair();
  private static final double AREA = Math.PI * 0.13 * 0.13;
  private static SystemScorer scorer;

  @BeforeAll
  static void solvePanels() {
    scorer = WorkshopSpecs.scorer(SPEC);
  }

  private static Woofer woofer(
      double fs, double qts, double massKg, double travelM, double leH, double powerW) {
    Woofer shell = new Woofer("w", 0.3, AREA, 6, leH, massKg, 1, 1, 1, travelM, powerW);
    return Woofer.withResonance(shell, fs, 6, qts, Mounting.FREE_AIR, WorkshopSpecs.AIR);
  }

  private static Judgement judged(Woofer woofer) {
    return new WooferJudge(SPEC, OptionalDouble.of(2)).judge(woofer, List.of(), scorer);
  }

  private static Finding only(Judgement judgement, Finding.Kind kind) {
    assertThat(judgement.findings()).extracting(Finding::kind).contains(kind);
    return judgement.findings().stream().filter(f -> f.kind() == kind).findFirst().orElseThrow();
  }

  private static Judgement suited() {
    return judged(woofer(28, 1.1, 0.06, 0.012, 0.0009, 150));
  }

  @Test
  void theSuitedWooferHasNoneOfThePlantedFaults() {
    assertThat(suited().findings())
        .extracting(Finding::kind)
        .doesNotContain(
            Finding.Kind.LACKS_BASS,
            Finding.Kind.HUMP,
            Finding.Kind.INDUCTANCE,
            Finding.Kind.SUSPENSION,
            Finding.Kind.NO_COIL,
            Finding.Kind.LOW_LOAD,
            Finding.Kind.TRAVEL_AT_TARGET);
  }

  @Test
  void aBoxWooferLacksBassByWhatItsBareStackShows() {
    Judgement judgement = judged(woofer(28, 0.31, 0.06, 0.012, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.LACKS_BASS);
    double most =
        judgement.assessment().stacks().stream()
            .mapToDouble(s -> s.figures().lowCornerLiftDb())
            .max()
            .orElseThrow();
    assertThat(finding.amount()).isEqualTo(most).isGreaterThan(6);
    assertThat(finding.sentence()).contains("Qts of 0.31").contains("at 40 Hz");
  }

  @Test
  void aStiffSuspensionIsToldFromAStrongMotor() {
    Finding stiff =
        only(judged(woofer(75, 0.7, 0.06, 0.012, 0.0009, 150)), Finding.Kind.LACKS_BASS);
    assertThat(stiff.remedy()).contains("softer suspension");
    assertThat(judged(woofer(90, 0.7, 0.06, 0.012, 0.0009, 150)).findings())
        .extracting(Finding::kind)
        .contains(Finding.Kind.SUSPENSION);
  }

  /** At fixed travel the level follows the travel: 20 lg of its ratio (Small 1973). */
  @Test
  void shortTravelIsNamedWithTheTravelItWouldTake() {
    Finding finding =
        only(judged(woofer(28, 1.1, 0.06, 0.003, 0.0009, 150)), Finding.Kind.SHORT_TRAVEL);
    double wanted = 3 * Math.pow(10, finding.amount() / 20);
    assertThat(finding.sentence()).contains("3.0 mm");
    assertThat(finding.remedy()).contains(String.format(java.util.Locale.ROOT, "%.1f mm", wanted));
  }

  @Test
  void highInductanceIsNamedWithTheLevelItTakes() {
    Finding finding =
        only(judged(woofer(28, 1.1, 0.06, 0.012, 0.008, 150)), Finding.Kind.INDUCTANCE);
    double ratio = 2 * Math.PI * 200 * 0.008 / 6;
    assertThat(finding.amount()).isCloseTo(10 * Math.log10(1 + ratio * ratio), within(1e-9));
  }

  @Test
  void aMotorThatNoCoilCanGiveIsNamed() {
    assertThat(judged(woofer(28, 0.2, 0.045, 0.014, 0.0009, 150)).findings())
        .extracting(Finding::kind)
        .contains(Finding.Kind.NO_COIL);
  }

  @Test
  void aContradictionIsToldWithItsDeviationAndCause() {
    Contradiction contradiction =
        new Contradiction(
            Parameter.VOLUME,
            0.2,
            OptionalDouble.of(0.16),
            0.08,
            new Route(List.of()),
            new Cause(Cause.Kind.OTHER_AREA, "The area of another piston was used."));
    Woofer woofer = woofer(28, 1.1, 0.06, 0.012, 0.0009, 150);
    Judgement judgement =
        new WooferJudge(SPEC, OptionalDouble.empty()).judge(woofer, List.of(contradiction), scorer);
    Finding finding = only(judgement, Finding.Kind.CONTRADICTION);
    assertThat(finding.sentence()).contains("Vas is +25 % off");
    assertThat(finding.remedy()).contains("another piston");
    assertThat(judgement.behindBestDb()).isEmpty();
  }

  /** No wiring of coils of 6 ohm reaches 60 (Ohm's law), which this amplifier asks for. */
  @Test
  void aLoadBelowTheAmplifiersIsTold() {
    DesignSpec shy =
        new DesignSpec(
            SPEC.title(),
            SPEC.woofer(),
            SPEC.stacks().subList(0, 1),
            SPEC.listening(),
            SPEC.target(),
            new Amplifier(28, 60));
    Judgement judgement =
        new WooferJudge(shy, OptionalDouble.of(2))
            .judge(woofer(28, 1.1, 0.06, 0.012, 0.0009, 150), List.of(), WorkshopSpecs.scorer(shy));
    Finding finding = only(judgement, Finding.Kind.LOW_LOAD);
    assertThat(finding.amount()).isBetween(6.0, 60.0);
    assertThat(judgement.assessment().grade().feasible()).isFalse();
    assertThat(finding.remedy()).contains("in series");
  }

  /** A resonator of high Q below the band makes a hump at the low corner. */
  @Test
  void aHumpIsTold() {
    Finding finding = only(judged(woofer(40, 3.5, 0.045, 0.012, 0.0009, 150)), Finding.Kind.HUMP);
    assertThat(finding.amount()).isGreaterThan(SPEC.target().corridorDb());
  }

  @Test
  void aTravelTooShortForTheTargetAndTooLittlePowerAreTold() {
    Judgement tiny = judged(woofer(38, 1.4, 0.045, 0.0005, 0.0009, 150));
    assertThat(only(tiny, Finding.Kind.TRAVEL_AT_TARGET).amount()).isGreaterThan(1);
    Judgement cold = judged(woofer(38, 1.4, 0.045, 0.014, 0.0009, 2));
    Finding heat = only(cold, Finding.Kind.LITTLE_POWER);
    // power follows the square of the lack (Joule's law)
    double watts = 2 * Math.pow(10, heat.amount() / 10);
    assertThat(heat.remedy()).contains(String.format(java.util.Locale.ROOT, "%.0f W", watts));
    assertThat(cold.leastOutputMarginDb()).isCloseTo(-heat.amount(), within(1e-12));
    assertThat(cold.mostCorrectionDb())
        .isEqualTo(
            cold.assessment().stacks().stream()
                .mapToDouble(s -> s.figures().correctionDb())
                .max()
                .orElseThrow());
  }

  @Test
  void tooLoudAndTooQuietAreTold() {
    // a light cone with a strong motor is loud, a heavy one with a weak motor is quiet
    assertThat(judged(woofer(40, 0.45, 0.02, 0.012, 0, 150)).findings())
        .extracting(Finding::kind)
        .containsAnyOf(Finding.Kind.TOO_LOUD, Finding.Kind.OUTSIDE_CORRIDOR);
    assertThat(only(judged(woofer(28, 1.4, 0.25, 0.012, 0, 150)), Finding.Kind.TOO_QUIET).amount())
        .isGreaterThan(2);
  }

  @Test
  void theDistanceToTheBestIsTheDifferenceOfCosts() {
    assertThat(suited().behindBestDb().getAsDouble())
        .isEqualTo(suited().assessment().grade().costDb() - 2);
  }
}
