package nullplane.acoustics;

import java.util.List;
import java.util.function.DoubleFunction;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Curve;
import nullplane.units.Levels;

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
  /** Raised whenever computed numbers change: results kept from an earlier version are void. */
  public static final String VERSION = "2";

  /**
   * Relative residual to reach, as a share of the wanted error of the impedance (1). Pressures are
   * then off by less than a thirtieth of the wanted accuracy; a test holds them to it.
   */
  private static final double TOLERANCE_SHARE = 1.0 / 30;

  private static final int FINEST_LEVEL = 6;
  private static final double NEAR_LOUDEST_DB = 20;
  private static final double CUT_RIM_ERROR = 0.15;

  private final List<Piston> pistons;
  private final Air air;
  private final Accuracy accuracy;
  private final double tolerance;
  private final PosedPanel posed;

  /**
   * A solver of the usual accuracy.
   *
   * @param panel the panel
   * @param pistons one or more pistons, inside the rim and not overlapping
   * @param air the air
   * @throws IllegalArgumentException if there is no piston, one crosses the rim, or two overlap
   */
  public PanelSolver(Panel panel, List<Piston> pistons, Air air) {
    this(panel, pistons, air, Accuracy.USUAL);
  }

  /**
   * A solver of a wanted accuracy.
   *
   * @param panel the panel
   * @param pistons one or more pistons, inside the rim and not overlapping
   * @param air the air
   * @param accuracy how exact the solutions have to be
   * @throws IllegalArgumentException if there is no piston, one crosses the rim, or two overlap
   */
  public PanelSolver(Panel panel, List<Piston> pistons, Air air, Accuracy accuracy) {
    this(panel, pistons, air, accuracy, TOLERANCE_SHARE * accuracy.impedance());
  }

  /**
   * @param panel the panel
   * @param pistons one or more pistons, inside the rim and not overlapping
   * @param air the air
   * @param accuracy how exact the solutions have to be
   * @param tolerance relative residual of the iterative solution (1)
   * @throws IllegalArgumentException if there is no piston, one crosses the rim, or two overlap
   */
  PanelSolver(Panel panel, List<Piston> pistons, Air air, Accuracy accuracy, double tolerance) {
    this.pistons = List.copyOf(pistons);
    this.air = air;
    this.accuracy = accuracy;
    this.tolerance = tolerance;
    checkPistons(panel, this.pistons);
    this.posed = PosedPanel.of(panel, this.pistons);
  }

  private static void checkPistons(Panel panel, List<Piston> pistons) {
    if (pistons.isEmpty()) {
      throw new IllegalArgumentException("a panel needs at least one piston");
    }
    for (int i = 0; i < pistons.size(); i++) {
      Piston piston = pistons.get(i);
      double room = panel.outline().distanceToRim(piston.xM(), piston.yM()) - piston.radiusM();
      if (room < -1e-9) {
        throw new IllegalArgumentException(
            "piston " + (i + 1) + " crosses the panel's rim by " + -room + " m");
      }
      for (int j = 0; j < i; j++) {
        Piston other = pistons.get(j);
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
   * Solves at one frequency, on finer and finer grids until the estimated error is within the
   * wanted accuracy or a grid would be too large; the estimate tells.
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
    GridChoice grids = GridChoice.of(posed.panel(), pistons, air.speedOfSoundMPerS() / frequencyHz);
    return refined(grids, frequencyHz, points, directions).solution();
  }

  /**
   * Solves at frequencies of a range on the same two grids, those that the highest one needs, so
   * that what is left of the grids' error does not jump from frequency to frequency.
   *
   * @param highestHz highest frequency (Hz)
   * @param points as in {@link #solve}
   * @param directions as in {@link #solve}
   * @return solves at a frequency (Hz) up to the highest
   * @throws nullplane.faults.ModelRangeException if the panel is too large for the frequency
   */
  public DoubleFunction<PanelSolution> upTo(
      double highestHz, List<FieldPoint> points, List<Direction> directions) {
    Checks.positive(highestHz, "highest frequency", "Hz");
    GridChoice grids = GridChoice.of(posed.panel(), pistons, air.speedOfSoundMPerS() / highestHz);
    Refined highest = refined(grids, highestHz, points, directions);
    int level = highest.level();
    GridSetup coarse = new GridSetup(posed, grids.grid(level - 1));
    GridSetup fine = new GridSetup(posed, grids.grid(level));
    double allowance = rimAllowance(grids.grid(level));
    return frequencyHz ->
        frequencyHz == highestHz
            ? highest.solution()
            : extrapolated(
                solveOn(coarse, frequencyHz, points, directions),
                solveOn(fine, frequencyHz, points, directions),
                allowance);
  }

  /** A solution and the level of the finer of its two grids. */
  private record Refined(PanelSolution solution, int level) {}

  private Refined refined(
      GridChoice grids, double frequencyHz, List<FieldPoint> points, List<Direction> directions) {
    PanelSolution coarse =
        solveOn(new GridSetup(posed, grids.grid(0)), frequencyHz, points, directions);
    for (int level = 1; ; level++) {
      PanelSolution fine =
          solveOn(new GridSetup(posed, grids.grid(level)), frequencyHz, points, directions);
      double allowance = rimAllowance(grids.grid(level));
      PanelSolution limit = extrapolated(coarse, fine, allowance);
      if (isWithinAccuracy(fine, limit, allowance)
          || level == FINEST_LEVEL
          || !grids.affordable(level + 1)) {
        return new Refined(limit, level);
      }
      coarse = fine;
    }
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

  /**
   * What a rim that cuts through cells may add to the error (1). How it happens to cut them makes
   * an error that changes sign from grid to grid and that the difference of two grids may miss; on
   * the round reference panels it stays below 0.15 (h/r)^1.5, r the radius of a disc of the panel's
   * area.
   */
  private double rimAllowance(UniformGrid grid) {
    Outline outline = posed.panel().outline();
    if (outline instanceof RectangularOutline) {
      return 0;
    }
    double radius = Math.sqrt(outline.areaM2() / Math.PI);
    double cells = Math.sqrt(grid.stepX() * grid.stepY()) / radius;
    return CUT_RIM_ERROR * Math.pow(cells, 1.5);
  }

  /** The limit of two grids, with the step taken there as the estimated error. */
  private static PanelSolution extrapolated(
      PanelSolution coarse, PanelSolution fine, double allowance) {
    double weight = GridChoice.EXTRAPOLATION;
    double difference = fine.largestDifference(coarse);
    return new PanelSolution(
        fine.frequencyHz(),
        fine.impedance().extrapolatedFrom(coarse.impedance(), weight),
        fine.pressure().extrapolatedFrom(coarse.pressure(), weight),
        fine.farField().extrapolatedFrom(coarse.farField(), weight),
        weight * difference + allowance);
  }

  private boolean isWithinAccuracy(PanelSolution fine, PanelSolution limit, double allowance) {
    double decibels =
        Math.max(
            largestStepDb(fine.pressure(), limit.pressure()),
            largestStepDb(fine.farField(), limit.farField()));
    return fine.impedance().largestDifference(limit.impedance()) + allowance <= accuracy.impedance()
        && decibels + Levels.ofAmplitudeRatio(1 + allowance) <= accuracy.pressureDb();
  }

  /** Largest change of level among entries within 20 dB of the loudest (dB). */
  private static double largestStepDb(ComplexMatrix fine, ComplexMatrix limit) {
    double quiet = limit.largestModulus() * Math.pow(10, -NEAR_LOUDEST_DB / 20);
    double largest = 0;
    for (int i = 0; i < limit.rows(); i++) {
      for (int j = 0; j < limit.columns(); j++) {
        if (limit.modulus(i, j) > quiet) {
          largest =
              Math.max(
                  largest,
                  Math.abs(Levels.ofAmplitudeRatio(fine.modulus(i, j) / limit.modulus(i, j))));
        }
      }
    }
    return largest;
  }

  private PanelSolution solveOn(
      GridSetup setup, double frequencyHz, List<FieldPoint> points, List<Direction> directions) {
    GridSolution solution = new GridSolution(posed.panel(), setup, air, frequencyHz, tolerance);
    double shift = posed.shiftM();
    List<FieldPoint> shifted =
        points.stream().map(p -> new FieldPoint(p.xM(), p.yM() + shift, p.zM())).toList();
    return new PanelSolution(
        frequencyHz,
        solution.impedance().symmetric(),
        solution.pressureAt(shifted),
        solution.farFieldAt(directions, shift),
        0);
  }
}
