package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import nullplane.driver.Cause;
import nullplane.driver.Contradiction;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.Route;
import nullplane.driver.Woofer;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Target;
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
    assertThat(finding.remedy()).contains(String.format(Locale.ROOT, "%.1f mm", wanted));
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
    assertThat(heat.remedy()).contains(String.format(Locale.ROOT, "%.0f W", watts));
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

  /** A stack's finding is of the stack that is worst in it, and is its figure. */
  private static void isWorstOfAll(
      Judgement judgement, Finding finding, ToDoubleFunction<StackFigures> badness) {
    StackAssessment worst = null;
    for (StackAssessment stack : judgement.assessment().stacks()) {
      if (worst == null
          || badness.applyAsDouble(stack.figures()) > badness.applyAsDouble(worst.figures())) {
        worst = stack;
      }
    }
    assertThat(finding.stack()).isEqualTo(worst.brief().name());
    assertThat(finding.amount()).isEqualTo(badness.applyAsDouble(worst.figures()));
  }

  private static DesignSpec askedFor(
      double levelDb, double loudestDb, Target target, Amplifier amplifier) {
    return new DesignSpec(
        SPEC.title(),
        SPEC.woofer(),
        List.of(
            WorkshopSpecs.column("single", 0.44, 1.1, 0.13, levelDb, loudestDb, -0.25),
            WorkshopSpecs.column("pair", 0.44, 1.5, 0.13, levelDb + 6, loudestDb + 6, -0.45, 0.45)),
        SPEC.listening(),
        target,
        amplifier);
  }

  private static Judgement judged(DesignSpec spec, Woofer woofer) {
    return new WooferJudge(spec, OptionalDouble.of(2))
        .judge(woofer, List.of(), WorkshopSpecs.scorer(spec));
  }

  /** 12 dB below what the suited woofer is asked for, it is too loud without a network's help. */
  @Test
  void aLevelFarBelowOrAboveIsToldWithTheStackThatMissesItMost() {
    Woofer woofer = woofer(28, 1.1, 0.06, 0.012, 0.0009, 150);
    Judgement soft = judged(askedFor(45, 60, SPEC.target(), SPEC.amplifier()), woofer);
    Finding loud = only(soft, Finding.Kind.TOO_LOUD);
    isWorstOfAll(soft, loud, StackFigures::meanDeviationDb);
    assertThat(loud.amount()).isGreaterThan(2);
    assertThat(loud.sentence()).contains("above the").contains("at 2.83 V");
    assertThat(soft.findings())
        .extracting(Finding::kind)
        .doesNotContain(Finding.Kind.TOO_QUIET, Finding.Kind.SHORT_TRAVEL);

    Judgement hard = judged(askedFor(95, 100, SPEC.target(), SPEC.amplifier()), woofer);
    Finding quiet = only(hard, Finding.Kind.TOO_QUIET);
    isWorstOfAll(hard, quiet, figures -> -figures.meanDeviationDb());
    assertThat(quiet.sentence())
        .contains(String.format(Locale.ROOT, "plays %.1f dB below", quiet.amount()));
    assertThat(hard.findings()).extracting(Finding::kind).doesNotContain(Finding.Kind.TOO_LOUD);
  }

  /** Where the level lies inside the corridor, neither is said. */
  @Test
  void aLevelInsideTheCorridorIsNeitherTooLoudNorTooQuiet() {
    assertThat(
            judged(
                    askedFor(75, 86, new Target(2.83, 40, 200, 40), SPEC.amplifier()),
                    woofer(28, 1.1, 0.06, 0.012, 0.0009, 150))
                .findings())
        .extracting(Finding::kind)
        .doesNotContain(
            Finding.Kind.TOO_LOUD, Finding.Kind.TOO_QUIET, Finding.Kind.OUTSIDE_CORRIDOR);
  }

  /** A corridor wider by the excess is one that the response passes (by definition). */
  @Test
  void theCorridorThatWouldBePassedIsTheOneAskedForAndTheExcess() {
    Judgement judgement = judged(woofer(28, 0.31, 0.06, 0.012, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.OUTSIDE_CORRIDOR);
    isWorstOfAll(judgement, finding, StackFigures::worstExcessDb);
    assertThat(finding.remedy())
        .isEqualTo(
            String.format(
                Locale.ROOT, "It would pass a corridor of %.1f dB.", 2 + finding.amount()));
  }

  /** Only 2 V: voltage follows the lack, 20 lg of its ratio. */
  @Test
  void anAmplifierThatEndsIsToldWithTheVoltageItWouldTake() {
    Judgement judgement =
        judged(
            askedFor(75, 86, SPEC.target(), new Amplifier(2, 3)),
            woofer(28, 1.1, 0.06, 0.012, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.AMPLIFIER_ENDS);
    isWorstOfAll(judgement, finding, figures -> -figures.outputMarginDb());
    assertThat(finding.sentence()).contains("the amplifier's 2 V end");
    assertThat(finding.remedy())
        .isEqualTo(
            String.format(
                Locale.ROOT, "It would take %.0f V.", 2 * Math.pow(10, finding.amount() / 20)));
  }

  @Test
  void oneThatReachesTheLoudestLevelLacksNoOutput() {
    assertThat(
            judged(
                    askedFor(60, 65, SPEC.target(), SPEC.amplifier()),
                    woofer(28, 1.1, 0.06, 0.012, 0.0009, 150))
                .findings())
        .extracting(Finding::kind)
        .doesNotContain(
            Finding.Kind.AMPLIFIER_ENDS, Finding.Kind.LITTLE_POWER, Finding.Kind.SHORT_TRAVEL);
  }

  @Test
  void theLowestLoadIsThatOfTheStackThatLoadsMost() {
    Judgement judgement =
        judged(
            askedFor(75, 86, SPEC.target(), new Amplifier(28, 60)),
            woofer(28, 1.1, 0.06, 0.012, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.LOW_LOAD);
    double[] loads =
        judgement.assessment().stacks().stream()
            .mapToDouble(stack -> stack.figures().leastLoadOhm())
            .toArray();
    assertThat(finding.amount()).isEqualTo(Math.min(loads[0], loads[1]));
    assertThat(loads[0]).isNotEqualTo(loads[1]);
  }

  @Test
  void theTravelAtTheTargetIsToldInMillimetres() {
    Judgement judgement = judged(woofer(38, 1.4, 0.045, 0.0005, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.TRAVEL_AT_TARGET);
    isWorstOfAll(judgement, finding, StackFigures::travelShare);
    assertThat(finding.sentence()).contains("its travel of 0.5 mm at 2.83 V");
  }

  /** Where the resonance on the panel lies well above the corner, the suspension is to blame. */
  @Test
  void theSuspensionIsToBlameOnlyWhereTheResonanceLiesWellAboveTheCorner() {
    for (double fs : new double[] {28, 45, 51, 55, 60, 75}) {
      Judgement judgement = judged(woofer(fs, 0.31, 0.06, 0.012, 0.0009, 150));
      Finding finding = only(judgement, Finding.Kind.LACKS_BASS);
      StackAssessment lean =
          judgement.assessment().stacks().stream()
              .filter(stack -> stack.brief().name().equals(finding.stack()))
              .findFirst()
              .orElseThrow();
      boolean stiff = lean.figures().panelResonanceHz() / SPEC.target().lowCornerHz() > 1.25;
      assertThat(finding.remedy()).as("%s Hz", fs).contains(stiff ? "softer" : "weaker motor");
    }
  }

  /**
   * 10 lg(1 + (w Le/Re)^2) of 3 dB is where w Le = Re: 4.77 mH on 6 ohm at 200 Hz. Three decibels
   * and the corridor are free.
   */
  @Test
  void anInductanceThatTakesNoMoreThanTheRiseIsNotAFault() {
    double atThree = 6 / (2 * Math.PI * 200);
    assertThat(judged(woofer(28, 1.1, 0.06, 0.012, atThree, 150)).findings())
        .extracting(Finding::kind)
        .doesNotContain(Finding.Kind.INDUCTANCE);
    Finding finding =
        only(judged(woofer(28, 1.1, 0.06, 0.012, 2 * atThree, 150)), Finding.Kind.INDUCTANCE);
    // 1 + 2^2
    assertThat(finding.amount()).isCloseTo(6.9897, within(1e-4));
    assertThat(finding.sentence()).contains("9.55 mH on 6.0 ohm takes 7.0 dB at 200 Hz");
  }

  @Test
  void aCoilThatCannotBeIsToldWithItsMassesInGrams() {
    Judgement judgement = judged(woofer(28, 0.2, 0.045, 0.014, 0.0009, 150));
    Finding finding = only(judgement, Finding.Kind.NO_COIL);
    // 0.45 kg/m2 of the area is the least for the rest, and coil and rest make the bare mass
    double least = 450 * AREA;
    double coil = 1000 * judgement.assessment().budget().coilMassKg();
    assertThat(finding.amount()).isCloseTo(least - (45 - coil), within(1e-9));
    assertThat(finding.sentence())
        .contains(
            String.format(
                Locale.ROOT,
                "would weigh %.1f g and leave %.1f g for the cone, which needs %.1f g",
                coil,
                45 - coil,
                least));
  }

  /** Levels are told in decibels, and nothing is said of a deviation that is not known. */
  @Test
  void contradictionsOfLevelsAreToldInDecibels() {
    Cause cause = new Cause(Cause.Kind.UNKNOWN, "None of the known slips fits.");
    Contradiction level =
        new Contradiction(
            Parameter.LEVEL_VOLTAGE, 92, OptionalDouble.of(88.6), 0.5, new Route(List.of()), cause);
    Contradiction unknown =
        new Contradiction(
            Parameter.VOLUME, 0.2, OptionalDouble.empty(), 0.08, new Route(List.of()), cause);
    Contradiction tenth =
        new Contradiction(
            Parameter.VOLUME, 0.18, OptionalDouble.of(0.2), 0.08, new Route(List.of()), cause);
    List<Finding> findings =
        new WooferJudge(SPEC, OptionalDouble.empty())
            .judge(
                woofer(28, 1.1, 0.06, 0.012, 0.0009, 150), List.of(level, unknown, tenth), scorer)
            .findings();
    assertThat(findings.get(0).amount()).isCloseTo(3.4, within(1e-12));
    assertThat(findings.get(0).sentence()).contains("+3.4 dB off");
    assertThat(findings.get(1).sentence()).contains("contradicts the rest").doesNotContain("off");
    assertThat(findings.get(2).amount()).isCloseTo(-10, within(1e-12));
    assertThat(findings.get(2).sentence()).contains("-10 % off");
  }
}
