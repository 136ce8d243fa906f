package nullplane.driver;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/**
 * What a coil taller than its gap costs in wire.
 *
 * <p>Symbols: hc winding height, hg gap height, B flux density, l wire length, A wire section, r
 * and d resistivity and density of the wire. Re = r l/A, m = d l A and Bl = B l hg/hc together give
 * Bl^2/Re = B^2 m (hg/hc)^2/(r d): neither wire diameter nor layers matter, travel is paid for in
 * wire by its square.
 *
 * <p>Source: derived as above from the definitions; L. Beranek and T. Mellow, Acoustics (2012), ch.
 * 6, for Bl and Re. The field is taken as B inside the gap's height and none outside, so the fringe
 * field's share is left out, which is on the safe side.
 */
public final class OverhungCoil {
  private OverhungCoil() {}

  /**
   * Returns the winding height that keeps the gap filled over the travel, hc = hg + 2 x (m).
   *
   * @param gapHeightM height of the gap (m)
   * @param travelM travel, one way (m)
   */
  public static double windingHeightM(double gapHeightM, double travelM) {
    return gapHeightM + 2 * travelM;
  }

  /**
   * Returns the geometric travel of a winding, one way (m): (hc - hg)/2, or (hg - hc)/2 of one
   * shorter than the gap.
   *
   * @param windingHeightM winding height (m)
   * @param gapHeightM height of the gap (m)
   */
  public static double travelM(double windingHeightM, double gapHeightM) {
    return Math.abs(windingHeightM - gapHeightM) / 2;
  }

  /**
   * Returns the force factor Bl at rest (T m): B l times the share of the winding in the gap.
   *
   * @param wireLengthM length of wire (m)
   * @param windingHeightM winding height (m)
   * @param gapHeightM height of the gap (m)
   * @param fluxT flux density in the gap (T)
   */
  public static double forceFactorTm(
      double wireLengthM, double windingHeightM, double gapHeightM, double fluxT) {
    return fluxT * wireLengthM * Math.min(1, gapHeightM / windingHeightM);
  }

  /**
   * Returns the mass of wire that gives a motor its strength, m = (Bl^2/Re) r d (hc/hg)^2/B^2 (kg).
   *
   * @param motorStrengthNsPerM Bl^2/Re (N s/m)
   * @param windingHeightM winding height (m), at least the gap's
   * @param gapHeightM height of the gap (m)
   * @param fluxT flux density in the gap (T)
   * @param material what the coil is wound from
   * @throws IllegalArgumentException if a quantity is not positive or the winding is shorter than
   *     the gap
   */
  public static double massKg(
      double motorStrengthNsPerM,
      double windingHeightM,
      double gapHeightM,
      double fluxT,
      ConductorMaterial material) {
    Checks.positive(motorStrengthNsPerM, "Bl^2/Re", "N s/m");
    Checks.positive(gapHeightM, "gap height", "m");
    Checks.positive(fluxT, "flux density", "T");
    if (!(windingHeightM >= gapHeightM)) {
      throw new IllegalArgumentException(
          "winding height is " + windingHeightM + " m; allowed: at least the gap's " + gapHeightM);
    }
    double overhang = windingHeightM / gapHeightM;
    return motorStrengthNsPerM
        * material.resistivityOhmM()
        * material.densityKgPerM3()
        * (overhang * overhang)
        / (fluxT * fluxT);
  }
}
