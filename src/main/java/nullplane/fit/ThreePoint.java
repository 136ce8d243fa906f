package nullplane.fit;

import nullplane.units.Checks;

/**
 * Quality factors from three points of an impedance curve.
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383. Exact for a coil without inductance.
 *
 * @param mechanicalQ Qms (1)
 * @param electricalQ Qes (1)
 */
record ThreePoint(double mechanicalQ, double electricalQ) {

  /**
   * With r0 = Zmax/Re and f1, f2 the frequencies where |Z| = Re sqrt(r0): Qms = fs sqrt(r0)/(f2 -
   * f1), Qes = Qms/(r0 - 1).
   *
   * @param resistanceOhm Re (ohm)
   * @param peakOhm Zmax (ohm), above Re
   * @param resonanceHz fs (Hz)
   * @param lowerHz f1 (Hz)
   * @param upperHz f2 (Hz), above f1
   * @throws IllegalArgumentException if an argument is out of range
   */
  static ThreePoint of(
      double resistanceOhm, double peakOhm, double resonanceHz, double lowerHz, double upperHz) {
    Checks.positive(resistanceOhm, "Re", "ohm");
    Checks.positive(resonanceHz, "fs", "Hz");
    Checks.positive(upperHz - lowerHz, "f2 - f1", "Hz");
    double ratio = peakOhm / resistanceOhm;
    Checks.positive(ratio - 1, "Zmax/Re - 1", "1");
    double mechanical = resonanceHz * Math.sqrt(ratio) / (upperHz - lowerHz);
    return new ThreePoint(mechanical, mechanical / (ratio - 1));
  }

  /** Returns the modulus at which f1 and f2 are read, Re sqrt(r0) = sqrt(Re Zmax) (ohm). */
  static double readingLevelOhm(double resistanceOhm, double peakOhm) {
    return Math.sqrt(resistanceOhm * peakOhm);
  }

  /**
   * Returns the moving mass from the resonances without and with an added mass, m/((fs/fs')^2 - 1)
   * (kg).
   *
   * <p>Source: Small 1972; IEC 60268-5 (added-mass method). Valid if the compliance is the same in
   * both.
   *
   * @param addedKg added mass (kg)
   * @param resonanceHz fs (Hz)
   * @param loweredHz fs' (Hz), below fs
   */
  static double movingMassKg(double addedKg, double resonanceHz, double loweredHz) {
    double ratio = resonanceHz / loweredHz;
    return addedKg / Checks.positive(ratio * ratio - 1, "(fs/fs')^2 - 1", "1");
  }
}
