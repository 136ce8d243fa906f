package nullplane.scoring;

import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.units.Checks;

/**
 * Where the listener's ear is.
 *
 * @param distanceM distance from the panel's plane, on the panel's centre line (m)
 * @param heightM height above the floor; for a panel in free space, above its lower edge (m)
 */
public record Listening(double distanceM, double heightM) {
  /** Checks both lengths. */
  public Listening {
    Checks.positive(distanceM, "listening distance", "m");
    Checks.notNegative(heightM, "listening height", "m");
  }

  /** Returns the listening point in the panel's own coordinates. */
  public FieldPoint pointFor(Panel panel) {
    return new FieldPoint(0, heightM - panel.centreHeightM(), distanceM);
  }
}
