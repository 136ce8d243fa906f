package nullplane.acoustics;

import java.util.List;
import nullplane.faults.ModelRangeException;
import nullplane.units.FiniteText;

/**
 * The grids a panel is solved on, each with 3/2 the cells of the one before each way.
 *
 * <p>The cells of the coarsest grid are small enough for the smallest piston (3.4 to its radius)
 * and the wavelength (9.5 to it), whose errors add as squares, and at most a tenth of a rectangle's
 * narrower side, a 22nd of another outline's, or 1.5 times the gap to the floor. Their numbers are
 * multiples of 4 that suit the transforms. Measured on the reference panels, the extrapolation from
 * this grid and the next one holds the impedance within 0.15 % and the pressures within 0.1 %.
 *
 * @param outline the outline
 * @param cellsX cells across on the coarsest grid
 * @param cellsY cells along on the coarsest grid
 */
record GridChoice(Outline outline, int cellsX, int cellsY) {
  private static final double CELLS_PER_RADIUS = 3.4;
  private static final double CELLS_PER_WAVELENGTH = 9.5;
  private static final double CELLS_ACROSS = 10;
  private static final double CELLS_ACROSS_CUT = 22;
  private static final double CELLS_PER_GAP = 1 / 1.5;
  private static final double LEAST_CELL_M = 0.005;
  private static final double MOST_UNKNOWNS = 1e6;

  /**
   * Weight of the difference fine minus coarse that removes an error of second order in the cell.
   */
  static final double EXTRAPOLATION = 1 / (1.5 * 1.5 - 1);

  /**
   * Chooses.
   *
   * @param panel the panel
   * @param pistons its pistons
   * @param wavelengthM wavelength (m)
   * @throws ModelRangeException if the second grid would have more than a million unknowns
   */
  static GridChoice of(Panel panel, List<Piston> pistons, double wavelengthM) {
    double width = panel.outline().widthM();
    double height = panel.outline().heightM();
    boolean cut = !(panel.outline() instanceof RectangularOutline);
    double cell = Math.min(width, height) / (cut ? CELLS_ACROSS_CUT : CELLS_ACROSS);
    for (Piston piston : pistons) {
      double perMetre =
          Math.hypot(CELLS_PER_RADIUS / piston.radiusM(), CELLS_PER_WAVELENGTH / wavelengthM);
      cell = Math.min(cell, 1 / perMetre);
    }
    double gap = panel.clearanceM().orElse(Double.POSITIVE_INFINITY);
    if (gap > 0) {
      cell = Math.min(cell, Math.max(LEAST_CELL_M, gap / CELLS_PER_GAP));
    }
    GridChoice choice =
        new GridChoice(
            panel.outline(), suitableAtLeast(width / cell), suitableAtLeast(height / cell));
    if (!choice.affordable(1)) {
      throw new ModelRangeException(
          "panel solver",
          FiniteText.of(
              "a panel %s with pistons of %.1f cm at %.0f mm wavelength needs %.1f million unknowns"
                  + " and",
              panel.outline().inWords(),
              1e2 * pistons.stream().mapToDouble(Piston::radiusM).min().orElse(0),
              1e3 * wavelengthM,
              choice.unknowns(1) / 1e6),
          "at most 1 million are solved: use a smaller panel, a larger woofer or a lower frequency");
    }
    return choice;
  }

  /** Returns a grid: 0 is the coarsest, each next one has 3/2 the cells each way. */
  UniformGrid grid(int level) {
    return new UniformGrid(outline, cells(cellsX, level), cells(cellsY, level));
  }

  /** Returns whether a grid has no more unknowns than can be solved. */
  boolean affordable(int level) {
    return unknowns(level) <= MOST_UNKNOWNS;
  }

  private double unknowns(int level) {
    return (double) cells(cellsX, level) * cells(cellsY, level);
  }

  private static int cells(int coarsest, int level) {
    return (int) Math.round(coarsest * Math.pow(1.5, level));
  }

  /** Returns a number of cells, a multiple of 4, that suits the transforms on each grid. */
  private static int suitableAtLeast(double cells) {
    return 4 * TransformLength.atLeast((int) Math.ceil(Math.min(cells, 1e6) / 4 - 1e-9));
  }
}
