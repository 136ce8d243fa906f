package nullplane.network;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/**
 * An air-core coil of square section whose mean radius is one and a half times the section's side:
 * the shape that gives nearly the most inductance for a length of wire.
 *
 * <p>Symbols: c side of the section, N turns, A section of the metal, k fill factor N A/c^2.
 *
 * <p>Source: H. B. Brooks, NBS J. Research 7 (1931) 289: L = 2.5491e-6 c N^2 (SI); wire length = 2
 * pi 1.5 c N, so that R = 9.425 r N^2/(k c). Valid at frequencies where the wire's skin effect and
 * the coil's own capacitance do not matter: crossovers of woofers.
 *
 * @param sideM side of the square section (m)
 * @param turns number of turns
 * @param wireDiameterM diameter of the metal (m)
 * @param material what the wire is made of
 */
public record BrooksCoil(
    double sideM, int turns, double wireDiameterM, ConductorMaterial material) {

  /**
   * Share of the section that round enamelled wire of 1 to 2 mm fills with metal, wound by machine
   * (1). Common practice, without a source: squares hold 0.785 of a circle, enamel leaves 0.9 of
   * that, and layers that do not lie in rows or end short leave 0.88 of that.
   */
  public static final double COMMON_FILL_FACTOR = 0.62;

  /** Inductance per side and turn squared (H/m). Brooks 1931. */
  private static final double INDUCTANCE_H_PER_M = 2.5491e-6;

  /** Mean radius over side of the section (1). Brooks 1931. */
  private static final double MEAN_RADIUS_PER_SIDE = 1.5;

  /** Checks the sizes and that the metal fits the section. */
  public BrooksCoil {
    Checks.positive(sideM, "coil section side", "m");
    Checks.positive(wireDiameterM, "coil wire diameter", "m");
    if (turns < 1) {
      throw new IllegalArgumentException("coil turns is " + turns + "; allowed: 1 or more");
    }
    if (!(turns * section(wireDiameterM) < sideM * sideM)) {
      throw new IllegalArgumentException(
          turns + " turns of " + wireDiameterM + " m wire do not fit a side of " + sideM + " m");
    }
  }

  /**
   * Returns the coil of an inductance. Turns are whole: they are rounded down and the side makes up
   * for it, so that the fill factor is the stated one or a little less.
   *
   * <p>Source: L = 2.5491e-6 c N^2 with N = k c^2/A gives c^5 = L A^2/(2.5491e-6 k^2).
   *
   * @param inductanceH inductance (H), enough for one turn or more
   * @param wireDiameterM diameter of the metal (m)
   * @param fillFactor share of the section that is metal (1), above 0 and at most pi/4
   * @param material what the wire is made of
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static BrooksCoil forInductance(
      double inductanceH, double wireDiameterM, double fillFactor, ConductorMaterial material) {
    Checks.positive(inductanceH, "coil inductance", "H");
    Checks.positive(wireDiameterM, "coil wire diameter", "m");
    if (!(fillFactor > 0 && fillFactor <= Math.PI / 4)) {
      throw new IllegalArgumentException(
          "fill factor is " + fillFactor + "; allowed: above 0, at most 0.785");
    }
    double section = section(wireDiameterM);
    double idealSideM =
        Math.pow(
            inductanceH * section * section / (INDUCTANCE_H_PER_M * fillFactor * fillFactor), 0.2);
    double idealTurns = fillFactor * idealSideM * idealSideM / section;
    if (!(idealTurns >= 1)) {
      throw new IllegalArgumentException(
          "coil inductance is "
              + inductanceH
              + " H; allowed: enough for one turn of "
              + wireDiameterM
              + " m wire");
    }
    int turns = (int) Math.floor(idealTurns * (1 + 1e-12));
    double sideM = inductanceH / (INDUCTANCE_H_PER_M * turns * turns);
    return new BrooksCoil(sideM, turns, wireDiameterM, material);
  }

  /** Returns the inductance (H). */
  public double inductanceH() {
    return INDUCTANCE_H_PER_M * sideM * turns * turns;
  }

  /** Returns the length of wire without leads (m). */
  public double wireLengthM() {
    return 2 * Math.PI * MEAN_RADIUS_PER_SIDE * sideM * turns;
  }

  /** Returns the direct-current resistance at 20 degrees C (ohm). */
  public double resistanceOhm() {
    return material.resistivityOhmM() * wireLengthM() / section(wireDiameterM);
  }

  /** Returns the mass of the metal (kg). */
  public double conductorKg() {
    return material.densityKgPerM3() * wireLengthM() * section(wireDiameterM);
  }

  /** Returns the share of the section that is metal (1). */
  public double fillFactor() {
    return turns * section(wireDiameterM) / (sideM * sideM);
  }

  /** Returns the outer diameter of the winding, 4 c (m). */
  public double outerDiameterM() {
    return 2 * (MEAN_RADIUS_PER_SIDE + 0.5) * sideM;
  }

  /** Returns the coil as a part in series. */
  public SeriesCoil asSeriesCoil() {
    return new SeriesCoil(inductanceH(), resistanceOhm(), conductorKg());
  }

  private static double section(double wireDiameterM) {
    return Math.PI / 4 * wireDiameterM * wireDiameterM;
  }
}
