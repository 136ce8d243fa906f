package nullplane.acoustics;

/** The shape of a panel, in its own plane, centred on the bounding rectangle's centre. */
public sealed interface Outline permits RectangularOutline {
  /** Returns the width of the bounding rectangle (m). */
  double widthM();

  /** Returns the height of the bounding rectangle (m). */
  double heightM();

  /** Returns the panel's area (m2). */
  double areaM2();

  /**
   * Returns the distance from a point to the nearest part of the rim (m): positive inside, negative
   * outside.
   *
   * @param xM to the listener's right (m)
   * @param yM up (m)
   */
  double distanceToRim(double xM, double yM);
}
