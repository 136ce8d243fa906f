package nullplane.fit;

import static nullplane.fit.WooferFitReference.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import nullplane.driver.CoilInductance;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class WooferFitTest {
  private static final Air AIR = Air.standard();
  private static final double AREA = 0.0531;
  private static final double RADIUS = Math.sqrt(AREA / Math.PI);
  private static final double AIR_KG = Mounting.FREE_AIR.airMassKg(RADIUS, AIR);
  private static final double BAFFLE_KG = Mounting.INFINITE_BAFFLE.airMassKg(RADIUS, AIR);
  private static final Curve AXIS = Curve.logSpaced(6, 10_000, 240);
  private static final Percentage EXACT = withinPercentage(1e-4); // 1e-6

  private static BenchWoofer woofer(DoubleFunction<Complex> coil) {
    return new BenchWoofer(5.6, 0.072, 2900, 2.7, 11.3, coil);
  }

  private static BenchWoofer usual() {
    return woofer(BenchWoofer.lossy(0.5e-3, 0.8e-3, 5));
  }

  private static SweepFit fit(ImpedanceSweep sweep, MassAnchor anchor) {
    return WooferFit.of(FitInput.inFreeAir(sweep, anchor, AREA, AIR));
  }

  private static ImpedanceSweep sweep(Curve axis) {
    return usual().sweep(axis, AIR_KG, 0, 0, new Random(1));
  }

  static Stream<Arguments> coils() {
    return Stream.of(
        Arguments.of(BenchWoofer.plain(0.9e-3), new double[] {0.9e-3, 0, 0, 0, 0}),
        Arguments.of(BenchWoofer.lossy(0.5e-3, 0.8e-3, 5), new double[] {0.5e-3, 0.8e-3, 5, 0, 0}),
        Arguments.of(BenchWoofer.semi(0.02, 0.68), new double[] {0, 0, 0, 0.02, 0.68}));
  }

  /** An exact sweep gives back every parameter within 1e-6, for every form and three anchors. */
  @ParameterizedTest
  @MethodSource("coils")
  void exactSweepsGiveBackTheWoofer(DoubleFunction<Complex> coil, double[] expected) {
    BenchWoofer woofer = woofer(coil);
    ImpedanceSweep free = woofer.sweep(AXIS, AIR_KG, 0, 0, new Random(1));
    ImpedanceSweep heavy = woofer.sweep(AXIS, AIR_KG, 0.04, 0, new Random(1));
    for (MassAnchor anchor :
        new MassAnchor[] {
          new MassAnchor.AddedMass(heavy, AirLoad.freeAir(), 0.04, 0),
          new MassAnchor.BareMass(woofer.bareKg(), 0),
          new MassAnchor.ForceFactor(woofer.bl(), 0)
        }) {
      SweepFit fit = fit(free, anchor);
      assertThat(value(fit, FittedParameter.RE)).isCloseTo(woofer.re(), EXACT);
      assertThat(value(fit, FittedParameter.FS)).isCloseTo(woofer.fs(AIR_KG), EXACT);
      assertThat(value(fit, FittedParameter.QMS)).isCloseTo(woofer.qms(AIR_KG), EXACT);
      assertThat(value(fit, FittedParameter.QES)).isCloseTo(woofer.qes(AIR_KG), EXACT);
      assertThat(value(fit, FittedParameter.BARE_MASS)).isCloseTo(woofer.bareKg(), EXACT);
      assertThat(value(fit, FittedParameter.KMS)).isCloseTo(woofer.kms(), EXACT);
      assertThat(value(fit, FittedParameter.RMS)).isCloseTo(woofer.rms(), EXACT);
      assertThat(value(fit, FittedParameter.BL)).isCloseTo(woofer.bl(), EXACT);
      FittedParameter[] inductance = {
        FittedParameter.LE,
        FittedParameter.L2,
        FittedParameter.R2,
        FittedParameter.K,
        FittedParameter.N
      };
      for (int i = 0; i < expected.length; i++) {
        if (expected[i] > 0) {
          assertThat(value(fit, inductance[i])).isCloseTo(expected[i], EXACT);
        } else {
          assertThat(fit.findings()).doesNotContainKey(inductance[i]);
        }
      }
      assertThat(fit.warnings()).isEmpty();
      CoilInductance found = fit.coil().orElseThrow();
      for (double w : new double[] {600, 6000, 30_000}) {
        assertThat(found.reOhm(w)).isCloseTo(coil.apply(w).getReal(), within(1e-4));
        assertThat(found.imOhm(w)).isCloseTo(coil.apply(w).getImaginary(), EXACT);
      }
    }
  }

  /** The derivatives of the circuit are those of finite differences. */
  @Test
  void derivativesAreThoseOfTheCircuit() {
    SplittableRandom random = new SplittableRandom(5);
    for (CoilForm form : CoilForm.values()) {
      for (MassAnchor anchor :
          new MassAnchor[] {
            new MassAnchor.AddedMass(sweep(AXIS), AirLoad.freeAir(), 0.03, 0),
            new MassAnchor.ForceFactor(9, 0)
          }) {
        FitInput input =
            new FitInput(
                sweep(AXIS),
                new AirLoad.OfMounting(Mounting.INFINITE_BAFFLE),
                anchor,
                AREA,
                0,
                AIR,
                Optional.empty());
        Circuit circuit = FitSetup.of(input, new java.util.ArrayList<>()).circuit(form, 0, 0);
        double[] theta = new double[circuit.parameters()];
        double[] near = {1.7, 5.2, 1.2, 0.1, form == CoilForm.SEMI ? 3 : -7, 0.7, 1.5};
        for (int i = 0; i < theta.length; i++) {
          theta[i] = (i < near.length ? near[i] : 0.5) + 0.1 * random.nextDouble();
        }
        double[][] jacobian = new double[circuit.rows()][theta.length];
        circuit.evaluate(theta, new double[circuit.rows()], jacobian);
        for (int p = 0; p < theta.length; p++) {
          double[] up = theta.clone();
          double[] down = theta.clone();
          up[p] += 1e-5;
          down[p] -= 1e-5;
          double[] after = circuit.residuals(up);
          double[] before = circuit.residuals(down);
          for (int row = 0; row < after.length; row++) {
            double difference = Math.IEEEremainder(after[row] - before[row], 2 * Math.PI) / 2e-5;
            assertThat(jacobian[row][p]).isCloseTo(difference, within(1e-7));
          }
        }
      }
    }
  }

  /** Mounting in a large baffle: the same woofer comes out in free air, if its mass is known. */
  @Test
  void baffleIsTakenOff() {
    ImpedanceSweep sweep = usual().sweep(AXIS, BAFFLE_KG, 0, 0, new Random(1));
    AirLoad load = new AirLoad.OfMounting(Mounting.INFINITE_BAFFLE);
    SweepFit fit =
        WooferFit.of(
            new FitInput(
                sweep, load, new MassAnchor.ForceFactor(11.3, 0), AREA, 0, AIR, Optional.empty()));
    assertThat(value(fit, FittedParameter.FS)).isCloseTo(usual().fs(AIR_KG), EXACT);
    assertThat(value(fit, FittedParameter.QMS)).isCloseTo(usual().qms(AIR_KG), EXACT);
    assertThat(value(fit, FittedParameter.BARE_MASS)).isCloseTo(0.072, EXACT);
    SweepFit without =
        WooferFit.of(
            new FitInput(sweep, load, new MassAnchor.None(), AREA, 0, AIR, Optional.empty()));
    assertThat(reason(without, FittedParameter.FS)).contains("only if the mass is known");
    assertThat(value(without, FittedParameter.RE)).isCloseTo(5.6, EXACT);
  }

  /** The stated uncertainty of an anchor goes into what rests on it, at its power. */
  @Test
  void statedUncertaintyIsCarriedOn() {
    SweepFit byForce = fit(sweep(AXIS), new MassAnchor.ForceFactor(11.3, 0.113));
    assertThat(relativeError(byForce, FittedParameter.BL)).isCloseTo(0.01, within(1e-6));
    assertThat(relativeError(byForce, FittedParameter.MMS)).isCloseTo(0.02, within(1e-6));
    assertThat(byForce.correlation(FittedParameter.BL, FittedParameter.MMS).orElseThrow())
        .isCloseTo(1, within(1e-6));
    assertThat(byForce.correlation(FittedParameter.BL, FittedParameter.CMS).orElseThrow())
        .isCloseTo(-1, within(1e-6));
    assertThat(relativeError(byForce, FittedParameter.FS)).isLessThan(1e-6);
    SweepFit byMass =
        WooferFit.of(
            new FitInput(
                sweep(AXIS),
                AirLoad.freeAir(),
                new MassAnchor.BareMass(0.072, 0),
                AREA,
                0.02 * AREA,
                AIR,
                Optional.empty()));
    // Vas goes with Sd^2/Mms, and the air in Mms with Sd^1.5
    double share = AIR_KG / (0.072 + AIR_KG);
    assertThat(relativeError(byMass, FittedParameter.VAS))
        .isCloseTo(0.02 * (2 - 1.5 * share), within(1e-6));
    assertThat(relativeError(byMass, FittedParameter.MMS))
        .isCloseTo(0.02 * 1.5 * share, within(1e-6));
  }

  @Test
  void whatTheSweepCannotTellIsRefused() {
    SweepFit high = fit(sweep(Curve.logSpaced(80, 10_000, 200)), new MassAnchor.None());
    assertThat(reason(high, FittedParameter.FS)).contains("starts at 80 Hz");
    assertThat(reason(high, FittedParameter.QMS)).contains("starts at 80 Hz");
    SweepFit low = fit(sweep(Curve.logSpaced(5, 20, 60)), new MassAnchor.None());
    assertThat(low.estimate(FittedParameter.QES)).isEmpty();
    SweepFit few = fit(sweep(Curve.logSpaced(6, 10_000, 7)), new MassAnchor.None());
    assertThat(few.determined()).isEmpty();
    assertThat(reason(few, FittedParameter.RE)).contains("7 points");
    SweepFit sparse = fit(sweep(Curve.logSpaced(6, 10_000, 14)), new MassAnchor.None());
    assertThat(reason(sparse, FittedParameter.QMS)).contains("too few points on the resonance");
    SweepFit usual = fit(sweep(AXIS), new MassAnchor.None());
    assertThat(reason(usual, FittedParameter.BL)).contains("mass");
    SweepFit held =
        fit(
            new BenchWoofer(5.6, 0.072, 2900, 2.7, 0.3, BenchWoofer.plain(1e-3))
                .sweep(AXIS, AIR_KG, 0, 0.002, new Random(1)),
            new MassAnchor.None());
    assertThat(reason(held, FittedParameter.FS)).contains("no resonance peak");
    SweepFit shortSweep =
        fit(
            woofer(BenchWoofer.plain(1e-5))
                .sweep(Curve.logSpaced(8, 120, 90), AIR_KG, 0, 0.01, new Random(1)),
            new MassAnchor.None());
    assertThat(reason(shortSweep, FittedParameter.LE)).contains("leave it open");
    assertThat(shortSweep.estimate(FittedParameter.FS)).isPresent();
  }

  /** Without phase the motion is still found, the inductance not. */
  @Test
  void modulusAloneGivesTheResonance() {
    SweepFit fit =
        fit(
            BenchWoofer.withoutPhase(usual().sweep(AXIS, AIR_KG, 0, 0.01, new Random(3))),
            new MassAnchor.None());
    assertThat(value(fit, FittedParameter.FS)).isCloseTo(usual().fs(AIR_KG), withinPercentage(0.5));
    assertThat(value(fit, FittedParameter.QES)).isCloseTo(usual().qes(AIR_KG), withinPercentage(2));
    assertThat(reason(fit, FittedParameter.LE)).contains("no phase");
  }

  @Test
  void hummingPointsAreLeftOutAndTold() {
    ImpedanceSweep clean = usual().sweep(AXIS, AIR_KG, 0, 0.003, new Random(4));
    double[] magnitude = clean.magnitudeOhm().toArray();
    double[] phase = clean.phaseRad().orElseThrow().toArray();
    int hum = 0;
    while (clean.frequencyHz().at(hum) < 50) {
      hum++;
    }
    magnitude[hum] *= 1.4;
    magnitude[hum + 1] *= 0.8;
    phase[200] += 0.3;
    SweepFit fit =
        fit(
            new ImpedanceSweep(
                clean.frequencyHz(), Curve.of(magnitude), Optional.of(Curve.of(phase))),
            new MassAnchor.None());
    assertThat(fit.residuals().get(0).leftOutHz())
        .isEqualTo(
            Curve.of(
                clean.frequencyHz().at(hum),
                clean.frequencyHz().at(hum + 1),
                clean.frequencyHz().at(200)));
    assertThat(fit.warnings()).anyMatch(w -> w.contains("left out"));
    assertThat(value(fit, FittedParameter.QMS))
        .isCloseTo(usual().qms(AIR_KG), withinPercentage(0.5));
    assertThat(fit.noise()).isCloseTo(0.003, within(0.0005));
  }

  /** A coil that no form describes: told, not hidden behind small intervals. */
  @Test
  void patternInTheResidualsIsTold() {
    BenchWoofer odd =
        woofer(
            w ->
                BenchWoofer.lossy(0.2e-3, 0.3e-3, 20)
                    .apply(w)
                    .add(BenchWoofer.lossy(0, 1.5e-3, 0.8).apply(w)));
    ImpedanceSweep sweep = odd.sweep(AXIS, AIR_KG, 0, 0.001, new Random(5));
    assertThat(fit(sweep, new MassAnchor.None()).warnings())
        .anyMatch(w -> w.contains("leaves a pattern"));
    assertThat(
            fit(usual().sweep(AXIS, AIR_KG, 0, 0.001, new Random(5)), new MassAnchor.None())
                .warnings())
        .isEmpty();
  }

  /** Phase three times as noisy as the modulus: each counts by its own noise. */
  @Test
  void modulusAndPhaseCountByTheirOwnNoise() {
    ImpedanceSweep clean = sweep(AXIS);
    int hits = 0;
    double summed = 0;
    for (int draw = 0; draw < 40; draw++) {
      Random random = new Random(new SplittableRandom(draw).nextLong());
      double[] magnitude = clean.magnitudeOhm().toArray();
      double[] phase = clean.phaseRad().orElseThrow().toArray();
      for (int i = 0; i < phase.length; i++) {
        magnitude[i] *= Math.exp(0.003 * random.nextGaussian());
        phase[i] += 0.03 * random.nextGaussian();
      }
      Finding.Estimate re =
          fit(
                  new ImpedanceSweep(
                      clean.frequencyHz(), Curve.of(magnitude), Optional.of(Curve.of(phase))),
                  new MassAnchor.None())
              .estimate(FittedParameter.RE)
              .orElseThrow();
      hits += re.covers(5.6) ? 1 : 0;
      summed += re.standardError();
    }
    // 95 % of 40 is 38, three binomial standard errors are 4
    assertThat(hits).isGreaterThanOrEqualTo(34);
    // equal weights would leave about the noise of the phase
    assertThat(summed / 40).isLessThan(0.5 * 5.6 * 0.03 / Math.sqrt(240));
  }

  @Test
  void bandAndCrowdedPointsAreKept() {
    double[] hz = new double[20_000];
    for (int i = 0; i < hz.length; i++) {
      hz[i] = i + 1;
    }
    FitInput input =
        new FitInput(
            sweep(Curve.of(hz)),
            AirLoad.freeAir(),
            new MassAnchor.None(),
            AREA,
            0,
            AIR,
            Optional.of(new Range(5, 2000)));
    SweepFit fit = WooferFit.of(input);
    assertThat(fit.residuals().get(0).frequencyHz().size()).isBetween(300, 600);
    assertThat(fit.residuals().get(0).frequencyHz().at(0)).isCloseTo(5, within(1e-9));
    assertThat(fit.warnings()).anyMatch(w -> w.contains("per octave"));
    assertThat(value(fit, FittedParameter.FS)).isCloseTo(usual().fs(AIR_KG), EXACT);
  }

  private static double relativeError(SweepFit fit, FittedParameter parameter) {
    Finding.Estimate estimate = fit.estimate(parameter).orElseThrow();
    return estimate.standardError() / estimate.value();
  }

  private static String reason(SweepFit fit, FittedParameter parameter) {
    assertThat(fit.findings().get(parameter)).isInstanceOf(Finding.NotDetermined.class);
    return ((Finding.NotDetermined) fit.findings().get(parameter)).reason();
  }
}
