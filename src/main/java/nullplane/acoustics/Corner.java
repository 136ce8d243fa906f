package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * A corner of a polygon.
 *
 * @param xM to the listener's right (m)
 * @param yM up (m)
 */
public record Corner(double xM, double yM) {
  /** Checks that both coordinates are finite. */
  public Corner {
    Checks.finite(xM, "corner x", "m");
    Checks.finite(yM, "corner y", "m");
  }
}
