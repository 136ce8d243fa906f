package nullplane.search;

import java.util.ArrayList;
import java.util.List;

/** The history of a search, every so many generations, thinned so that it stays bounded. */
final class ConvergenceHistory {
  /** The most entries. */
  static final int MOST = 512;

  private final List<ConvergencePoint> points = new ArrayList<>();
  private long stride;

  /**
   * @param stride generations from one entry to the next
   * @param points the entries so far
   */
  ConvergenceHistory(long stride, List<ConvergencePoint> points) {
    this.stride = stride;
    this.points.addAll(points);
  }

  /**
   * Returns the stride to begin with, so that measuring volumes does not slow the search.
   *
   * @param objectives number of objectives
   */
  static long firstStride(int objectives) {
    return objectives <= 2 ? 1 : objectives == 3 ? 5 : 20;
  }

  /** Returns whether a generation is to be entered. */
  boolean wants(long generation) {
    return points.isEmpty() || generation % stride == 0;
  }

  /** Enters a generation that is wanted. */
  void add(ConvergencePoint point) {
    points.add(point);
    if (points.size() == MOST) {
      stride *= 2;
      points.removeIf(p -> p.generation() > 1 && p.generation() % stride != 0);
    }
  }

  /** Returns the latest entry; there is one after the first generation. */
  ConvergencePoint latest() {
    return points.get(points.size() - 1);
  }

  long stride() {
    return stride;
  }

  List<ConvergencePoint> points() {
    return List.copyOf(points);
  }
}
