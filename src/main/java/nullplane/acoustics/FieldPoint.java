package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * A point in space, from the panel's centre.
 *
 * @param xM to the listener's right (m)
 * @param yM up (m)
 * @param zM towards the listener (m)
 */
public record FieldPoint(double xM, double yM, double zM) {
  /** Checks that the coordinates are finite. */
  public FieldPoint {
    Checks.finite(xM, "x", "m");
    Checks.finite(yM, "y", "m");
    Checks.finite(zM, "z", "m");
  }
}
