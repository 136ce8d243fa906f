package nullplane.network;

import java.util.Arrays;
import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A filter of stated shape and corner, to be read as low-pass or as high-pass.
 *
 * @param alignment the shape
 * @param cornerHz corner: 3.01 dB down for Butterworth, 6.02 dB for Linkwitz-Riley (Hz)
 */
public record CrossoverFilter(FilterAlignment alignment, double cornerHz) {
  /** Checks the corner. */
  public CrossoverFilter {
    Checks.positive(cornerHz, "corner", "Hz");
  }

  /**
   * Returns the low-pass response (1).
   *
   * @param frequencyHz frequencies (Hz)
   */
  public ComplexCurve lowPass(Curve frequencyHz) {
    return response(alignment.lowPass(cornerHz), frequencyHz);
  }

  /**
   * Returns the high-pass response (1).
   *
   * @param frequencyHz frequencies (Hz)
   */
  public ComplexCurve highPass(Curve frequencyHz) {
    return response(alignment.highPass(cornerHz), frequencyHz);
  }

  private static ComplexCurve response(List<AnalogueSection> sections, Curve frequencyHz) {
    double[] re = new double[frequencyHz.size()];
    double[] im = new double[frequencyHz.size()];
    Arrays.fill(re, 1);
    sections.forEach(section -> section.multiplyInto(frequencyHz, re, im));
    return ComplexCurve.of(re, im);
  }
}
