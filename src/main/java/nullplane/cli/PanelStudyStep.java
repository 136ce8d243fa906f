package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPlan;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;
import nullplane.scoring.StackBrief;
import nullplane.units.Air;
import nullplane.units.Curve;

/**
 * Solves every stack's panel for study, spread over the threads: one solution per frequency with
 * all points and directions, and one in free space where there is a floor.
 */
final class PanelStudyStep {
  private final Curve frequencyHz;
  private final Air air;
  private final Accuracy accuracy;
  private final ProgressLine progress;
  private final StopSignal stop;
  private final List<Callable<PanelSolution>> tasks = new ArrayList<>();

  private PanelStudyStep(
      Curve frequencyHz, Air air, Accuracy accuracy, ProgressLine progress, StopSignal stop) {
    this.frequencyHz = frequencyHz;
    this.air = air;
    this.accuracy = accuracy;
    this.progress = progress;
    this.stop = stop;
  }

  /** Returns how many solutions a spec takes. */
  static long solutions(DesignSpec spec, Curve frequencyHz) {
    long panels =
        spec.stacks().stream().mapToLong(s -> s.panel().clearanceM().isPresent() ? 2 : 1).sum();
    return panels * frequencyHz.size();
  }

  static List<PanelStudy> solve(
      DesignSpec spec,
      Curve frequencyHz,
      List<Direction> asked,
      Air air,
      Accuracy accuracy,
      Workers workers,
      ProgressLine progress,
      StopSignal stop) {
    PanelStudyStep step = new PanelStudyStep(frequencyHz, air, accuracy, progress, stop);
    for (StackBrief stack : spec.stacks()) {
      FieldPoint ear = spec.listening().pointFor(stack.panel());
      boolean overFloor = stack.panel().clearanceM().isPresent();
      FieldPlan plan = FieldPlan.of(asked, overFloor);
      step.add(stack, stack.panel(), ear, plan.directions());
      if (overFloor) {
        step.add(
            stack,
            new Panel(stack.panel().outline(), OptionalDouble.empty()),
            ear,
            List.of(plan.directions().get(plan.axisRow())));
      }
    }
    List<PanelSolution> solutions = workers.all(step.tasks);
    int points = frequencyHz.size();
    List<PanelStudy> studies = new ArrayList<>();
    int at = 0;
    for (StackBrief stack : spec.stacks()) {
      boolean overFloor = stack.panel().clearanceM().isPresent();
      PanelResponse response = new PanelResponse(frequencyHz, solutions.subList(at, at + points));
      at += points;
      Optional<PanelResponse> free = Optional.empty();
      if (overFloor) {
        free = Optional.of(new PanelResponse(frequencyHz, solutions.subList(at, at + points)));
        at += points;
      }
      studies.add(
          new PanelStudy(
              stack,
              spec.listening().pointFor(stack.panel()),
              FieldPlan.of(asked, overFloor),
              response,
              free,
              air));
    }
    return studies;
  }

  private void add(StackBrief stack, Panel panel, FieldPoint ear, List<Direction> directions) {
    PanelSolver solver = new PanelSolver(panel, stack.pistons(), air, accuracy);
    for (int f = 0; f < frequencyHz.size(); f++) {
      double hertz = frequencyHz.at(f);
      tasks.add(
          () -> {
            if (stop.wanted()) {
              throw new StoppedException("the panels were being solved");
            }
            PanelSolution solution = solver.solve(hertz, List.of(ear), directions);
            progress.step();
            return solution;
          });
    }
  }
}
