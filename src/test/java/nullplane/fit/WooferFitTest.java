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

  /** Air with a loss that goes with w^2 and a mass: what a small dipole meets. */
  private static RadiationCurve lossyAir() {
    Curve hz = Curve.logSpaced(6, 10_000, 50);
    double[] re = new double[50];
    double[] im = new double[50];
    for (int i = 0; i < 50; i++) {
      re[i] = lossyAirAt(hz.at(i)).getReal();
      im[i] = lossyAirAt(hz.at(i)).getImaginary();
    }
    return new RadiationCurve(hz, Curve.of(re), Curve.of(im));
  }

  private static Complex lossyAirAt(double hz) {
    double w = 2 * Math.PI * hz;
    return new Complex(4e-5 * w * w, 0.011 * w);
  }

  /** A panel's air resists as well as weighs: both come off, by every anchor. */
  @Test
  void airThatResistsIsTakenOff() {
    DoubleFunction<Complex> air = WooferFitTest::lossyAirAt;
    ImpedanceSweep sweep = usual().sweep(AXIS, air, 0, 0, new Random(1));
    ImpedanceSweep heavy = usual().sweep(AXIS, air, 0.04, 0, new Random(1));
    for (MassAnchor anchor :
        new MassAnchor[] {
          new MassAnchor.AddedMass(heavy, lossyAir(), 0.04, 0),
          new MassAnchor.BareMass(0.072, 0),
          new MassAnchor.ForceFactor(11.3, 0)
        }) {
      SweepFit fit =
          WooferFit.of(new FitInput(sweep, lossyAir(), anchor, AREA, 0, AIR, Optional.empty()));
      assertThat(value(fit, FittedParameter.FS)).isCloseTo(usual().fs(AIR_KG), EXACT);
      assertThat(value(fit, FittedParameter.QMS)).isCloseTo(usual().qms(AIR_KG), EXACT);
      assertThat(value(fit, FittedParameter.BARE_MASS)).isCloseTo(0.072, EXACT);
      assertThat(value(fit, FittedParameter.RMS)).isCloseTo(2.7, EXACT);
    }
  }

  /** The derivatives of the circuit are those of finite differences. */
  @Test
  void derivativesAreThoseOfTheCircuit() {
    SplittableRandom random = new SplittableRandom(5);
    for (CoilForm form : CoilForm.values()) {
      for (MassAnchor anchor :
          new MassAnchor[] {
            new MassAnchor.None(),
            new MassAnchor.BareMass(0.07, 0),
            new MassAnchor.AddedMass(sweep(AXIS), lossyAir(), 0.03, 0),
            new MassAnchor.ForceFactor(9, 0)
          }) {
        FitInput input =
            new FitInput(sweep(AXIS), lossyAir(), anchor, AREA, 0, AIR, Optional.empty());
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

  /**
   * In a baffle of air mass B, with A that of free air: by a stated bare mass m fs goes with
   * sqrt((m + B)/(m + A)), by a stated Bl the mass of everything that moves goes with Bl^2, and by
   * an added mass with that mass.
   */
  @Test
  void statedUncertaintyIsCarriedOnThroughTheAirTakenOff() {
    double whole = 0.072 + BAFFLE_KG;
    double free = 0.072 + AIR_KG;
    SweepFit byMass = inBaffle(new MassAnchor.BareMass(0.072, 0.0072), 0);
    assertThat(relativeError(byMass, FittedParameter.BARE_MASS)).isCloseTo(0.1, within(1e-5));
    assertThat(relativeError(byMass, FittedParameter.MMS))
        .isCloseTo(0.1 * 0.072 / free, within(1e-5));
    assertThat(relativeError(byMass, FittedParameter.FS))
        .isCloseTo(0.05 * (0.072 / free - 0.072 / whole), within(1e-5));
    assertThat(relativeError(byMass, FittedParameter.KMS))
        .isCloseTo(0.1 * 0.072 / whole, within(1e-5));
    SweepFit byForce = inBaffle(new MassAnchor.ForceFactor(11.3, 0.113), 0);
    assertThat(relativeError(byForce, FittedParameter.BARE_MASS))
        .isCloseTo(0.02 * whole / 0.072, within(1e-5));
    assertThat(relativeError(byForce, FittedParameter.MMS))
        .isCloseTo(0.02 * whole / free, within(1e-5));
    assertThat(relativeError(byForce, FittedParameter.FS))
        .isCloseTo(0.01 * (whole / free - 1), within(1e-5));
    assertThat(relativeError(byForce, FittedParameter.KMS)).isCloseTo(0.02, within(1e-5));
    ImpedanceSweep heavy = usual().sweep(AXIS, BAFFLE_KG, 0.04, 0, new Random(1));
    SweepFit byAdded =
        inBaffle(
            new MassAnchor.AddedMass(
                heavy, new AirLoad.OfMounting(Mounting.INFINITE_BAFFLE), 0.04, 0.0004),
            0);
    assertThat(relativeError(byAdded, FittedParameter.BARE_MASS))
        .isCloseTo(0.01 * whole / 0.072, within(1e-5));
    assertThat(relativeError(byAdded, FittedParameter.KMS)).isCloseTo(0.01, within(1e-5));
    assertThat(relativeError(byAdded, FittedParameter.BL)).isCloseTo(0.005, within(1e-5));
    // both masses of air go with Sd^1.5
    SweepFit byArea = inBaffle(new MassAnchor.BareMass(0.072, 0), 0.02 * AREA);
    assertThat(relativeError(byArea, FittedParameter.FS))
        .isCloseTo(0.02 * 0.75 * (BAFFLE_KG / whole - AIR_KG / free), within(1e-5));
    assertThat(relativeError(byArea, FittedParameter.BARE_MASS)).isLessThan(1e-6);
  }

  private static SweepFit inBaffle(MassAnchor anchor, double areaError) {
    return WooferFit.of(
        new FitInput(
            usual().sweep(AXIS, BAFFLE_KG, 0, 0, new Random(1)),
            new AirLoad.OfMounting(Mounting.INFINITE_BAFFLE),
            anchor,
            AREA,
            areaError,
            AIR,
            Optional.empty()));
  }

  /** Student's t at 0.975 and 10 degrees of freedom is 2.228 (any table of it). */
  @Test
  void intervalsAreStudents() {
    BenchWoofer plain = woofer(BenchWoofer.plain(0.9e-3));
    // 15 moduli less Re, fs, Qms, Qes and Le
    SweepFit fit =
        fit(
            BenchWoofer.withoutPhase(
                plain.sweep(Curve.logSpaced(12, 300, 15), AIR_KG, 0, 0.002, new Random(2))),
            new MassAnchor.None());
    assertThat(fit.degreesOfFreedom()).isEqualTo(10);
    Finding.Estimate re = fit.estimate(FittedParameter.RE).orElseThrow();
    double relative = re.standardError() / re.value();
    assertThat(Math.log(re.upper95() / re.value()) / relative).isCloseTo(2.228, within(5e-4));
    assertThat(Math.log(re.value() / re.lower95()) / relative).isCloseTo(2.228, within(5e-4));
    assertThat(re.covers(re.upper95() * 1.001)).isFalse();
    assertThat(re.covers(re.lower95() * 0.999)).isFalse();
    assertThat(re.covers(re.lower95() * 1.0001)).isTrue();
    // the exponent has its interval as a number: many degrees of freedom, 1.96
    Finding.Estimate n =
        fit(
                woofer(BenchWoofer.semi(0.02, 0.68)).sweep(AXIS, AIR_KG, 0, 0.002, new Random(2)),
                new MassAnchor.None())
            .estimate(FittedParameter.N)
            .orElseThrow();
    assertThat((n.upper95() - n.value()) / n.standardError()).isCloseTo(1.965, within(2e-3));
    assertThat((n.value() - n.lower95()) / n.standardError()).isCloseTo(1.965, within(2e-3));
  }

  /** Measured over fitted, and measured less fitted (by definition of the residuals). */
  @Test
  void residualsAreWhatWasMeasuredLessWhatIsFitted() {
    ImpedanceSweep clean = usual().sweep(AXIS, AIR_KG, 0, 0.01, new Random(4));
    double[] magnitude = clean.magnitudeOhm().toArray();
    double[] phase = clean.phaseRad().orElseThrow().toArray();
    Complex at =
        usual().impedance(AXIS.at(150), new Complex(0, 2 * Math.PI * AXIS.at(150) * AIR_KG), 0);
    magnitude[150] = 1.03 * at.abs();
    phase[150] = at.getArgument() + 0.04;
    SweepFit fit =
        fit(
            new ImpedanceSweep(AXIS, Curve.of(magnitude), Optional.of(Curve.of(phase))),
            new MassAnchor.None());
    SweepFit.ResidualCurve left = fit.residuals().get(0);
    assertThat(left.leftOutHz().size()).isZero();
    assertThat(left.fittedOhm().at(150)).isCloseTo(at.abs(), withinPercentage(0.5));
    assertThat(left.modulusError().at(150)).isCloseTo(Math.log(1.03), within(0.005));
    assertThat(left.phaseErrorRad().orElseThrow().at(150)).isCloseTo(0.04, within(0.005));
    for (int i = 0; i < AXIS.size(); i++) {
      assertThat(left.fittedOhm().at(i) * Math.exp(left.modulusError().at(i)))
          .isCloseTo(magnitude[i], withinPercentage(1e-9));
    }
    // noise of 1 % in either part: so far is each form that can follow from each row
    SweepFit.ModelTrial lossy =
        fit.models().stream().filter(m -> m.form().equals(fit.form())).findFirst().orElseThrow();
    assertThat(lossy.rootMeanSquare()).isCloseTo(0.01, within(0.001));
    assertThat(fit.noise()).isCloseTo(0.01, within(0.001));
    assertThat(
            fit(BenchWoofer.withoutPhase(clean), new MassAnchor.None())
                .residuals()
                .get(0)
                .phaseErrorRad())
        .isEmpty();
  }

  /**
   * AICc = n ln(RSS/n) + 2k + 2k(k+1)/(n-k-1), the noise counted in k (Burnham and Anderson 2002,
   * sec. 2.4), worked for 30 moduli, 6 in k and an rms distance of 1 %: -264.3 + 3.65.
   */
  @Test
  void theCriterionIsThatOfTheSource() {
    SweepFit fit =
        fit(
            BenchWoofer.withoutPhase(
                woofer(BenchWoofer.plain(0.9e-3))
                    .sweep(Curve.logSpaced(8, 500, 30), AIR_KG, 0, 0.01, new Random(8))),
            new MassAnchor.None());
    SweepFit.ModelTrial plain = fit.models().get(0);
    assertThat(plain.parameters()).isEqualTo(5);
    double shifted = 60 * Math.log(plain.rootMeanSquare() / 0.01);
    assertThat(plain.criterion() - shifted).isCloseTo(-276.310 + 12 + 84.0 / 23, within(1e-3));
  }

  /** A difference of angles goes the shorter way round. */
  @Test
  void phasesAreComparedTheShorterWay() {
    for (double sign : new double[] {1, -1}) {
      ImpedanceSweep back =
          new ImpedanceSweep(
              Curve.of(2000, 3000),
              Curve.of(20, 30),
              Optional.of(Curve.of(sign * 3.0, sign * 3.0)));
      FitInput input = FitInput.inFreeAir(back, new MassAnchor.None(), AREA, AIR);
      // a coil turned round: Z near -j w Le at a phase of -1.2 against 3
      Circuit circuit =
          FitSetup.of(input, new java.util.ArrayList<>()).circuit(CoilForm.SEMI, 0, 0);
      double[] theta = {Math.log(5), Math.log(200), 1, 0, Math.log(10), -sign * 0.9};
      double[] residual = circuit.residuals(theta);
      assertThat(Math.abs(residual[1])).isLessThan(Math.PI);
      assertThat(Math.abs(residual[3])).isLessThan(Math.PI);
      double turned = residual[1] + sign * 3.0;
      // the circuit's own phase lies a whole turn away
      assertThat(Math.abs(turned)).isGreaterThan(Math.PI);
    }
  }

  @Test
  void manyPointsApartAreKeptAndTold() {
    ImpedanceSweep clean = usual().sweep(AXIS, AIR_KG, 0, 0.003, new Random(4));
    double[] magnitude = clean.magnitudeOhm().toArray();
    for (int i = 4; i < 44; i += 5) {
      magnitude[i] *= 1.3;
    }
    SweepFit some =
        fit(new ImpedanceSweep(AXIS, Curve.of(magnitude), clean.phaseRad()), new MassAnchor.None());
    assertThat(some.residuals().get(0).leftOutHz().size()).isEqualTo(8);
    assertThat(some.warnings()).anyMatch(w -> w.endsWith("Hz and 2 more"));
    for (int i = 44; i < 230; i += 5) {
      magnitude[i] *= 1.3;
    }
    SweepFit many =
        fit(new ImpedanceSweep(AXIS, Curve.of(magnitude), clean.phaseRad()), new MassAnchor.None());
    assertThat(many.residuals().get(0).leftOutHz().size()).isZero();
    assertThat(many.warnings()).anyMatch(w -> w.startsWith("many points stand apart"));
  }

  @Test
  void aSweepThatEndsBeforeTheResonanceIsRefused() {
    SweepFit low = fit(sweep(Curve.logSpaced(8, 31, 60)), new MassAnchor.None());
    assertThat(reason(low, FittedParameter.FS)).contains("ends at 31 Hz");
    SweepFit enough = fit(sweep(Curve.logSpaced(8, 45, 60)), new MassAnchor.None());
    assertThat(enough.correlation(FittedParameter.FS, FittedParameter.BL)).isEmpty();
    assertThat(value(enough, FittedParameter.FS)).isCloseTo(usual().fs(AIR_KG), EXACT);
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
