package nullplane.io;

import nullplane.acoustics.Direction;

/**
 * A direction as people write it, "30/0".
 *
 * @param horizontalDeg angle towards the listener's right (degrees)
 * @param verticalDeg angle upwards (degrees)
 */
public record AnglePair(double horizontalDeg, double verticalDeg) {
  /** Returns the direction. */
  public Direction direction() {
    return Direction.ofDegrees(horizontalDeg, verticalDeg);
  }
}
