package nullplane.report;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Values on a rectangular grid, and where they lie above a threshold: as an area and as its edge.
 * Along the edges of a cell the values run in straight lines.
 */
final class ContourField {
  private static final double NO_TURN = 1e-6;
  private static final double PER_PIXEL = 100;

  private final double[] x;
  private final double[] y;
  private final double[][] values;

  /**
   * @param x places of the columns (pixels)
   * @param y places of the rows (pixels)
   * @param values finite values, columns x rows
   */
  ContourField(double[] x, double[] y, double[][] values) {
    this.x = x.clone();
    this.y = y.clone();
    this.values = values.clone();
  }

  /** A directed piece of an outline, the area to one side of it. */
  private record Piece(double fromX, double fromY, double toX, double toY) {
    static Piece of(Point2D from, Point2D to) {
      return new Piece(from.getX(), from.getY(), to.getX(), to.getY());
    }

    Point2D from() {
      return new Point2D.Double(fromX, fromY);
    }

    Point2D to() {
      return new Point2D.Double(toX, toY);
    }
  }

  /** Returns the area in which the values are at or above a threshold. */
  Path2D above(double threshold) {
    Path2D area = new Path2D.Double(Path2D.WIND_NON_ZERO);
    for (List<Point2D> loop : loops(threshold)) {
      append(area, loop);
      area.closePath();
    }
    return area;
  }

  /** Returns the line on which the values are at a threshold, without the rim of the grid. */
  Path2D edge(double threshold) {
    Path2D line = new Path2D.Double();
    for (List<Point2D> loop : loops(threshold)) {
      List<Point2D> closed = new ArrayList<>(loop);
      closed.add(loop.get(0));
      List<Point2D> run = new ArrayList<>();
      for (int i = 0; i + 1 < closed.size(); i++) {
        if (onRim(closed.get(i), closed.get(i + 1))) {
          append(line, run);
          run.clear();
        } else {
          if (run.isEmpty()) {
            run.add(closed.get(i));
          }
          run.add(closed.get(i + 1));
        }
      }
      append(line, run);
    }
    return line;
  }

  private boolean onRim(Point2D a, Point2D b) {
    int lastX = x.length - 1;
    int lastY = y.length - 1;
    return same(a.getX(), b.getX(), rounded(x[0]))
        || same(a.getX(), b.getX(), rounded(x[lastX]))
        || same(a.getY(), b.getY(), rounded(y[0]))
        || same(a.getY(), b.getY(), rounded(y[lastY]));
  }

  private static boolean same(double a, double b, double c) {
    return a == b && b == c;
  }

  /** Returns the outlines of the area: what is left of the cells' outlines when shared sides go. */
  private List<List<Point2D>> loops(double threshold) {
    Set<Piece> pieces = new LinkedHashSet<>();
    for (int row = 0; row + 1 < y.length; row++) {
      for (int column = 0; column + 1 < x.length; column++) {
        List<Point2D> cell = piece(column, row, threshold);
        for (int i = 0; i < cell.size(); i++) {
          Point2D from = cell.get(i);
          Point2D to = cell.get((i + 1) % cell.size());
          if (!from.equals(to) && !pieces.remove(Piece.of(to, from))) {
            pieces.add(Piece.of(from, to));
          }
        }
      }
    }
    Map<Point2D, Deque<Point2D>> next = new LinkedHashMap<>();
    pieces.forEach(p -> next.computeIfAbsent(p.from(), k -> new ArrayDeque<>()).add(p.to()));
    List<List<Point2D>> loops = new ArrayList<>();
    for (Point2D start : List.copyOf(next.keySet())) {
      Deque<Point2D> ways = next.getOrDefault(start, new ArrayDeque<>());
      while (!ways.isEmpty()) {
        List<Point2D> loop = new ArrayList<>();
        Point2D at = start;
        Deque<Point2D> onwards = ways;
        while (!onwards.isEmpty()) {
          loop.add(at);
          at = onwards.remove();
          onwards = next.getOrDefault(at, new ArrayDeque<>());
        }
        loops.add(withoutMiddles(loop));
      }
    }
    return loops;
  }

  /** Leaves out points that lie on the straight line between their neighbours. */
  private static List<Point2D> withoutMiddles(List<Point2D> loop) {
    List<Point2D> kept = new ArrayList<>();
    int size = loop.size();
    for (int i = 0; i < size; i++) {
      Point2D before = kept.isEmpty() ? loop.get(size - 1) : kept.get(kept.size() - 1);
      Point2D here = loop.get(i);
      Point2D after = loop.get((i + 1) % size);
      double turn =
          (here.getX() - before.getX()) * (after.getY() - here.getY())
              - (here.getY() - before.getY()) * (after.getX() - here.getX());
      if (i == 0 || Math.abs(turn) > NO_TURN) {
        kept.add(here);
      }
    }
    return kept;
  }

  private List<Point2D> piece(int column, int row, double threshold) {
    List<Point2D> outline = new ArrayList<>();
    int[][] corners = corners(column, row);
    for (int i = 0; i < 4; i++) {
      int[] from = corners[i];
      if (values[from[0]][from[1]] >= threshold) {
        outline.add(point(from[0], from[1]));
      }
      crossing(from, corners[(i + 1) % 4], threshold).ifPresent(outline::add);
    }
    return outline;
  }

  private Optional<Point2D> crossing(int[] from, int[] to, double threshold) {
    double low = values[from[0]][from[1]];
    double high = values[to[0]][to[1]];
    if (low >= threshold == high >= threshold) {
      return Optional.empty();
    }
    double share = (threshold - low) / (high - low);
    return Optional.of(
        new Point2D.Double(
            rounded(x[from[0]] + share * (x[to[0]] - x[from[0]])),
            rounded(y[from[1]] + share * (y[to[1]] - y[from[1]]))));
  }

  private static int[][] corners(int column, int row) {
    return new int[][] {{column, row}, {column + 1, row}, {column + 1, row + 1}, {column, row + 1}};
  }

  private Point2D point(int column, int row) {
    return new Point2D.Double(rounded(x[column]), rounded(y[row]));
  }

  /** Rounds to a hundredth of a pixel, so that shared points of two cells are the same. */
  private static double rounded(double px) {
    return Math.round(px * PER_PIXEL) / PER_PIXEL;
  }

  private static void append(Path2D path, List<Point2D> points) {
    for (int i = 0; i < points.size(); i++) {
      if (i == 0) {
        path.moveTo(points.get(0).getX(), points.get(0).getY());
      } else {
        path.lineTo(points.get(i).getX(), points.get(i).getY());
      }
    }
  }
}
