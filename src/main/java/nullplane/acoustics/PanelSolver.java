package nullplane.acoustics;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * Solves the thin-screen equation of a panel with flush rigid pistons.
 *
 * <p>The pressure jump q across the panel obeys INT INT [grad v . grad q' - k^2 v q'] G dS dS' = j
 * w rho INT v u dS for every test function v that vanishes on the rim (A.-W. Maue, Z. Phys. 126
 * (1949) 601). It is solved by bilinear hats on two uniform grids and extrapolated to the limit;
 * see {@link UniformGrid} for the rim and {@link GridChoice} for the cells. The results depend on
 * the panel alone, never on a driver.
 *
 * <p>A panel that stands on the floor without a gap is solved as the panel of twice the height that
 * it forms with its image. Not modelled: the panel's flexing and thickness, the cavity behind a
 * cone, losses in air. Instances are immutable and may be shared between threads.
 */
public final class PanelSolver {
  private static final double DEFAULT_TOLERANCE = 1e-8;

  private final Panel panel;
  private final List<Piston> pistons;
  private final Air air;
  private final double tolerance;

  /**
   * @param panel the panel, of rectangular outline
   * @param pistons one or more pistons, inside the rim and not overlapping
   * @param air the air
   * @throws IllegalArgumentException if there is no piston, one crosses the rim, or two overlap
   */
  public PanelSolver(Panel panel, List<Piston> pistons, Air air) {
    this(panel, pistons, air, DEFAULT_TOLERANCE);
  }

  /**
   * @param panel the panel, of rectangular outline
   * @param pistons one or more pistons, inside the rim and not overlapping
   * @param air the air
   * @param tolerance relative residual of the iterative solution (1)
   * @throws IllegalArgumentException if there is no piston, one crosses the rim, or two overlap
   */
  PanelSolver(Panel panel, List<Piston> pistons, Air air, double tolerance) {
    this.panel = panel;
    this.pistons = List.copyOf(pistons);
    this.air = air;
    this.tolerance = tolerance;
    if (this.pistons.isEmpty()) {
      throw new IllegalArgumentException("a panel needs at least one piston");
    }
    for (int i = 0; i < this.pistons.size(); i++) {
      Piston piston = this.pistons.get(i);
      double room = panel.outline().distanceToRim(piston.xM(), piston.yM()) - piston.radiusM();
      if (room < -1e-9) {
        throw new IllegalArgumentException(
            "piston " + (i + 1) + " crosses the panel's rim by " + -room + " m");
      }
      for (int j = 0; j < i; j++) {
        Piston other = this.pistons.get(j);
        double gap =
            Math.hypot(piston.xM() - other.xM(), piston.yM() - other.yM())
                - piston.radiusM()
                - other.radiusM();
        if (gap < -1e-9) {
          throw new IllegalArgumentException(
              "pistons " + (j + 1) + " and " + (i + 1) + " overlap by " + -gap + " m");
        }
      }
    }
  }

  /**
   * Solves at one frequency.
   *
   * @param frequencyHz frequency (Hz)
   * @param points where the pressure is wanted; not closer to the panel than a few centimetres
   * @param directions in which the far field is wanted
   * @return impedance, pressures, far field and their estimated error
   * @throws nullplane.faults.ModelRangeException if the panel is too large for the frequency
   * @throws nullplane.faults.NumericalException if the iteration fails
   */
  public PanelSolution solve(
      double frequencyHz, List<FieldPoint> points, List<Direction> directions) {
    Checks.positive(frequencyHz, "frequency", "Hz");
    Mirrored problem = Mirrored.of(panel, pistons);
    GridChoice grids =
        GridChoice.of(problem.panel(), pistons, air.speedOfSoundMPerS() / frequencyHz);
    PanelSolution coarse = solveOn(grids.coarse(), problem, frequencyHz, points, directions);
    PanelSolution fine = solveOn(grids.fine(), problem, frequencyHz, points, directions);
    double weight = GridChoice.EXTRAPOLATION;
    double difference =
        Math.max(
            fine.impedance().largestDifference(coarse.impedance()),
            Math.max(
                fine.pressure().largestDifference(coarse.pressure()),
                fine.farField().largestDifference(coarse.farField())));
    return new PanelSolution(
        frequencyHz,
        fine.impedance().extrapolatedFrom(coarse.impedance(), weight),
        fine.pressure().extrapolatedFrom(coarse.pressure(), weight),
        fine.farField().extrapolatedFrom(coarse.farField(), weight),
        weight * difference);
  }

  /**
   * Solves over a frequency axis, one frequency after the other.
   *
   * @param frequencyHz the axis (Hz)
   * @param points as in {@link #solve}
   * @param directions as in {@link #solve}
   */
  public PanelResponse respond(
      Curve frequencyHz, List<FieldPoint> points, List<Direction> directions) {
    return new PanelResponse(
        frequencyHz, frequencyHz.stream().mapToObj(f -> solve(f, points, directions)).toList());
  }

  private PanelSolution solveOn(
      UniformGrid grid,
      Mirrored problem,
      double frequencyHz,
      List<FieldPoint> points,
      List<Direction> directions) {
    List<double[]> heard = new ArrayList<>();
    List<double[]> driven = new ArrayList<>();
    for (Piston piston : problem.pistons()) {
      double[] own = grid.loadOf(piston);
      heard.add(own);
      driven.add(problem.standsOnFloor() ? withMirror(own, grid) : own);
    }
    GridSolution solution =
        new GridSolution(problem.panel(), grid, driven, air, frequencyHz, tolerance);
    double shift = problem.shiftM();
    List<FieldPoint> shifted =
        points.stream().map(p -> new FieldPoint(p.xM(), p.yM() + shift, p.zM())).toList();
    return new PanelSolution(
        frequencyHz,
        solution.impedance(heard),
        solution.pressureAt(shifted),
        solution.farFieldAt(directions, shift),
        0);
  }

  /** Adds to a load its mirror image in the grid's middle row. */
  private static double[] withMirror(double[] load, UniformGrid grid) {
    double[] sum = load.clone();
    int width = grid.nodesX();
    for (int row = 0; row < grid.nodesY(); row++) {
      int mirrored = grid.nodesY() - 1 - row;
      for (int column = 0; column < width; column++) {
        sum[row * width + column] += load[mirrored * width + column];
      }
    }
    return sum;
  }

  /**
   * The problem as it is solved: the panel itself, or, when it stands on the floor, the free panel
   * of twice the height.
   *
   * @param panel the panel to solve
   * @param pistons the real pistons, in its coordinates
   * @param standsOnFloor whether the mirrored pistons move along
   * @param shiftM what to add to a y of the real panel (m)
   */
  private record Mirrored(Panel panel, List<Piston> pistons, boolean standsOnFloor, double shiftM) {
    static Mirrored of(Panel panel, List<Piston> pistons) {
      OptionalDouble gap = panel.clearanceM();
      if (gap.isEmpty() || gap.getAsDouble() > 0) {
        return new Mirrored(panel, pistons, false, 0);
      }
      double shift = panel.outline().heightM() / 2;
      Panel doubled = Panel.inFreeSpace(panel.outline().widthM(), 2 * panel.outline().heightM());
      List<Piston> moved =
          pistons.stream().map(p -> new Piston(p.xM(), p.yM() + shift, p.radiusM())).toList();
      return new Mirrored(doubled, moved, true, shift);
    }
  }
}
