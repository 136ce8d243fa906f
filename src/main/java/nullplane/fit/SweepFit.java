package nullplane.fit;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.driver.CoilInductance;
import nullplane.units.Curve;

/**
 * What sweeps say about a woofer.
 *
 * @param findings a value or a reason for every parameter, except those of the forms of inductance
 *     that were not chosen
 * @param determined the parameters that have a value, in the order of the matrix
 * @param correlations correlation of each pair of them (1)
 * @param form the chosen form of the inductance, as people write it; empty if nothing was fitted
 * @param models every form that was tried
 * @param noise standard deviation of the relative error of the modulus, and of the phase in rad, as
 *     far as the circuit does not explain them (1)
 * @param degreesOfFreedom rows less parameters
 * @param residuals one per sweep
 * @param warnings what a person has to know, one sentence each
 */
public record SweepFit(
    Map<FittedParameter, Finding> findings,
    List<FittedParameter> determined,
    List<List<Double>> correlations,
    String form,
    List<ModelTrial> models,
    double noise,
    int degreesOfFreedom,
    List<ResidualCurve> residuals,
    List<String> warnings) {

  /** Copies the collections. */
  public SweepFit {
    Map<FittedParameter, Finding> copy = new EnumMap<>(FittedParameter.class);
    copy.putAll(findings);
    findings = Collections.unmodifiableMap(copy);
    determined = List.copyOf(determined);
    correlations = correlations.stream().map(List::copyOf).toList();
    models = List.copyOf(models);
    residuals = List.copyOf(residuals);
    warnings = List.copyOf(warnings);
  }

  /**
   * One form of inductance.
   *
   * @param form as people write it
   * @param parameters number of parameters of the whole circuit
   * @param criterion AICc; less is better, and only differences count
   * @param rootMeanSquare distance from the sweeps, root mean square (1)
   */
  public record ModelTrial(String form, int parameters, double criterion, double rootMeanSquare) {}

  /**
   * What is left of a sweep after the fit.
   *
   * @param frequencyHz the points fitted (Hz)
   * @param fittedOhm modulus of the circuit (ohm)
   * @param modulusError logarithm of the modulus measured over the modulus fitted (1); times 100 it
   *     is the error in percent
   * @param phaseErrorRad phase measured less phase fitted (rad); empty without phase
   * @param leftOutHz outlying points that were left out (Hz)
   */
  public record ResidualCurve(
      Curve frequencyHz,
      Curve fittedOhm,
      Curve modulusError,
      Optional<Curve> phaseErrorRad,
      Curve leftOutHz) {}

  /** Returns the estimate of a parameter, if it is determined. */
  public Optional<Finding.Estimate> estimate(FittedParameter parameter) {
    return findings.get(parameter) instanceof Finding.Estimate estimate
        ? Optional.of(estimate)
        : Optional.empty();
  }

  /** Returns the inductance found; empty if a value of it is not determined. */
  public Optional<CoilInductance> coil() {
    Optional<Finding.Estimate> le = estimate(FittedParameter.LE);
    Optional<Finding.Estimate> l2 = estimate(FittedParameter.L2);
    Optional<Finding.Estimate> r2 = estimate(FittedParameter.R2);
    Optional<Finding.Estimate> k = estimate(FittedParameter.K);
    Optional<Finding.Estimate> n = estimate(FittedParameter.N);
    if (k.isPresent() && n.isPresent()) {
      double exponent = n.get().value();
      return Optional.of(new CoilInductance.SemiInductance(k.get().value(), exponent));
    }
    if (le.isEmpty()) {
      return Optional.empty();
    }
    if (!findings.containsKey(FittedParameter.L2)) {
      return Optional.of(new CoilInductance.Plain(le.get().value()));
    }
    return l2.isPresent() && r2.isPresent()
        ? Optional.of(
            new CoilInductance.WithEddyCurrents(
                le.get().value(), l2.get().value(), r2.get().value()))
        : Optional.empty();
  }

  /** Returns the correlation of two parameters (1); empty if one of them is not determined. */
  public OptionalDouble correlation(FittedParameter a, FittedParameter b) {
    int i = determined.indexOf(a);
    int j = determined.indexOf(b);
    return i < 0 || j < 0 ? OptionalDouble.empty() : OptionalDouble.of(correlations.get(i).get(j));
  }
}
