package nullplane.sample;

import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * The band in which the modulus of a woofer's impedance lies while every parameter lies in its
 * window. A curve inside does not prove that the parameters are; a curve outside proves that one is
 * not.
 *
 * @param frequencyHz frequencies (Hz)
 * @param nominalOhm modulus of the nominal woofer (ohm)
 * @param lowerOhm least modulus within the windows (ohm)
 * @param upperOhm greatest modulus within the windows (ohm)
 */
public record ImpedanceWindow(Curve frequencyHz, Curve nominalOhm, Curve lowerOhm, Curve upperOhm) {
  /** Resonances tried between the ends of their window; the peak lies at each in turn. */
  private static final int RESONANCES = 33;

  /**
   * The parameters that make the curve, in free air.
   *
   * @param resistanceOhm Re (ohm)
   * @param resonanceHz fs (Hz)
   * @param mechanicalQ Qms (1)
   * @param electricalQ Qes (1)
   * @param inductanceH Le (H)
   */
  public record Parameters(
      double resistanceOhm,
      double resonanceHz,
      double mechanicalQ,
      double electricalQ,
      double inductanceH) {
    /** Checks the ranges. */
    public Parameters {
      Checks.positive(resistanceOhm, "Re", "ohm");
      Checks.positive(resonanceHz, "fs", "Hz");
      Checks.positive(mechanicalQ, "Qms", "1");
      Checks.positive(electricalQ, "Qes", "1");
      Checks.notNegative(inductanceH, "Le", "H");
    }

    /**
     * Returns the modulus of the impedance (ohm).
     *
     * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: Z = Re + j w Le + Re
     * (Qms/Qes)/(1 + j Qms (f/fs - fs/f)). Valid for small signals and an inductance that is Le
     * alone.
     *
     * @param frequencyHz frequency, above 0 (Hz)
     */
    public double modulusOhm(double frequencyHz) {
      double detuning = mechanicalQ * (frequencyHz / resonanceHz - resonanceHz / frequencyHz);
      double peak = resistanceOhm * mechanicalQ / electricalQ / (1 + detuning * detuning);
      return Math.hypot(
          resistanceOhm + peak, 2 * Math.PI * frequencyHz * inductanceH - peak * detuning);
    }
  }

  /** Checks that all lengths agree. */
  public ImpedanceWindow {
    int points = frequencyHz.size();
    if (nominalOhm.size() != points || lowerOhm.size() != points || upperOhm.size() != points) {
      throw new IllegalArgumentException("curves of the impedance window differ in length");
    }
  }

  /**
   * Returns the band of the windows.
   *
   * <p>Every combination of the windows' ends and the nominal values is tried, at resonances in
   * small steps; between those the modulus has no extremes but the peak, which moves with fs.
   *
   * @param nominal the nominal woofer in free air
   * @param resistanceOhm window of Re (ohm)
   * @param resonanceHz window of fs (Hz)
   * @param mechanicalQ window of Qms (1)
   * @param electricalQ window of Qes (1)
   * @param inductanceH window of Le (H)
   * @param frequencyHz where (Hz)
   */
  public static ImpedanceWindow of(
      Parameters nominal,
      Range resistanceOhm,
      Range resonanceHz,
      Range mechanicalQ,
      Range electricalQ,
      Range inductanceH,
      Curve frequencyHz) {
    int points = frequencyHz.size();
    double[] middle = new double[points];
    double[] lower = new double[points];
    double[] upper = new double[points];
    for (int i = 0; i < points; i++) {
      middle[i] = nominal.modulusOhm(frequencyHz.at(i));
      lower[i] = middle[i];
      upper[i] = middle[i];
    }
    for (double re : ends(resistanceOhm)) {
      for (double qms : ends(mechanicalQ)) {
        for (double qes : ends(electricalQ)) {
          for (double le : ends(inductanceH)) {
            for (int step = 0; step < RESONANCES; step++) {
              double fs = resonanceHz.at(step / (RESONANCES - 1.0));
              Parameters unit = new Parameters(re, fs, qms, qes, le);
              for (int i = 0; i < points; i++) {
                double modulus = unit.modulusOhm(frequencyHz.at(i));
                lower[i] = Math.min(lower[i], modulus);
                upper[i] = Math.max(upper[i], modulus);
              }
            }
          }
        }
      }
    }
    return new ImpedanceWindow(frequencyHz, Curve.of(middle), Curve.of(lower), Curve.of(upper));
  }

  private static List<Double> ends(Range window) {
    return window.isPinned() ? List.of(window.lower()) : List.of(window.lower(), window.upper());
  }
}
