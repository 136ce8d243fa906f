package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.ScoringAxis;
import nullplane.scoring.StackAcoustics;
import nullplane.scoring.StackBrief;
import nullplane.units.Air;

/** Solves every stack's panel at every frequency of the axis, spread over the threads. */
final class PanelStep {
  private PanelStep() {}

  static List<StackAcoustics> solve(
      DesignSpec spec,
      ScoringAxis axis,
      Air air,
      Workers workers,
      ProgressLine progress,
      StopSignal stop) {
    List<Callable<PanelSolution>> tasks = new ArrayList<>();
    for (StackBrief stack : spec.stacks()) {
      PanelSolver solver = new PanelSolver(stack.panel(), stack.pistons(), air);
      List<FieldPoint> ear = List.of(spec.listening().pointFor(stack.panel()));
      for (int f = 0; f < axis.frequencyHz().size(); f++) {
        double frequencyHz = axis.frequencyHz().at(f);
        tasks.add(
            () -> {
              heed(stop);
              PanelSolution solution = solver.solve(frequencyHz, ear, List.of());
              progress.step();
              return solution;
            });
      }
    }
    List<PanelSolution> solutions = workers.all(tasks);
    heed(stop);
    int points = axis.frequencyHz().size();
    List<StackAcoustics> result = new ArrayList<>();
    for (int s = 0; s < spec.stacks().size(); s++) {
      result.add(
          new StackAcoustics(
              spec.stacks().get(s),
              new PanelResponse(
                  axis.frequencyHz(), solutions.subList(s * points, (s + 1) * points))));
    }
    return result;
  }

  private static void heed(StopSignal stop) {
    if (stop.wanted()) {
      throw new StoppedException("the panels were being solved");
    }
  }
}
