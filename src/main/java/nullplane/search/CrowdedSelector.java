package nullplane.search;

import io.jenetics.DoubleGene;
import io.jenetics.Optimize;
import io.jenetics.Phenotype;
import io.jenetics.Selector;
import io.jenetics.ext.moea.ElementComparator;
import io.jenetics.ext.moea.ElementDistance;
import io.jenetics.ext.moea.Pareto;
import io.jenetics.util.ISeq;
import io.jenetics.util.Seq;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Selects the survivors of NSGA-II: by the rank of their front under constrained domination, within
 * a front those with the most room around them, best first. Candidates of equal merit are taken
 * once, as long as there are others.
 *
 * <p>Source: K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, IEEE Trans. Evol. Comput. 6 (2002) 182,
 * sections III and VI. Ranks and distances are the library's. Its ready-made selector is not used,
 * since that takes the distances over all fronts at once, where the source takes each front alone.
 */
final class CrowdedSelector implements Selector<DoubleGene, Merit> {
  private static final ElementComparator<Merit> ORDER =
      (a, b, i) -> Double.compare(a.objectives().at(i), b.objectives().at(i));
  private static final ElementDistance<Merit> DISTANCE =
      (a, b, i) -> a.objectives().at(i) - b.objectives().at(i);

  private record Placed(int index, int rank, double room) {
    static final Comparator<Placed> BEST_FIRST =
        Comparator.comparingInt(Placed::rank)
            .thenComparing(Comparator.comparingDouble(Placed::room).reversed())
            .thenComparingInt(Placed::index);
  }

  @Override
  public ISeq<Phenotype<DoubleGene, Merit>> select(
      Seq<Phenotype<DoubleGene, Merit>> population, int count, Optimize opt) {
    List<Phenotype<DoubleGene, Merit>> singles = new ArrayList<>();
    List<Phenotype<DoubleGene, Merit>> copies = new ArrayList<>();
    Set<Merit> known = new HashSet<>();
    for (Phenotype<DoubleGene, Merit> individual : population) {
      (known.add(individual.fitness()) ? singles : copies).add(individual);
    }
    List<Phenotype<DoubleGene, Merit>> best = bestOf(singles, count);
    if (best.size() < count) {
      best.addAll(bestOf(copies, count - best.size()));
    }
    return ISeq.of(best);
  }

  private static List<Phenotype<DoubleGene, Merit>> bestOf(
      List<Phenotype<DoubleGene, Merit>> individuals, int count) {
    ISeq<Merit> merits = individuals.stream().map(Phenotype::fitness).collect(ISeq.toISeq());
    int[] ranks = Pareto.rank(merits, Merit::dominance);
    List<List<Integer>> fronts = new ArrayList<>();
    for (int i = 0; i < ranks.length; i++) {
      while (fronts.size() <= ranks[i]) {
        fronts.add(new ArrayList<>());
      }
      fronts.get(ranks[i]).add(i);
    }
    List<Phenotype<DoubleGene, Merit>> best = new ArrayList<>();
    for (int rank = 0; rank < fronts.size() && best.size() < count; rank++) {
      List<Placed> placed = placed(merits, fronts.get(rank), rank);
      placed.sort(Placed.BEST_FIRST);
      for (int i = 0; i < placed.size() && best.size() < count; i++) {
        best.add(individuals.get(placed.get(i).index()));
      }
    }
    return best;
  }

  private static List<Placed> placed(ISeq<Merit> merits, List<Integer> front, int rank) {
    ISeq<Merit> members = front.stream().map(merits::get).collect(ISeq.toISeq());
    double[] room =
        members.get(0).isFeasible()
            ? Pareto.crowdingDistance(members, ORDER, DISTANCE, m -> m.objectives().size())
            : new double[members.size()];
    List<Placed> placed = new ArrayList<>();
    for (int i = 0; i < room.length; i++) {
      placed.add(new Placed(front.get(i), rank, room[i]));
    }
    return placed;
  }
}
