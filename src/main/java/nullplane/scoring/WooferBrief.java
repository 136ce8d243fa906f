package nullplane.scoring;

import java.util.OptionalDouble;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.InductanceEstimate;
import nullplane.motor.Winding;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Range;

/**
 * What the search may choose in a woofer, and what is fixed. fs and Q are in free air.
 *
 * @param nominalM frame size class (m)
 * @param effectiveDiameterM diameter of the radiating piston (m)
 * @param resonanceHz fs the search may choose (Hz)
 * @param totalQ Qts the search may choose (1)
 * @param bareMassKg moving mass without air the search may choose (kg)
 * @param travelM one-way travel the search may choose (m)
 * @param mechanicalQ Qms, fixed (1)
 * @param statedInductanceH Le of every woofer (H); if absent, what its winding is estimated to show
 * @param powerW rated power, fixed (W)
 * @param coil what the coil and its motor may be made from
 */
public record WooferBrief(
    double nominalM,
    double effectiveDiameterM,
    Range resonanceHz,
    Range totalQ,
    Range bareMassKg,
    Range travelM,
    double mechanicalQ,
    OptionalDouble statedInductanceH,
    double powerW,
    CoilBrief coil) {

  /** Checks that the fixed values are in range and that Qts stays below Qms. */
  public WooferBrief {
    Checks.positive(nominalM, "nominal size", "m");
    Checks.positive(effectiveDiameterM, "effective diameter", "m");
    Checks.positive(resonanceHz.lower(), "fs", "Hz");
    Checks.positive(totalQ.lower(), "Qts", "1");
    Checks.positive(bareMassKg.lower(), "bare moving mass", "kg");
    Checks.positive(travelM.lower(), "travel", "m");
    Checks.positive(mechanicalQ, "Qms", "1");
    Checks.notNegative(statedInductanceH.orElse(0), "Le", "H");
    Checks.positive(powerW, "rated power", "W");
    if (!(totalQ.upper() < mechanicalQ)) {
      throw new IllegalArgumentException(
          "Qts may reach " + totalQ.upper() + "; allowed: below Qms, which is " + mechanicalQ);
    }
  }

  /**
   * Returns the woofer that three free quantities and a winding give: Re, travel and, unless it is
   * stated, Le are the winding's; Bl is what Qts asks for.
   *
   * @param name its name
   * @param chosenResonanceHz fs in free air (Hz)
   * @param chosenTotalQ Qts in free air (1), below Qms
   * @param chosenMassKg moving mass without air (kg)
   * @param winding the coil in its gap
   * @param air the air
   */
  public Woofer woofer(
      String name,
      double chosenResonanceHz,
      double chosenTotalQ,
      double chosenMassKg,
      Winding winding,
      Air air) {
    // stiffness, loss and force factor of the shell are placeholders that withResonance replaces
    Woofer shell =
        new Woofer(
            name,
            nominalM,
            effectiveAreaM2(),
            winding.resistanceOhm(),
            statedInductanceH.orElseGet(() -> InductanceEstimate.plainH(winding.coil())),
            chosenMassKg,
            1,
            1,
            1,
            winding.travelM(),
            powerW);
    return Woofer.withResonance(
        shell, chosenResonanceHz, mechanicalQ, chosenTotalQ, Mounting.FREE_AIR, air);
  }

  /**
   * Returns the same brief for another size of piston.
   *
   * @param diameterM diameter of the radiating piston (m)
   */
  public WooferBrief withEffectiveDiameter(double diameterM) {
    return new WooferBrief(
        nominalM,
        diameterM,
        resonanceHz,
        totalQ,
        bareMassKg,
        travelM,
        mechanicalQ,
        statedInductanceH,
        powerW,
        coil);
  }

  /** Returns the radius of the radiating piston (m). */
  public double radiusM() {
    return effectiveDiameterM / 2;
  }

  /** Returns the effective area Sd (m2). */
  public double effectiveAreaM2() {
    return Math.PI * radiusM() * radiusM();
  }
}
