package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.HandbookRow;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.acoustics.PointSources;
import nullplane.acoustics.RoundOutline;
import nullplane.driver.Woofer;
import nullplane.network.LowPassBranch;
import nullplane.units.ConductorMaterial;
import nullplane.units.Curve;
import nullplane.units.Levels;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Heat, programme and signals below the band against handbook rows and closed forms. */
@Tag("reference")
class LimitStudyReference {
  private static final Wiring SINGLE = new Wiring(1, 1);
  private static final double WINDING_M = 0.024;

  private static DesignSpec spec;
  private static StackBrief brief;
  private static PanelResponse panel;

  @BeforeAll
  static void solve() {
    spec = WorkshopSpecs.singleAndPair();
    brief = spec.stacks().get(0);
    panel = respond(brief, ScoringAxis.drawnFor(spec));
  }

  private static PanelResponse respond(StackBrief stack, Curve axis) {
    return new PanelSolver(stack.panel(), stack.pistons(), WorkshopSpecs.AIR)
        .respond(axis, List.of(spec.listening().pointFor(stack.panel())), List.of());
  }

  /** So heavy that only its mass matters and its coil's current is V/Re. */
  private static Woofer heavy(double powerW) {
    return new Woofer("heavy", 0.3, 0.0531, 5.6, 0, 200, 10, 0.001, 1, 0.01, powerW);
  }

  private static LimitStudy study(
      Woofer woofer, double amplifierV, ProgrammeSpectrum... programmes) {
    DesignSpec driven =
        new DesignSpec(
            "limits",
            spec.woofer(),
            List.of(brief),
            spec.listening(),
            spec.target(),
            new Amplifier(amplifierV, 3));
    return new LimitDetail(
            driven,
            brief,
            SINGLE,
            LowPassBranch.NONE,
            woofer,
            ConductorMaterial.COPPER,
            panel,
            panel)
        .study(5.0, WINDING_M, 0.008, List.of(programmes));
  }

  /** IEC 60028 temperature coefficient. Printed to five digits and 0.01 dB. */
  @Test
  void th01AtRatedPower() {
    HandbookRow row = HandbookRow.of("TH01");
    LimitStudy.HeatState rated = study(heavy(90), 28, ProgrammeSpectrum.MUSIC).rated();
    assertThat(rated.riseK()).isEqualTo(row.figure("180"));
    row.check("study at rated power: resistance as a ratio")
        .expected(row.figure("1.7074"), "")
        .computed(rated.resistanceOhm() / 5.6)
        .within(1e-9);
    row.check("study at rated power: level lost in the band and at its low corner")
        .in("dB")
        .add(row.figure("4.65"), rated.bandLossDb())
        .add(row.figure("4.65"), rated.lowCornerLossDb())
        .within(0.005);
  }

  /**
   * Steady heat balance: a programme that would make 50 W in the cold coil, 2 K/W. Printed to 0.01
   * K and 0.01 dB.
   */
  @Test
  void th02AtTheAmplifiersVoltage() {
    HandbookRow row = HandbookRow.of("TH02");
    double voltage = Math.sqrt(row.figure("50") * 5.6);
    double crest = ProgrammeSpectrum.MUSIC.crestFactor();
    LimitStudy study =
        study(heavy(180 / 2.0), crest * voltage / Math.sqrt(2), ProgrammeSpectrum.MUSIC);
    assertThat(study.thermalResistanceKPerW()).isEqualTo(row.figure("2"));
    LimitStudy.ProgrammeLevel music = study.programmes().get(0);
    assertThat(music.amplifierVoltageV()).isEqualTo(voltage, offset(1e-9));
    LimitStudy.HeatState state = music.atFullVoltage();
    row.check("study of a programme of 50 W cold: rise")
        .expected(row.figure("76.81"), "K")
        .computed(state.riseK())
        .within(0.005);
    row.check("study of a programme of 50 W cold: level lost")
        .expected(row.figure("2.29"), "dB")
        .computed(state.bandLossDb())
        .within(0.005);
    // Rated power is reached where V^2/Re of the hot coil is it: Ohm's law.
    Validation.check("voltage that makes 90 W in the hot coil", "Closed form: Ohm's law.")
        .expected(Math.sqrt(90 * 5.6 * 1.7074), "V")
        .computed(music.heatVoltageV())
        .withinPercent(1e-7);
  }

  /**
   * A heat balance that is not a closed form: at the heat limit's own voltage it gives the limit.
   */
  @Test
  void theHeatLimitIsASteadyState() {
    Woofer woofer = WorkshopSpecs.woofer(spec.woofer(), 33, 0.8, 0.055, 0.008);
    ProgrammeSpectrum noise = ProgrammeSpectrum.TEST_NOISE;
    double heatV = study(woofer, 28, noise).programmes().get(0).heatVoltageV();
    LimitStudy at = study(woofer, heatV * noise.crestFactor() / Math.sqrt(2), noise);
    Validation.check(
            "rise at the voltage of the heat limit, test noise",
            "Steady heat balance: it is the limit's own rise.")
        .expected(LimitDetail.LIMIT_RISE_K, "K")
        .computed(at.programmes().get(0).atFullVoltage().riseK())
        .withinPercent(1e-6);
  }

  /**
   * One third-octave of programme on a mass-controlled cone. The excursion per volt is Bl/(Re w^2
   * M); the mean of f^-4 over log f in a band of half width a = ln 10/20 is sinh(4a)/(4a) times its
   * middle's. Source: Newton's and Ohm's laws. The curves have 80 points a decade, straight between
   * them, which is 0.06 % too much here; the panel's air is 0.005 % of the mass.
   */
  @Test
  void oneBandOfProgrammeOnAMass() {
    double[] levels = new double[ProgrammeSpectrum.BANDS];
    Arrays.fill(levels, -300);
    levels[7] = 0;
    assertThat(ProgrammeSpectrum.middleHz(7)).isEqualTo(100, offset(1e-9));
    ProgrammeSpectrum band = new ProgrammeSpectrum("100 Hz", 3, Curve.of(levels));
    LimitStudy.ProgrammeLevel level = study(heavy(1e15), 1e9, band).programmes().get(0);
    double a = Math.log(10) / 20;
    double omega = 2 * Math.PI * 100;
    double rmsPerVolt = 1 / (5.6 * omega * omega * 200) * Math.sqrt(Math.sinh(4 * a) / (4 * a));
    Validation.check(
            "voltage of a third-octave of programme that moves a mass by 10 mm",
            "Closed form: Newton's and Ohm's laws.")
        .expected(0.01 / (3 * rmsPerVolt), "V")
        .computed(level.excursionVoltageV())
        .coarse(5, 1e-5)
        .withinPercent(0.1);
    assertThat(level.binding()).isEqualTo(Limit.EXCURSION);
    // A mass-controlled cone on a dipole: what it plays is inside the band of the woofers alone.
    assertThat(level.wholeDb()).isEqualTo(level.wooferBandDb(), offset(1e-9));
  }

  /**
   * The panel continued below its axis against the panel solved there, as a share of a cone's own
   * reactance, which is what adds to its mass. What is left out is the next term, of order (kb)^2
   * with b half the height: 0.076 at 20 Hz, of which a few hundredths show. 0.3 % of this reactance
   * is 0.05 % of the moving mass.
   */
  @Test
  void subsonicExtensionAgainstTheSolver() {
    StackBrief pair = spec.stacks().get(1);
    PanelResponse solved = respond(pair, Curve.of(8, 12, 20, 25));
    PanelResponse from20 = new PanelResponse(Curve.of(20, 25), solved.solutions().subList(2, 4));
    PanelResponse continued = SubsonicExtension.below(from20, 8);
    Check share =
        Validation.check(
            "impedance continued from 20 Hz to 8 and 12 Hz, as a share of a cone's own reactance",
            "The panel solver at 8 and 12 Hz.");
    for (int f = 0; f < 2; f++) {
      // 8 Hz is the first point; 12 Hz is not one of them, so it is continued to by itself
      PanelSolution own = SubsonicExtension.below(from20, f == 0 ? 8 : 12).solutions().get(0);
      ComplexMatrix expected = solved.solutions().get(f).impedance();
      assertThat(own.frequencyHz()).isEqualTo(solved.frequencyHz().at(f));
      double scale = expected.im(0, 0);
      for (int i = 0; i < 4; i++) {
        share.add(expected.im(i / 2, i % 2) / scale, own.impedance().im(i / 2, i % 2) / scale);
        share.add(expected.re(i / 2, i % 2) / scale, own.impedance().re(i / 2, i % 2) / scale);
      }
    }
    share.coarse(4, 1e-5).within(0.003);
    assertThat(continued.frequencyHz().at(continued.frequencyHz().size() - 1)).isEqualTo(25);
  }

  /**
   * The excursion written out for one woofer without inductance, x = Bl V/Re/|K - w^2 M + jw(Rms +
   * Bl^2/Re)|, with the panel's air as a mass: the high-pass found holds it at the travel, and one
   * with a corner 3 % lower does not. Source: Newton's and Ohm's laws; Butterworth second order.
   */
  @Test
  void theHighPassIsJustEnough() {
    Woofer made = WorkshopSpecs.woofer(spec.woofer(), 30, 0.9, 0.06, 0.006);
    Woofer woofer =
        new Woofer(
            "w",
            0.3,
            made.effectiveAreaM2(),
            5.6,
            0,
            0.06,
            made.stiffnessNPerM(),
            made.lossNsPerM(),
            made.forceFactorTm(),
            0.006,
            150);
    PanelSolution lowest = panel.solutions().get(0);
    double mass = 0.06 + lowest.impedance().im(0, 0) / (2 * Math.PI * panel.frequencyHz().at(0));
    LimitStudy.SubsonicDemand demand = study(woofer, 28, ProgrammeSpectrum.MUSIC).fullVoltage();
    double corner = demand.highPassHz().orElseThrow();
    String newton = "Closed form: Newton's and Ohm's laws with a second-order Butterworth.";
    Validation.check("greatest excursion over travel behind the high-pass that was found", newton)
        .expected(1, "")
        .computed(greatestShare(woofer, mass, corner))
        .coarse(4, 1e-5)
        .within(0.005);
    assertThat(greatestShare(woofer, mass, 0.97 * corner)).isGreaterThan(1.01);
    Validation.check("greatest excursion over travel without a high-pass", newton)
        .expected(greatestShare(woofer, mass, 0), "")
        .computed(demand.greatestShare())
        .coarse(4, 1e-5)
        .withinPercent(0.49);
    double beyond = demand.beyondTravelBelowHz().orElseThrow();
    Validation.check("excursion over travel where it is first exceeded", newton)
        .expected(1, "")
        .computed(share(woofer, mass, 0, beyond))
        .coarse(4, 1e-5)
        .within(0.01);
    // and nothing is needed of an amplifier that cannot move the cone that far
    LimitStudy.SubsonicDemand weak =
        study(woofer, 27.9 / demand.greatestShare(), ProgrammeSpectrum.MUSIC).fullVoltage();
    assertThat(weak.protectionNeeded()).isFalse();
    assertThat(weak.beyondTravelBelowHz()).isEmpty();
  }

  private static double greatestShare(Woofer woofer, double mass, double cornerHz) {
    double greatest = 0;
    for (double f = 5; f <= 40; f += 0.05) {
      greatest = Math.max(greatest, share(woofer, mass, cornerHz, f));
    }
    return greatest;
  }

  private static double share(Woofer woofer, double mass, double cornerHz, double f) {
    double omega = 2 * Math.PI * f;
    double bl = woofer.forceFactorTm();
    double peak =
        Math.sqrt(2)
            * 28
            * bl
            / 5.6
            / Math.hypot(
                woofer.stiffnessNPerM() - omega * omega * mass,
                omega * (woofer.lossNsPerM() + bl * bl / 5.6));
    return peak / Math.sqrt(1 + Math.pow(cornerHz / f, 4)) / woofer.travelM();
  }

  /**
   * The excursion limit of a whole stack against a point dipole: a woofer in the middle of a small
   * round panel in free space, at a distance. Length of the dipole: row DI02 (potential flow past a
   * disc); displacement-limited pressure: R. H. Small, J. Audio Eng. Soc. 21 (1973) 798; field of a
   * dipole near by: times sqrt(1 + 1/(kr)^2). Table: 0.5 % for kb below 0.2, which is 0.04 dB.
   */
  @Test
  void dl01ExcursionLimitOfASmallRoundPanel() {
    double length = HandbookRow.of("DI02").figure("0.23013");
    double distance = 6;
    StackBrief small =
        new StackBrief(
            "round",
            new Panel(new RoundOutline(0.40), OptionalDouble.empty()),
            List.of(new Piston(0, 0, 0.12)),
            60,
            70,
            Optional.of(SINGLE));
    WooferBrief given = WorkshopSpecs.brief300();
    DesignSpec round =
        new DesignSpec(
            "round",
            new WooferBrief(
                0.3,
                0.24,
                given.resonanceHz(),
                given.totalQ(),
                given.bareMassKg(),
                given.travelM(),
                5,
                given.statedInductanceH(),
                150,
                given.coil()),
            List.of(small),
            new Listening(distance, 0.2),
            new Target(2.83, 30, 60, 2),
            new Amplifier(28, 3));
    Woofer woofer = WorkshopSpecs.woofer(round.woofer(), 33, 0.8, 0.055, 0.008);
    StackCurves curves = WorkshopSpecs.scorer(round).assess(woofer).stacks().get(0).curves();
    Check limit =
        Validation.check(
                "excursion limit of a woofer in a round panel of 40 cm at 6 m, kb up to 0.15",
                "Rows DI02 and DL01: potential flow past a disc; R. H. Small, J. Audio Eng. Soc. 21"
                    + " (1973) 798; near field of a dipole.")
            .in("dB");
    int checked = 0;
    for (int f = 0; f < curves.frequencyHz().size(); f++) {
      double frequency = curves.frequencyHz().at(f);
      double k = WorkshopSpecs.AIR.waveNumber(frequency);
      if (k * 0.2 > 0.15) {
        continue;
      }
      double pressure =
          PointSources.fullSpaceRmsPa(
                  woofer.effectiveAreaM2() * 0.008, frequency, distance, WorkshopSpecs.AIR)
              * PointSources.dipoleFactor(length, 0, frequency, WorkshopSpecs.AIR)
              * Math.sqrt(1 + 1 / Math.pow(k * distance, 2));
      limit.add(Levels.soundPressureLevel(pressure), curves.excursionLimitDb().at(f));
      checked++;
    }
    limit.coarse(4, 1e-5).within(0.05);
    assertThat(checked).isGreaterThan(5);
  }

  /** Listening point of the small panel is on its axis. */
  @Test
  void theListenerOfTheSmallPanelIsOnItsAxis() {
    FieldPoint ear =
        new Listening(6, 0.2).pointFor(new Panel(new RoundOutline(0.40), OptionalDouble.empty()));
    assertThat(ear.yM()).isEqualTo(0, offset(1e-12));
  }
}
