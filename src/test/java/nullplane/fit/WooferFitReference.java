package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import nullplane.HandbookRow;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.validation.Check;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fits and formulas against handbook values; rows of the table of handbook checks. */
@Tag("reference")
class WooferFitReference {
  private static final Air AIR = Air.standard();
  private static final double AREA = 0.0531;
  private static final double AIR_KG = Mounting.FREE_AIR.airMassKg(Math.sqrt(AREA / Math.PI), AIR);
  private static final Curve AXIS = Curve.logSpaced(8, 5000, 200);

  /** AM01, Small 1972: added-mass extraction. */
  @Test
  void movingMassFromTwoResonances() {
    HandbookRow row = HandbookRow.of("AM01");
    double mass =
        ThreePoint.movingMassKg(row.figure("30") * 1e-3, row.figure("30.0"), row.figure("24.0"));
    row.check("moving mass by the three-point formulas")
        .expected(row.figure("53.333"), "g")
        .computed(mass * 1e3)
        .withinPercent(1e-3);
    assertThat(mass).isCloseTo(0.030 / 0.5625, within(1e-12));
  }

  /** AM02, Small 1972: three-point method, exact without inductance. Figures have five digits. */
  @Test
  void qualityFactorsFromThreePoints() {
    HandbookRow row = HandbookRow.of("AM02");
    double re = row.figure("6");
    double top = row.figure("60");
    row.check("impedance at which the curve is read")
        .expected(row.figure("18.974"), "ohm")
        .computed(ThreePoint.readingLevelOhm(re, top))
        .within(5e-4);
    ThreePoint three =
        ThreePoint.of(re, top, row.figure("30"), row.figure("21.9774"), row.figure("40.9511"));
    row.check("mechanical Q from three points")
        .expected(row.figure("5.000"), "")
        .computed(three.mechanicalQ())
        .withinPercent(0.01);
    row.check("electrical Q from three points")
        .expected(row.figure("0.55556"), "")
        .computed(three.electricalQ())
        .withinPercent(0.01);
  }

  /** The woofer of rows AM01 to AM04, from their resonance, mass and quality factors. */
  private static BenchWoofer handbookWoofer(double le) {
    double mms = 0.030 / 0.5625;
    double w = 2 * Math.PI * 30;
    return new BenchWoofer(
        6,
        mms - AIR_KG,
        w * w * mms,
        w * mms / 5,
        Math.sqrt(w * mms * 6 * 9 / 5),
        BenchWoofer.plain(le));
  }

  /** AM01 to AM03 through the whole fit of two sweeps; inductance does not disturb it. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.9e-3})
  void fullSetFromTwoSweeps(double le) {
    BenchWoofer woofer = handbookWoofer(le);
    SweepFit fit =
        WooferFit.of(
            FitInput.inFreeAir(
                woofer.sweep(AXIS, AIR_KG, 0, 0, new Random(1)),
                new MassAnchor.AddedMass(
                    woofer.sweep(AXIS, AIR_KG, 0.030, 0, new Random(1)),
                    AirLoad.freeAir(),
                    0.030,
                    0),
                AREA,
                AIR));
    HandbookRow set = HandbookRow.of("AM03");
    String two = "fit of two sweeps, Le " + le * 1e3 + " mH: ";
    fitted(set.check(two + "Mms"), 30 / 0.5625, "g", 1e3 * value(fit, FittedParameter.MMS), 1e-4);
    fitted(set.check(two + "fs"), 30, "Hz", value(fit, FittedParameter.FS), 1e-4);
    fitted(set.check(two + "Qts"), 0.5, "", value(fit, FittedParameter.QTS), 1e-4);
    fitted(
        set.check(two + "Bl"), set.figure("10.4195"), "T m", value(fit, FittedParameter.BL), 0.05);
    fitted(
        set.check(two + "Cms"),
        set.figure("0.52775"),
        "mm/N",
        1e3 * value(fit, FittedParameter.CMS),
        0.05);
    fitted(
        set.check(two + "Rms"),
        set.figure("2.0106"),
        "N s/m",
        value(fit, FittedParameter.RMS),
        0.05);
    double c = AIR.speedOfSoundMPerS();
    fitted(
        set.check(two + "Vas"),
        1e3 * AIR.densityKgPerM3() * c * c * AREA * AREA / woofer.kms(),
        "l",
        1e3 * value(fit, FittedParameter.VAS),
        1e-4);
    fitted(
        set.check(two + "bare mass"),
        1e3 * woofer.bareKg(),
        "g",
        1e3 * value(fit, FittedParameter.BARE_MASS),
        1e-4);
  }

  private static void fitted(
      Check check, double expected, String unit, double computed, double percent) {
    check.expected(expected, unit).computed(computed).withinPercent(percent);
  }

  /** AM04: the sweep with the mass alone shows fs/1.25, 1.25 Qms, 1.25 Qes. */
  @Test
  void addedMassScalesResonanceAndQ() {
    HandbookRow row = HandbookRow.of("AM04");
    assertThat(row.figure("1.5625")).isEqualTo(1 + 0.5625);
    SweepFit heavier =
        WooferFit.of(
            FitInput.inFreeAir(
                handbookWoofer(0.5e-3).sweep(AXIS, AIR_KG, 0.030, 0, new Random(1)),
                new MassAnchor.None(),
                AREA,
                AIR));
    // the row's 1e-9 is that of the definition; a fit stops within 1e-7
    double allowed = 1e-5;
    fitted(
        row.check("fit with the mass: fs"),
        30 / 1.25,
        "Hz",
        value(heavier, FittedParameter.FS),
        allowed);
    fitted(
        row.check("fit with the mass: Qms"),
        5 * 1.25,
        "",
        value(heavier, FittedParameter.QMS),
        allowed);
    fitted(
        row.check("fit with the mass: Qes"),
        5.0 / 9 * 1.25,
        "",
        value(heavier, FittedParameter.QES),
        allowed);
  }

  /** IN02, circuit theory: L2 beside R2. */
  @Test
  void lossyCoil() {
    HandbookRow row = HandbookRow.of("IN02");
    double[] theta = new double[Circuit.COIL + 3];
    theta[Circuit.COIL] = Math.log(row.figure("0.4") * 1e-3);
    theta[Circuit.COIL + 1] = Math.log(row.figure("1.2") * 1e-3);
    theta[Circuit.COIL + 2] = Math.log(row.figure("4"));
    double[] out = new double[8];
    CoilForm.LOSSY.evaluate(2 * Math.PI * 1000, 1, theta, Circuit.COIL, out);
    row.check("coil of the fit: real and imaginary part")
        .in("ohm")
        .add(row.figure("3.1215"), out[0])
        .add(row.figure("4.1693"), out[1])
        .withinPercent(0.01);
  }

  static double value(SweepFit fit, FittedParameter parameter) {
    assertThat(fit.findings().get(parameter))
        .as(parameter.symbol())
        .isInstanceOf(Finding.Estimate.class);
    return fit.estimate(parameter).orElseThrow().value();
  }
}
