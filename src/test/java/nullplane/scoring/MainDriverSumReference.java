package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.acoustics.RectangularOutline;
import nullplane.driver.Woofer;
import nullplane.io.SpecReader;
import nullplane.network.ActiveBranch;
import nullplane.network.OfferRows;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The sum of woofers and a modelled main driver, from a spec's text to the scored curves, against
 * complex numbers added here.
 *
 * <p>Source: superposition. Linkwitz-Riley of second order: S. H. Linkwitz, J. Audio Eng. Soc.
 * 24(1) (1976) 2, both halves 6.02 dB down at the corner and half a turn apart, so that they cancel
 * there unless one is inverted, and are flat in sum if one is. A free wave travels r in r/c.
 */
@Tag("reference")
class MainDriverSumReference {
  private static final Air AIR = Air.standard();
  private static final double CORNER = 200;
  private static final double DISTANCE = 2.5;
  private static final double BEHIND = 0.07;
  private static final String SUM =
      "Superposition in complex numbers; S. H. Linkwitz, J. Audio Eng. Soc. 24(1) (1976) 2.";

  private static DesignSpec spec(String polarity) {
    String text =
        """
        title: sum
        woofer: {nominal: 300 mm, effective-diameter: 260 mm}
        stacks:
          - name: single
            panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
            woofers: [{x: 0 cm, y: -10 cm}]
        listening: {distance: 2.5 m, height: 1 m}
        target: {level: 80 dB, loudest: 90 dB, low-corner: 100 Hz, upper-corner: 200 Hz}
        amplifier: {voltage: 28 V, lowest-load: 3 ohm}
        crossover: {kind: active, gain: 0 dB, shapes: linkwitz-riley-2, corner: 200 Hz,
          correction: none}
        main-driver: {high-pass: {shape: linkwitz-riley-2}, behind: 7 cm, polarity: %s}
        """
            .formatted(polarity);
    return SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "sum.yaml").spec();
  }

  /** The last network of the offer is the low-pass; the first is none. */
  private static SumCurves sumWithLowPass(
      DesignSpec spec, ScoringAxis axis, PanelResponse response, Woofer woofer) {
    OfferRows offer = spec.networks().rows(axis.frequencyHz());
    assertThat(((ActiveBranch) offer.network(offer.count() - 1, 1)).lowPass()).isPresent();
    StackBrief brief = spec.stacks().get(0);
    StackEvaluator evaluator =
        new StackEvaluator(spec, new StackAcoustics(brief, response), axis, offer);
    StackEvaluator.Workspace space =
        new StackEvaluator.Workspace(axis.frequencyHz().size(), brief.pistons().size());
    StackChoice choice = new StackChoice();
    evaluator.evaluate(woofer, 0, offer.count() - 1, space, choice);
    SumCurves sum =
        new StackDetail(evaluator, response, response, spec, axis)
            .assess(woofer, choice, space)
            .curves()
            .sum()
            .orElseThrow();
    double squares = 0;
    for (int f = 0; f < sum.frequencyHz().size(); f++) {
      double deviation = sum.sumDb().at(f) - 80;
      squares += axis.bandWeights().at(f) * deviation * deviation;
    }
    assertThat(choice.rmsDeviation).isCloseTo(Math.sqrt(squares), within(1e-9));
    return sum;
  }

  /** Level of woofers and main driver, in complex numbers written out (dB re 20 uPa). */
  private static double expectedDb(double hz, double wooferRe, double wooferIm, int sign) {
    double x = hz / CORNER;
    // low-pass 1/(1 + jx)^2, high-pass (jx)^2/(1 + jx)^2, over the common denominator
    double denominatorRe = 1 - x * x;
    double denominatorIm = 2 * x;
    double angle = -2 * Math.PI * hz * (DISTANCE + BEHIND) / AIR.speedOfSoundMPerS();
    double main = -x * x * sign * 0.2; // 80 dB re 20 uPa is 0.2 Pa
    double re = 2.83 * wooferRe + main * Math.cos(angle);
    double im = 2.83 * wooferIm + main * Math.sin(angle);
    return 20 * Math.log10(Math.hypot(re, im) / Math.hypot(denominatorRe, denominatorIm) / 20e-6);
  }

  /**
   * A woofer that is nothing but mass, on a wall without end: rho S a/(2 pi r) e^{-jkr} at r, which
   * is flat (Rayleigh, The Theory of Sound, art. 278). It is made as loud as the main driver and as
   * far away.
   */
  private static PanelResponse endlessWall(Curve hz, double areaM2, double distanceM) {
    return new PanelResponse(
        hz,
        hz.stream()
            .mapToObj(
                f -> {
                  double omega = 2 * Math.PI * f;
                  double perVelocity =
                      omega * AIR.densityKgPerM3() * areaM2 / (2 * Math.PI * distanceM);
                  double kr = omega * distanceM / AIR.speedOfSoundMPerS();
                  return new PanelSolution(
                      f,
                      one(1e-6, 0),
                      one(perVelocity * Math.sin(kr), perVelocity * Math.cos(kr)), // j e^{-jkr}
                      one(1, 0),
                      0);
                })
            .toList());
  }

  private static ComplexMatrix one(double re, double im) {
    return new ComplexMatrix(1, 1, new double[] {re}, new double[] {im});
  }

  @ParameterizedTest
  @CsvSource({"normal, 1", "inverted, -1"})
  void massControlledWooferOnAWall(String polarity, int sign) {
    DesignSpec spec = spec(polarity);
    ScoringAxis axis = ScoringAxis.of(spec);
    double area = 0.0531;
    double path = DISTANCE + BEHIND;
    double mass = 0.06;
    // (Bl V/Re)/(w M) w rho S/(2 pi r) = 0.2 Pa at 2.83 V, by Newton's and Ohm's laws; with so
    // small an Re the motor's own damping Bl^2/Re is nothing beside w M
    double re = 1e-3;
    double bl = 0.2 / 2.83 * re * mass * 2 * Math.PI * path / (AIR.densityKgPerM3() * area);
    Woofer woofer = new Woofer("mass", 0.3, area, re, 0, mass, 1e-3, 1e-3, bl, 0.01, 100);
    double damping = bl * bl / re; // N s/m, seen at the cone
    SumCurves sum = sumWithLowPass(spec, axis, endlessWall(axis.frequencyHz(), area, path), woofer);
    Curve hz = sum.frequencyHz();
    Check level =
        Validation.check("mass on a wall and main driver, " + polarity + ": level of the sum", SUM)
            .in("dB");
    double atCorner = Double.NaN;
    for (int f = 0; f < hz.size(); f++) {
      double omega = 2 * Math.PI * hz.at(f);
      double kr = omega * path / AIR.speedOfSoundMPerS();
      // u = Bl V/Re / (jw M + Bl^2/Re + Rms + 1e-6 + Kms/jw), p = j w rho S/(2 pi r) e^{-jkr} u
      double zRe = damping + 1e-3 + 1e-6;
      double zIm = omega * mass - 1e-3 / omega;
      double drive =
          bl
              / re
              * omega
              * AIR.densityKgPerM3()
              * area
              / (2 * Math.PI * path)
              / (zRe * zRe + zIm * zIm);
      double pRe = drive * zIm; // j (zRe - j zIm) = zIm + j zRe
      double pIm = drive * zRe;
      double heardRe = pRe * Math.cos(kr) + pIm * Math.sin(kr);
      double heardIm = pIm * Math.cos(kr) - pRe * Math.sin(kr);
      level.add(expectedDb(hz.at(f), heardRe, heardIm, sign), sum.sumDb().at(f));
      if (Math.abs(hz.at(f) - CORNER) < 1e-9) {
        atCorner = sum.sumDb().at(f);
      }
    }
    level.within(1e-6);
    if (sign > 0) {
      assertThat(atCorner).as("a notch at the corner").isLessThan(80 - 20);
    } else {
      Validation.check("mass on a wall and main driver, inverted: level at the corner", SUM)
          .expected(80, "dB")
          .computed(atCorner)
          .within(0.3);
    }
  }

  /** A real panel: the woofer's velocity from its own circuit, solved here. */
  @ParameterizedTest
  @CsvSource({"normal, 1", "inverted, -1"})
  void wooferOnABarePanel(String polarity, int sign) {
    DesignSpec spec = spec(polarity);
    ScoringAxis axis = ScoringAxis.of(spec);
    PanelResponse response = WorkshopSpecs.acoustics(spec, axis).get(0).response();
    Woofer woofer = new Woofer("real", 0.3, 0.0531, 5.6, 0.9e-3, 0.06, 2500, 2.5, 10, 0.008, 150);
    SumCurves sum = sumWithLowPass(spec, axis, response, woofer);
    Check level =
        Validation.check(
                "woofer on a panel and main driver, " + polarity + ": level of the sum", SUM)
            .in("dB");
    for (int f = 0; f < sum.frequencyHz().size(); f += 5) {
      PanelSolution solution = response.solutions().get(axis.firstInBand() + f);
      double omega = 2 * Math.PI * solution.frequencyHz();
      // u = Bl/(Ze z + Bl^2) per volt: Ze = Re + jw Le, z = Rms + jw M + Kms/jw + Z
      double zRe = 2.5 + solution.impedance().re(0, 0);
      double zIm = omega * 0.06 - 2500 / omega + solution.impedance().im(0, 0);
      double eIm = omega * 0.9e-3;
      double dRe = 5.6 * zRe - eIm * zIm + 100;
      double dIm = 5.6 * zIm + eIm * zRe;
      double d2 = dRe * dRe + dIm * dIm;
      double uRe = 10 * dRe / d2;
      double uIm = -10 * dIm / d2;
      double hRe = solution.pressure().re(0, 0);
      double hIm = solution.pressure().im(0, 0);
      level.add(
          expectedDb(solution.frequencyHz(), hRe * uRe - hIm * uIm, hRe * uIm + hIm * uRe, sign),
          sum.sumDb().at(f));
    }
    level.within(1e-9);
  }

  /**
   * What the solver hears holds the whole path and the sign that a main driver's delay assumes: on
   * a wide panel in free space it is the wall's jw rho S/(2 pi r) e^{-jkr} but for the rims' waves,
   * which come some two metres instead of 0.6 m and about a third as strong, so that the phase
   * stays within 0.4 rad; without the path, or with its sign wrong, it would be some radians off.
   */
  @Test
  void theSolversPhaseHoldsThePath() {
    Panel wide = new Panel(new RectangularOutline(2.4, 2.0), OptionalDouble.empty());
    Piston piston = new Piston(0.3, 0.2, 0.1);
    double r = Math.sqrt(0.3 * 0.3 + 0.2 * 0.2 + 0.5 * 0.5);
    Curve hz = Curve.of(150, 250, 400);
    PanelResponse response =
        new PanelSolver(wide, List.of(piston), AIR)
            .respond(hz, List.of(new FieldPoint(0, 0, 0.5)), List.of());
    Check phases =
        Validation.check(
                "phase at 0.6 m from a panel of 2.4 x 2.0 m against a wall's, three frequencies",
                "Closed form of an endless wall (Rayleigh); the rim's waves turn it by up to"
                    + " 0.4 rad.")
            .in("rad");
    for (PanelSolution solution : response.solutions()) {
      double kr = AIR.waveNumber(solution.frequencyHz()) * r;
      double phase =
          Math.atan2(solution.pressure().im(0, 0), solution.pressure().re(0, 0))
              - (Math.PI / 2 - kr);
      double wall = Math.PI / 2 - kr;
      phases.add(wall, wall + Math.IEEEremainder(phase, 2 * Math.PI));
    }
    phases.coarse(3, 1e-4).within(0.4);
  }
}
