package nullplane.acoustics;

import nullplane.units.Checks;

/**
 * A rectangle.
 *
 * @param widthM width (m)
 * @param heightM height (m)
 */
public record RectangularOutline(double widthM, double heightM) implements Outline {
  /** Checks that both sides are finite and positive. */
  public RectangularOutline {
    Checks.positive(widthM, "panel width", "m");
    Checks.positive(heightM, "panel height", "m");
  }

  @Override
  public double areaM2() {
    return widthM * heightM;
  }

  @Override
  public double distanceToRim(double xM, double yM) {
    double acrossM = widthM / 2 - Math.abs(xM);
    double alongM = heightM / 2 - Math.abs(yM);
    if (acrossM < 0 && alongM < 0) {
      return -Math.hypot(acrossM, alongM);
    }
    return Math.min(acrossM, alongM);
  }
}
