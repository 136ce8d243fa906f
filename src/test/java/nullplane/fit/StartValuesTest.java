package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/**
 * Starts against the woofer that made the sweep. The three-point method is exact for a coil without
 * inductance (Small 1972), so there a start is as good as the points are dense.
 */
class StartValuesTest {
  private static final Air AIR = Air.standard();
  private static final double AREA = 0.0531;
  private static final double AIR_KG = Mounting.FREE_AIR.airMassKg(Math.sqrt(AREA / Math.PI), AIR);
  private static final DoubleFunction<Complex> NO_COIL = BenchWoofer.plain(1e-7);

  private static BenchWoofer woofer(DoubleFunction<Complex> coil) {
    return new BenchWoofer(5.6, 0.072, 2900, 2.7, 11.3, coil);
  }

  private static ImpedanceSweep sweep(BenchWoofer woofer, Curve axis, double addedKg) {
    return woofer.sweep(axis, AIR_KG, addedKg, 0, new Random(1));
  }

  private static List<double[]> starts(ImpedanceSweep sweep, MassAnchor anchor, CoilForm form) {
    FitSetup setup = FitSetup.of(FitInput.inFreeAir(sweep, anchor, AREA, AIR), new ArrayList<>());
    return StartValues.of(setup.circuit(form, 0, 0), setup.addedMassKg());
  }

  private static double[] start(ImpedanceSweep sweep, CoilForm form) {
    return starts(sweep, new MassAnchor.None(), form).get(0);
  }

  private static void isNear(double[] start, BenchWoofer woofer, double percent) {
    assertThat(Math.exp(start[Circuit.LN_RE])).isCloseTo(woofer.re(), withinPercentage(4));
    // points are kept no closer than 1/96 octave, 0.72 %; the running median blurs by one of them
    assertThat(Math.exp(start[Circuit.LN_W0]) / (2 * Math.PI))
        .isCloseTo(woofer.fs(AIR_KG), withinPercentage(1.45));
    assertThat(Math.exp(start[Circuit.LN_QMS]))
        .isCloseTo(woofer.qms(AIR_KG), withinPercentage(percent));
    assertThat(Math.exp(start[Circuit.LN_QES]))
        .isCloseTo(woofer.qes(AIR_KG), withinPercentage(percent));
  }

  @Test
  void withoutInductanceTheThreePointsGiveTheMotion() {
    BenchWoofer woofer = woofer(NO_COIL);
    isNear(start(sweep(woofer, Curve.logSpaced(4, 400, 1200), 0), CoilForm.PLAIN), woofer, 6);
  }

  /** f1 f2 = fs^2 (Small 1972): where a sweep ends on the peak's flank, the other flank tells. */
  @Test
  void oneFlankIsEnough() {
    BenchWoofer woofer = woofer(NO_COIL);
    double fs = woofer.fs(AIR_KG);
    // f2 - f1 = fs sqrt(r0)/Qms, so f1 = 23 Hz and f2 = 40 Hz here
    double width = Math.sqrt(1 + woofer.qms(AIR_KG) / woofer.qes(AIR_KG)) / woofer.qms(AIR_KG);
    double lower = fs * (Math.sqrt(1 + width * width / 4) - width / 2);
    double upper = fs * fs / lower;
    Curve above = Curve.logSpaced(1.05 * lower, 400, 1200);
    isNear(start(sweep(woofer, above, 0), CoilForm.PLAIN), woofer, 6);
    Curve below = Curve.logSpaced(4, 0.95 * upper, 1200);
    isNear(start(sweep(woofer, below, 0), CoilForm.PLAIN), woofer, 12);
  }

  /** A second, smaller peak from the panel beside that of the cone: the likelier one is first. */
  @Test
  void theLikeliestPeakIsFirst() {
    BenchWoofer woofer = woofer(NO_COIL);
    Curve axis = Curve.logSpaced(4, 400, 600);
    double[] magnitude = sweep(woofer, axis, 0).magnitudeOhm().toArray();
    for (int i = 0; i < magnitude.length; i++) {
      double away = Math.log(axis.at(i) / 9) / 0.05;
      magnitude[i] *= 1 + 0.5 * Math.exp(-away * away);
    }
    ImpedanceSweep two = new ImpedanceSweep(axis, Curve.of(magnitude), Optional.empty());
    List<double[]> starts = starts(two, new MassAnchor.None(), CoilForm.PLAIN);
    assertThat(starts).hasSize(2);
    assertThat(Math.exp(starts.get(0)[Circuit.LN_W0]) / (2 * Math.PI))
        .isCloseTo(woofer.fs(AIR_KG), withinPercentage(1.45));
    assertThat(Math.exp(starts.get(1)[Circuit.LN_W0]) / (2 * Math.PI))
        .isCloseTo(9, withinPercentage(3));
  }

  @Test
  void aRiseThatIsNoPeakIsNotOne() {
    Curve axis = Curve.logSpaced(4, 400, 600);
    double[] magnitude = new double[600];
    for (int i = 0; i < magnitude.length; i++) {
      double away = Math.log(axis.at(i) / 30) / 0.1;
      magnitude[i] = 6 * (1 + 0.04 * Math.exp(-away * away));
    }
    ImpedanceSweep flat = new ImpedanceSweep(axis, Curve.of(magnitude), Optional.empty());
    assertThat(Math.exp(start(flat, CoilForm.PLAIN)[Circuit.LN_W0]) / (2 * Math.PI))
        .isCloseTo(0.8 * 4, withinPercentage(1e-6));
  }

  /** m/((fs/fs')^2 - 1), IEC 60268-5, from the two peaks. */
  @Test
  void theMassFollowsFromTheLoweredResonance() {
    BenchWoofer woofer = woofer(NO_COIL);
    Curve axis = Curve.logSpaced(4, 400, 1200);
    double[] start =
        starts(
                sweep(woofer, axis, 0),
                new MassAnchor.AddedMass(sweep(woofer, axis, 0.04), AirLoad.freeAir(), 0.04, 0),
                CoilForm.PLAIN)
            .get(0);
    assertThat(Math.exp(start[Circuit.COIL + 1])).isCloseTo(0.072 + AIR_KG, withinPercentage(5));
    assertThat(Math.exp(start[start.length - 1])).isCloseTo(5.6, withinPercentage(4));
    // a mass that lowers nothing: three of it, so that the search has somewhere to go
    double[] lost =
        starts(
                sweep(woofer, axis, 0),
                new MassAnchor.AddedMass(sweep(woofer, axis, 0), AirLoad.freeAir(), 0.04, 0),
                CoilForm.PLAIN)
            .get(0);
    assertThat(Math.exp(lost[Circuit.COIL + 1])).isCloseTo(0.12, withinPercentage(1e-9));
  }

  /** The reactance of the last point is w Le of a plain coil (circuit theory). */
  @Test
  void theInductanceIsThatOfTheLastPoint() {
    Curve axis = Curve.logSpaced(4, 10_000, 300);
    ImpedanceSweep sweep = sweep(woofer(BenchWoofer.plain(0.9e-3)), axis, 0);
    assertThat(Math.exp(start(sweep, CoilForm.PLAIN)[Circuit.COIL]))
        .isCloseTo(0.9e-3, withinPercentage(1));
    assertThat(Math.exp(start(BenchWoofer.withoutPhase(sweep), CoilForm.PLAIN)[Circuit.COIL]))
        .isCloseTo(0.9e-3, withinPercentage(1));
  }

  /** |K (jw)^n| at the reference, 0.3 of the last frequency, and n from two points. */
  @Test
  void theExponentIsThatOfTheRise() {
    Curve axis = Curve.logSpaced(4, 20_000, 300);
    double[] start = start(sweep(woofer(BenchWoofer.semi(0.04, 0.68)), axis, 0), CoilForm.SEMI);
    assertThat(start[Circuit.COIL + 1]).isCloseTo(0.68, within(0.08));
    double reference = 0.3 * 2 * Math.PI * 20_000;
    assertThat(Math.exp(start[Circuit.COIL]))
        .isCloseTo(0.04 * Math.pow(reference, 0.68), withinPercentage(20));
  }

  /** The lossy form is tried with three corners, at 0.15, 0.4 and 1 of the last frequency. */
  @Test
  void theLossyFormHasThreeCorners() {
    Curve axis = Curve.logSpaced(4, 10_000, 300);
    List<double[]> starts =
        starts(
            sweep(woofer(BenchWoofer.lossy(0.5e-3, 0.8e-3, 5)), axis, 0),
            new MassAnchor.None(),
            CoilForm.LOSSY);
    assertThat(starts).hasSize(3);
    double last = 2 * Math.PI * 10_000;
    double[] shares = {0.15, 0.4, 1};
    for (int i = 0; i < 3; i++) {
      double corner = Math.exp(starts.get(i)[Circuit.COIL + 2] - starts.get(i)[Circuit.COIL + 1]);
      assertThat(corner).isCloseTo(shares[i] * last, withinPercentage(1e-6));
      // both inductances above nothing and together no more than twice all there is
      double sum =
          Math.exp(starts.get(i)[Circuit.COIL]) + Math.exp(starts.get(i)[Circuit.COIL + 1]);
      assertThat(sum).isBetween(0.4e-3, 2.6e-3);
    }
  }
}
