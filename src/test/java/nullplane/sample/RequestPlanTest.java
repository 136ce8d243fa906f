package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Map;
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
    Woofer off =
        new Change(0, 0, 0, java.util.Optional.empty(), 0, -1.2e-3).applyTo(MakerBriefs.WOOFER);
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
}
