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
import java.util.stream.IntStream;

/**
 * Selects the survivors of NSGA-II: by the rank of their front under constrained domination, within
 * a front those with the most room around them, best first. Candidates of equal merit are taken
 * once, as long as there are others.
 *
 * <p>Source: K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, IEEE Trans. Evol. Comput. 6 (2002) 182,
 * sections III and VI, with the sorting of X. Zhang, Y. Tian, R. Cheng, Y. Jin, An efficient
 * approach to nondominated sorting, IEEE Trans. Evol. Comput. 19 (2015) 201 (with binary search).
 * Distances are the library's. Its ready-made selector is not used: it takes the distances over all
 * fronts at once, where the source takes each front alone, and compares everybody with everybody.
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

  /** A candidate with its objectives at hand. */
  private static final class Row {
    private final int index;
    private final Merit merit;
    private final double[] point;

    Row(int index, Merit merit, double[] point) {
      this.index = index;
      this.merit = merit;
      this.point = point;
    }

    int index() {
      return index;
    }

    Merit merit() {
      return merit;
    }
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
    List<Integer> best = new ArrayList<>();
    for (List<Integer> front : fronts(merits, candidates)) {
      if (best.size() == count) {
        break;
      }
      List<Integer> ordered = ordered(merits, front);
      best.addAll(ordered.subList(0, Math.min(ordered.size(), count - best.size())));
    }
    return best;
  }

  /**
   * Sorts candidates into fronts: nobody in a front dominates another of it, and everybody is
   * dominated by somebody in the front before.
   *
   * @param merits merits of all candidates
   * @param candidates which of them to sort
   */
  static List<List<Integer>> fronts(List<Merit> merits, List<Integer> candidates) {
    List<Row> sorted = new ArrayList<>();
    for (int candidate : candidates) {
      Merit merit = merits.get(candidate);
      sorted.add(new Row(candidate, merit, merit.objectives().toArray()));
    }
    sorted.sort(Comparator.comparing(Row::merit).thenComparing(Row::index));
    List<List<Row>> fronts = new ArrayList<>();
    for (Row row : sorted) {
      // Whoever is dominated by a front is dominated by all fronts before.
      int low = 0;
      int high = fronts.size();
      while (low < high) {
        int middle = (low + high) / 2;
        if (dominates(fronts.get(middle), row)) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      if (low == fronts.size()) {
        fronts.add(new ArrayList<>());
      }
      fronts.get(low).add(row);
    }
    return fronts.stream().map(front -> front.stream().map(Row::index).toList()).toList();
  }

  /** Returns whether somebody in a front, filled in ascending order, dominates a later one. */
  private static boolean dominates(List<Row> front, Row later) {
    double[] point = later.point;
    // Of two objectives, the last of a front is the best in the second.
    int first = point.length == 2 ? front.size() - 1 : 0;
    for (int i = front.size() - 1; i >= first; i--) {
      Row row = front.get(i);
      // The merit decides, but where one is worse in an objective there is no need to ask it.
      boolean worse = false;
      for (int j = 0; j < point.length && !worse; j++) {
        worse = row.point[j] > point[j];
      }
      if ((!worse || !later.merit.isFeasible()) && row.merit.dominance(later.merit) > 0) {
        return true;
      }
    }
    return false;
  }

  /**
   * Returns the room around each candidate within its own front, by the distance of its neighbours
   * in each objective (1): without bound at a front's ends, 0 for one that is not feasible.
   *
   * @param merits merits of all candidates
   */
  static double[] room(List<Merit> merits) {
    List<Integer> all = IntStream.range(0, merits.size()).boxed().toList();
    double[] room = new double[merits.size()];
    for (List<Integer> front : fronts(merits, all)) {
      double[] within = roomWithin(merits, front);
      for (int i = 0; i < within.length; i++) {
        room[front.get(i)] = within[i];
      }
    }
    return room;
  }

  private static double[] roomWithin(List<Merit> merits, List<Integer> front) {
    ISeq<Merit> members = of(merits, front);
    return members.get(0).isFeasible()
        ? Pareto.crowdingDistance(members, ORDER, DISTANCE, merit -> merit.objectives().size())
        : new double[front.size()];
  }

  /** Orders a front by the room around each, the most room first. */
  private static List<Integer> ordered(List<Merit> merits, List<Integer> front) {
    double[] room = roomWithin(merits, front);
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
