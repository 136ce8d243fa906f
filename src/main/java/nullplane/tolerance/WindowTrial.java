package nullplane.tolerance;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;

/** Draws units that fill windows evenly and tries them in every stack. For one trial only. */
final class WindowTrial {
  private static final List<MeasuredQuantity> REST =
      Stream.of(MeasuredQuantity.values()).filter(quantity -> !quantity.inspected()).toList();

  private final boolean[][] good;
  private final double[][] rest;

  private WindowTrial(int units, int stacks) {
    good = new boolean[stacks][units];
    rest = new double[REST.size()][units];
  }

  /** What came of a trial. */
  record Outcome(WindowCheck check, List<QuantitySpread> implied) {}

  /**
   * Tries units.
   *
   * @param halfWidths half of each window, by {@link WindowFill#INSPECTED}
   * @param factor how much wider than that to draw (1)
   */
  static Outcome of(
      FixedStacks stacks,
      PermittedResponse permitted,
      Woofer nominal,
      WindowFill fill,
      double[] halfWidths,
      double factor,
      UnitChance chance,
      int units,
      Batches batches) {
    double[] wide = halfWidths.clone();
    for (int q = 0; q < wide.length; q++) {
      wide[q] *= factor;
    }
    WindowTrial trial = new WindowTrial(units, stacks.count());
    batches.over(
        units,
        (from, to) -> {
          FixedStacks.Workspace space = stacks.newWorkspace();
          for (int u = from; u < to; u++) {
            trial.add(u, fill.drawn(wide, chance, u), stacks, permitted, space);
          }
        });
    return trial.outcome(stacks, nominal, factor);
  }

  private void add(
      int unit,
      Woofer woofer,
      FixedStacks stacks,
      PermittedResponse permitted,
      FixedStacks.Workspace space) {
    SmallSignal freeAir = SmallSignal.of(woofer, Mounting.FREE_AIR, stacks.air());
    for (int q = 0; q < rest.length; q++) {
      rest[q][unit] = REST.get(q).of(woofer, freeAir, stacks.air());
    }
    for (int s = 0; s < good.length; s++) {
      stacks.respond(s, woofer, space);
      good[s][unit] = permitted.permits(s, space);
    }
  }

  private Outcome outcome(FixedStacks stacks, Woofer nominal, double factor) {
    int units = good[0].length;
    int everywhere = 0;
    int[] each = new int[good.length];
    for (int u = 0; u < units; u++) {
      boolean all = true;
      for (int s = 0; s < good.length; s++) {
        all &= good[s][u];
        each[s] += good[s][u] ? 1 : 0;
      }
      everywhere += all ? 1 : 0;
    }
    List<QuantitySpread> implied = new ArrayList<>();
    for (int q = 0; q < rest.length; q++) {
      implied.add(QuantitySpread.of(REST.get(q), REST.get(q).of(nominal, stacks.air()), rest[q]));
    }
    return new Outcome(
        new WindowCheck(
            factor,
            units,
            (double) everywhere / units,
            IntStream.of(each).mapToObj(count -> (double) count / units).toList()),
        implied);
  }
}
