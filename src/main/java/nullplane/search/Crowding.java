package nullplane.search;

import java.util.Arrays;
import java.util.List;

/**
 * Thins a front: whoever is nearest to another is dropped, one by one, by the nearest then the
 * second nearest distance, each objective scaled to the front's own range. The best in each
 * objective stays.
 *
 * <p>Source: E. Zitzler, M. Laumanns, L. Thiele, SPEA2, TIK report 103, ETH Zurich (2001), section
 * 3.2; here two distances decide instead of all, then the order.
 */
final class Crowding {
  private static final int NONE = -1;

  private final int objectives;

  /** The points one after another, scaled. */
  private final double[] scaled;

  private final boolean[] left;
  private final boolean[] fixed;
  private final int[] nearest;

  /** Squared distance to the nearest. */
  private final double[] distance;

  private Crowding(List<double[]> front) {
    int size = front.size();
    objectives = front.get(0).length;
    scaled = new double[size * objectives];
    left = new boolean[size];
    fixed = new boolean[size];
    nearest = new int[size];
    distance = new double[size];
    Arrays.fill(left, true);
    for (int j = 0; j < objectives; j++) {
      int best = 0;
      double low = front.get(0)[j];
      double high = low;
      for (int i = 1; i < size; i++) {
        double value = front.get(i)[j];
        best = value < low ? i : best;
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
      fixed[best] = true;
      for (int i = 0; i < size; i++) {
        scaled[i * objectives + j] = high > low ? (front.get(i)[j] - low) / (high - low) : 0;
      }
    }
    Arrays.fill(nearest, NONE);
    Arrays.fill(distance, Double.POSITIVE_INFINITY);
    if (objectives == 2) {
      for (int i = 0; i < size; i++) {
        findNearest(i);
      }
      return;
    }
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < i; j++) {
        double between = between(i, j);
        if (between < distance[i]) {
          distance[i] = between;
          nearest[i] = j;
        }
        if (between < distance[j]) {
          distance[j] = between;
          nearest[j] = i;
        }
      }
    }
  }

  /**
   * Returns which points stay.
   *
   * @param front points none of which covers another, in ascending order of their first objective
   * @param count how many stay, at least as many as objectives
   */
  static boolean[] spread(List<double[]> front, int count) {
    Crowding crowding = new Crowding(front);
    for (int size = front.size(); size > count; size--) {
      crowding.drop(crowding.mostCrowded());
    }
    return crowding.left;
  }

  private void drop(int point) {
    left[point] = false;
    for (int i = 0; i < left.length; i++) {
      if (left[i] && nearest[i] == point) {
        findNearest(i);
      }
    }
  }

  private int mostCrowded() {
    double least = Double.POSITIVE_INFINITY;
    int drop = NONE;
    double second = 0;
    for (int i = 0; i < left.length; i++) {
      if (!left[i] || fixed[i] || distance[i] > least) {
        continue;
      }
      double next = NONE;
      if (drop != NONE && distance[i] == least) {
        second = second == NONE ? secondDistance(drop) : second;
        next = secondDistance(i);
        if (next >= second) {
          continue;
        }
      }
      drop = i;
      least = distance[i];
      second = next;
    }
    return drop;
  }

  private void findNearest(int point) {
    nearest[point] = nearest(point, NONE);
    distance[point] =
        nearest[point] == NONE ? Double.POSITIVE_INFINITY : between(point, nearest[point]);
  }

  private double secondDistance(int point) {
    int second = nearest(point, nearest[point]);
    return second == NONE ? Double.POSITIVE_INFINITY : between(point, second);
  }

  private int nearest(int point, int butFor) {
    int found = NONE;
    double least = Double.POSITIVE_INFINITY;
    if (objectives == 2) {
      // Along a front of two objectives, distances grow with the places between.
      for (int step = -1; step <= 1; step += 2) {
        int i = point + step;
        while (i >= 0 && i < left.length && (!left[i] || i == butFor)) {
          i += step;
        }
        if (i >= 0 && i < left.length && between(point, i) < least) {
          found = i;
          least = between(point, i);
        }
      }
      return found;
    }
    for (int i = 0; i < left.length; i++) {
      if (left[i] && i != point && i != butFor) {
        double between = between(point, i);
        if (between < least) {
          found = i;
          least = between;
        }
      }
    }
    return found;
  }

  /** Squared distance of two points. */
  private double between(int a, int b) {
    int one = a * objectives;
    int two = b * objectives;
    double sum = 0;
    for (int i = 0; i < objectives; i++) {
      double difference = scaled[one + i] - scaled[two + i];
      sum += difference * difference;
    }
    return sum;
  }
}
