package nullplane.driver;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/**
 * Whether a coil can be wound that gives a woofer its motor, and what mass it leaves for the rest.
 *
 * @param windingHeightM height of an overhung winding that gives the travel (m)
 * @param coilMassKg wire mass needed (kg)
 * @param remainderKg what the bare moving mass leaves for cone, surround share and former (kg); may
 *     be negative
 * @param leastRemainderKg the least that a cone of this size can be made for (kg)
 */
public record CoilBudget(
    double windingHeightM, double coilMassKg, double remainderKg, double leastRemainderKg) {

  /**
   * Least mass of everything that moves but the wire, per effective area (kg/m2): cone, dust cap,
   * half the surround, half the spider, former and glue.
   *
   * <p>Common practice, without a source. The lightest woofers of 200, 250, 300, 380 and 460 mm
   * have moving masses of about 18, 25, 40, 70 and 100 g on 215, 338, 505, 840 and 1190 cm2; less
   * the air of a free disc that is 0.75, 0.63, 0.66, 0.67 and 0.64 kg/m2. At 0.45 kg/m2 each of
   * them is left 6 to 23 g of wire: a modest coil, as it has. The figure also agrees with a plain
   * count: paper of 0.35 mm at 650 kg/m3 on a cone a fifth larger than its opening is 0.27 kg/m2,
   * and the shares of surround, spider, former and glue are about two thirds of that again.
   */
  public static final double LEAST_REMAINDER_KG_PER_M2 = 0.45;

  /** Checks that the numbers are finite and that the least remainder is above 0. */
  public CoilBudget {
    Checks.positive(windingHeightM, "winding height", "m");
    Checks.positive(coilMassKg, "coil mass", "kg");
    Checks.finite(remainderKg, "remainder", "kg");
    Checks.positive(leastRemainderKg, "least remainder", "kg");
  }

  /**
   * Returns the budget of a woofer with an overhung coil, the least remainder by its area.
   *
   * <p>Source: {@link OverhungCoil}; {@link #LEAST_REMAINDER_KG_PER_M2}.
   *
   * @param woofer the woofer
   * @param fluxT flux density in the gap (T)
   * @param gapHeightM height of the gap (m)
   * @param material what the coil is wound from
   */
  public static CoilBudget of(
      Woofer woofer, double fluxT, double gapHeightM, ConductorMaterial material) {
    return of(woofer, fluxT, gapHeightM, material, leastRemainderForArea(woofer.effectiveAreaM2()));
  }

  /**
   * Returns the budget of a woofer with an overhung coil against a stated least remainder.
   *
   * <p>Source: {@link OverhungCoil}.
   *
   * @param woofer the woofer
   * @param fluxT flux density in the gap (T)
   * @param gapHeightM height of the gap (m)
   * @param material what the coil is wound from
   * @param leastRemainderKg the least that the rest can be made for (kg)
   */
  public static CoilBudget of(
      Woofer woofer,
      double fluxT,
      double gapHeightM,
      ConductorMaterial material,
      double leastRemainderKg) {
    double heightM = OverhungCoil.windingHeightM(gapHeightM, woofer.travelM());
    double massKg =
        OverhungCoil.massKg(woofer.motorStrengthNsPerM(), heightM, gapHeightM, fluxT, material);
    return new CoilBudget(heightM, massKg, woofer.bareMassKg() - massKg, leastRemainderKg);
  }

  /**
   * Returns the least that everything but the wire can be made for (kg).
   *
   * <p>Source: {@link #LEAST_REMAINDER_KG_PER_M2}. Valid for nominal sizes of 200 to 460 mm.
   *
   * @param effectiveAreaM2 effective piston area (m2)
   */
  public static double leastRemainderForArea(double effectiveAreaM2) {
    return LEAST_REMAINDER_KG_PER_M2 * effectiveAreaM2;
  }

  /**
   * Returns by how much the remainder falls short, as a share of what is needed (1); 0 if enough.
   */
  public double shortfall() {
    return Math.max(0, (leastRemainderKg - remainderKg) / leastRemainderKg);
  }
}
