package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.DoubleFunction;
import nullplane.acoustics.Accuracy;
import nullplane.acoustics.AdaptiveSweep;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.io.PanelCache;
import nullplane.io.PanelCacheKey;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;
import nullplane.units.Air;

/**
 * Solves every stack's panel at as many frequencies as interpolation needs, spread over the
 * threads, or takes what an earlier run has kept.
 */
final class PanelStep {
  private static final double SWEEP_TOLERANCE = 0.02;

  /** Solutions of a stack that needs no interval halved a second time; for the time left. */
  private static final long LEAST_SOLUTIONS = 17;

  private final DesignSpec spec;
  private final Air air;
  private final double lowestHz;
  private final double highestHz;
  private final ProgressLine progress;
  private final StopSignal stop;
  private final Workers workers;

  PanelStep(
      DesignSpec spec,
      double lowestHz,
      double highestHz,
      Air air,
      Workers workers,
      ProgressLine progress,
      StopSignal stop) {
    this.spec = spec;
    this.air = air;
    this.lowestHz = lowestHz;
    this.highestHz = highestHz;
    this.progress = progress;
    this.stop = stop;
    this.workers = workers;
  }

  /** A stack's sweep, and how to go on with it if it is not finished. */
  private static final class Running {
    private final PanelCacheKey key;
    private final AdaptiveSweep sweep;
    private final Optional<DoubleFunction<PanelSolution>> solver;

    Running(
        PanelCacheKey key, AdaptiveSweep sweep, Optional<DoubleFunction<PanelSolution>> solver) {
      this.key = key;
      this.sweep = sweep;
      this.solver = solver;
    }
  }

  /** Returns a finished sweep for each stack, in the spec's order. */
  List<AdaptiveSweep> solve(PanelCache cache) {
    List<Callable<Running>> starts = new ArrayList<>();
    for (StackBrief stack : spec.stacks()) {
      starts.add(() -> start(stack, cache));
    }
    List<Running> all = workers.all(starts);
    boolean anyWanted = true;
    long done = 0;
    while (anyWanted) {
      anyWanted = false;
      progress.expect(Math.max(done + wanted(all), LEAST_SOLUTIONS * unfinished(all)));
      List<Callable<PanelSolution>> tasks = new ArrayList<>();
      for (Running running : all) {
        for (double frequencyHz : running.sweep.wanted()) {
          tasks.add(() -> solveOne(running.solver.orElseThrow(), frequencyHz));
        }
      }
      List<PanelSolution> solved = workers.all(tasks, progress);
      done += solved.size();
      int at = 0;
      for (Running running : all) {
        int count = running.sweep.wanted().size();
        if (count > 0) {
          running.sweep.accept(solved.subList(at, at + count));
          at += count;
          anyWanted = true;
        }
      }
    }
    heed();
    for (Running running : all) {
      if (running.solver.isPresent()) {
        cache.keep(running.key, running.sweep.solutions());
      }
    }
    return all.stream().map(running -> running.sweep).toList();
  }

  private static long wanted(List<Running> all) {
    return all.stream().mapToLong(running -> running.sweep.wanted().size()).sum();
  }

  private static long unfinished(List<Running> all) {
    return all.stream().filter(running -> running.solver.isPresent()).count();
  }

  private Running start(StackBrief stack, PanelCache cache) {
    heed();
    List<FieldPoint> ear = List.of(spec.listening().pointFor(stack.panel()));
    PanelCacheKey key =
        PanelCacheKey.of(
            stack.panel(),
            stack.pistons(),
            air,
            Accuracy.USUAL,
            ear,
            List.of(),
            lowestHz,
            highestHz,
            "sweep " + SWEEP_TOLERANCE);
    Optional<List<PanelSolution>> kept = cache.find(key);
    if (kept.isPresent() && kept.orElseThrow().size() > 1) {
      return new Running(
          key,
          AdaptiveSweep.finished(kept.orElseThrow(), ear, air.speedOfSoundMPerS()),
          Optional.empty());
    }
    PanelSolver solver = new PanelSolver(stack.panel(), stack.pistons(), air, Accuracy.USUAL);
    return new Running(
        key,
        new AdaptiveSweep(lowestHz, highestHz, SWEEP_TOLERANCE, ear, air.speedOfSoundMPerS()),
        Optional.of(solver.upTo(highestHz, ear, List.of())));
  }

  private PanelSolution solveOne(DoubleFunction<PanelSolution> solver, double frequencyHz) {
    heed();
    return solver.apply(frequencyHz);
  }

  private void heed() {
    if (stop.wanted()) {
      throw new StoppedException("the panels were being solved");
    }
  }
}
