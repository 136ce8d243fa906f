package nullplane.network;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * Filter before the amplifier, for a stack with an amplifier of its own: gain, low-pass and one
 * correction. It adds no delay beyond the phase of its filters, and the stack does not load it.
 *
 * @param gain gain (1), above 0
 * @param lowPass the low-pass, if there is one
 * @param correction the correction, if there is one
 */
public record ActiveBranch(
    double gain, Optional<CrossoverFilter> lowPass, Optional<Correction> correction)
    implements StackNetwork {
  /** The filter that does nothing. */
  public static final ActiveBranch NONE = new ActiveBranch(1, Optional.empty(), Optional.empty());

  /** Checks the gain. */
  public ActiveBranch {
    Checks.positive(gain, "gain", "(1)");
  }

  @Override
  public boolean none() {
    return gain == 1 && lowPass.isEmpty() && correction.isEmpty();
  }

  @Override
  public List<PlacedPart> parts() {
    return List.of();
  }

  @Override
  public int partCount() {
    return (lowPass.isPresent() ? 1 : 0) + (correction.isPresent() ? 1 : 0);
  }

  @Override
  public double copperKg() {
    return 0;
  }

  @Override
  public double capacitanceF() {
    return 0;
  }

  @Override
  public SeriesCoil seriesCoil() {
    return SeriesCoil.NONE;
  }

  @Override
  public double seriesResistanceOhm() {
    return 0;
  }

  @Override
  public ActiveRows rows(Curve frequencyHz) {
    frequencyHz.stream().forEach(f -> Checks.positive(f, "frequency", "Hz"));
    return new ActiveRows(response(frequencyHz));
  }

  /**
   * Returns output over input (1).
   *
   * @param frequencyHz frequencies (Hz)
   */
  public ComplexCurve response(Curve frequencyHz) {
    double[] re = new double[frequencyHz.size()];
    double[] im = new double[frequencyHz.size()];
    Arrays.fill(re, gain);
    lowPass.ifPresent(filter -> multiply(filter.lowPass(frequencyHz), re, im));
    correction.ifPresent(c -> multiply(c.response(frequencyHz), re, im));
    return ComplexCurve.of(re, im);
  }

  private static void multiply(ComplexCurve factor, double[] re, double[] im) {
    for (int f = 0; f < re.length; f++) {
      double old = re[f];
      re[f] = old * factor.re().at(f) - im[f] * factor.im().at(f);
      im[f] = old * factor.im().at(f) + im[f] * factor.re().at(f);
    }
  }
}
