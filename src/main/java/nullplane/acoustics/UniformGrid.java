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

  private final int intervalsX;
  private final int intervalsY;
  private final double stepX;
  private final double stepY;

  /**
   * @param widthM panel width (m)
   * @param heightM panel height (m)
   * @param intervalsX cells across, 4 or more
   * @param intervalsY cells along, 4 or more
   */
  UniformGrid(double widthM, double heightM, int intervalsX, int intervalsY) {
    if (intervalsX < 4 || intervalsY < 4) {
      throw new IllegalArgumentException(
          "grid of " + intervalsX + " x " + intervalsY + " cells; allowed: 4 or more each way");
    }
    this.intervalsX = intervalsX;
    this.intervalsY = intervalsY;
    this.stepX = widthM / (intervalsX - 2 * RIM_OFFSET);
    this.stepY = heightM / (intervalsY - 2 * RIM_OFFSET);
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
    return (column + 1 - 0.5 * intervalsX) * stepX;
  }

  /** Returns the y of a row of nodes, counted from 0 (m). */
  double nodeY(int row) {
    return (row + 1 - 0.5 * intervalsY) * stepY;
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
    double lowest = piston.yM() - radius;
    double highest = piston.yM() + radius;
    int firstCell = (int) Math.floor((lowest / stepY) + 0.5 * intervalsY);
    int lastCell = (int) Math.floor((highest / stepY) + 0.5 * intervalsY);
    GaussRule rule = GaussRule.of(24);
    double total = 0;
    for (int cell = firstCell; cell <= lastCell; cell++) {
      double cellBottom = (cell - 0.5 * intervalsY) * stepY;
      double from = Math.asin(clampToUnit((Math.max(cellBottom, lowest) - piston.yM()) / radius));
      double to =
          Math.asin(clampToUnit((Math.min(cellBottom + stepY, highest) - piston.yM()) / radius));
      if (!(to > from)) {
        continue;
      }
      for (int g = 0; g < rule.size(); g++) {
        double angle = from + (to - from) * rule.point(g);
        double halfChord = radius * Math.cos(angle);
        double y = piston.yM() + radius * Math.sin(angle);
        double weight = (to - from) * rule.weight(g) * halfChord;
        double upperShare = (y - cellBottom) / stepY;
        total += weight * 2 * halfChord;
        addChord(load, cell - 1, piston.xM(), halfChord, weight * (1 - upperShare));
        addChord(load, cell, piston.xM(), halfChord, weight * upperShare);
      }
    }
    double scale = piston.areaM2() / total;
    for (int i = 0; i < load.length; i++) {
      load[i] *= scale;
    }
    return load;
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
