package nullplane.fit;

import static nullplane.fit.WooferFitReference.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A woofer measured on a panel beside another one of its kind, with the whole coupling of the
 * stack: what comes out is the woofer in free air, within 0.5 %.
 */
class PanelSweepTest {
  private static final Air AIR = Air.standard();
  private static final double RADIUS = 0.13;
  private static final double AREA = Math.PI * RADIUS * RADIUS;
  private static final double AIR_KG = Mounting.FREE_AIR.airMassKg(RADIUS, AIR);
  private static final Percentage ALLOWED = withinPercentage(0.5);
  private static final BenchWoofer WOOFER =
      new BenchWoofer(5.6, 0.072, 2900, 2.7, 11.3, BenchWoofer.plain(0.9e-3));
  private static PanelResponse fine;
  private static PanelResponse coarse;

  @BeforeAll
  static void solve() {
    PanelSolver solver =
        new PanelSolver(
            Panel.overFloor(0.42, 0.9, 0.04),
            List.of(new Piston(0, -0.22, RADIUS), new Piston(0, 0.2, RADIUS)),
            AIR);
    DoubleFunction<PanelSolution> at = solver.upTo(700, List.of(), List.of());
    Curve axis = Curve.logSpaced(7, 700, 97);
    List<PanelSolution> all = new ArrayList<>();
    List<PanelSolution> some = new ArrayList<>();
    double[] hz = new double[13];
    for (int i = 0; i < axis.size(); i++) {
      all.add(at.apply(axis.at(i)));
      if (i % 8 == 0) {
        hz[i / 8] = axis.at(i);
        some.add(all.get(i));
      }
    }
    fine = new PanelResponse(axis, all);
    coarse = new PanelResponse(Curve.of(hz), some);
  }

  /** The impedance of woofer 0 while woofer 1 hangs open: both force balances, by Cramer's rule. */
  private static ImpedanceSweep sweepBesideOpenWoofer(double addedKg, double noise) {
    DoubleFunction<Complex> air =
        f -> {
          int i = 0;
          while (Math.abs(fine.frequencyHz().at(i) - f) > 1e-9 * f) {
            i++;
          }
          Complex z00 = entry(i, 0, 0);
          Complex z01 = entry(i, 0, 1);
          Complex z11 = entry(i, 1, 1);
          double w = 2 * Math.PI * f;
          Complex other =
              new Complex(WOOFER.rms(), w * WOOFER.bareKg() - WOOFER.kms() / w).add(z11);
          // F0 = z00 u0 + z01 u1, 0 = z01 u0 + (z + z11) u1
          return z00.multiply(other).subtract(z01.multiply(z01)).divide(other);
        };
    return WOOFER.sweep(fine.frequencyHz(), air, addedKg, noise, new Random(6));
  }

  private static Complex entry(int point, int row, int column) {
    PanelSolution solution = fine.solutions().get(point);
    return new Complex(solution.impedance().re(row, column), solution.impedance().im(row, column));
  }

  private static SweepFit fit(RadiationCurve load, MassAnchor anchor, ImpedanceSweep sweep) {
    return WooferFit.of(new FitInput(sweep, load, anchor, AREA, 0, AIR, Optional.empty()));
  }

  private static void assertFreeAir(SweepFit fit) {
    assertThat(value(fit, FittedParameter.RE)).isCloseTo(WOOFER.re(), ALLOWED);
    assertThat(value(fit, FittedParameter.FS)).isCloseTo(WOOFER.fs(AIR_KG), ALLOWED);
    assertThat(value(fit, FittedParameter.QMS)).isCloseTo(WOOFER.qms(AIR_KG), ALLOWED);
    assertThat(value(fit, FittedParameter.QES)).isCloseTo(WOOFER.qes(AIR_KG), ALLOWED);
    assertThat(value(fit, FittedParameter.BARE_MASS)).isCloseTo(WOOFER.bareKg(), ALLOWED);
    assertThat(value(fit, FittedParameter.KMS)).isCloseTo(WOOFER.kms(), ALLOWED);
    assertThat(value(fit, FittedParameter.BL)).isCloseTo(WOOFER.bl(), ALLOWED);
  }

  /** The caller's way: first as if the other were absent, then again with it as just found. */
  @Test
  void sweepBesideAnOpenWooferGivesFreeAir() {
    ImpedanceSweep sweep = sweepBesideOpenWoofer(0, 0);
    MassAnchor anchor = new MassAnchor.BareMass(WOOFER.bareKg(), 0);
    SweepFit fit = fit(RadiationCurve.ofPanel(coarse, 0), anchor, sweep);
    for (int round = 0; round < 2; round++) {
      fit = fit(RadiationCurve.withOpenWoofers(coarse, 0, woofer(fit)), anchor, sweep);
    }
    assertFreeAir(fit);
    // without the panel's air taken off, the resonance is another
    SweepFit asIfFree = WooferFit.of(FitInput.inFreeAir(sweep, new MassAnchor.None(), AREA, AIR));
    assertThat(value(asIfFree, FittedParameter.FS)).isLessThan(0.985 * WOOFER.fs(AIR_KG));
  }

  @Test
  void addedMassOnThePanelGivesFreeAirAndMass() {
    RadiationCurve load = RadiationCurve.withOpenWoofers(coarse, 0, woofer());
    SweepFit fit =
        fit(
            load,
            new MassAnchor.AddedMass(sweepBesideOpenWoofer(0.04, 0), load, 0.04, 0),
            sweepBesideOpenWoofer(0, 0));
    assertFreeAir(fit);
  }

  @Test
  void pointsAboveTheCurveAreLeftOutAndTold() {
    Curve low = Curve.of(10, 20, 40, 80, 160);
    RadiationCurve load =
        new RadiationCurve(low, Curve.of(0, 0, 0, 0, 0), Curve.of(0.8, 1.6, 3.2, 6.4, 12.8));
    SweepFit fit = fit(load, new MassAnchor.ForceFactor(11.3, 0), sweepBesideOpenWoofer(0, 0));
    assertThat(fit.warnings()).anyMatch(w -> w.contains("points above 160 Hz are left out"));
    // below the curve the air stays a mass, and no point is lost
    assertThat(fit.residuals().get(0).frequencyHz().at(0)).isLessThan(8);
  }

  private static Woofer woofer() {
    return named(WOOFER.re(), WOOFER.bareKg(), WOOFER.kms(), WOOFER.rms(), WOOFER.bl());
  }

  private static Woofer woofer(SweepFit fit) {
    return named(
        value(fit, FittedParameter.RE),
        value(fit, FittedParameter.BARE_MASS),
        value(fit, FittedParameter.KMS),
        value(fit, FittedParameter.RMS),
        value(fit, FittedParameter.BL));
  }

  private static Woofer named(double re, double bare, double kms, double rms, double bl) {
    return new Woofer("sample", 0.3, AREA, re, 0, bare, kms, rms, bl, 0.008, 100);
  }
}
