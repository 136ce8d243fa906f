package nullplane.tolerance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;
import nullplane.units.Curve;

/**
 * Simulates a production run: every unit in every stack, each stack built from units that are
 * alike, which is the worst case: units that differ average out.
 *
 * <p>Each unit's figures go to a place of its own and are summed up in the units' order, so that
 * the result does not depend on how the run was cut up. For one run only.
 */
final class ProductionRun {
  private static final double TAIL = 0.025;
  private static final double LOW = 0.05;
  private static final List<MeasuredQuantity> QUANTITIES = List.of(MeasuredQuantity.values());

  private final FixedStacks stacks;
  private final Woofer nominal;
  private final PermittedResponse permitted;
  private final int units;
  private final int points;
  private final float[][][] levelDb;
  private final float[][] marginDb;
  private final boolean[][] good;
  private final boolean[][] loadGood;
  private final short[][] furthest;
  private final double[][] measured;

  private ProductionRun(
      FixedStacks stacks, Woofer nominal, PermittedResponse permitted, int units) {
    this.stacks = stacks;
    this.nominal = nominal;
    this.permitted = permitted;
    this.units = units;
    this.points = permitted.points();
    int count = permitted.stacks();
    levelDb = new float[count][points][units];
    marginDb = new float[count][units];
    good = new boolean[count][units];
    loadGood = new boolean[count][units];
    furthest = new short[count][units];
    measured = new double[QUANTITIES.size()][units];
  }

  /**
   * Simulates a run.
   *
   * @param units number of units
   * @param unit makes a unit by its number; called from any thread
   */
  static ProductionYield of(
      FixedStacks stacks,
      Woofer nominal,
      PermittedResponse permitted,
      int units,
      IntFunction<Woofer> unit,
      Batches batches) {
    ProductionRun run = new ProductionRun(stacks, nominal, permitted, units);
    batches.over(units, (from, to) -> run.simulate(from, to, unit));
    return run.summary(batches);
  }

  private void simulate(int from, int to, IntFunction<Woofer> unit) {
    FixedStacks.Workspace space = stacks.newWorkspace();
    for (int u = from; u < to; u++) {
      Woofer woofer = unit.apply(u);
      SmallSignal freeAir = SmallSignal.of(woofer, Mounting.FREE_AIR, stacks.air());
      for (int q = 0; q < QUANTITIES.size(); q++) {
        measured[q][u] = QUANTITIES.get(q).of(woofer, freeAir, stacks.air());
      }
      for (int s = 0; s < good.length; s++) {
        marginDb[s][u] = (float) stacks.respondWithOutputMargin(s, woofer, space);
        note(s, u, space);
      }
    }
  }

  private void note(int s, int u, FixedStacks.Workspace space) {
    double worst = Double.NEGATIVE_INFINITY;
    for (int b = 0; b < points; b++) {
      double level = space.levelDb(b);
      levelDb[s][b][u] = (float) level;
      double excess = permitted.excessDb(s, b, level);
      if (excess > worst) {
        worst = excess;
        furthest[s][u] = (short) b;
      }
    }
    loadGood[s][u] = permitted.permitsLoad(s, space);
    good[s][u] = permitted.permits(s, space);
  }

  private ProductionYield summary(Batches batches) {
    int count = good.length;
    int everywhere = 0;
    for (int u = 0; u < units; u++) {
      boolean all = true;
      for (int s = 0; s < count; s++) {
        all &= good[s][u];
      }
      everywhere += all ? 1 : 0;
    }
    // the quantiles take some time: one part per curve point
    batches
        .runner()
        .run(
            count * (points + 1),
            i -> {
              int s = i / (points + 1);
              int b = i % (points + 1);
              Arrays.sort(b < points ? levelDb[s][b] : marginDb[s]);
            });
    List<StackYield> yields = new ArrayList<>();
    int binding = 0;
    for (int s = 0; s < count; s++) {
      yields.add(yieldOf(s));
      if (yields.get(s).share() < yields.get(binding).share()) {
        binding = s;
      }
    }
    return new ProductionYield(
        units,
        (double) everywhere / units,
        stacks.bandHz(),
        yields,
        binding,
        QUANTITIES.stream().map(this::spreadOf).toList());
  }

  private StackYield yieldOf(int s) {
    int nominalWorst = 0;
    for (int b = 1; b < points; b++) {
      if (nominalDeviationDb(s, b) > nominalDeviationDb(s, nominalWorst)) {
        nominalWorst = b;
      }
    }
    double excess = nominalDeviationDb(s, nominalWorst) - stacks.spec().target().corridorDb();
    return new StackYield(
        stacks.brief(s).name(),
        share(good[s]),
        share(loadGood[s]),
        permitted.judgesLoad(s),
        stacks.bandHz().at(bindingPoint(s)),
        excess <= 0,
        Math.max(0, excess),
        stacks.bandHz().at(nominalWorst),
        permitted.nominal(s),
        permitted.lower(s),
        permitted.upper(s),
        quantiles(levelDb[s], TAIL),
        quantiles(levelDb[s], 1 - TAIL),
        stacks.respondWithOutputMargin(s, nominal, stacks.newWorkspace()),
        at(marginDb[s], LOW));
  }

  private double nominalDeviationDb(int s, int b) {
    return Math.abs(permitted.nominalDb(s, b) - stacks.wantedDb(s, b));
  }

  /** The band point at which most of the failing units are furthest out; of all if none fails. */
  private int bindingPoint(int s) {
    boolean someFail = share(good[s]) < share(loadGood[s]);
    int[] counts = new int[points];
    for (int u = 0; u < units; u++) {
      if (!someFail || (!good[s][u] && loadGood[s][u])) {
        counts[furthest[s][u]]++;
      }
    }
    int most = 0;
    for (int b = 1; b < points; b++) {
      if (counts[b] > counts[most]) {
        most = b;
      }
    }
    return most;
  }

  private double share(boolean[] each) {
    int count = 0;
    for (boolean one : each) {
      count += one ? 1 : 0;
    }
    return (double) count / units;
  }

  private static Curve quantiles(float[][] sorted, double share) {
    double[] values = new double[sorted.length];
    for (int b = 0; b < sorted.length; b++) {
      values[b] = at(sorted[b], share);
    }
    return Curve.of(values);
  }

  private static double at(float[] sorted, double share) {
    return sorted[(int) Math.min(sorted.length - 1, Math.round(share * (sorted.length - 1)))];
  }

  private QuantitySpread spreadOf(MeasuredQuantity quantity) {
    return QuantitySpread.of(
        quantity, quantity.of(nominal, stacks.air()), measured[QUANTITIES.indexOf(quantity)]);
  }
}
