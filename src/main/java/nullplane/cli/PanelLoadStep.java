package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.driver.LoadedResonance;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.io.ReadSpec;
import nullplane.scoring.StackBrief;
import nullplane.units.Air;

/**
 * Solves what air a woofer carries on each stack's panel at its resonance there, while all woofers
 * of the stack move together: the mean over the woofers of Im sum_j Z_ij over w. The mass sets the
 * resonance and hardly depends on it, so two or three solutions settle both.
 */
final class PanelLoadStep {
  private static final int MOST_SOLUTIONS = 8;
  private static final double SETTLED = 1e-5;

  private final Woofer woofer;
  private final Air air;
  private final StopSignal stop;

  private PanelLoadStep(Woofer woofer, Air air, StopSignal stop) {
    this.woofer = woofer;
    this.air = air;
    this.stop = stop;
  }

  /**
   * Returns the woofer's figures on each stack, in the spec's order.
   *
   * @throws InvalidInputException if the woofer does not fit a panel
   */
  static List<LoadedResonance> solve(
      Woofer woofer, ReadSpec read, Air air, Workers workers, StopSignal stop, boolean watched) {
    PanelLoadStep step = new PanelLoadStep(woofer, air, stop);
    List<Callable<LoadedResonance>> tasks = new ArrayList<>();
    List<InputFault> faults = new ArrayList<>();
    for (StackBrief stack : read.spec().stacks()) {
      try {
        PanelSolver solver =
            new PanelSolver(stack.panel(), step.pistons(stack), air, Accuracy.USUAL);
        tasks.add(() -> step.settle(solver));
      } catch (IllegalArgumentException e) {
        faults.add(
            new InputFault(
                read.fileName(),
                0,
                "stacks",
                stack.name(),
                "the woofer does not fit this stack's panel: " + e.getMessage(),
                "pistons inside the rim that do not overlap",
                "name a spec for woofers of this size"));
      }
    }
    if (!faults.isEmpty()) {
      throw new InvalidInputException(faults);
    }
    try (ProgressLine progress = new ProgressLine("panels", tasks.size(), watched)) {
      return workers.all(tasks, progress);
    }
  }

  private List<Piston> pistons(StackBrief stack) {
    return stack.pistons().stream()
        .map(piston -> new Piston(piston.xM(), piston.yM(), woofer.radiusM()))
        .toList();
  }

  private LoadedResonance settle(PanelSolver solver) {
    LoadedResonance loaded = LoadedResonance.of(woofer, Mounting.FREE_AIR, air);
    for (int i = 0; i < MOST_SOLUTIONS; i++) {
      if (stop.wanted()) {
        throw new StoppedException("the panels were being solved");
      }
      double frequencyHz = loaded.resonanceHz();
      ComplexMatrix impedance = solver.solve(frequencyHz, List.of(), List.of()).impedance();
      loaded = LoadedResonance.of(woofer, meanReactance(impedance) / (2 * Math.PI * frequencyHz));
      if (Math.abs(loaded.resonanceHz() / frequencyHz - 1) < SETTLED) {
        break;
      }
    }
    return loaded;
  }

  private static double meanReactance(ComplexMatrix impedance) {
    double sum = 0;
    for (int i = 0; i < impedance.rows(); i++) {
      for (int j = 0; j < impedance.columns(); j++) {
        sum += impedance.im(i, j);
      }
    }
    return sum / impedance.rows();
  }
}
