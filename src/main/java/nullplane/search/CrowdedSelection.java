package nullplane.search;

import io.jenetics.ext.moea.ElementComparator;
import io.jenetics.ext.moea.ElementDistance;
import io.jenetics.ext.moea.Pareto;
import io.jenetics.util.ISeq;
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
final class CrowdedSelection {
  private static final ElementComparator<Merit> ORDER =
      (a, b, i) -> Double.compare(a.objectives().at(i), b.objectives().at(i));
  private static final ElementDistance<Merit> DISTANCE =
      (a, b, i) -> a.objectives().at(i) - b.objectives().at(i);

  private record Placed(int index, double room) {
    static final Comparator<Placed> MOST_ROOM_FIRST =
        Comparator.comparingDouble(Placed::room).reversed().thenComparingInt(Placed::index);
  }

  private CrowdedSelection() {}

  /**
   * Returns which candidates survive, by their place in the list, best first.
   *
   * @param merits merits of all candidates
   * @param count how many survive, at most all
   */
  static List<Integer> best(List<Merit> merits, int count) {
    List<Integer> singles = new ArrayList<>();
    List<Integer> copies = new ArrayList<>();
    Set<Merit> known = new HashSet<>();
    for (int i = 0; i < merits.size(); i++) {
      (known.add(merits.get(i)) ? singles : copies).add(i);
    }
    List<Integer> best = new ArrayList<>(bestOf(merits, singles, count));
    if (best.size() < count) {
      best.addAll(bestOf(merits, copies, count - best.size()));
    }
    return best;
  }

  private static List<Integer> bestOf(List<Merit> merits, List<Integer> candidates, int count) {
    int[] ranks = Pareto.rank(of(merits, candidates), Merit::dominance);
    List<List<Integer>> fronts = new ArrayList<>();
    for (int i = 0; i < ranks.length; i++) {
      while (fronts.size() <= ranks[i]) {
        fronts.add(new ArrayList<>());
      }
      fronts.get(ranks[i]).add(candidates.get(i));
    }
    List<Integer> best = new ArrayList<>();
    for (int rank = 0; rank < fronts.size() && best.size() < count; rank++) {
      List<Integer> ordered = ordered(merits, fronts.get(rank));
      best.addAll(ordered.subList(0, Math.min(ordered.size(), count - best.size())));
    }
    return best;
  }

  /** Orders a front by the room around each, the most room first. */
  private static List<Integer> ordered(List<Merit> merits, List<Integer> front) {
    ISeq<Merit> members = of(merits, front);
    if (!members.get(0).isFeasible()) {
      return front;
    }
    double[] room =
        Pareto.crowdingDistance(members, ORDER, DISTANCE, merit -> merit.objectives().size());
    List<Placed> placed = new ArrayList<>();
    for (int i = 0; i < room.length; i++) {
      placed.add(new Placed(front.get(i), room[i]));
    }
    placed.sort(Placed.MOST_ROOM_FIRST);
    return placed.stream().map(Placed::index).toList();
  }

  private static ISeq<Merit> of(List<Merit> merits, List<Integer> indices) {
    return indices.stream().map(merits::get).collect(ISeq.toISeq());
  }
}
