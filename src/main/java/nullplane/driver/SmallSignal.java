package nullplane.driver;

import nullplane.units.Air;
import nullplane.units.Levels;

/**
 * The small-signal set of a woofer in one mounting: what a data sheet prints.
 *
 * @param mounting the mounting the set holds for
 * @param resonanceHz fs (Hz)
 * @param mechanicalQ Qms (1)
 * @param electricalQ Qes, from Re alone (1)
 * @param totalQ Qts (1)
 * @param movingMassKg Mms, with the mounting's air (kg)
 * @param complianceMPerN Cms (m/N)
 * @param equivalentVolumeM3 Vas (m3)
 * @param referenceEfficiency eta0 into half space (1)
 */
public record SmallSignal(
    Mounting mounting,
    double resonanceHz,
    double mechanicalQ,
    double electricalQ,
    double totalQ,
    double movingMassKg,
    double complianceMPerN,
    double equivalentVolumeM3,
    double referenceEfficiency) {

  /**
   * Derives the set of a woofer.
   *
   * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383: fs = 1/(2 pi sqrt(Mms Cms)), Qms =
   * 2 pi fs Mms/Rms, Qes = 2 pi fs Mms Re/Bl^2, Vas = rho c^2 Sd^2 Cms, eta0 = rho/(2 pi c) (Bl
   * Sd/Mms)^2/Re. Valid where the piston is small against the wavelength.
   *
   * @param woofer the woofer
   * @param mounting the mounting
   * @param air the air
   */
  public static SmallSignal of(Woofer woofer, Mounting mounting, Air air) {
    double mass = woofer.bareMassKg() + mounting.airMassKg(woofer.radiusM(), air);
    double omega = Math.sqrt(woofer.stiffnessNPerM() / mass);
    double qms = omega * mass / woofer.lossNsPerM();
    double bl = woofer.forceFactorTm();
    double qes = omega * mass * woofer.resistanceOhm() / (bl * bl);
    double area = woofer.effectiveAreaM2();
    double c = air.speedOfSoundMPerS();
    double rho = air.densityKgPerM3();
    double drive = bl * area / mass;
    return new SmallSignal(
        mounting,
        omega / (2 * Math.PI),
        qms,
        qes,
        qms * qes / (qms + qes),
        mass,
        1 / woofer.stiffnessNPerM(),
        rho * c * c * area * area / woofer.stiffnessNPerM(),
        rho / (2 * Math.PI * c) * drive * drive / woofer.resistanceOhm());
  }

  /**
   * Returns the reference efficiency from the resonance, the volume and the electrical Q (1).
   *
   * <p>Source: Small 1972: eta0 = (4 pi^2/c^3) fs^3 Vas/Qes, half space.
   *
   * @param resonanceHz fs (Hz)
   * @param equivalentVolumeM3 Vas (m3)
   * @param electricalQ Qes (1)
   * @param air the air
   */
  public static double efficiencyFromVolume(
      double resonanceHz, double equivalentVolumeM3, double electricalQ, Air air) {
    double c = air.speedOfSoundMPerS();
    return 4
        * Math.PI
        * Math.PI
        / (c * c * c)
        * Math.pow(resonanceHz, 3)
        * equivalentVolumeM3
        / electricalQ;
  }

  /**
   * Returns the level at 1 m in half space for 1 W of heat in Re, in the mass-controlled band (dB
   * re 20 uPa).
   *
   * <p>Source: p^2 = W rho c/(2 pi r^2), definition of intensity over a half sphere.
   *
   * @param efficiency reference efficiency (1)
   * @param air the air
   */
  public static double levelAtOneWatt(double efficiency, Air air) {
    double pressureSquared =
        efficiency * air.densityKgPerM3() * air.speedOfSoundMPerS() / (2 * Math.PI);
    return Levels.soundPressureLevel(Math.sqrt(pressureSquared));
  }

  /**
   * Returns what a voltage adds to the level of 1 W in Re (dB).
   *
   * @param voltageV root-mean-square voltage (V)
   * @param resistanceOhm Re (ohm)
   */
  public static double levelOverOneWatt(double voltageV, double resistanceOhm) {
    return Levels.ofPowerRatio(voltageV * voltageV / resistanceOhm);
  }
}
