package nullplane.tolerance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;

/**
 * Finds acceptance windows: their shape by linear sensitivities ({@link WindowShape}), their scale
 * by simulation ({@link WindowScale}), then rounds them down to what a sheet states and checks them
 * on units drawn afresh.
 */
final class WindowSearch {
  private static final double CAP_OF_USUAL = 2;
  private static final double STEP_OF_USUAL = 0.1;
  private static final double LEAST_LOAD_ROOM = 1e-3;
  private static final double STANDARD_ERRORS = 3;
  private static final double WIDER = 1.5;
  private static final double STEPS = 1000;
  private static final double ROUNDING = 1e-9;
  private static final int QUANTITIES = WindowFill.INSPECTED.size();

  private final FixedStacks stacks;
  private final PermittedResponse permitted;
  private final WindowFill fill;
  private final Batches batches;
  private final ToleranceConduct conduct;
  private final UnitChance chance;
  private final double[] usual =
      WindowFill.INSPECTED.stream().mapToDouble(q -> q.practice().lower()).toArray();
  private final double[] caps = Arrays.stream(usual).map(u -> CAP_OF_USUAL * u).toArray();

  WindowSearch(
      FixedStacks stacks,
      PermittedResponse permitted,
      WindowFill fill,
      ToleranceConduct conduct,
      Batches batches) {
    this.stacks = stacks;
    this.permitted = permitted;
    this.fill = fill;
    this.conduct = conduct;
    this.batches = batches;
    this.chance = new UnitChance(conduct.seed(), UnitChance.Purpose.WINDOWS, WindowFill.DEVIATES);
  }

  /** Returns the windows. */
  AcceptanceWindows find(Woofer nominal, ProductionSpread spread) {
    double[] shape = shape();
    double margin =
        STANDARD_ERRORS
            * Math.sqrt(conduct.wantedYield() * (1 - conduct.wantedYield()) / conduct.units());
    double scale =
        new WindowScale(stacks, permitted, fill, chance, conduct.units(), batches)
            .widest(shape, caps, conduct.wantedYield() + margin);
    double[] halfWidths = stated(WindowScale.scaled(shape, caps, scale));
    List<AcceptanceWindow> windows = new ArrayList<>();
    for (int q = 0; q < QUANTITIES; q++) {
      windows.add(
          new AcceptanceWindow(
              WindowFill.INSPECTED.get(q),
              fill.value(q),
              halfWidths[q],
              scale * shape[q] >= caps[q] ? WindowLimit.TWICE_USUAL : WindowLimit.YIELD));
    }
    WindowTrial.Outcome within = drawn(nominal, halfWidths, 1);
    return new AcceptanceWindows(
        windows,
        conduct.wantedYield(),
        margin,
        within.check(),
        drawn(nominal, halfWidths, WIDER).check(),
        acceptedShare(windows, nominal, spread),
        within.implied());
  }

  private double acceptedShare(
      List<AcceptanceWindow> windows, Woofer nominal, ProductionSpread spread) {
    UnitChance production = ProductionSpread.chance(conduct.seed());
    int accepted = 0;
    for (int u = 0; u < conduct.units(); u++) {
      Woofer unit = spread.unit(nominal, production, u);
      accepted += AcceptanceWindows.accept(windows, unit, stacks.air()) ? 1 : 0;
    }
    return (double) accepted / conduct.units();
  }

  /** Units that fill the windows times a factor, with chance of their own. */
  private WindowTrial.Outcome drawn(Woofer nominal, double[] halfWidths, double factor) {
    UnitChance fresh =
        new UnitChance(conduct.seed(), UnitChance.Purpose.CHECK, WindowFill.DEVIATES);
    return WindowTrial.of(
        stacks, permitted, nominal, fill, halfWidths, factor, fresh, conduct.units(), batches);
  }

  /** Widths as a sheet states them: rounded down to 0.1 %, never to nothing. */
  private static double[] stated(double[] halfWidths) {
    double[] rounded = halfWidths.clone();
    for (int q = 0; q < QUANTITIES; q++) {
      rounded[q] = Math.max(1, Math.floor(halfWidths[q] * STEPS + ROUNDING)) / STEPS;
    }
    return rounded;
  }

  /** The shape, from central differences about the nominal woofer. */
  private double[] shape() {
    int points = permitted.points();
    int count = permitted.stacks();
    double[][][] level = new double[count][points][QUANTITIES];
    double[][] load = new double[count][QUANTITIES];
    FixedStacks.Workspace space = stacks.newWorkspace();
    double[] deviations = new double[QUANTITIES];
    for (int q = 0; q < QUANTITIES; q++) {
      double step = STEP_OF_USUAL * usual[q];
      for (int sign = -1; sign <= 1; sign += 2) {
        deviations[q] = sign * step;
        Woofer woofer = fill.unit(deviations, 0, 0);
        for (int s = 0; s < count; s++) {
          stacks.respond(s, woofer, space);
          for (int b = 0; b < points; b++) {
            level[s][b][q] += sign * space.levelDb(b) / (2 * step);
          }
          load[s][q] += sign * space.leastLoadOhm() / (2 * step);
        }
      }
      deviations[q] = 0;
    }
    WindowShape shape = new WindowShape(usual, caps);
    for (int s = 0; s < count; s++) {
      for (int b = 0; b < points; b++) {
        shape.add(level[s][b], permitted.roomDb(s, b));
      }
      if (permitted.judgesLoad(s)) {
        double least = permitted.leastLoadOhm(s);
        shape.add(load[s], Math.max(LEAST_LOAD_ROOM * least, permitted.nominalLoadOhm(s) - least));
      }
    }
    return shape.windows();
  }
}
