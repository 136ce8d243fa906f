package nullplane.acoustics;

import java.util.List;
import nullplane.units.Curve;

/**
 * A panel's acoustics over a frequency axis.
 *
 * @param frequencyHz the axis (Hz), ascending
 * @param solutions one per frequency
 */
public record PanelResponse(Curve frequencyHz, List<PanelSolution> solutions) {
  /** Copies the list and checks that it matches the axis. */
  public PanelResponse {
    solutions = List.copyOf(solutions);
    if (solutions.size() != frequencyHz.size()) {
      throw new IllegalArgumentException(
          frequencyHz.size() + " frequencies with " + solutions.size() + " solutions");
    }
  }

  /** Returns the largest estimated relative error over the axis (1). */
  public double largestEstimatedError() {
    return solutions.stream().mapToDouble(PanelSolution::estimatedError).max().orElse(0);
  }
}
