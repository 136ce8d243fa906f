package nullplane.acoustics;

/**
 * A uniform grid of bilinear hat functions over a rectangular panel.
 *
 * <p>The outermost hats vanish slightly outside the rim. A Galerkin solution on a uniform grid
 * behaves, away from a straight rim, like the exact solution for a rim moved inwards by a fixed
 * share of a cell, because the pressure jump starts as the square root of the distance whatever the
 * frequency. {@link #RIM_OFFSET} is that share; moving the grid's edge outwards by it removes the
 * error that is of first order in the cell size.
 */
final class UniformGrid {
  /**
   * How far a straight rim of the discrete problem lies inside the line where the hats vanish, as a
   * share of a cell (1).
   *
   * <p>Source: derived. The strip in potential flow (H. Lamb, Hydrodynamics (1932), art. 71) has
   * jump 2 sqrt((W/2)^2 - x^2) and added mass rho pi W^2/4 per length; the width that gives the
   * discrete strip's added mass falls short of the grid's by 2 x 0.1151 cells as the grid is
   * refined. The derivation is repeated in a test.
   */
  static final double RIM_OFFSET = 0.1151;

  private static final int SAMPLES = 16;
  private static final GaussRule CHORD_RULE = GaussRule.of(24);

  private final int intervalsX;
  private final int intervalsY;
  private final double stepX;
  private final double stepY;
  private final double centreX;
  private final double centreY;

  /**
   * A grid over a rectangle about the origin.
   *
   * @param widthM width (m)
   * @param heightM height (m)
   * @param intervalsX cells across, 4 or more
   * @param intervalsY cells along, 4 or more
   */
  UniformGrid(double widthM, double heightM, int intervalsX, int intervalsY) {
    this(new RectangularOutline(widthM, heightM), intervalsX, intervalsY);
  }

  /**
   * A grid over an outline's bounding rectangle.
   *
   * @param outline the outline
   * @param intervalsX cells across, 4 or more
   * @param intervalsY cells along, 4 or more
   */
  UniformGrid(Outline outline, int intervalsX, int intervalsY) {
    if (intervalsX < 4 || intervalsY < 4) {
      throw new IllegalArgumentException(
          "grid of " + intervalsX + " x " + intervalsY + " cells; allowed: 4 or more each way");
    }
    this.intervalsX = intervalsX;
    this.intervalsY = intervalsY;
    this.stepX = outline.widthM() / (intervalsX - 2 * RIM_OFFSET);
    this.stepY = outline.heightM() / (intervalsY - 2 * RIM_OFFSET);
    this.centreX = outline.leftM() + outline.widthM() / 2;
    this.centreY = outline.bottomM() + outline.heightM() / 2;
  }

  /** Returns the number of hats across. */
  int nodesX() {
    return intervalsX - 1;
  }

  /** Returns the number of hats along. */
  int nodesY() {
    return intervalsY - 1;
  }

  /** Returns the number of unknowns. */
  int unknowns() {
    return nodesX() * nodesY();
  }

  /** Returns the cell width (m). */
  double stepX() {
    return stepX;
  }

  /** Returns the cell height (m). */
  double stepY() {
    return stepY;
  }

  /** Returns the x of a column of nodes, counted from 0 (m). */
  double nodeX(int column) {
    return centreX + (column + 1 - 0.5 * intervalsX) * stepX;
  }

  /** Returns the y of a row of nodes, counted from 0 (m). */
  double nodeY(int row) {
    return centreY + (row + 1 - 0.5 * intervalsY) * stepY;
  }

  /**
   * Integrates every hat over a disc.
   *
   * <p>In each row of cells the chord's part under a hat is integrated in closed form across, and
   * by Gauss's rule along, in the angle that makes the chord smooth. The result is scaled so that
   * its sum is the disc's area, which the hats, being a partition of unity, give exactly.
   *
   * @param piston the disc
   * @return one value per unknown, row by row (m2)
   */
  double[] loadOf(Piston piston) {
    double[] load = new double[unknowns()];
    double radius = piston.radiusM();
    double middle = piston.yM() - centreY;
    double lowest = middle - radius;
    double highest = middle + radius;
    int firstCell = (int) Math.floor((lowest / stepY) + 0.5 * intervalsY);
    int lastCell = (int) Math.floor((highest / stepY) + 0.5 * intervalsY);
    GaussRule rule = CHORD_RULE;
    double total = 0;
    for (int cell = firstCell; cell <= lastCell; cell++) {
      double cellBottom = (cell - 0.5 * intervalsY) * stepY;
      double from = Math.asin(clampToUnit((Math.max(cellBottom, lowest) - middle) / radius));
      double to = Math.asin(clampToUnit((Math.min(cellBottom + stepY, highest) - middle) / radius));
      if (!(to > from)) {
        continue;
      }
      for (int g = 0; g < rule.size(); g++) {
        double angle = from + (to - from) * rule.point(g);
        double halfChord = radius * Math.cos(angle);
        double y = middle + radius * Math.sin(angle);
        double weight = (to - from) * rule.weight(g) * halfChord;
        double upperShare = (y - cellBottom) / stepY;
        total += weight * 2 * halfChord;
        addChord(load, cell - 1, piston.xM() - centreX, halfChord, weight * (1 - upperShare));
        addChord(load, cell, piston.xM() - centreX, halfChord, weight * upperShare);
      }
    }
    double scale = piston.areaM2() / total;
    for (int i = 0; i < load.length; i++) {
      load[i] *= scale;
    }
    return load;
  }

  /**
   * Integrates every hat over a disc, and over what lies beyond the rim next to it as if the panel
   * went on there moving like its nearest point. The springs of {@link Rim} are made for such
   * loads; it matters for a disc within a cell of the rim only.
   *
   * @param piston the disc
   * @param outline the outline
   * @return one value per unknown, row by row (m2)
   */
  double[] loadOf(Piston piston, Outline outline) {
    double[] load = loadOf(piston);
    double room = outline.distanceToRim(piston.xM(), piston.yM()) - piston.radiusM();
    if (outline instanceof RectangularOutline || room > Math.max(stepX, stepY)) {
      return load;
    }
    for (int row = 0; row < nodesY(); row++) {
      for (int column = 0; column < nodesX(); column++) {
        double distance = outline.distanceToRim(nodeX(column), nodeY(row));
        if (Math.abs(distance) < 1.5 * Math.max(stepX, stepY)) {
          load[row * nodesX() + column] += beyondRim(piston, outline, column, row);
        }
      }
    }
    return load;
  }

  private double beyondRim(Piston piston, Outline outline, int column, int row) {
    double sum = 0;
    for (int i = 0; i < SAMPLES; i++) {
      double tx = (2 * i + 1.0) / SAMPLES - 1;
      for (int j = 0; j < SAMPLES; j++) {
        double ty = (2 * j + 1.0) / SAMPLES - 1;
        double x = nodeX(column) + tx * stepX;
        double y = nodeY(row) + ty * stepY;
        double distance = outline.distanceToRim(x, y);
        if (distance < 0 && nearestMoves(piston, outline, x, y, distance)) {
          sum += (1 - Math.abs(tx)) * (1 - Math.abs(ty));
        }
      }
    }
    return sum * 4 * stepX * stepY / (SAMPLES * SAMPLES);
  }

  private static boolean nearestMoves(
      Piston piston, Outline outline, double x, double y, double distance) {
    double d = 1e-4 * piston.radiusM();
    double slopeX = (outline.distanceToRim(x + d, y) - outline.distanceToRim(x - d, y)) / (2 * d);
    double slopeY = (outline.distanceToRim(x, y + d) - outline.distanceToRim(x, y - d)) / (2 * d);
    return Math.hypot(x - distance * slopeX - piston.xM(), y - distance * slopeY - piston.yM())
        < piston.radiusM() * (1 + 1e-6);
  }

  private void addChord(double[] load, int row, double centre, double halfChord, double weight) {
    if (row < 0 || row >= nodesY()) {
      return;
    }
    double left = (centre - halfChord) / stepX + 0.5 * intervalsX - 1;
    double right = (centre + halfChord) / stepX + 0.5 * intervalsX - 1;
    int first = Math.max(0, (int) Math.floor(left));
    int last = Math.min(nodesX() - 1, (int) Math.ceil(right));
    for (int column = first; column <= last; column++) {
      double part = hatIntegral(right - column) - hatIntegral(left - column);
      load[row * nodesX() + column] += weight * part * stepX;
    }
  }

  /** Integral of the unit hat from minus infinity to t. */
  private static double hatIntegral(double t) {
    if (t <= -1) {
      return 0;
    }
    if (t >= 1) {
      return 1;
    }
    return t < 0 ? 0.5 * (1 + t) * (1 + t) : 1 - 0.5 * (1 - t) * (1 - t);
  }

  private static double clampToUnit(double value) {
    return Math.max(-1, Math.min(1, value));
  }
}
