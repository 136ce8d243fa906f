package nullplane.tolerance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;

/**
 * Ranks production variables by how much they matter to the largest deviation from the wanted level
 * over the band, by variance ({@link SobolIndices}). The rest position has no part in it: it takes
 * travel, not level.
 */
final class InfluenceRanking {
  private static final List<ProductionVariable> VARIABLES = List.of(ProductionVariable.values());

  /** The rest position is the last variable, and the only one left out. */
  private static final int INPUTS = VARIABLES.indexOf(ProductionVariable.REST_POSITION);

  private InfluenceRanking() {}

  /** Returns the variables, the one that matters most first. */
  static List<Influence> of(
      FixedStacks stacks, Woofer nominal, ProductionSpread spread, int samples, Batches batches) {
    List<SobolIndices> indices =
        SobolIndices.of(
            () -> largestDeviations(stacks, nominal, spread),
            INPUTS,
            stacks.count(),
            samples,
            // each sample tries as many woofers as there are inputs
            new Batches(batches.runner(), Math.max(1, batches.size() / INPUTS)));
    List<Influence> ranking = new ArrayList<>();
    for (int i = 0; i < INPUTS; i++) {
      List<Influence.InStack> each = new ArrayList<>();
      for (int s = 0; s < stacks.count(); s++) {
        SobolIndices of = indices.get(s);
        double total = of.total().at(i);
        each.add(
            new Influence.InStack(
                stacks.brief(s).name(),
                of.firstOrder().at(i),
                total,
                Math.sqrt(total * of.variance())));
      }
      ranking.add(new Influence(VARIABLES.get(i), each));
    }
    ranking.sort(Comparator.comparingDouble(Influence::largestDeviationDb).reversed());
    return List.copyOf(ranking);
  }

  private static SobolIndices.Model largestDeviations(
      FixedStacks stacks, Woofer nominal, ProductionSpread spread) {
    FixedStacks.Workspace space = stacks.newWorkspace();
    double[] deviates = new double[VARIABLES.size()];
    int points = stacks.bandHz().size();
    return (point, outputs) -> {
      for (int i = 0; i < INPUTS; i++) {
        deviates[i] = UnitChance.normalAt(point[i]);
      }
      Woofer unit = spread.unit(nominal, deviates);
      for (int s = 0; s < outputs.length; s++) {
        stacks.respond(s, unit, space);
        double largest = 0;
        for (int b = 0; b < points; b++) {
          largest = Math.max(largest, Math.abs(space.levelDb(b) - stacks.wantedDb(s, b)));
        }
        outputs[s] = largest;
      }
    };
  }
}
