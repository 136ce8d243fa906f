package nullplane.scoring;

import java.util.Optional;
import nullplane.acoustics.FieldPlan;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.PanelFigures;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.units.Air;

/**
 * One stack's panel, solved so that it can be looked at from all sides.
 *
 * @param brief the stack
 * @param ear the listening point, the only point of the responses
 * @param plan the directions of the response, in its order
 * @param response the panel as it stands
 * @param freeSpace the same panel without a floor, on the same frequencies and with the axis as its
 *     only direction; empty if there is no floor
 * @param air the air
 */
public record PanelStudy(
    StackBrief brief,
    FieldPoint ear,
    FieldPlan plan,
    PanelResponse response,
    Optional<PanelResponse> freeSpace,
    Air air) {
  private static final double SAME = 1e-12;

  /** Checks that the responses share their axis, and that there is a floor where it says so. */
  public PanelStudy {
    boolean overFloor = brief.panel().clearanceM().isPresent();
    if (freeSpace.isPresent() != overFloor) {
      throw new IllegalArgumentException(
          "a free-space response is needed for a panel over a floor, and only there");
    }
    if (freeSpace.isPresent()
        && !freeSpace.orElseThrow().frequencyHz().equals(response.frequencyHz())) {
      throw new IllegalArgumentException("the free-space response has other frequencies");
    }
  }

  /** Returns whether the panel is over a floor. */
  public boolean overFloor() {
    return freeSpace.isPresent();
  }

  /**
   * Returns the index of a solved frequency (Hz).
   *
   * @throws IllegalArgumentException if it was not solved
   */
  public int indexOf(double frequencyHz) {
    for (int i = 0; i < response.frequencyHz().size(); i++) {
      if (Math.abs(response.frequencyHz().at(i) - frequencyHz) <= SAME * frequencyHz) {
        return i;
      }
    }
    throw new IllegalArgumentException(frequencyHz + " Hz was not solved");
  }

  /** Returns the solution at an index of the axis, as the panel stands. */
  public PanelSolution solution(int index) {
    return response.solutions().get(index);
  }

  /** Returns the solution at an index of the axis in free space. */
  public PanelSolution freeSolution(int index) {
    return freeSpace.orElse(response).solutions().get(index);
  }

  /** Returns the figures at an index of the axis, as the panel stands. */
  public PanelFigures figures(int index) {
    return PanelFigures.of(solution(index), plan.axisRow(), brief.pistons(), air);
  }

  /** Returns the figures at an index of the axis in free space. */
  public PanelFigures freeFigures(int index) {
    return PanelFigures.of(freeSolution(index), plan.axisRow(), brief.pistons(), air);
  }

  /** Returns what the floor makes of the pressure at the listening point, a ratio (1). */
  public double floorRatio(int index) {
    return PanelFigures.sumModulus(solution(index).pressure(), 0)
        / PanelFigures.sumModulus(freeSolution(index).pressure(), 0);
  }
}
