package nullplane.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import nullplane.units.Curve;

/**
 * The candidates none of which dominates another, of all that were offered; bounded. When it has
 * grown to half more than its capacity, the most crowded are dropped one by one: whoever is nearest
 * to another, by the nearest then the second nearest distance, each objective scaled to the
 * archive's own range. The best in each objective stays. Ordered by the objectives, so what it
 * holds does not hang on the order of equals.
 *
 * <p>Source of the dropping: E. Zitzler, M. Laumanns, L. Thiele, SPEA2, TIK report 103, ETH Zurich
 * (2001), section 3.2; here two distances decide instead of all, then the order.
 */
final class ParetoArchive {
  private final int capacity;
  private final List<Candidate> members = new ArrayList<>();

  ParetoArchive(int capacity) {
    this.capacity = capacity;
  }

  /** Takes over members of an earlier archive, in their order. */
  ParetoArchive(int capacity, List<Candidate> members) {
    this(capacity);
    this.members.addAll(members);
  }

  /** Returns the most members that an archive of a capacity may have between droppings. */
  static int most(int capacity) {
    return capacity + capacity / 2;
  }

  /** Takes a candidate if no member dominates or equals it, and drops those it dominates. */
  void offer(Candidate candidate) {
    if (!candidate.merit().isFeasible() || !members.isEmpty() && !feasible()) {
      offerByViolation(candidate);
      return;
    }
    Curve objectives = candidate.merit().objectives();
    int place = 0;
    while (place < members.size() && compare(at(place), objectives) <= 0) {
      if (covers(at(place), objectives)) {
        return;
      }
      place++;
    }
    // Only those behind can be worse everywhere.
    int kept = place;
    for (int i = place; i < members.size(); i++) {
      if (!covers(objectives, at(i))) {
        members.set(kept++, members.get(i));
      }
    }
    members.subList(kept, members.size()).clear();
    members.add(place, candidate);
    if (members.size() > most(capacity)) {
      List<Candidate> thinned = thinned();
      members.clear();
      members.addAll(thinned);
    }
  }

  /** While nothing is feasible, the least violating candidate is all there is. */
  private void offerByViolation(Candidate candidate) {
    if (members.isEmpty() || candidate.merit().dominance(members.get(0).merit()) > 0) {
      members.clear();
      members.add(candidate);
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
    int size = members.size();
    if (size <= capacity) {
      return members();
    }
    double[][] scaled = scaled();
    boolean[] gone = new boolean[size];
    boolean[] best = bests();
    int[] nearest = new int[size];
    for (int i = 0; i < size; i++) {
      nearest[i] = nearest(scaled, gone, i, -1);
    }
    for (int left = size; left > capacity; left--) {
      int drop = mostCrowded(scaled, gone, best, nearest);
      gone[drop] = true;
      for (int i = 0; i < size; i++) {
        if (!gone[i] && nearest[i] == drop) {
          nearest[i] = nearest(scaled, gone, i, -1);
        }
      }
    }
    List<Candidate> left = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      if (!gone[i]) {
        left.add(members.get(i));
      }
    }
    return left;
  }

  private static int mostCrowded(double[][] scaled, boolean[] gone, boolean[] best, int[] nearest) {
    int drop = -1;
    double least = Double.POSITIVE_INFINITY;
    double second = Double.POSITIVE_INFINITY;
    for (int i = 0; i < scaled.length; i++) {
      if (gone[i] || best[i]) {
        continue;
      }
      double distance = distance(scaled[i], scaled[nearest[i]]);
      if (distance > least) {
        continue;
      }
      int next = nearest(scaled, gone, i, nearest[i]);
      double distanceToNext =
          next < 0 ? Double.POSITIVE_INFINITY : distance(scaled[i], scaled[next]);
      if (drop < 0 || distance < least || distanceToNext < second) {
        drop = i;
        least = distance;
        second = distanceToNext;
      }
    }
    return drop;
  }

  private static int nearest(double[][] scaled, boolean[] gone, int of, int butFor) {
    int nearest = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < scaled.length; i++) {
      if (!gone[i] && i != of && i != butFor) {
        double distance = distance(scaled[of], scaled[i]);
        if (distance < least || nearest < 0) {
          nearest = i;
          least = distance;
        }
      }
    }
    return nearest;
  }

  private static double distance(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return sum;
  }

  private double[][] scaled() {
    int objectives = at(0).size();
    double[] low = at(0).toArray();
    double[] high = at(0).toArray();
    for (int i = 0; i < members.size(); i++) {
      for (int j = 0; j < objectives; j++) {
        low[j] = Math.min(low[j], at(i).at(j));
        high[j] = Math.max(high[j], at(i).at(j));
      }
    }
    double[][] scaled = new double[members.size()][objectives];
    for (int i = 0; i < members.size(); i++) {
      for (int j = 0; j < objectives; j++) {
        scaled[i][j] = high[j] > low[j] ? (at(i).at(j) - low[j]) / (high[j] - low[j]) : 0;
      }
    }
    return scaled;
  }

  /** Marks the first of the best in each objective. */
  private boolean[] bests() {
    boolean[] best = new boolean[members.size()];
    for (int j = 0; j < at(0).size(); j++) {
      int least = 0;
      for (int i = 1; i < members.size(); i++) {
        if (at(i).at(j) < at(least).at(j)) {
          least = i;
        }
      }
      best[least] = true;
    }
    return best;
  }

  private Curve at(int member) {
    return members.get(member).merit().objectives();
  }

  private static int compare(Curve a, Curve b) {
    for (int i = 0; i < a.size(); i++) {
      if (a.at(i) != b.at(i)) {
        return a.at(i) < b.at(i) ? -1 : 1;
      }
    }
    return 0;
  }

  private static boolean covers(Curve a, Curve b) {
    for (int i = 0; i < a.size(); i++) {
      if (a.at(i) > b.at(i)) {
        return false;
      }
    }
    return true;
  }

  @Override
  public String toString() {
    return Arrays.toString(members.toArray());
  }
}
