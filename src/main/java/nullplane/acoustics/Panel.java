package nullplane.acoustics;

import java.util.OptionalDouble;
import nullplane.units.Checks;

/**
 * A rigid, thin, flat panel, open at the back.
 *
 * @param outline its shape
 * @param clearanceM gap between a rigid floor and the panel's lower edge (m), 0 or more; empty for
 *     a panel in free space
 */
public record Panel(Outline outline, OptionalDouble clearanceM) {
  /** Checks the clearance. */
  public Panel {
    clearanceM.ifPresent(gap -> Checks.notNegative(gap, "clearance", "m"));
  }

  /** Returns a rectangular panel in free space (sides in m). */
  public static Panel inFreeSpace(double widthM, double heightM) {
    return new Panel(new RectangularOutline(widthM, heightM), OptionalDouble.empty());
  }

  /** Returns a rectangular panel over a rigid floor (sides and clearance in m). */
  public static Panel overFloor(double widthM, double heightM, double clearanceM) {
    return new Panel(new RectangularOutline(widthM, heightM), OptionalDouble.of(clearanceM));
  }

  /**
   * Returns the height of the coordinates' origin, the panel's centre, above the floor (m); in free
   * space, above the panel's own lowest point.
   */
  public double centreHeightM() {
    return clearanceM.orElse(0) - outline.bottomM();
  }
}
