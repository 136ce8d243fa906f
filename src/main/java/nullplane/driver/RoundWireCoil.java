package nullplane.driver;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/**
 * A woofer's coil as it is wound: whole layers of whole turns of round wire.
 *
 * <p>Source: geometry; Re = r l/A; resistivity and density as {@link ConductorMaterial} states
 * them. Valid for layers wound side by side, one pitch per insulated diameter; leads are left out.
 *
 * @param layers number of layers; even so that both leads end at one side, in most coils
 * @param meanDiameterM mean diameter of the winding (m)
 * @param windingHeightM height of the winding (m)
 * @param bareDiameterM diameter of the metal (m)
 * @param insulatedDiameterM diameter over the insulation, which is the pitch (m)
 * @param material what the wire is made of
 */
public record RoundWireCoil(
    int layers,
    double meanDiameterM,
    double windingHeightM,
    double bareDiameterM,
    double insulatedDiameterM,
    ConductorMaterial material) {

  /** Share of a turn that rounding of the inputs may cost without losing the turn (1). */
  private static final double TURN_SLACK = 1e-9;

  /** Checks the sizes: one turn or more per layer, layers that fit the mean diameter. */
  public RoundWireCoil {
    if (layers < 1) {
      throw new IllegalArgumentException("coil layers is " + layers + "; allowed: 1 or more");
    }
    Checks.positive(meanDiameterM, "mean coil diameter", "m");
    Checks.positive(windingHeightM, "winding height", "m");
    Checks.positive(bareDiameterM, "bare wire diameter", "m");
    Checks.positive(insulatedDiameterM, "insulated wire diameter", "m");
    if (!(insulatedDiameterM >= bareDiameterM)) {
      throw new IllegalArgumentException(
          "insulated wire diameter is "
              + insulatedDiameterM
              + " m; allowed: at least the bare wire's "
              + bareDiameterM
              + " m");
    }
    if (!(windingHeightM >= insulatedDiameterM)) {
      throw new IllegalArgumentException(
          "winding height is "
              + windingHeightM
              + " m; allowed: at least one turn, "
              + insulatedDiameterM
              + " m");
    }
    if (!(layers * insulatedDiameterM < meanDiameterM)) {
      throw new IllegalArgumentException(
          layers + " layers do not fit a mean coil diameter of " + meanDiameterM + " m");
    }
  }

  /** Returns the number of whole turns that a layer holds (1). */
  public int turnsPerLayer() {
    return (int) Math.floor(windingHeightM / insulatedDiameterM + TURN_SLACK);
  }

  /** Returns the number of turns (1). */
  public int turns() {
    return layers * turnsPerLayer();
  }

  /** Returns the length of wire (m). */
  public double wireLengthM() {
    return Math.PI * meanDiameterM * turns();
  }

  /** Returns the section of the metal (m2). */
  public double wireSectionM2() {
    return Math.PI / 4 * bareDiameterM * bareDiameterM;
  }

  /** Returns the direct-current resistance Re at 20 degrees C (ohm). */
  public double resistanceOhm() {
    return material.resistivityOhmM() * wireLengthM() / wireSectionM2();
  }

  /** Returns the mass of the metal (kg). */
  public double massKg() {
    return material.densityKgPerM3() * wireLengthM() * wireSectionM2();
  }

  /**
   * Returns the force factor Bl at rest (T m).
   *
   * @param fluxT flux density in the gap (T)
   * @param gapHeightM height of the gap (m)
   */
  public double forceFactorTm(double fluxT, double gapHeightM) {
    return OverhungCoil.forceFactorTm(wireLengthM(), windingHeightM, gapHeightM, fluxT);
  }

  /**
   * Returns the strength of the motor, Bl^2/Re (N s/m).
   *
   * @param fluxT flux density in the gap (T)
   * @param gapHeightM height of the gap (m)
   */
  public double motorStrengthNsPerM(double fluxT, double gapHeightM) {
    double bl = forceFactorTm(fluxT, gapHeightM);
    return bl * bl / resistanceOhm();
  }
}
