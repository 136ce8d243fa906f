package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import nullplane.io.RunManifest;

/** One run's clock: names and times of its steps. */
final class StepClock {
  private final List<RunManifest.Step> steps = new ArrayList<>();
  private final long start = System.nanoTime();
  private long since = start;

  /** Ends a step. */
  void done(String step) {
    long now = System.nanoTime();
    steps.add(new RunManifest.Step(step, (now - since) / 1e9));
    since = now;
  }

  /**
   * Returns the time since the first step began (s); a change of the wall clock does not matter.
   */
  double seconds() {
    return (System.nanoTime() - start) / 1e9;
  }

  /** Returns the steps that are done, in order. */
  List<RunManifest.Step> steps() {
    return List.copyOf(steps);
  }
}
