package nullplane.driver;

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
   * Returns by how much the remainder falls short, as a share of what is needed (1); 0 if enough.
   */
  public double shortfall() {
    return Math.max(0, (leastRemainderKg - remainderKg) / leastRemainderKg);
  }
}
