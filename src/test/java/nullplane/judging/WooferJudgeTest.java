package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
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
  void theDistanceToTheBestIsTheDifferenceOfCosts() {
    assertThat(suited().behindBestDb().getAsDouble())
        .isEqualTo(suited().assessment().grade().costDb() - 2);
  }
}
