package nullplane.driver;

import nullplane.units.Air;
import nullplane.units.Checks;

/**
 * A woofer as it is made, without any air: the quantities a maker sets. Everything a data sheet
 * states follows from these and a mounting; see {@link SmallSignal}.
 *
 * @param name what people call it
 * @param nominalM frame size class (m)
 * @param effectiveAreaM2 effective piston area Sd (m2)
 * @param resistanceOhm direct-current resistance Re of the coil (ohm)
 * @param inductanceH coil inductance Le (H), 0 or more
 * @param bareMassKg moving mass without air (kg)
 * @param stiffnessNPerM suspension stiffness Kms (N/m)
 * @param lossNsPerM mechanical loss Rms (N s/m)
 * @param forceFactorTm force factor Bl (T m)
 * @param travelM travel limit, one way (m)
 * @param powerW rated power, as direct heat in the coil over the long term (W)
 */
public record Woofer(
    String name,
    double nominalM,
    double effectiveAreaM2,
    double resistanceOhm,
    double inductanceH,
    double bareMassKg,
    double stiffnessNPerM,
    double lossNsPerM,
    double forceFactorTm,
    double travelM,
    double powerW) {

  /** Checks that each quantity is finite and in its range. */
  public Woofer {
    Checks.positive(nominalM, "nominal size", "m");
    Checks.positive(effectiveAreaM2, "effective area", "m2");
    Checks.positive(resistanceOhm, "Re", "ohm");
    Checks.notNegative(inductanceH, "Le", "H");
    Checks.positive(bareMassKg, "bare moving mass", "kg");
    Checks.positive(stiffnessNPerM, "Kms", "N/m");
    Checks.positive(lossNsPerM, "Rms", "N s/m");
    Checks.positive(forceFactorTm, "Bl", "T m");
    Checks.positive(travelM, "travel", "m");
    Checks.positive(powerW, "rated power", "W");
  }

  /** Returns the radius of the radiating piston (m). */
  public double radiusM() {
    return Math.sqrt(effectiveAreaM2 / Math.PI);
  }

  /**
   * Returns the strength of the motor, Bl^2/Re (N s/m): the damping it adds when it is driven from
   * no resistance, and what its coil is paid for in mass; see {@link OverhungCoil}.
   */
  public double motorStrengthNsPerM() {
    return forceFactorTm * forceFactorTm / resistanceOhm;
  }

  /**
   * Returns the woofer that shows the given resonance and quality factors in a mounting.
   *
   * <p>Source: Small 1972: Kms = (2 pi fs)^2 Mms, Rms = 2 pi fs Mms/Qms, Bl^2 = 2 pi fs Mms Re/Qes,
   * 1/Qes = 1/Qts - 1/Qms, Mms = bare mass + air load of the mounting.
   *
   * @param shell name, sizes, Re, Le, bare mass, travel and power to keep; its Kms, Rms and Bl are
   *     replaced
   * @param resonanceHz fs in that mounting (Hz)
   * @param mechanicalQ Qms in that mounting (1)
   * @param totalQ Qts in that mounting (1), below mechanicalQ
   * @param mounting the mounting the figures hold for
   * @param air the air
   * @throws IllegalArgumentException if totalQ is not below mechanicalQ
   */
  public static Woofer withResonance(
      Woofer shell,
      double resonanceHz,
      double mechanicalQ,
      double totalQ,
      Mounting mounting,
      Air air) {
    Checks.positive(resonanceHz, "fs", "Hz");
    Checks.positive(mechanicalQ, "Qms", "1");
    Checks.positive(totalQ, "Qts", "1");
    if (!(totalQ < mechanicalQ)) {
      throw new IllegalArgumentException(
          "Qts is " + totalQ + "; allowed: below Qms, which is " + mechanicalQ);
    }
    double omega = 2 * Math.PI * resonanceHz;
    double mass = shell.bareMassKg() + mounting.airMassKg(shell.radiusM(), air);
    double electricalQ = totalQ * mechanicalQ / (mechanicalQ - totalQ);
    return new Woofer(
        shell.name(),
        shell.nominalM(),
        shell.effectiveAreaM2(),
        shell.resistanceOhm(),
        shell.inductanceH(),
        shell.bareMassKg(),
        omega * omega * mass,
        omega * mass / mechanicalQ,
        Math.sqrt(omega * mass * shell.resistanceOhm() / electricalQ),
        shell.travelM(),
        shell.powerW());
  }

  /** Returns this woofer under another name. */
  public Woofer withName(String newName) {
    return new Woofer(
        newName,
        nominalM,
        effectiveAreaM2,
        resistanceOhm,
        inductanceH,
        bareMassKg,
        stiffnessNPerM,
        lossNsPerM,
        forceFactorTm,
        travelM,
        powerW);
  }
}
