package nullplane.acoustics;

import nullplane.units.Checks;
import nullplane.units.FiniteText;

/**
 * A circle about the origin.
 *
 * @param diameterM diameter (m)
 */
public record RoundOutline(double diameterM) implements Outline {
  /** Checks that the diameter is finite and positive. */
  public RoundOutline {
    Checks.positive(diameterM, "panel diameter", "m");
  }

  @Override
  public double leftM() {
    return -diameterM / 2;
  }

  @Override
  public double bottomM() {
    return -diameterM / 2;
  }

  @Override
  public double widthM() {
    return diameterM;
  }

  @Override
  public double heightM() {
    return diameterM;
  }

  @Override
  public double areaM2() {
    return Math.PI * diameterM * diameterM / 4;
  }

  @Override
  public double centroidYM() {
    return 0;
  }

  @Override
  public double distanceToRim(double xM, double yM) {
    return diameterM / 2 - Math.hypot(xM, yM);
  }

  @Override
  public boolean mirrorsLeftToRight() {
    return true;
  }

  @Override
  public String inWords() {
    return FiniteText.of("round, %.1f cm across", 1e2 * diameterM);
  }
}
