package nullplane.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import nullplane.network.OfferRows;
import nullplane.network.PassiveOfferRows;

/**
 * Works out {@link SharedParts} for every pair of stacks: each network of the offer is judged once
 * in each stack, then the best sums are looked up, over all networks and over those of each series
 * coil. Time and memory grow as the number of networks times that of stacks.
 */
final class SharedPartsStudy {
  private final PassiveOfferRows offer;
  private final List<StackAssessment> stacks;
  private final double[][] costs;
  private final double[][] shapes;
  private final int[] best;
  private final int[][] bestOfCoil;

  private SharedPartsStudy(
      List<StackEvaluator> evaluators,
      PassiveOfferRows offer,
      Assessment assessment,
      StackEvaluator.Workspace space) {
    this.offer = offer;
    this.stacks = assessment.stacks();
    int networks = offer.count();
    costs = new double[stacks.size()][networks];
    shapes = new double[stacks.size()][networks];
    best = new int[stacks.size()];
    int coils = 0;
    for (int n = 0; n < networks; n++) {
      coils = Math.max(coils, 1 + offer.choice(n).coil());
    }
    bestOfCoil = new int[stacks.size()][coils];
    for (int s = 0; s < stacks.size(); s++) {
      StackEvaluator evaluator = evaluators.get(s);
      int wiring = evaluator.indexOf(stacks.get(s).wiring());
      evaluator.costs(assessment.woofer(), wiring, space, costs[s], shapes[s]);
      Arrays.fill(bestOfCoil[s], -1);
      for (int n = 0; n < networks; n++) {
        int coil = offer.choice(n).coil();
        int soFar = bestOfCoil[s][coil];
        if (Double.isFinite(costs[s][n]) && (soFar < 0 || costs[s][n] < costs[s][soFar])) {
          bestOfCoil[s][coil] = n;
        }
        if (costs[s][n] < costs[s][best[s]]) {
          best[s] = n;
        }
      }
    }
  }

  /**
   * Returns the study of every pair of stacks, from the earlier to the later one; nothing for an
   * offer of filters, which have no parts to keep.
   *
   * @param evaluators the stacks' evaluators
   * @param offer the networks they choose from
   * @param assessment the woofer with the wirings chosen
   * @param space work space; overwritten
   */
  static List<SharedParts> pairs(
      List<StackEvaluator> evaluators,
      OfferRows offer,
      Assessment assessment,
      StackEvaluator.Workspace space) {
    List<SharedParts> pairs = new ArrayList<>();
    if (offer instanceof PassiveOfferRows passive && evaluators.size() > 1) {
      SharedPartsStudy study = new SharedPartsStudy(evaluators, passive, assessment, space);
      for (int a = 0; a < evaluators.size(); a++) {
        for (int b = a + 1; b < evaluators.size(); b++) {
          pairs.add(study.pair(a, b));
        }
      }
    }
    return List.copyOf(pairs);
  }

  private SharedParts pair(int a, int b) {
    int[] byCoil = {-1, -1};
    double least = Double.POSITIVE_INFINITY;
    for (int coil = 0; coil < bestOfCoil[a].length; coil++) {
      int one = bestOfCoil[a][coil];
      int other = bestOfCoil[b][coil];
      if (one >= 0 && other >= 0 && costs[a][one] + costs[b][other] < least) {
        least = costs[a][one] + costs[b][other];
        byCoil = new int[] {one, other};
      }
    }
    int same = 0;
    for (int n = 1; n < offer.count(); n++) {
      if (costs[a][n] + costs[b][n] < costs[a][same] + costs[b][same]) {
        same = n;
      }
    }
    return new SharedParts(
        stacks.get(a).brief().name(),
        stacks.get(b).brief().name(),
        byCoil[0] < 0 ? Optional.empty() : sharing(a, byCoil[0], b, byCoil[1]),
        sharing(a, same, b, same));
  }

  /** Returns nothing where a network breaks a constraint. */
  private Optional<SharedParts.Sharing> sharing(int a, int one, int b, int other) {
    return Double.isFinite(costs[a][one] + costs[b][other])
        ? Optional.of(new SharedParts.Sharing(side(a, one), side(b, other)))
        : Optional.empty();
  }

  private SharedParts.Side side(int stack, int network) {
    return new SharedParts.Side(
        offer.network(network, 1),
        costs[stack][network] - costs[stack][best[stack]],
        shapes[stack][network] - shapes[stack][best[stack]]);
  }
}
