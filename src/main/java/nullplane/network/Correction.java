package nullplane.network;

import java.util.Arrays;
import nullplane.units.Checks;
import nullplane.units.Curve;

/** One correction that an active filter makes: it bends the level in one place. */
public sealed interface Correction {
  /** Returns the frequency where it acts (Hz). */
  double frequencyHz();

  /** Returns the gain where it acts most (1): above 1 lifts, below 1 cuts. */
  double gain();

  /**
   * Lifts or cuts everything well below a frequency; first order.
   *
   * <p>Form: (s + sqrt g)/(s + 1/sqrt g) with s = j f/fc: g at the bottom, sqrt g at fc, 1 at the
   * top. A cut is the inverse of a lift.
   *
   * @param frequencyHz middle of the slope fc (Hz)
   * @param gain gain at the bottom g (1), above 0
   */
  record Shelf(double frequencyHz, double gain) implements Correction {
    /** Checks the figures. */
    public Shelf {
      Checks.positive(frequencyHz, "shelf frequency", "Hz");
      Checks.positive(gain, "shelf gain", "(1)");
    }
  }

  /**
   * Lifts or cuts round a frequency; second order. Takes a resonance's bump away, or adds one.
   *
   * <p>Form: (s^2 + s A/Q + 1)/(s^2 + s/(A Q) + 1) with s = j f/f0 and A = sqrt g: g at f0, 1 far
   * from it. A cut is the inverse of a lift.
   *
   * @param frequencyHz frequency f0 (Hz)
   * @param q quality factor Q (1), above 0; narrow when high
   * @param gain gain at f0 (1), above 0
   */
  record Peaking(double frequencyHz, double q, double gain) implements Correction {
    /** Checks the figures. */
    public Peaking {
      Checks.positive(frequencyHz, "peak frequency", "Hz");
      Checks.positive(q, "peak Q", "(1)");
      Checks.positive(gain, "peak gain", "(1)");
    }
  }

  /** Returns the correction in the s domain. */
  private static AnalogueSection sectionOf(Correction correction) {
    double root = Math.sqrt(correction.gain());
    if (correction instanceof Peaking peaking) {
      return new AnalogueSection(
          peaking.frequencyHz, 1, root / peaking.q, 1, 1, 1 / (root * peaking.q), 1);
    }
    return new AnalogueSection(correction.frequencyHz(), 0, 1, root, 0, 1, 1 / root);
  }

  /**
   * Returns the response (1).
   *
   * @param frequencyHz frequencies (Hz)
   */
  default ComplexCurve response(Curve frequencyHz) {
    double[] re = new double[frequencyHz.size()];
    double[] im = new double[frequencyHz.size()];
    Arrays.fill(re, 1);
    sectionOf(this).multiplyInto(frequencyHz, re, im);
    return ComplexCurve.of(re, im);
  }
}
