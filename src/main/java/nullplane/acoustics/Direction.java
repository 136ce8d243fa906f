package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * A direction from the panel's centre.
 *
 * @param horizontalRad angle from the axis towards the listener's right (rad)
 * @param verticalRad angle upwards from the horizontal plane (rad)
 */
public record Direction(double horizontalRad, double verticalRad) {
  /** Checks that the angles are finite. */
  public Direction {
    Checks.finite(horizontalRad, "horizontal angle", "rad");
    Checks.finite(verticalRad, "vertical angle", "rad");
  }

  /** Returns the direction for angles in degrees. */
  public static Direction ofDegrees(double horizontalDeg, double verticalDeg) {
    return new Direction(Math.toRadians(horizontalDeg), Math.toRadians(verticalDeg));
  }

  /** Returns the direction cosine along x (1). */
  double alongX() {
    return Math.sin(horizontalRad) * Math.cos(verticalRad);
  }

  /** Returns the direction cosine along y (1). */
  double alongY() {
    return Math.sin(verticalRad);
  }

  /** Returns the direction cosine along z, the panel's axis (1). */
  double alongZ() {
    return Math.cos(horizontalRad) * Math.cos(verticalRad);
  }
}
