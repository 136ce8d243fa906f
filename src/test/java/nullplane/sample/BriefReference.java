package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.tolerance.SamplingPlan;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Range;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("reference")
class BriefReference {
  private static final Woofer WOOFER =
      new Woofer("A", 0.3, 0.0531, 5.6, 0, 0.071, 2959.2, 2.9, 10.0, 0.008, 150);

  private static final String SMALL =
      "R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: three-point rule, exact without inductance.";

  /**
   * Three-point rule, R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: r0 = Zmax/Re = 1 + Qms/Qes,
   * and where |Z| = Re sqrt(r0), f1 f2 = fs^2 and f2 - f1 = fs sqrt(r0)/Qms; exact for Le = 0.
   */
  @Test
  void impedanceObeysTheThreePointRule() {
    ImpedanceWindow.Parameters unit = new ImpedanceWindow.Parameters(5.6, 31, 5, 0.9, 0);
    double r0 = 1 + 5 / 0.9;
    Validation.check("impedance of a brief's window at resonance", SMALL)
        .expected(5.6 * r0, "ohm")
        .computed(unit.modulusOhm(31))
        .withinPercent(1e-10);
    Check crossings = Validation.check("impedance of a brief's window at both crossings", SMALL);
    double apart = 31 * Math.sqrt(r0) / 5;
    double f1 = -apart / 2 + Math.sqrt(apart * apart / 4 + 31 * 31);
    for (double hz : new double[] {f1, 31 * 31 / f1}) {
      crossings.add(5.6 * Math.sqrt(r0), unit.modulusOhm(hz));
    }
    crossings.in("ohm").within(1e-12 * 40);
  }

  static Stream<Long> seeds() {
    return Stream.iterate(1L, s -> s + 1).limit(200);
  }

  /** Whatever is drawn inside the windows lies inside the band; outside one of them it need not. */
  @ParameterizedTest
  @MethodSource("seeds")
  void unitsInsideTheWindowsLieInTheBand(long seed) {
    Range re = new Range(5.3, 5.9);
    Range fs = new Range(27, 33);
    Range qms = new Range(4, 6);
    Range qes = new Range(0.8, 1.1);
    Range le = new Range(0.8e-3, 1.0e-3);
    ImpedanceWindow window =
        ImpedanceWindow.of(
            new ImpedanceWindow.Parameters(5.6, 30, 5, 0.95, 0.9e-3),
            re,
            fs,
            qms,
            qes,
            le,
            Curve.logSpaced(20, 1000, 60));
    Random random = new Random(seed);
    ImpedanceWindow.Parameters unit =
        new ImpedanceWindow.Parameters(
            re.at(random.nextDouble()),
            fs.at(random.nextDouble()),
            qms.at(random.nextDouble()),
            qes.at(random.nextDouble()),
            le.at(random.nextDouble()));
    boolean strangerOutside = false;
    ImpedanceWindow.Parameters stranger =
        new ImpedanceWindow.Parameters(unit.resistanceOhm(), 40, 5, 0.95, 0.9e-3);
    for (int i = 0; i < window.frequencyHz().size(); i++) {
      double hz = window.frequencyHz().at(i);
      // 33 resonances are tried in the window, 0.6 % apart: near the peak's flanks the modulus
      // moves by less than half a percent between them
      assertThat(unit.modulusOhm(hz))
          .isBetween(window.lowerOhm().at(i) * 0.995, window.upperOhm().at(i) * 1.005);
      double other = stranger.modulusOhm(hz);
      strangerOutside |= other < window.lowerOhm().at(i) || other > window.upperOhm().at(i);
    }
    assertThat(strangerOutside).isTrue();
  }

  /**
   * At resonance v = i Bl/Rms and i = U/(Re + Bl^2/Rms), so x = U Bl/(w (Re Rms + Bl^2)): closed
   * form, Small 1972.
   */
  @Test
  void toneAtResonanceReachesTheTravelAskedFor() {
    SmallSignal set = SmallSignal.of(WOOFER, Mounting.FREE_AIR, Air.standard());
    double volts = new BenchDrive(WOOFER, Air.standard()).toneV(set.resonanceHz(), 0.8);
    double omega = 2 * Math.PI * set.resonanceHz();
    double travel = Math.sqrt(2) * volts * 10 / (omega * (5.6 * 2.9 + 100));
    Validation.check(
            "travel from the tone of a brief at resonance, asked for 0.8 of 8 mm",
            "Closed form: x = U Bl/(w (Re Rms + Bl^2)) (R. H. Small 1972).")
        .expected(0.8 * 8, "mm")
        .computed(travel * 1e3)
        .within(1e-6);
  }

  /** fs' = fs/1.25 with the added mass, by fs = sqrt(Kms/Mms)/(2 pi). */
  @Test
  void addedMassLowersTheResonanceByAFifth() {
    SmallSignal set = SmallSignal.of(WOOFER, Mounting.FREE_AIR, Air.standard());
    double added = new BenchDrive(WOOFER, Air.standard()).addedMassKg();
    double lowered = Math.sqrt(2959.2 / (set.movingMassKg() + added)) / (2 * Math.PI);
    Validation.check(
            "resonance over that with the brief's added mass",
            "Closed form: fs = sqrt(Kms/Mms)/(2 pi).")
        .expected(1.25, "")
        .computed(set.resonanceHz() / lowered)
        .within(1e-12);
  }

  @Test
  void sweepVoltageIsARoundNumberThatKeepsTheConeWithinATenth() {
    BenchDrive bench = new BenchDrive(WOOFER, Air.standard());
    assertThat(bench.sweepV()).isIn(2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02);
    assertThat(bench.sweepV()).isLessThanOrEqualTo(bench.sweptV(0.1));
    assertThat(bench.sweptV(0.8)).isLessThanOrEqualTo(bench.toneV(30, 0.8) * (1 + 1e-12));
  }

  /** 0.95^50 + 50 x 0.05 x 0.95^49 = 0.2794: the plan's known weakness. */
  @Test
  void planOfFiftyLetsBadLotsPass() {
    Validation.check(
            "chance that a lot with 5 % bad passes a plan of 50 with one allowed",
            "Binomial distribution: 0.95^50 + 50 x 0.05 x 0.95^49.")
        .expected(0.2794, "")
        .computed(SamplingPlan.passing(50, 1, 0.05))
        .within(5e-5);
    assertThat(SamplingPlan.passing(50, 1, 0)).isEqualTo(1);
    assertThat(SamplingPlan.passing(50, 1, 1)).isEqualTo(0);
    assertThat(SamplingPlan.passing(13, 13, 0.4)).isEqualTo(1);
    assertThatThrownBy(() -> SamplingPlan.passing(0, 0, 0.1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void windowsAcceptTheirEndsAndNoNan() {
    BriefWindow window = BriefWindow.around(10, 0.1, "x");
    assertThat(window.accepts(9)).isTrue();
    assertThat(window.accepts(11.000001)).isFalse();
    assertThat(window.accepts(Double.NaN)).isFalse();
    assertThat(BriefWindow.atLeast(3, "x").accepts(1e9)).isTrue();
    assertThat(BriefWindow.atMost(3, "x").accepts(1e9)).isFalse();
    assertThat(BriefWindow.NONE.limits()).isFalse();
    assertThatThrownBy(() -> BriefWindow.between(2, 1, "x"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void practiceKnowsTheUsualWindows() {
    BriefWindow level = CommonPractice.window("level", 90).orElseThrow();
    assertThat(level.lower()).hasValue(89);
    assertThat(level.upper()).hasValue(91);
    BriefWindow rest = CommonPractice.window("rest-position", 0).orElseThrow();
    assertThat(rest.upper()).hasValue(0.5e-3);
    assertThat(CommonPractice.window("re", 6).orElseThrow().upper().orElseThrow())
        .isCloseTo(6.3, within(1e-12));
    assertThat(CommonPractice.window("kms", 3000)).isEmpty();
  }
}
