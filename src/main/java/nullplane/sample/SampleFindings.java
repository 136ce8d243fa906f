package nullplane.sample;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import nullplane.driver.CoilInductance;
import nullplane.fit.Finding;
import nullplane.fit.FittedParameter;
import nullplane.fit.SweepFit;
import nullplane.units.Air;

/**
 * What a fit says about the figures of a brief. Most are the fit's own; the inductance at 1 kHz and
 * the level follow from several, with their uncertainty.
 *
 * <p>Source: JCGM 100:2008, equation 13 (uncertainty of a function of correlated quantities), in
 * the logarithms that the fit's intervals are stated in.
 */
final class SampleFindings {
  private static final double INDUCTANCE_HZ = 1000;
  private static final double DECIBELS_PER_NEPER = 20 / Math.log(10);
  private static final double STEP = 1e-5;

  private final SweepFit fit;
  private final double areaM2;
  private final Air air;
  private final double voltageV;

  /**
   * @param fit the fit
   * @param areaM2 effective area it was made with (m2)
   * @param air the air
   * @param voltageV voltage of the level (V)
   */
  SampleFindings(SweepFit fit, double areaM2, Air air, double voltageV) {
    this.fit = fit;
    this.areaM2 = areaM2;
    this.air = air;
    this.voltageV = voltageV;
  }

  /** Returns the finding of a figure (SI; dB re 20 uPa for the level). */
  Finding of(BenchFigure figure) {
    return switch (figure) {
      case LE -> inductance();
      case LEVEL -> level();
      default -> own(figure.parameter());
    };
  }

  private Finding own(FittedParameter parameter) {
    Finding finding = fit.findings().get(parameter);
    return finding == null ? new Finding.NotDetermined("the fit does not give it") : finding;
  }

  private Finding inductance() {
    Optional<CoilInductance> coil = fit.coil();
    if (coil.isEmpty()) {
      return own(FittedParameter.LE) instanceof Finding.NotDetermined why
          ? why
          : new Finding.NotDetermined("the sweep does not settle the form of the inductance");
    }
    CoilInductance found = coil.orElseThrow();
    if (found instanceof CoilInductance.Plain) {
      return own(FittedParameter.LE);
    }
    boolean eddy = found instanceof CoilInductance.WithEddyCurrents;
    List<FittedParameter> from =
        eddy
            ? List.of(FittedParameter.LE, FittedParameter.L2, FittedParameter.R2)
            : List.of(FittedParameter.K, FittedParameter.N);
    double spread =
        spread(
            from,
            p ->
                Math.log(
                    (eddy
                            ? new CoilInductance.WithEddyCurrents(p[0], p[1], p[2])
                            : new CoilInductance.SemiInductance(p[0], p[1]))
                        .inductanceAt(INDUCTANCE_HZ)));
    double value = found.inductanceAt(INDUCTANCE_HZ);
    double reach = student() * spread;
    return new Finding.Estimate(
        value, value * spread, value * Math.exp(-reach), value * Math.exp(reach));
  }

  private Finding level() {
    List<FittedParameter> from =
        List.of(FittedParameter.BL, FittedParameter.MMS, FittedParameter.RE);
    for (FittedParameter parameter : from) {
      if (own(parameter) instanceof Finding.NotDetermined why) {
        return why;
      }
    }
    double value =
        BenchFigure.levelDb(
            at(from.get(0)) / at(from.get(1)) / at(from.get(2)), areaM2, air, voltageV);
    double spread =
        DECIBELS_PER_NEPER * spread(from, p -> Math.log(p[0]) - Math.log(p[1]) - Math.log(p[2]));
    double reach = student() * spread;
    return new Finding.Estimate(value, spread, value - reach, value + reach);
  }

  private double at(FittedParameter parameter) {
    return fit.estimate(parameter).orElseThrow().value();
  }

  /** Standard uncertainty of a function of fitted parameters. */
  private double spread(List<FittedParameter> from, ToDoubleFunction<double[]> function) {
    int count = from.size();
    double[] slope = new double[count];
    for (int i = 0; i < count; i++) {
      double error = fit.estimate(from.get(i)).orElseThrow().standardError();
      double step = STEP * Math.abs(at(from.get(i)));
      slope[i] =
          error
              * (function.applyAsDouble(shifted(from, i, step))
                  - function.applyAsDouble(shifted(from, i, -step)))
              / (2 * step);
    }
    double variance = 0;
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < count; j++) {
        double correlation = i == j ? 1 : fit.correlation(from.get(i), from.get(j)).orElse(0);
        variance += slope[i] * slope[j] * correlation; // JCGM 100, eq. 13
      }
    }
    return Math.sqrt(Math.max(0, variance));
  }

  private double[] shifted(List<FittedParameter> from, int index, double step) {
    double[] p = from.stream().mapToDouble(this::at).toArray();
    p[index] += step;
    return p;
  }

  /** The factor between standard uncertainty and interval that the fit used. */
  private double student() {
    Optional<Finding.Estimate> re = fit.estimate(FittedParameter.RE);
    if (re.isEmpty() || re.orElseThrow().standardError() == 0) {
      return 2;
    }
    Finding.Estimate found = re.orElseThrow();
    return Math.log(found.upper95() / found.value()) * found.value() / found.standardError();
  }
}
