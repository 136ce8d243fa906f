package nullplane.acoustics;

import nullplane.units.Checks;
import nullplane.units.FiniteText;

/**
 * A rectangle about the origin.
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
  public double leftM() {
    return -widthM / 2;
  }

  @Override
  public double bottomM() {
    return -heightM / 2;
  }

  @Override
  public double areaM2() {
    return widthM * heightM;
  }

  @Override
  public double centroidYM() {
    return 0;
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

  @Override
  public boolean mirrorsLeftToRight() {
    return true;
  }

  @Override
  public String inWords() {
    return FiniteText.of("%.1f cm wide, %.1f cm high", 1e2 * widthM, 1e2 * heightM);
  }
}
