package nullplane.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import nullplane.units.Curve;
import nullplane.units.FiniteText;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Finds the parameters of a woofer from its impedance: Re, fs, Qms, Qes and the inductance from one
 * sweep; mass, compliance, force factor and volume too, if something fixes the mass.
 *
 * <p>The circuit of {@link Circuit} is fitted to modulus and phase together, by relative error, for
 * each form of inductance; {@link Trial} chooses. With an added mass both sweeps are fitted as one.
 * On a panel, the given radiation impedance is part of the circuit, so that what comes out holds
 * for free air. Intervals are value exp(+-t s) with s the standard error of the logarithm and t
 * Student's at the degrees of freedom; they hold for errors that are independent from point to
 * point, and a warning says when these are not.
 *
 * <p>Valid for small travel, a cone that moves as one, and a suspension without creep.
 */
public final class WooferFit {
  private static final int FEWEST_POINTS = 8;
  private static final int ROUNDS = 6;
  private static final double MOST_LEFT_OUT = 0.1;

  /** A standard error above this share of the value is no determination (1). */
  private static final double WIDEST = 0.2;

  private static final String NO_PHASE =
      "the sweep has no phase, and the modulus alone does not tell the coil's loss from its"
          + " inductance; measure the phase too";
  private static final String NO_MASS =
      "an impedance alone does not fix the mass; add a sweep with a known mass on the cone, or"
          + " state the bare moving mass or Bl";

  private WooferFit() {}

  /**
   * Fits.
   *
   * @param input sweeps and what is stated beside them
   * @return values where the data determine them, reasons where they do not
   */
  public static SweepFit of(FitInput input) {
    List<String> warnings = new ArrayList<>();
    FitSetup all = FitSetup.of(input, warnings);
    for (PreparedSweep sweep : all.sweeps()) {
      if (sweep.size() < FEWEST_POINTS) {
        return nothing(
            FiniteText.of(
                "a sweep has %d points to fit; at least %d are needed, some 24 per octave are good",
                sweep.size(), FEWEST_POINTS),
            warnings);
      }
    }
    FitSetup kept = all;
    List<Trial> trials = Trial.fromScratch(all);
    List<boolean[]> left = all.sweeps().stream().map(s -> new boolean[s.size()]).toList();
    for (int round = 0; round < ROUNDS; round++) {
      List<boolean[]> outlying = outlying(all, Trial.chosen(trials));
      if (same(outlying, left)) {
        break;
      }
      if (tooMany(outlying)) {
        warnings.add(
            "many points stand apart from their neighbours; none is left out, but the measurement"
                + " should be repeated");
        left = all.sweeps().stream().map(s -> new boolean[s.size()]).toList();
        kept = all;
        trials = Trial.again(trials, kept);
        break;
      }
      left = outlying;
      kept = without(all, left);
      trials = Trial.again(trials, kept);
    }
    return report(all, kept, trials, left, warnings);
  }

  private static List<boolean[]> outlying(FitSetup all, Trial chosen) {
    double[] distance = all.circuit(chosen.circuit().coil(), 0, 0).residuals(chosen.theta());
    List<boolean[]> out = new ArrayList<>();
    int row = 0;
    for (PreparedSweep sweep : all.sweeps()) {
      int rows = sweep.hasPhase() ? 2 * sweep.size() : sweep.size();
      out.add(OutlyingPoints.in(Arrays.copyOfRange(distance, row, row + rows), sweep.hasPhase()));
      row += rows;
    }
    return out;
  }

  private static boolean same(List<boolean[]> a, List<boolean[]> b) {
    for (int s = 0; s < a.size(); s++) {
      if (!Arrays.equals(a.get(s), b.get(s))) {
        return false;
      }
    }
    return true;
  }

  private static boolean tooMany(List<boolean[]> outlying) {
    for (boolean[] sweep : outlying) {
      int count = 0;
      for (boolean point : sweep) {
        count += point ? 1 : 0;
      }
      if (count > MOST_LEFT_OUT * sweep.length || sweep.length - count < FEWEST_POINTS) {
        return true;
      }
    }
    return false;
  }

  private static FitSetup without(FitSetup all, List<boolean[]> left) {
    List<PreparedSweep> sweeps = new ArrayList<>();
    for (int s = 0; s < left.size(); s++) {
      boolean[] out = left.get(s);
      sweeps.add(all.sweeps().get(s).keeping(i -> !out[i]));
    }
    return all.withSweeps(sweeps);
  }

  private static SweepFit nothing(String reason, List<String> warnings) {
    Map<FittedParameter, Finding> findings = new EnumMap<>(FittedParameter.class);
    for (FittedParameter parameter : FittedParameter.values()) {
      if (!parameter.ofInductance() || parameter == FittedParameter.LE) {
        findings.put(parameter, new Finding.NotDetermined(reason));
      }
    }
    return new SweepFit(findings, List.of(), List.of(), "", List.of(), 0, 0, List.of(), warnings);
  }

  private static SweepFit report(
      FitSetup all,
      FitSetup kept,
      List<Trial> trials,
      List<boolean[]> left,
      List<String> warnings) {
    Trial best = Trial.chosen(trials).finished().weighted();
    Circuit circuit = best.circuit();
    int freedom = circuit.rows() - circuit.parameters();
    double variance = best.sumOfSquares() / freedom;
    double[] plain = circuit.withWeights(1, 1).residuals(best.theta());
    double noise = Math.sqrt(LeastSquares.sumOfSquares(plain) / freedom);
    List<SweepFit.ResidualCurve> curves = curves(all, kept, plain, left);
    for (SweepFit.ResidualCurve curve : curves) {
      if (curve.leftOutHz().size() > 0) {
        warnings.add(
            "left out because they stand apart from their neighbours: "
                + listed(curve.leftOutHz()));
      }
    }
    if (Determination.hasPattern(curves, noise)) {
      warnings.add(
          FiniteText.of(
              "the circuit leaves a pattern of %.2g %% in the sweep, not noise: the true"
                  + " uncertainties are larger than those stated; look at the residuals, and fit"
                  + " fewer octaves",
              100 * noise));
    }
    DerivedSet derived = new DerivedSet(kept, best, variance);
    String resonance = Determination.resonanceProblem(circuit, best.theta());
    Map<FittedParameter, Finding> findings = new EnumMap<>(FittedParameter.class);
    List<FittedParameter> determined = new ArrayList<>();
    double student = new TDistribution(freedom).inverseCumulativeProbability(0.975);
    for (FittedParameter parameter : FittedParameter.values()) {
      if (parameter.ofInductance() && !circuit.coil().parameters().contains(parameter)) {
        continue;
      }
      String problem = problem(parameter, circuit, resonance);
      Finding finding =
          problem.isEmpty()
              ? estimate(parameter, derived, student)
              : new Finding.NotDetermined(problem);
      findings.put(parameter, finding);
      if (finding instanceof Finding.Estimate) {
        determined.add(parameter);
      }
    }
    return new SweepFit(
        findings,
        determined,
        correlations(derived.covariance(determined)),
        circuit.coil().words(),
        trials.stream().map(WooferFit::told).toList(),
        noise,
        freedom,
        curves,
        warnings);
  }

  private static SweepFit.ModelTrial told(Trial trial) {
    return new SweepFit.ModelTrial(
        trial.circuit().coil().words(),
        trial.circuit().parameters(),
        trial.criterion(),
        Math.sqrt(trial.sumOfSquares() / trial.circuit().rows()));
  }

  private static String problem(FittedParameter parameter, Circuit circuit, String resonance) {
    if (parameter.ofInductance() && !circuit.sweeps().stream().allMatch(PreparedSweep::hasPhase)) {
      return NO_PHASE;
    }
    if (!parameter.needsResonance()) {
      return "";
    }
    if (!resonance.isEmpty()) {
      return resonance;
    }
    boolean noMass = circuit.rule() == Circuit.MassRule.NONE;
    if (noMass && circuit.sweeps().get(0).isLoadedOtherwise()) {
      return "the air of this mounting can be taken off only if the mass is known; add a sweep"
          + " with a known mass on the cone, or state the bare moving mass or Bl";
    }
    return noMass && parameter.needsMass() ? NO_MASS : "";
  }

  private static Finding estimate(FittedParameter parameter, DerivedSet derived, double student) {
    double value = derived.value(parameter);
    if (!Double.isFinite(value)) {
      return new Finding.NotDetermined(
          "the mass comes out smaller than that of the air moved; check the added mass and the"
              + " area");
    }
    double error = Math.sqrt(derived.covariance(List.of(parameter))[0][0]);
    if (derived.isOpen(parameter) || !(error <= WIDEST)) {
      return new Finding.NotDetermined(
          error < 100
              ? FiniteText.of(
                  "the data leave it open: standard error %.0f %%; less noise, more points or a"
                      + " wider sweep would help",
                  100 * error)
              : "the data leave it open; less noise, more points or a wider sweep would help");
    }
    if (parameter == FittedParameter.N) {
      return new Finding.Estimate(value, error, value - student * error, value + student * error);
    }
    double plain = Math.exp(value);
    return new Finding.Estimate(
        plain,
        plain * error,
        plain * Math.exp(-student * error),
        plain * Math.exp(student * error));
  }

  private static List<List<Double>> correlations(double[][] covariance) {
    List<List<Double>> rows = new ArrayList<>();
    for (int i = 0; i < covariance.length; i++) {
      List<Double> row = new ArrayList<>();
      for (int j = 0; j < covariance.length; j++) {
        double scale = Math.sqrt(covariance[i][i] * covariance[j][j]);
        row.add(i == j ? 1.0 : scale > 0 ? covariance[i][j] / scale : 0.0);
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<SweepFit.ResidualCurve> curves(
      FitSetup all, FitSetup kept, double[] distance, List<boolean[]> left) {
    List<SweepFit.ResidualCurve> curves = new ArrayList<>();
    int row = 0;
    for (int s = 0; s < kept.sweeps().size(); s++) {
      PreparedSweep sweep = kept.sweeps().get(s);
      int n = sweep.size();
      double[] frequency = new double[n];
      double[] fitted = new double[n];
      double[] modulus = new double[n];
      double[] phase = new double[n];
      for (int i = 0; i < n; i++) {
        frequency[i] = sweep.frequencyHz(i);
        fitted[i] = Math.exp(sweep.lnMagnitude(i) + distance[row]);
        modulus[i] = -distance[row++];
        if (sweep.hasPhase()) {
          phase[i] = -distance[row++];
        }
      }
      PreparedSweep whole = all.sweeps().get(s);
      boolean[] out = left.get(s);
      double[] leftOut =
          IntStream.range(0, whole.size())
              .filter(i -> out[i])
              .mapToDouble(whole::frequencyHz)
              .toArray();
      curves.add(
          new SweepFit.ResidualCurve(
              Curve.of(frequency),
              Curve.of(fitted),
              Curve.of(modulus),
              sweep.hasPhase() ? Optional.of(Curve.of(phase)) : Optional.empty(),
              Curve.of(leftOut)));
    }
    return curves;
  }

  private static String listed(Curve frequencyHz) {
    StringBuilder text = new StringBuilder();
    int shown = Math.min(6, frequencyHz.size());
    for (int i = 0; i < shown; i++) {
      text.append(i == 0 ? "" : ", ");
      text.append(PlainHertz.of(frequencyHz.at(i)));
    }
    int more = frequencyHz.size() - shown;
    return more > 0 ? text + " and " + more + " more" : text.toString();
  }
}
