package nullplane.sample;

import static nullplane.sample.MakerBriefs.AIR;
import static nullplane.sample.MakerBriefs.VOLTAGE_V;
import static nullplane.sample.MakerBriefs.WOOFER;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.driver.Woofer;
import nullplane.network.CoilCatalogue;
import nullplane.network.LowPassBranch;
import nullplane.network.NetworkOffer;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.GradeWeights;
import nullplane.scoring.Listening;
import nullplane.scoring.ScoringAxis;
import nullplane.scoring.StackAcoustics;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Target;
import nullplane.scoring.Wiring;
import nullplane.scoring.WooferBrief;
import nullplane.scoring.WorkshopSpecs;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.apache.commons.math3.complex.Complex;

/**
 * Two stacks whose air is made up in closed form: masses alone, and such a pressure per velocity
 * that the brief's woofer without any network rises by so many decibels per octave. Everything that
 * the stacks do can then be worked out by hand.
 */
final class PlainStacks {
  static final double LOW_HZ = 40;
  static final double PAIR_HZ = 100;
  static final double HIGH_HZ = 200;
  static final double CORRIDOR_DB = 2;
  static final double AMPLIFIER_V = 10;
  static final double LOUDEST_DB = 80;

  /** What the lone woofer rises by, and the pair (dB per octave). */
  static final double SINGLE_RISE = 1;

  static final double PAIR_RISE = -2;

  /** Level of the brief's woofer in the middle of the band (dB), and what is asked for. */
  static final double SINGLE_DB = 76;

  static final double PAIR_DB = 81;
  static final double SINGLE_WANTED_DB = 75;
  static final double PAIR_WANTED_DB = 81.5;

  /** Air on one woofer, and from one woofer to the other (kg). */
  static final double OWN_KG = 0.012;

  static final double MUTUAL_KG = 0.003;

  private static final double RADIUS = WOOFER.radiusM();

  private PlainStacks() {}

  /** A brief with the usual windows that is met in both stacks without a network. */
  static SampleBrief brief() {
    SampleBrief loose = MakerBriefs.brief(true);
    return MakerBriefs.with(
        loose,
        loose.values(),
        List.of(
            new SampleBrief.StackParts("single", new Wiring(1, 1), LowPassBranch.NONE),
            new SampleBrief.StackParts("pair", new Wiring(2, 1), LowPassBranch.NONE)));
  }

  static DesignSpec spec() {
    WooferBrief usual = WorkshopSpecs.brief300();
    return new DesignSpec(
        "two made up stacks",
        new WooferBrief(
            usual.nominalM(),
            2 * RADIUS,
            usual.resonanceHz(),
            usual.totalQ(),
            usual.bareMassKg(),
            new Range(0.004, 0.014),
            5,
            usual.statedInductanceH(),
            150,
            WorkshopSpecs.coil(5.6)),
        List.of(
            WorkshopSpecs.column("single", 0.44, 1.1, RADIUS, SINGLE_WANTED_DB, LOUDEST_DB, -0.25),
            WorkshopSpecs.withCorner(
                WorkshopSpecs.column(
                    "pair", 0.44, 1.5, RADIUS, PAIR_WANTED_DB, LOUDEST_DB, -0.4, 0.4),
                PAIR_HZ)),
        new Listening(3, 1),
        new Target(VOLTAGE_V, LOW_HZ, HIGH_HZ, CORRIDOR_DB),
        new Amplifier(AMPLIFIER_V, 2),
        NetworkOffer.Passive.ofCoils(CoilCatalogue.standard()),
        GradeWeights.STANDARD);
  }

  static BriefStacks stacks() {
    DesignSpec spec = spec();
    ScoringAxis axis = ScoringAxis.of(spec);
    return new BriefStacks(
        new SystemScorer(
            spec,
            axis,
            List.of(
                new StackAcoustics(spec.stacks().get(0), single(axis.frequencyHz())),
                new StackAcoustics(spec.stacks().get(1), pair(axis.frequencyHz()))),
            AIR),
        brief());
  }

  static PanelResponse single(Curve axis) {
    return response(axis, 1, f -> pressurePerVelocity(f, SINGLE_DB, SINGLE_RISE, OWN_KG));
  }

  static PanelResponse pair(Curve axis) {
    return response(
        axis, 2, f -> pressurePerVelocity(f, PAIR_DB, PAIR_RISE, OWN_KG + MUTUAL_KG) / 2);
  }

  private static double pressurePerVelocity(double hz, double level, double rise, double airKg) {
    double octaves = Math.log(hz / Math.sqrt(LOW_HZ * HIGH_HZ)) / Math.log(2);
    double pascal = 20e-6 * Math.pow(10, (level + rise * octaves) / 20);
    return pascal / (VOLTAGE_V * velocityPerVolt(WOOFER, airKg, hz));
  }

  /** u = Bl/((Re + jw Le) z + Bl^2) with z = Rms + j(w M - Kms/w): force balance and Ohm's law. */
  static double velocityPerVolt(Woofer woofer, double airKg, double hz) {
    double w = 2 * Math.PI * hz;
    double mass = woofer.bareMassKg() + airKg;
    Complex z = new Complex(woofer.lossNsPerM(), w * mass - woofer.stiffnessNPerM() / w);
    double bl = woofer.forceFactorTm();
    return new Complex(woofer.resistanceOhm(), w * woofer.inductanceH())
        .multiply(z)
        .add(bl * bl)
        .reciprocal()
        .multiply(bl)
        .abs();
  }

  private static PanelResponse response(Curve axis, int woofers, DoubleUnaryOperator pressure) {
    List<PanelSolution> solutions = new ArrayList<>();
    for (int i = 0; i < axis.size(); i++) {
      double w = 2 * Math.PI * axis.at(i);
      double[] mass = new double[woofers * woofers];
      double[] onPoint = new double[woofers];
      for (int a = 0; a < woofers; a++) {
        onPoint[a] = pressure.applyAsDouble(axis.at(i));
        for (int b = 0; b < woofers; b++) {
          mass[a * woofers + b] = w * (a == b ? OWN_KG : MUTUAL_KG);
        }
      }
      solutions.add(
          new PanelSolution(
              axis.at(i),
              new ComplexMatrix(woofers, woofers, new double[mass.length], mass),
              new ComplexMatrix(1, woofers, onPoint, new double[woofers]),
              new ComplexMatrix(0, woofers, new double[0], new double[0]),
              0));
    }
    return new PanelResponse(axis, solutions);
  }
}
