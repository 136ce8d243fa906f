package nullplane.driver;

import nullplane.units.Air;
import nullplane.units.Checks;

/**
 * A woofer in a mounting, as it hangs on a test bench: its impedance and its travel per volt.
 *
 * <p>Symbols: w = 2 pi f, e^{+jwt}; M moving mass with the mounting's air; mechanical impedance Zm
 * = Rms + j(w M - Kms/w); motional impedance Bl^2/Zm.
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383; L. Beranek and T. Mellow, Acoustics
 * (2012), ch. 6. Valid for small travel and ka below about 0.5: the air is a mass alone, its
 * radiation resistance is left out, and the coil's inductance is Le alone.
 *
 * @param woofer the woofer
 * @param mounting the mounting
 * @param air the air
 */
public record MountedWoofer(Woofer woofer, Mounting mounting, Air air) {

  /** Returns the moving mass with the mounting's air, Mms (kg). */
  public double movingMassKg() {
    return woofer.bareMassKg() + mounting.airMassKg(woofer.radiusM(), air);
  }

  /**
   * Returns the real part of the impedance (ohm).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double impedanceReOhm(double frequencyHz) {
    double reactance = mechanicalReactance(frequencyHz);
    double loss = woofer.lossNsPerM();
    return woofer.resistanceOhm() + blSquared() * loss / (loss * loss + reactance * reactance);
  }

  /**
   * Returns the imaginary part of the impedance (ohm).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double impedanceImOhm(double frequencyHz) {
    double reactance = mechanicalReactance(frequencyHz);
    double loss = woofer.lossNsPerM();
    return 2 * Math.PI * frequencyHz * woofer.inductanceH()
        - blSquared() * reactance / (loss * loss + reactance * reactance);
  }

  /**
   * Returns the modulus of the impedance (ohm).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double impedanceModulusOhm(double frequencyHz) {
    return Math.hypot(impedanceReOhm(frequencyHz), impedanceImOhm(frequencyHz));
  }

  /**
   * Returns the travel that a volt gives, modulus (m/V): peak from peak volts or root mean square
   * from root-mean-square volts.
   *
   * <p>Source: v = Bl i/Zm, i = U/Z, x = v/(jw).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double travelPerVoltM(double frequencyHz) {
    double mechanical = Math.hypot(woofer.lossNsPerM(), mechanicalReactance(frequencyHz));
    return woofer.forceFactorTm()
        / (2 * Math.PI * frequencyHz * mechanical * impedanceModulusOhm(frequencyHz));
  }

  private double blSquared() {
    return woofer.forceFactorTm() * woofer.forceFactorTm();
  }

  private double mechanicalReactance(double frequencyHz) {
    double omega = 2 * Math.PI * Checks.positive(frequencyHz, "frequency", "Hz");
    return omega * movingMassKg() - woofer.stiffnessNPerM() / omega;
  }
}
