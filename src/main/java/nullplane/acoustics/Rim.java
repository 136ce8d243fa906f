package nullplane.acoustics;

/**
 * Where a grid's hats live and how stiffly they are held near a rim that cuts through cells.
 *
 * <p>A hat outside is left out. One near the rim is kept, and a spring on it moves the line where
 * the discrete pressure jump seems to vanish to where the rim really is. The spring is that of a
 * straight rim along the grid: there the discrete problem depends on one number, the distance of
 * the outermost hat from the rim in cells, and {@link #OFFSET_CELLS} lists how far inside the next,
 * absent row the effective rim lies for a spring of {@link #SPRING_SHARE}/(1 - SPRING_SHARE). A rim
 * that crosses the grid askew lies farther out by {@link #ASKEW_CELLS} sin^4(2 angle) cells, which
 * is taken off. The springs do not depend on frequency, since the jump near a rim starts as the
 * square root of the distance at every frequency.
 *
 * <p>Source: derived. Table: the strip in potential flow (H. Lamb, Hydrodynamics (1932), art. 71),
 * as for {@link UniformGrid#RIM_OFFSET}; the test repeats it. Skew: measured on a square turned by
 * 10 to 45 degrees against the same square along the grid. With it the error is of about second
 * order in the cell for any outline, where a plain staircase is of first order and noisy.
 */
final class Rim {
  static final double[] SPRING_SHARE = {
    0, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50, 0.55, 0.60, 0.65, 0.70, 0.75,
    0.80, 0.85, 0.90, 0.95, 0.98
  };
  static final double[] OFFSET_CELLS = {
    0.1151, 0.2381, 0.3433, 0.4346, 0.5145, 0.5851, 0.6478, 0.7040, 0.7546, 0.8003, 0.8420, 0.8800,
    0.9148, 0.9469, 0.9765, 1.0039, 1.0294, 1.0531, 1.0752, 1.0959, 1.1077
  };
  private static final double ASKEW_CELLS = 0.0196;

  /** Own entry of a hat over h, tangentially uniform: what a spring of 1 is weighed against. */
  private static final double OWN_ENTRY = 0.57;

  private final boolean[] active;
  private final double[] spring;
  private final double[] scale;
  private final boolean plain;

  /**
   * @param grid the grid
   * @param outline the outline
   */
  Rim(UniformGrid grid, Outline outline) {
    int unknowns = grid.unknowns();
    active = new boolean[unknowns];
    spring = new double[unknowns];
    scale = new double[unknowns];
    double step = Math.sqrt(grid.stepX() * grid.stepY());
    boolean anyHeld = false;
    // a rectangle's own grid is made so that every hat is free
    boolean own = outline instanceof RectangularOutline;
    for (int row = 0; row < grid.nodesY(); row++) {
      for (int column = 0; column < grid.nodesX(); column++) {
        int n = row * grid.nodesX() + column;
        double share =
            own ? 0 : springShare(offsetCells(outline, grid.nodeX(column), grid.nodeY(row), grid));
        active[n] = share < 1;
        spring[n] = active[n] ? step * share / (1 - share) : 0;
        scale[n] = active[n] ? 1 / Math.sqrt(1 + spring[n] / (OWN_ENTRY * step)) : 0;
        anyHeld |= share > 0;
      }
    }
    plain = !anyHeld;
  }

  /**
   * How far inside the next row, one cell farther out, the rim lies for a hat at a point (cells).
   */
  private static double offsetCells(Outline outline, double x, double y, UniformGrid grid) {
    double hx = grid.stepX();
    double hy = grid.stepY();
    double distance = outline.distanceToRim(x, y);
    if (distance > 1.5 * Math.max(hx, hy)) {
      return 0;
    }
    double slopeX =
        (outline.distanceToRim(x + 0.01 * hx, y) - outline.distanceToRim(x - 0.01 * hx, y))
            / (0.02 * hx);
    double slopeY =
        (outline.distanceToRim(x, y + 0.01 * hy) - outline.distanceToRim(x, y - 0.01 * hy))
            / (0.02 * hy);
    double steepness = Math.hypot(slopeX, slopeY);
    if (steepness < 0.99) {
      // opposite a corner there is no one normal
      return 1 - distance / Math.sqrt(hx * hy);
    }
    // the cell's width along the rim's normal, and the sine of twice its angle
    double cell = Math.hypot(hx * slopeX, hy * slopeY) / steepness;
    double askew = 2 * slopeX * slopeY / (steepness * steepness);
    double square = askew * askew;
    return 1 - distance / cell + ASKEW_CELLS * square * square;
  }

  private Rim(boolean[] active, double[] spring, double[] scale, boolean plain) {
    this.active = active;
    this.spring = spring;
    this.scale = scale;
    this.plain = plain;
  }

  /**
   * Returns the rim of the left half and the middle column of a grid that is the same both sides.
   */
  Rim leftHalf(UniformGrid grid) {
    int columns = (grid.nodesX() + 1) / 2;
    int unknowns = columns * grid.nodesY();
    boolean[] halfActive = new boolean[unknowns];
    for (int n = 0; n < unknowns; n++) {
      halfActive[n] = active[n / columns * grid.nodesX() + n % columns];
    }
    return new Rim(halfActive, leftHalf(spring, grid), leftHalf(scale, grid), plain);
  }

  /** Returns the left half and the middle column of a vector, one real value per unknown. */
  static double[] leftHalf(double[] vector, UniformGrid grid) {
    int columns = (grid.nodesX() + 1) / 2;
    double[] half = new double[columns * grid.nodesY()];
    for (int n = 0; n < half.length; n++) {
      half[n] = vector[n / columns * grid.nodesX() + n % columns];
    }
    return half;
  }

  /** Returns the spring share that puts the effective rim at an offset; 1 for a hat left out. */
  static double springShare(double offsetCells) {
    if (offsetCells <= OFFSET_CELLS[0]) {
      return 0;
    }
    for (int i = 1; i < OFFSET_CELLS.length; i++) {
      if (offsetCells <= OFFSET_CELLS[i]) {
        double part = (offsetCells - OFFSET_CELLS[i - 1]) / (OFFSET_CELLS[i] - OFFSET_CELLS[i - 1]);
        return SPRING_SHARE[i - 1] + part * (SPRING_SHARE[i] - SPRING_SHARE[i - 1]);
      }
    }
    return 1;
  }

  /** Returns whether every hat is free, as on a rectangle that the grid was made for. */
  boolean plain() {
    return plain;
  }

  /** Returns whether a hat takes part. */
  boolean active(int unknown) {
    return active[unknown];
  }

  /** Adds the springs to a product and clears the hats that are left out (interleaved complex). */
  void hold(double[] vector, double[] product) {
    if (plain) {
      return;
    }
    for (int n = 0; n < active.length; n++) {
      if (!active[n]) {
        product[2 * n] = 0;
        product[2 * n + 1] = 0;
      } else if (spring[n] > 0) {
        product[2 * n] += spring[n] * vector[2 * n];
        product[2 * n + 1] += spring[n] * vector[2 * n + 1];
      }
    }
  }

  /** Scales a vector so that held hats weigh less in a preconditioner (interleaved complex). */
  void soften(double[] vector) {
    if (plain) {
      return;
    }
    for (int n = 0; n < scale.length; n++) {
      vector[2 * n] *= scale[n];
      vector[2 * n + 1] *= scale[n];
    }
  }
}
