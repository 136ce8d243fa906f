package nullplane.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The candidates none of which dominates another, of all that were offered; bounded. When it has
 * grown to half more than its capacity, the most crowded are dropped; see {@link Crowding}. Ordered
 * by the objectives in turn.
 */
final class ParetoArchive {
  private final int capacity;
  private final List<Candidate> members = new ArrayList<>();

  /** Objectives of the members, for speed. */
  private final List<double[]> points = new ArrayList<>();

  /**
   * @param capacity members that the front is given with at most, at least twice the objectives
   * @param members members of an earlier archive, in their order
   */
  ParetoArchive(int capacity, List<Candidate> members) {
    this.capacity = capacity;
    replace(members);
  }

  private void replace(List<Candidate> candidates) {
    List<Candidate> copy = List.copyOf(candidates);
    members.clear();
    points.clear();
    members.addAll(copy);
    copy.forEach(member -> points.add(member.merit().objectives().toArray()));
  }

  /** Returns the most members that an archive of a capacity may have between droppings. */
  static int most(int capacity) {
    return capacity + capacity / 2;
  }

  /** Takes a candidate if no member dominates or equals it, and drops those it dominates. */
  void offer(Candidate candidate) {
    if (!candidate.merit().isFeasible() || (!members.isEmpty() && !feasible())) {
      offerByViolation(candidate);
      return;
    }
    double[] point = candidate.merit().objectives().toArray();
    int place = place(point);
    // Only those before can be at least as good everywhere. Of two objectives, the one just before
    // is the best in the second.
    int first = point.length == 2 ? Math.max(0, place - 1) : 0;
    for (int i = first; i < place; i++) {
      if (covers(points.get(i), point)) {
        return;
      }
    }
    dropCovered(place, point);
    members.add(place, candidate);
    points.add(place, point);
    if (members.size() > most(capacity)) {
      replace(thinned());
    }
  }

  /** Drops members that a point covers; only those from its place on can be. */
  private void dropCovered(int place, double[] point) {
    if (point.length == 2) {
      // Those covered stand together: the second objective falls along the front.
      int end = place;
      while (end < points.size() && points.get(end)[1] >= point[1]) {
        end++;
      }
      members.subList(place, end).clear();
      points.subList(place, end).clear();
      return;
    }
    int kept = place;
    for (int i = place; i < points.size(); i++) {
      if (!covers(point, points.get(i))) {
        members.set(kept, members.get(i));
        points.set(kept, points.get(i));
        kept++;
      }
    }
    members.subList(kept, members.size()).clear();
    points.subList(kept, points.size()).clear();
  }

  /** Returns how many members come before a point or equal it, by the objectives in turn. */
  private int place(double[] point) {
    int low = 0;
    int high = points.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (Arrays.compare(points.get(middle), point) <= 0) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** While nothing is feasible, the least violating candidate is all there is. */
  private void offerByViolation(Candidate candidate) {
    if (members.isEmpty() || candidate.merit().dominance(members.get(0).merit()) > 0) {
      replace(List.of(candidate));
    }
  }

  /** Returns whether there are members and they are feasible. */
  boolean feasible() {
    return !members.isEmpty() && members.get(0).merit().isFeasible();
  }

  /** Returns all members, in ascending order of their objectives. */
  List<Candidate> members() {
    return List.copyOf(members);
  }

  /** Returns the members without the most crowded, not more than the capacity. */
  List<Candidate> thinned() {
    if (members.size() <= capacity) {
      return members();
    }
    boolean[] left = Crowding.spread(points, capacity);
    List<Candidate> spread = new ArrayList<>();
    for (int i = 0; i < left.length; i++) {
      if (left[i]) {
        spread.add(members.get(i));
      }
    }
    return spread;
  }

  private static boolean covers(double[] a, double[] b) {
    for (int i = 0; i < a.length; i++) {
      if (a[i] > b[i]) {
        return false;
      }
    }
    return true;
  }
}
