package nullplane.driver;

import nullplane.units.Air;
import nullplane.units.Checks;

/**
 * Resonance and quality factors of a woofer with a given mass of air on its cone.
 *
 * @param airMassKg air that moves with the cone, both faces together (kg)
 * @param movingMassKg Mms (kg)
 * @param resonanceHz fs (Hz)
 * @param mechanicalQ Qms, by the suspension's loss alone (1)
 * @param electricalQ Qes, from Re alone (1)
 * @param totalQ Qts (1)
 */
public record LoadedResonance(
    double airMassKg,
    double movingMassKg,
    double resonanceHz,
    double mechanicalQ,
    double electricalQ,
    double totalQ) {

  /**
   * Returns the figures of a woofer with a mass of air.
   *
   * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383. The air is taken as a mass alone:
   * valid for ka well below 1, and for a panel below its first resonance.
   *
   * @param woofer the woofer
   * @param airMassKg air that moves with the cone, both faces together (kg): of a {@link Mounting},
   *     or the imaginary part of a panel's radiation impedance over the angular frequency
   */
  public static LoadedResonance of(Woofer woofer, double airMassKg) {
    double mass = woofer.bareMassKg() + Checks.notNegative(airMassKg, "air mass", "kg");
    double omega = Math.sqrt(woofer.stiffnessNPerM() / mass);
    double qms = omega * mass / woofer.lossNsPerM();
    double qes = omega * mass / woofer.motorStrengthNsPerM();
    return new LoadedResonance(
        airMassKg, mass, omega / (2 * Math.PI), qms, qes, qms * qes / (qms + qes));
  }

  /**
   * Returns the figures of a woofer in a mounting.
   *
   * @param woofer the woofer
   * @param mounting the mounting
   * @param air the air
   */
  public static LoadedResonance of(Woofer woofer, Mounting mounting, Air air) {
    return of(woofer, mounting.airMassKg(woofer.radiusM(), air));
  }
}
