package nullplane.network;

import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A filter of first or second order in the s domain, (b2 s^2 + b1 s + b0)/(a2 s^2 + a1 s + a0) with
 * s = j f/f0. It has no delay beyond its own phase.
 *
 * @param referenceHz f0 (Hz)
 * @param b2 numerator, square term (1)
 * @param b1 numerator, linear term (1)
 * @param b0 numerator, constant term (1)
 * @param a2 denominator, square term (1)
 * @param a1 denominator, linear term (1)
 * @param a0 denominator, constant term (1)
 */
record AnalogueSection(
    double referenceHz, double b2, double b1, double b0, double a2, double a1, double a0) {
  AnalogueSection {
    Checks.positive(referenceHz, "filter frequency", "Hz");
    for (double b : new double[] {b2, b1, b0}) {
      Checks.finite(b, "filter numerator", "(1)");
    }
    // stable, and without a pole on the axis
    Checks.notNegative(a2, "filter denominator, square term", "(1)");
    Checks.positive(a1, "filter denominator, linear term", "(1)");
    Checks.positive(a0, "filter denominator, constant term", "(1)");
  }

  static AnalogueSection lowPass(double cornerHz) {
    return new AnalogueSection(cornerHz, 0, 0, 1, 0, 1, 1);
  }

  static AnalogueSection highPass(double cornerHz) {
    return new AnalogueSection(cornerHz, 0, 1, 0, 0, 1, 1);
  }

  static AnalogueSection lowPass(double cornerHz, double q) {
    return new AnalogueSection(cornerHz, 0, 0, 1, 1, 1 / q, 1);
  }

  static AnalogueSection highPass(double cornerHz, double q) {
    return new AnalogueSection(cornerHz, 1, 0, 0, 1, 1 / q, 1);
  }

  /** Multiplies rows by this section's response (1). */
  void multiplyInto(Curve frequencyHz, double[] re, double[] im) {
    for (int f = 0; f < re.length; f++) {
      double x = frequencyHz.at(f) / referenceHz;
      double nRe = b0 - b2 * x * x;
      double nIm = b1 * x;
      double dRe = a0 - a2 * x * x;
      double dIm = a1 * x;
      double inverse = 1 / (dRe * dRe + dIm * dIm);
      double hRe = (nRe * dRe + nIm * dIm) * inverse;
      double hIm = (nIm * dRe - nRe * dIm) * inverse;
      double old = re[f];
      re[f] = old * hRe - im[f] * hIm;
      im[f] = old * hIm + im[f] * hRe;
    }
  }
}
