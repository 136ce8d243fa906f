package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * A rigid circular piston, flush in the panel, front and back moving as one.
 *
 * @param xM centre, to the listener's right of the panel's centre (m)
 * @param yM centre, above the panel's centre (m)
 * @param radiusM radius (m)
 */
public record Piston(double xM, double yM, double radiusM) {
  /** Checks that the position is finite and the radius positive. */
  public Piston {
    Checks.finite(xM, "piston x", "m");
    Checks.finite(yM, "piston y", "m");
    Checks.positive(radiusM, "piston radius", "m");
  }

  /** Returns the piston's area (m2). */
  public double areaM2() {
    return Math.PI * radiusM * radiusM;
  }
}
