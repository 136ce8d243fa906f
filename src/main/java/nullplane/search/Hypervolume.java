package nullplane.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import nullplane.units.Curve;

/**
 * The volume that a set of points dominates, up to a reference point; all objectives are to be made
 * small. Exact up to rounding, for any number of objectives.
 *
 * <p>Source: L. While, L. Bradstreet, L. Barone, A fast way of calculating exact hypervolumes, IEEE
 * Trans. Evol. Comput. 16 (2012) 86: the volume is the sum over the points of what each dominates
 * alone among those before it, and that is its own box less the volume of the others limited to the
 * box. Points are taken in ascending order of the last objective, so that each step drops one
 * objective. Two and three objectives are swept: C. M. Fonseca, L. Paquete, M. Lopez-Ibanez, An
 * improved dimension-sweep algorithm for the hypervolume indicator, CEC 2006, p. 1157.
 */
public final class Hypervolume {
  private Hypervolume() {}

  /**
   * Returns the dominated volume.
   *
   * @param points the points, each with one number per objective; dominated ones and ones beyond
   *     the reference may be among them and add nothing
   * @param reference the reference point
   * @return the volume (product of the objectives' units), 0 or more
   * @throws IllegalArgumentException if a point has another number of objectives
   */
  public static double of(List<Curve> points, Curve reference) {
    int objectives = reference.size();
    List<double[]> inside = new ArrayList<>();
    for (Curve point : points) {
      if (point.size() != objectives) {
        throw new IllegalArgumentException(
            "a point of " + point.size() + " objectives, a reference of " + objectives);
      }
      // As distances to the reference: the larger, the better.
      double[] gain = new double[objectives];
      boolean gains = true;
      for (int i = 0; i < objectives; i++) {
        gain[i] = reference.at(i) - point.at(i);
        gains &= gain[i] > 0;
      }
      if (gains) {
        inside.add(gain);
      }
    }
    return volume(inside.toArray(double[][]::new), objectives);
  }

  /** Volume of the boxes from 0 to each point, in the first objectives only. */
  private static double volume(double[][] points, int objectives) {
    if (points.length == 0) {
      return 0;
    }
    if (objectives == 1) {
      return Arrays.stream(points).mapToDouble(p -> p[0]).max().orElse(0);
    }
    int last = objectives - 1;
    Arrays.sort(points, (a, b) -> Double.compare(b[last], a[last]));
    if (objectives == 2) {
      return area(points);
    }
    if (objectives == 3) {
      return Staircase.volume(points);
    }
    double sum = 0;
    double[][] front = new double[points.length][];
    int size = 0;
    for (double[] point : points) {
      double own = 1;
      for (int i = 0; i < last; i++) {
        own *= point[i];
      }
      double shared = volume(limited(front, size, point, last), last);
      sum += point[last] * Math.max(0, own - shared);
      size = enter(front, size, point, last);
    }
    return sum;
  }

  /** Area of points in descending order of the second number. */
  private static double area(double[][] points) {
    double area = 0;
    double widest = 0;
    for (int i = 0; i < points.length; i++) {
      if (points[i][0] > widest) {
        area += (points[i][0] - widest) * points[i][1];
        widest = points[i][0];
      }
    }
    return area;
  }

  /** Keeps the points none of which covers another; returns how many there are now. */
  private static int enter(double[][] front, int size, double[] point, int objectives) {
    int kept = 0;
    for (int i = 0; i < size; i++) {
      if (covers(front[i], point, objectives)) {
        return size;
      }
    }
    for (int i = 0; i < size; i++) {
      if (!covers(point, front[i], objectives)) {
        front[kept++] = front[i];
      }
    }
    front[kept++] = point;
    return kept;
  }

  private static boolean covers(double[] a, double[] b, int objectives) {
    for (int i = 0; i < objectives; i++) {
      if (a[i] < b[i]) {
        return false;
      }
    }
    return true;
  }

  /** The parts of points that lie in the box of one, without those that others cover. */
  private static double[][] limited(double[][] points, int size, double[] box, int objectives) {
    double[][] front = new double[size][];
    int kept = 0;
    for (int i = 0; i < size; i++) {
      double[] part = new double[objectives];
      for (int j = 0; j < objectives; j++) {
        part[j] = Math.min(points[i][j], box[j]);
      }
      kept = enter(front, kept, part, objectives);
    }
    return Arrays.copyOf(front, kept);
  }

  /** The area that points of a plane dominate, as points come in one by one. */
  private static final class Staircase {
    private final double[] x;
    private final double[] y;
    private int size;
    private double area;

    private Staircase(int most) {
      x = new double[most];
      y = new double[most];
    }

    /** Volume of points in descending order of the third number. */
    static double volume(double[][] points) {
      Staircase stairs = new Staircase(points.length);
      double volume = 0;
      for (int i = 0; i < points.length; i++) {
        stairs.add(points[i][0], points[i][1]);
        double below = i + 1 < points.length ? points[i + 1][2] : 0;
        volume += stairs.area * (points[i][2] - below);
      }
      return volume;
    }

    /** Adds a point; steps ascend in x and descend in y. */
    private void add(double newX, double newY) {
      int end = Arrays.binarySearch(x, 0, size, newX);
      end = end < 0 ? -end - 1 : end;
      if (end < size && y[end] >= newY) {
        return;
      }
      int after = end < size && x[end] == newX ? end + 1 : end;
      int from = end;
      while (from > 0 && y[from - 1] <= newY) {
        from--;
      }
      double left = from > 0 ? x[from - 1] : 0;
      area += (newX - left) * newY;
      for (int i = from; i < end; i++) {
        area -= (x[i] - left) * y[i];
        left = x[i];
      }
      area -= end < size ? (newX - left) * y[end] : 0;
      System.arraycopy(x, after, x, from + 1, size - after);
      System.arraycopy(y, after, y, from + 1, size - after);
      x[from] = newX;
      y[from] = newY;
      size += from + 1 - after;
    }
  }
}
