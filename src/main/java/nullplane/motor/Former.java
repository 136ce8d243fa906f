package nullplane.motor;

import nullplane.units.Checks;

/**
 * The tube a coil is wound on.
 *
 * <p>Walls, density and the length beyond the coil are common practice, without a source. The tube
 * does not conduct (glass fibre or polyimide), so that it brakes nothing: a woofer for a bare panel
 * wants its Q high.
 *
 * @param insideDiameterM inside diameter, which is also what its size is called by (m)
 * @param wallM thickness of the wall (m)
 */
public record Former(double insideDiameterM, double wallM) {
  /** Usual wall (m). Common practice. */
  public static final double USUAL_WALL_M = 0.15e-3;

  /** Density of glass fibre laminate (kg/m3). Common practice; polyimide is lighter. */
  public static final double DENSITY_KG_PER_M3 = 1800;

  /** Length beyond the winding and one travel: the way to the cone's neck (m). Common practice. */
  public static final double NECK_M = 15e-3;

  /** Checks that both sizes are positive. */
  public Former {
    Checks.positive(insideDiameterM, "former diameter", "m");
    Checks.positive(wallM, "former wall", "m");
  }

  /**
   * Returns the former of a nominal size.
   *
   * @param nominalM inside diameter (m)
   */
  public static Former ofNominal(double nominalM) {
    return new Former(nominalM, USUAL_WALL_M);
  }

  /** Returns the outside diameter, on which the first layer lies (m). */
  public double outsideDiameterM() {
    return insideDiameterM + 2 * wallM;
  }

  /**
   * Returns the length of tube that a winding needs (m).
   *
   * @param windingHeightM height of the winding (m)
   * @param travelM travel, one way (m)
   */
  public static double lengthM(double windingHeightM, double travelM) {
    return windingHeightM + travelM + NECK_M;
  }

  /**
   * Returns the mass of a length of tube (kg).
   *
   * @param lengthM its length (m)
   */
  public double massKg(double lengthM) {
    return Math.PI * (insideDiameterM + wallM) * wallM * lengthM * DENSITY_KG_PER_M3;
  }
}
