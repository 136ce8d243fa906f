package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RequestPlanTest {
  private static final SampleBrief BRIEF = MakerBriefs.brief(true);

  private static RequestPlan plan(SampleBrief brief, Woofer woofer, Set<Lever> locked) {
    return RequestPlan.of(
        brief,
        woofer,
        Map.of(),
        OptionalDouble.empty(),
        locked,
        MakerBriefs.AIR,
        MakerBriefs.VOLTAGE_V);
  }

  /** The change worked out here, by hand; figures from the data sheet's own formulas. */
  @Test
  void predictionIsTheRecomputedWoofer() {
    Woofer sample = MakerBriefs.off(1.04, 0.66, 0.9, 1.12);
    RequestPlan plan = plan(BRIEF, sample, Set.of());
    Change change = plan.change();
    assertThat(change.winding()).isPresent();
    Change.Rewound wound = change.winding().orElseThrow();
    Woofer byHand =
        new Woofer(
            "by hand",
            sample.nominalM(),
            sample.effectiveAreaM2(),
            sample.resistanceOhm() * wound.to().resistanceOhm() / wound.from().resistanceOhm(),
            sample.inductanceH(),
            sample.bareMassKg()
                + change.massKg()
                + wound.to().coilMassKg()
                - wound.from().coilMassKg()
                + wound.to().formerMassKg()
                - wound.from().formerMassKg(),
            sample.stiffnessNPerM() * (1 + change.stiffnessShare()),
            sample.lossNsPerM(),
            sample.forceFactorTm()
                * (1 + change.fluxShare())
                * wound.to().coil().forceFactorTm(1, wound.to().gapHeightM())
                / wound.from().coil().forceFactorTm(1, wound.from().gapHeightM()),
            sample.travelM(),
            sample.powerW());
    SmallSignal expected = SmallSignal.of(byHand, Mounting.FREE_AIR, MakerBriefs.AIR);
    check(plan, "fs", expected.resonanceHz());
    check(plan, "qts", expected.totalQ());
    check(plan, "qes", expected.electricalQ());
    check(plan, "qms", expected.mechanicalQ());
    check(plan, "mms", expected.movingMassKg());
    check(plan, "vas", expected.equivalentVolumeM3());
    check(plan, "re", byHand.resistanceOhm());
    check(plan, "bl", byHand.forceFactorTm());
    check(
        plan,
        "level",
        SmallSignal.levelAtOneWatt(expected.referenceEfficiency(), MakerBriefs.AIR)
            + SmallSignal.levelOverOneWatt(MakerBriefs.VOLTAGE_V, byHand.resistanceOhm()));
    assertThat(plan.stillOutside()).isEmpty();
    assertThat(plan.changed().travelM()).isGreaterThanOrEqualTo(0.98 * sample.travelM());
  }

  private static void check(RequestPlan plan, String key, double expected) {
    assertThat(plan.after().get(key) / expected).as(key).isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest
  @EnumSource(Lever.class)
  void lockedLeversStay(Lever locked) {
    Woofer sample = MakerBriefs.off(1.09, 0.7, 0.9, 1.12);
    RequestPlan free = plan(BRIEF, sample, Set.of());
    RequestPlan plan = plan(BRIEF, sample, EnumSet.of(locked));
    assertThat(plan.change().levers()).doesNotContain(locked);
    assertThat(free.stillOutside()).isEmpty();
    Set<Lever> others = EnumSet.complementOf(EnumSet.of(locked));
    assertThat(plan(BRIEF, sample, others).change().levers()).isSubsetOf(locked);
    assertThat(plan(BRIEF, sample, EnumSet.allOf(Lever.class)).change()).isEqualTo(Change.NONE);
  }

  /** A suspension 44 % too stiff is all that is wrong: that alone is changed, by about -31 %. */
  @Test
  void onlyWhatIsWrongIsChanged() {
    RequestPlan plan = plan(BRIEF, MakerBriefs.off(1, 1.44, 1, 1), Set.of());
    assertThat(plan.change().levers()).containsExactly(Lever.STIFFNESS);
    assertThat(1.44 * (1 + plan.change().stiffnessShare())).isBetween(0.95, 1.11);
    assertThat(plan.rows().get(0).why()).contains("fs");
    assertThat(plan.rows().get(0).resonanceHz()).isEqualTo(plan.after().get("fs"));
  }

  @Test
  void aSampleOnTargetIsLeftAlone() {
    assertThat(plan(BRIEF, MakerBriefs.WOOFER, Set.of()).change()).isEqualTo(Change.NONE);
  }

  /** Without its coil on the brief a wrong Re cannot be mended, and is told. */
  @Test
  void whatNoLeverReachesIsTold() {
    Woofer sample = MakerBriefs.off(1, 1, 1, 1.12);
    assertThat(plan(MakerBriefs.brief(false), sample, Set.of()).stillOutside()).contains("re");
    RequestPlan wound = plan(BRIEF, sample, Set.of());
    assertThat(wound.stillOutside()).isEmpty();
    assertThat(wound.change().levers()).contains(Lever.WINDING);
  }

  @Test
  void restPositionIsMovedBackAndGivesItsTravel() {
    Woofer off = new Change(0, 0, 0, Optional.empty(), 0, -1.2e-3).applyTo(MakerBriefs.WOOFER);
    RequestPlan plan =
        RequestPlan.of(
            BRIEF,
            off,
            Map.of(),
            OptionalDouble.of(-1.2e-3),
            Set.of(),
            MakerBriefs.AIR,
            MakerBriefs.VOLTAGE_V);
    assertThat(plan.change().levers()).containsExactly(Lever.REST_POSITION);
    assertThat(plan.change().restMoveM()).isCloseTo(1.2e-3, within(1e-12));
    assertThat(plan.changed().travelM()).isCloseTo(MakerBriefs.WOOFER.travelM(), within(1e-12));
  }

  /** The brief's woofer rests 0.5 mm inside, give or take 0.5 mm. */
  private static SampleBrief restingInside() {
    SampleBrief brief = MakerBriefs.brief(false);
    List<BriefValue> values = new ArrayList<>();
    for (BriefValue value : brief.values()) {
      values.add(
          value.key().equals("rest-position")
              ? new BriefValue(
                  value.section(),
                  value.key(),
                  value.symbol(),
                  value.name(),
                  value.unit(),
                  OptionalDouble.of(-0.5e-3),
                  "",
                  BriefWindow.between(-1e-3, 0, "x"),
                  value.condition(),
                  value.reason())
              : value);
    }
    return MakerBriefs.with(brief, values, List.of());
  }

  private static RequestPlan resting(double restM, double lostM, double gain, Set<Lever> locked) {
    Map<Lever, LearnedGain> gains = new EnumMap<>(Lever.class);
    for (Lever lever : Lever.values()) {
      gains.put(lever, new LearnedGain(lever == Lever.REST_POSITION ? gain : 1, 0.1, 1));
    }
    return RequestPlan.of(
        restingInside(),
        new Change(0, 0, 0, Optional.empty(), 0, -lostM).applyTo(MakerBriefs.WOOFER),
        Map.of(),
        OptionalDouble.of(restM),
        locked,
        new MakerResponse(gains),
        MakerBriefs.AIR,
        MakerBriefs.VOLTAGE_V);
  }

  /**
   * From -2 mm to -0.5 mm the shorter side gains 1.5 mm, but no more than the way to the brief's
   * travel less 0.5 mm; a maker who goes half of the way is asked for 3 mm.
   */
  @Test
  void restPositionIsMovedToItsTarget() {
    RequestPlan plan = resting(-2e-3, 2.4e-3, 0.5, Set.of());
    assertThat(plan.change().restMoveM()).isCloseTo(3e-3, within(1e-15));
    assertThat(plan.change().travelGainM()).isCloseTo(1.5e-3, within(1e-15));
    assertThat(plan.before().get("rest-position")).isEqualTo(-2e-3);
    assertThat(plan.after().get("rest-position")).isCloseTo(-0.5e-3, within(1e-15));
    assertThat(plan.stillOutside()).isEmpty();
    assertThat(plan.rows()).hasSize(1);
    assertThat(plan.rows().get(0).why()).containsExactly("rest-position");
    assertThat(plan.rows().get(0).travelM()).isCloseTo(1.5e-3, within(1e-15));
    RequestPlan full = resting(-2e-3, 1.8e-3, 1, Set.of());
    assertThat(full.change().restMoveM()).isCloseTo(1.5e-3, within(1e-15));
    assertThat(full.change().travelGainM()).isCloseTo(1.3e-3, within(1e-15));
    // inside the window it stays
    assertThat(resting(-0.9e-3, 0.9e-3, 1, Set.of()).change()).isEqualTo(Change.NONE);
    // locked, it is told
    RequestPlan locked = resting(-2e-3, 2e-3, 1, EnumSet.of(Lever.REST_POSITION));
    assertThat(locked.change()).isEqualTo(Change.NONE);
    assertThat(locked.stillOutside()).containsExactly("rest-position");
  }

  /** Stiffness moves fs, all Q and Vas; flux Qes, Qts, Bl and the level, by 20 log of its ratio. */
  @Test
  void everyLeverIsAskedForWithItsReasons() {
    RequestPlan stiff = plan(BRIEF, MakerBriefs.off(1, 1.5, 1, 1), Set.of());
    assertThat(stiff.rows().get(0).why()).containsExactly("fs", "qts", "qes", "qms", "vas");
    assertThat(stiff.rows().get(0).levelDb()).isCloseTo(0, within(1e-12));
    RequestPlan strong = plan(BRIEF, MakerBriefs.off(1, 1, 1.2, 1), Set.of());
    assertThat(strong.change().levers()).containsExactly(Lever.FLUX);
    assertThat(strong.rows().get(0).why()).containsExactly("qts", "qes", "bl", "level");
    assertThat(strong.rows().get(0).levelDb())
        .isCloseTo(20 * Math.log10(1 + strong.change().fluxShare()), within(1e-9));
    assertThat(strong.rows().get(0).totalQ()).isEqualTo(strong.after().get("qts"));
    assertThat(strong.rows().get(0).travelM()).isZero();
  }
}
