package nullplane.driver;

import nullplane.units.Checks;

/**
 * What a coil adds to its resistance by inductance and by eddy currents in the iron about it. All
 * three forms are causal and passive.
 */
public sealed interface CoilInductance {

  /**
   * Returns the real part of the impedance (ohm).
   *
   * @param omega angular frequency (rad/s), above 0
   */
  double reOhm(double omega);

  /**
   * Returns the imaginary part of the impedance (ohm).
   *
   * @param omega angular frequency (rad/s), above 0
   */
  double imOhm(double omega);

  /**
   * Returns the inductance that a plain coil of the same reactance has (H), as sheets state it for
   * 1 kHz.
   *
   * @param frequencyHz frequency (Hz)
   */
  default double inductanceAt(double frequencyHz) {
    double omega = 2 * Math.PI * Checks.positive(frequencyHz, "frequency", "Hz");
    return imOhm(omega) / omega;
  }

  /**
   * A plain inductance, jw Le.
   *
   * @param inductanceH Le (H), 0 or more
   */
  record Plain(double inductanceH) implements CoilInductance {
    /** Checks that it is finite and not negative. */
    public Plain {
      Checks.notNegative(inductanceH, "Le", "H");
    }

    @Override
    public double reOhm(double omega) {
      return 0;
    }

    @Override
    public double imOhm(double omega) {
      return omega * inductanceH;
    }

    @Override
    public double inductanceAt(double frequencyHz) {
      return inductanceH;
    }
  }

  /**
   * An inductance in series with another one that has a resistance across it, jw Le + jw L2 R2/(R2
   * + jw L2). Source: circuit theory; J. Vanderkooy, J. Audio Eng. Soc. 37(3) (1989) 119, for why a
   * coil in iron is like that. Valid over the range it was fitted to.
   *
   * @param inductanceH Le (H), 0 or more
   * @param secondH L2 (H)
   * @param shuntOhm R2 (ohm)
   */
  record WithEddyCurrents(double inductanceH, double secondH, double shuntOhm)
      implements CoilInductance {
    /** Checks that all are finite, Le not negative and the others above 0. */
    public WithEddyCurrents {
      Checks.notNegative(inductanceH, "Le", "H");
      Checks.positive(secondH, "L2", "H");
      Checks.positive(shuntOhm, "R2", "ohm");
    }

    @Override
    public double reOhm(double omega) {
      double reactance = omega * secondH;
      return reactance * reactance * shuntOhm / squared(omega);
    }

    @Override
    public double imOhm(double omega) {
      return omega * (inductanceH + secondH * shuntOhm * shuntOhm / squared(omega));
    }

    private double squared(double omega) {
      double reactance = omega * secondH;
      return shuntOhm * shuntOhm + reactance * reactance;
    }
  }

  /**
   * A semi-inductance, K (jw)^n.
   *
   * <p>Source: W. M. Leach, J. Audio Eng. Soc. 50(6) (2002) 442. Valid over the range it was fitted
   * to, seldom below 100 Hz.
   *
   * @param factor K (ohm s^n)
   * @param exponent n (1), 0.5 for a thick core that conducts well, 1 for a plain inductance
   */
  record SemiInductance(double factor, double exponent) implements CoilInductance {
    /** Checks that the factor is positive and the exponent 0.5 to 1. */
    public SemiInductance {
      Checks.positive(factor, "K", "ohm s^n");
      if (!(exponent >= 0.5 && exponent <= 1)) {
        throw new IllegalArgumentException(
            "exponent of the semi-inductance is " + exponent + "; allowed: 0.5 .. 1");
      }
    }

    /**
     * Returns the semi-inductance that has a modulus at a frequency.
     *
     * @param modulusOhm modulus of its impedance (ohm)
     * @param frequencyHz the frequency (Hz)
     * @param exponent n (1), 0.5 to 1
     */
    public static SemiInductance ofModulus(double modulusOhm, double frequencyHz, double exponent) {
      double omega = 2 * Math.PI * Checks.positive(frequencyHz, "frequency", "Hz");
      return new SemiInductance(modulusOhm / Math.pow(omega, exponent), exponent);
    }

    @Override
    public double reOhm(double omega) {
      return factor * Math.pow(omega, exponent) * Math.cos(exponent * Math.PI / 2);
    }

    @Override
    public double imOhm(double omega) {
      return factor * Math.pow(omega, exponent) * Math.sin(exponent * Math.PI / 2);
    }
  }
}
