package nullplane.driver;

import nullplane.units.Air;

/** How a woofer is mounted while it is measured; decides the air that moves with its cone. */
public enum Mounting {
  /** Hung in free air: a free disc, both faces together (8/3) rho a^3. */
  FREE_AIR(8.0 / 3.0),
  /** In a very large baffle: both faces together (16/3) rho a^3. */
  INFINITE_BAFFLE(16.0 / 3.0);

  private final double airMassFactor;

  Mounting(double airMassFactor) {
    this.airMassFactor = airMassFactor;
  }

  /**
   * Returns the air mass that moves with the cone at low frequency, both faces together (kg).
   *
   * <p>Source: H. Lamb, Hydrodynamics (1932), art. 102 (disc); L. Beranek and T. Mellow, Acoustics
   * (2012), ch. 4 (piston in an infinite baffle). Valid for ka well below 1.
   *
   * @param radiusM radius of the radiating piston (m)
   * @param air the air
   */
  public double airMassKg(double radiusM, Air air) {
    return airMassFactor * air.densityKgPerM3() * radiusM * radiusM * radiusM;
  }
}
