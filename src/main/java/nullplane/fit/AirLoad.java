package nullplane.fit;

import nullplane.driver.Mounting;

/**
 * The air that the cone moved while it was measured, as a mechanical impedance on the cone, both
 * faces together.
 */
public sealed interface AirLoad permits AirLoad.OfMounting, RadiationCurve {

  /**
   * A mounting whose air is a mass known in closed form; see {@link Mounting#airMassKg}.
   *
   * @param mounting the mounting
   */
  record OfMounting(Mounting mounting) implements AirLoad {}

  /** Returns the load of a woofer hung in free air, which is the usual bench. */
  static AirLoad freeAir() {
    return new OfMounting(Mounting.FREE_AIR);
  }
}
