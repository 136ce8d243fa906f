package nullplane.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.driver.Woofer;
import nullplane.sample.MeasuredSample;
import nullplane.sample.PanelAir;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;
import nullplane.units.Air;
import nullplane.units.Curve;

/** Solves the panels that samples were measured on, wide enough to take their air off a sweep. */
final class PanelAirStep {
  /** Below the first, the air is a constant mass; above the last, a sweep is not used (Hz). */
  private static final Curve AXIS = Curve.logSpaced(8, 1600, 47);

  private PanelAirStep() {}

  /**
   * Solves.
   *
   * @param samples the samples; the stacks that they name must be the spec's
   * @param spec the spec
   * @param woofer the woofer they should be, for the size of the pistons
   * @param workers threads to solve on
   * @param stop tells when to stop
   * @param watched whether to show progress
   */
  static PanelAir solve(
      List<MeasuredSample> samples,
      DesignSpec spec,
      Woofer woofer,
      Workers workers,
      StopSignal stop,
      boolean watched) {
    List<String> names =
        samples.stream()
            .flatMap(sample -> sample.place().stream())
            .map(place -> place.stack())
            .distinct()
            .toList();
    if (names.isEmpty()) {
      return PanelAir.NONE;
    }
    Map<String, PanelResponse> solved = new HashMap<>();
    for (StackBrief stack : spec.withPistonRadius(woofer.radiusM()).stacks()) {
      if (names.contains(stack.name())) {
        DoubleFunction<PanelSolution> solver =
            new PanelSolver(stack.panel(), stack.pistons(), Air.standard(), Accuracy.USUAL)
                .upTo(AXIS.at(AXIS.size() - 1), List.of(), List.of());
        List<Callable<PanelSolution>> tasks = new ArrayList<>();
        for (int f = 0; f < AXIS.size(); f++) {
          double hertz = AXIS.at(f);
          tasks.add(
              () -> {
                if (stop.wanted()) {
                  throw new StoppedException("the panels were being solved");
                }
                return solver.apply(hertz);
              });
        }
        try (ProgressLine progress = new ProgressLine("panels", tasks.size(), watched)) {
          solved.put(stack.name(), new PanelResponse(AXIS, workers.all(tasks, progress)));
        }
      }
    }
    return stack -> {
      PanelResponse response = solved.get(stack);
      if (response == null) {
        throw new IllegalArgumentException("stack " + stack + " was not solved");
      }
      return response;
    };
  }
}
