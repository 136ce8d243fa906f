package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.scoring.ScorersBySize;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import nullplane.scoring.WorkshopSpecs;
import nullplane.units.Curve;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for the shares of any two woofers. */
class WooferDifferenceProperties {
  private static final double SUM_DB = 1e-9;

  private static ScorersBySize scorers;

  @BeforeAll
  static void solvePanels() {
    scorers = WorkshopSpecs.scorersBySize(WorkshopSpecs.singleAndPair());
  }

  private static IntStream seeds() {
    return IntStream.range(0, 6);
  }

  private static Woofer woofer(Random random, String name, double areaM2) {
    double mass = 0.04 + 0.06 * random.nextDouble();
    Woofer shell =
        new Woofer(
            name,
            0.3,
            areaM2,
            4 + 4 * random.nextDouble(),
            0.002 * random.nextDouble(),
            mass,
            1,
            1,
            1,
            0.004 + 0.008 * random.nextDouble(),
            50 + 150 * random.nextDouble());
    return Woofer.withResonance(
        shell,
        22 + 20 * random.nextDouble(),
        3 + 5 * random.nextDouble(),
        0.3 + 1.2 * random.nextDouble(),
        Mounting.FREE_AIR,
        WorkshopSpecs.AIR);
  }

  private static Woofer anyWoofer(Random random, String name) {
    double radius = 0.1205 + 0.019 * random.nextDouble();
    return woofer(random, name, Math.PI * radius * radius);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void sharesAddUpAndChangeSignWhenTheWoofersChangePlaces(int seed) {
    Random random = new Random(seed);
    Woofer a = anyWoofer(random, "a");
    Woofer b = anyWoofer(random, "b");
    WooferDifference there = WooferDifference.between(a, b, scorers);
    WooferDifference back = WooferDifference.between(b, a, scorers);
    for (int s = 0; s < there.stacks().size(); s++) {
      StackDifference stack = there.stacks().get(s);
      for (int f = 0; f < stack.frequencyHz().size(); f++) {
        double sum = 0;
        for (ParameterGroup group : ParameterGroup.values()) {
          sum += stack.shareDb(group).at(f);
          assertThat(back.stacks().get(s).shareDb(group).at(f))
              .isCloseTo(-stack.shareDb(group).at(f), within(SUM_DB));
        }
        assertThat(sum)
            .isCloseTo(stack.secondLevelDb().at(f) - stack.firstLevelDb().at(f), within(SUM_DB));
      }
      // travel and rated power limit the loudest level and have no part in a response
      assertThat(stack.shareDb(ParameterGroup.TRAVEL).stream()).allMatch(share -> share == 0);
      assertThat(stack.shareDb(ParameterGroup.POWER).stream()).allMatch(share -> share == 0);
    }
    assertThat(Stream.of(ParameterGroup.values()).mapToDouble(there::costShareDb).sum())
        .isCloseTo(there.secondGrade().costDb() - there.firstGrade().costDb(), within(SUM_DB));
    assertThat(there.violationShares().values().stream().mapToDouble(x -> x).sum())
        .isCloseTo(
            there.secondGrade().violation() - there.firstGrade().violation(), within(SUM_DB));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aParameterThatBothShareHasNoShare(int seed) {
    Random random = new Random(100 + seed);
    Woofer a = anyWoofer(random, "a");
    FreeAirSheet from = FreeAirSheet.of(a, WorkshopSpecs.AIR);
    FreeAirSheet other = FreeAirSheet.of(anyWoofer(random, "b"), WorkshopSpecs.AIR);
    int common = random.nextInt(1 << ParameterGroup.values().length);
    int taken = (1 << ParameterGroup.values().length) - 1 & ~common;
    Woofer b = from.with(other, taken).woofer(WorkshopSpecs.AIR).withName("b");
    WooferDifference difference = WooferDifference.between(a, b, scorers);
    for (ParameterGroup group : ParameterGroup.values()) {
      if ((common >> List.of(ParameterGroup.values()).indexOf(group) & 1) != 0) {
        assertThat(difference.costShareDb(group)).as(group.symbol()).isZero();
        for (StackDifference stack : difference.stacks()) {
          assertThat(stack.shareDb(group).stream()).as(group.symbol()).allMatch(x -> x == 0);
        }
      }
    }
  }

  @Test
  void aComparisonHoldsBothAndTheirDecays() {
    Random random = new Random(7);
    Woofer a = anyWoofer(random, "a");
    Woofer b = anyWoofer(random, "b");
    Comparison comparison = Comparison.of(a, b, scorers);
    assertThat(comparison.first().woofer()).isEqualTo(a);
    assertThat(comparison.firstDecays()).hasSize(2);
    for (int s = 0; s < 2; s++) {
      assertThat(comparison.secondDecays().get(s).resonanceHz())
          .isEqualTo(comparison.second().stacks().get(s).figures().panelResonanceHz());
      StackDifference stack = comparison.difference().stacks().get(s);
      int at = stack.largestAt(ParameterGroup.ELECTRICAL_Q);
      for (int f = 0; f < stack.frequencyHz().size(); f++) {
        assertThat(Math.abs(stack.shareDb(ParameterGroup.ELECTRICAL_Q).at(f)))
            .isLessThanOrEqualTo(Math.abs(stack.shareDb(ParameterGroup.ELECTRICAL_Q).at(at)));
      }
    }
  }

  /**
   * fs and Qes stay, so Bl^2/Re grows with the mass, and far above resonance the level falls by 10
   * lg of the ratio of the total masses: Small 1972, eta0 = rho/(2 pi c) (Bl Sd/Mms)^2/Re with Bl^2
   * = 2 pi fs Mms Re/Qes.
   */
  @Test
  void aHeavierConeAtEqualResonanceAndQLosesTenLogOfTheMasses() {
    double area = Math.PI * 0.13 * 0.13;
    Woofer shell = new Woofer("light", 0.3, area, 6, 0, 0.05, 1, 1, 1, 0.008, 100);
    Woofer light = Woofer.withResonance(shell, 25, 5, 0.5, Mounting.FREE_AIR, WorkshopSpecs.AIR);
    Woofer shell2 = new Woofer("heavy", 0.3, area, 6, 0, 0.1, 1, 1, 1, 0.008, 100);
    Woofer heavy = Woofer.withResonance(shell2, 25, 5, 0.5, Mounting.FREE_AIR, WorkshopSpecs.AIR);
    WooferDifference difference = WooferDifference.between(light, heavy, scorers);
    StackDifference single = difference.stacks().get(0);
    int last = single.frequencyHz().size() - 1;
    // above 150 Hz the panel's own load is part of the mass: a band of masses bounds the ratio
    double air = Mounting.INFINITE_BAFFLE.airMassKg(0.13, WorkshopSpecs.AIR);
    double least = -10 * Math.log10(0.1 / 0.05);
    double most = -10 * Math.log10((0.1 + air) / (0.05 + air));
    for (int f = 0; f <= last; f++) {
      if (single.frequencyHz().at(f) > 150 && single.frequencyHz().at(f) < 300) {
        assertThat(single.shareDb(ParameterGroup.MOVING_MASS).at(f))
            .isBetween(least - 0.1, most + 0.3);
      }
      assertThat(single.shareDb(ParameterGroup.RESONANCE).at(f)).isZero();
    }
  }

  /**
   * Two coils of 1.8 ohm in parallel load the amplifier with far less than its 3 ohm, two of 8 do
   * not (Ohm's law), so the two are wired differently when each is alone. Compared, both are wired
   * like the better of the two.
   */
  @Test
  void bothAreWiredLikeTheBetterOfTheTwo() {
    double area = Math.PI * 0.13 * 0.13;
    Woofer low =
        Woofer.withResonance(
            new Woofer("low", 0.3, area, 1.8, 0.0005, 0.03, 1, 1, 1, 0.012, 150),
            30,
            5,
            0.9,
            Mounting.FREE_AIR,
            WorkshopSpecs.AIR);
    Woofer high =
        Woofer.withResonance(
            new Woofer("high", 0.3, area, 8, 0.0005, 0.07, 1, 1, 1, 0.006, 60),
            40,
            5,
            0.4,
            Mounting.FREE_AIR,
            WorkshopSpecs.AIR);
    List<Wiring> ofLow = wirings(low);
    List<Wiring> ofHigh = wirings(high);
    assertThat(ofLow).isNotEqualTo(ofHigh);
    WooferDifference there = WooferDifference.between(low, high, scorers);
    boolean lowIsBetter = there.firstGrade().compareTo(there.secondGrade()) < 0;
    List<Wiring> common = lowIsBetter ? ofLow : ofHigh;
    for (WooferDifference difference :
        List.of(there, WooferDifference.between(high, low, scorers))) {
      for (int s = 0; s < common.size(); s++) {
        assertThat(difference.stacks().get(s).firstLevelDb())
            .isEqualTo(levels(difference.first(), common).get(s));
        assertThat(difference.stacks().get(s).secondLevelDb())
            .isEqualTo(levels(difference.second(), common).get(s));
      }
    }
  }

  private static List<Wiring> wirings(Woofer woofer) {
    return scorers.of(woofer).assessInShort(woofer).stacks().stream()
        .map(stack -> stack.wiring())
        .toList();
  }

  private static List<Curve> levels(Woofer woofer, List<Wiring> wirings) {
    SystemScorer scorer = scorers.of(woofer);
    return scorer.bareLevels(woofer, wirings, scorer.newWorkspace());
  }

  /** A woofer and itself under another name: nothing differs (by definition). */
  @Test
  void aWooferDoesNotDifferFromItself() {
    Woofer a = anyWoofer(new Random(3), "a");
    WooferDifference difference = WooferDifference.between(a, a.withName("b"), scorers);
    for (ParameterGroup group : ParameterGroup.values()) {
      assertThat(difference.costShareDb(group)).isZero();
    }
    assertThat(difference.stacks().get(1).firstLevelDb())
        .isEqualTo(difference.stacks().get(1).secondLevelDb());
  }
}
