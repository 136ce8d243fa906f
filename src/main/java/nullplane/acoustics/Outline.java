package nullplane.acoustics;

/**
 * The shape of a panel, in its own plane. Coordinates are the spec's: x to the listener's right, y
 * up, the origin at what the spec calls the panel's centre.
 */
public sealed interface Outline permits RectangularOutline, RoundOutline, PolygonOutline {
  /** Returns the x of the bounding rectangle's left side (m). */
  double leftM();

  /** Returns the y of the bounding rectangle's lower side (m). */
  double bottomM();

  /** Returns the width of the bounding rectangle (m). */
  double widthM();

  /** Returns the height of the bounding rectangle (m). */
  double heightM();

  /** Returns the panel's area (m2). */
  double areaM2();

  /** Returns the y of the area's centroid, where an even sheet balances (m). */
  double centroidYM();

  /**
   * Returns the distance from a point to the nearest part of the rim (m): positive inside, negative
   * outside.
   *
   * @param xM to the listener's right (m)
   * @param yM up (m)
   */
  double distanceToRim(double xM, double yM);

  /** Returns whether the left half mirrors the right one about x = 0. */
  boolean mirrorsLeftToRight();

  /** Returns the shape in a few words with its sizes, for people. */
  String inWords();
}
