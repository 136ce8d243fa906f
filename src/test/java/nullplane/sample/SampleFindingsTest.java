package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import nullplane.fit.Finding;
import nullplane.fit.FittedParameter;
import nullplane.fit.SweepFit;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;

/** Fits that are made up, so that uncertainties can be carried over by hand. */
class SampleFindingsTest {
  private static final double AREA = 0.05;
  private static final double STUDENT = 2.1;

  private final Map<FittedParameter, Finding> findings = new EnumMap<>(FittedParameter.class);
  private final List<FittedParameter> order = new ArrayList<>();

  private void found(FittedParameter parameter, double value, double share) {
    double reach = STUDENT * share;
    findings.put(
        parameter,
        new Finding.Estimate(
            value, share * value, value * Math.exp(-reach), value * Math.exp(reach)));
    order.add(parameter);
  }

  private SampleFindings findings(List<List<Double>> correlations) {
    return new SampleFindings(
        new SweepFit(
            findings, order, correlations, "made up", List.of(), 0, 9, List.of(), List.of()),
        AREA,
        Air.standard(),
        2);
  }

  private static Finding.Estimate of(SampleFindings findings, BenchFigure figure) {
    Finding finding = findings.of(figure);
    assertThat(finding).isInstanceOf(Finding.Estimate.class);
    return (Finding.Estimate) finding;
  }

  /** JCGM 100:2008, equation 13, for Bl/(M Re): shares of 2, 3 and 1 %, two of them related. */
  @Test
  void levelCarriesItsUncertainty() {
    found(FittedParameter.BL, 10, 0.02);
    found(FittedParameter.MMS, 0.06, 0.03);
    found(FittedParameter.RE, 6, 0.01);
    SampleFindings sample =
        findings(List.of(List.of(1.0, 0.5, 0.3), List.of(0.5, 1.0, -0.2), List.of(0.3, -0.2, 1.0)));
    Finding.Estimate level = of(sample, BenchFigure.LEVEL);
    // p = rho Bl Sd U/(2 pi M Re), re 20 uPa
    double rho = Air.standard().densityKgPerM3();
    double pascal = rho * 10 * AREA * 2 / (2 * Math.PI * 0.06 * 6);
    assertThat(level.value()).isCloseTo(20 * Math.log10(pascal / 20e-6), within(1e-9));
    // slopes 1, -1, -1: 4 + 9 + 1 - 2 * 0.5 * 6 - 2 * 0.3 * 2 + 2 * -0.2 * 3 = 5.6, in 1e-4
    double neper = Math.sqrt(5.6e-4);
    double decibels = neper * 20 / Math.log(10);
    assertThat(level.standardError()).isCloseTo(decibels, within(1e-7));
    assertThat(level.upper95() - level.value()).isCloseTo(STUDENT * decibels, within(1e-6));
    assertThat(level.value() - level.lower95()).isCloseTo(STUDENT * decibels, within(1e-6));
  }

  /** Without a mass there is no level, and the fit's own reason is told. */
  @Test
  void whatIsMissingIsTold() {
    found(FittedParameter.RE, 6, 0.01);
    found(FittedParameter.BL, 10, 0.02);
    Finding why = new Finding.NotDetermined("no mass");
    findings.put(FittedParameter.MMS, why);
    SampleFindings sample = findings(List.of(List.of(1.0, 0.0), List.of(0.0, 1.0)));
    assertThat(sample.of(BenchFigure.LEVEL)).isEqualTo(why);
    assertThat(sample.of(BenchFigure.MMS)).isEqualTo(why);
    assertThat(sample.of(BenchFigure.KMS))
        .isEqualTo(new Finding.NotDetermined("the fit does not give it"));
    assertThat(sample.of(BenchFigure.RE)).isEqualTo(findings.get(FittedParameter.RE));
    assertThat(sample.of(BenchFigure.LE))
        .isEqualTo(new Finding.NotDetermined("the fit does not give it"));
  }

  @Test
  void plainInductanceIsTheFitsOwn() {
    found(FittedParameter.LE, 0.9e-3, 0.02);
    assertThat(findings(List.of(List.of(1.0))).of(BenchFigure.LE))
        .isEqualTo(findings.get(FittedParameter.LE));
  }

  /** K (jw)^n looks like K w^(n - 1) sin(n pi/2); slopes of its logarithm by hand. */
  @Test
  void semiInductanceAtOneKilohertz() {
    double n = 0.6;
    found(FittedParameter.RE, 6, 0.01);
    found(FittedParameter.K, 0.05, 0.04);
    found(FittedParameter.N, n, 0.01);
    Finding.Estimate le =
        of(
            findings(
                List.of(List.of(1.0, 0.0, 0.0), List.of(0.0, 1.0, -0.9), List.of(0.0, -0.9, 1.0))),
            BenchFigure.LE);
    double w = 2 * Math.PI * 1000;
    double value = 0.05 * Math.pow(w, n - 1) * Math.sin(n * Math.PI / 2);
    double ofFactor = 0.04;
    double ofExponent = 0.01 * n * (Math.log(w) + Math.PI / 2 / Math.tan(n * Math.PI / 2));
    double share =
        Math.sqrt(ofFactor * ofFactor + ofExponent * ofExponent - 2 * 0.9 * ofFactor * ofExponent);
    assertInductance(le, value, share);
  }

  /** Le + L2 R2^2/(R2^2 + (w L2)^2); here w L2 = R2, so that half of L2 is left. */
  @Test
  void inductanceWithEddyCurrentsAtOneKilohertz() {
    double w = 2 * Math.PI * 1000;
    found(FittedParameter.RE, 6, 0.01);
    found(FittedParameter.LE, 0.5e-3, 0.02);
    found(FittedParameter.L2, 1e-3, 0.03);
    found(FittedParameter.R2, w * 1e-3, 0.05);
    Finding.Estimate le =
        of(
            findings(
                List.of(
                    List.of(1.0, 0.0, 0.0, 0.0),
                    List.of(0.0, 1.0, -0.5, 0.0),
                    List.of(0.0, -0.5, 1.0, 0.4),
                    List.of(0.0, 0.0, 0.4, 1.0))),
            BenchFigure.LE);
    // L = Le + L2/2: dL/dLe = 1; dL/dL2 = (1 - x^2)/(1 + x^2)^2 = 0 and dL/dR2 = L2/(2 R2) at x = 1
    assertInductance(le, 1e-3, Math.hypot(0.02 * 0.5, 0.05 * 0.5));
  }

  private static void assertInductance(Finding.Estimate le, double value, double share) {
    assertThat(le.value()).isCloseTo(value, within(1e-15));
    assertThat(le.standardError() / value).isCloseTo(share, within(1e-8));
    assertThat(Math.log(le.upper95() / value)).isCloseTo(STUDENT * share, within(1e-7));
    assertThat(Math.log(value / le.lower95())).isCloseTo(STUDENT * share, within(1e-7));
  }

  /** A form that is known only in part has no inductance at 1 kHz. */
  @Test
  void formWithoutItsSecondCoilIsNotSettled() {
    found(FittedParameter.LE, 0.5e-3, 0.02);
    findings.put(FittedParameter.L2, new Finding.NotDetermined("too few points"));
    assertThat(findings(List.of(List.of(1.0))).of(BenchFigure.LE))
        .isEqualTo(
            new Finding.NotDetermined("the sweep does not settle the form of the inductance"));
  }

  /**
   * An exact resistance hides the factor of the fit's intervals; 2 stands in for it. What has no
   * correlations counts as independent.
   */
  @Test
  void exactResistanceLeavesTheUsualFactor() {
    found(FittedParameter.RE, 6, 0);
    found(FittedParameter.BL, 10, 0.02);
    found(FittedParameter.MMS, 0.06, 0);
    order.clear();
    Finding.Estimate level = of(findings(List.of()), BenchFigure.LEVEL);
    assertThat(level.standardError()).isCloseTo(0.02 * 20 / Math.log(10), within(1e-7));
    assertThat(level.upper95() - level.value()).isCloseTo(2 * level.standardError(), within(1e-9));
  }
}
