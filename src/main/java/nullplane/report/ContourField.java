package nullplane.report;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Values on a rectangular grid, and where they lie above a threshold: as an area and as its edge.
 * Along the edges of a cell the values run in straight lines.
 */
final class ContourField {
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

  /** Returns the area in which the values are at or above a threshold. */
  Path2D above(double threshold) {
    Path2D area = new Path2D.Double(Path2D.WIND_NON_ZERO);
    for (int row = 0; row + 1 < y.length; row++) {
      int column = 0;
      while (column + 1 < x.length) {
        int end = column;
        while (end + 1 < x.length && whole(end, row, threshold)) {
          end++;
        }
        if (end > column) {
          add(
              area,
              List.of(
                  point(column, row),
                  point(end, row),
                  point(end, row + 1),
                  point(column, row + 1)));
          column = end;
        } else {
          add(area, piece(column, row, threshold));
          column++;
        }
      }
    }
    return area;
  }

  /** Returns the line on which the values are at a threshold, in short pieces. */
  List<Point2D[]> edge(double threshold) {
    List<Point2D[]> pieces = new ArrayList<>();
    for (int row = 0; row + 1 < y.length; row++) {
      for (int column = 0; column + 1 < x.length; column++) {
        List<Point2D> crossings = new ArrayList<>();
        int[][] corners = corners(column, row);
        for (int i = 0; i < 4; i++) {
          crossing(corners[i], corners[(i + 1) % 4], threshold).ifPresent(crossings::add);
        }
        for (int i = 0; i + 1 < crossings.size(); i += 2) {
          pieces.add(new Point2D[] {crossings.get(i), crossings.get(i + 1)});
        }
      }
    }
    return pieces;
  }

  private boolean whole(int column, int row, double threshold) {
    for (int[] corner : corners(column, row)) {
      if (!(values[corner[0]][corner[1]] >= threshold)) {
        return false;
      }
    }
    return true;
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

  private java.util.Optional<Point2D> crossing(int[] from, int[] to, double threshold) {
    double low = values[from[0]][from[1]];
    double high = values[to[0]][to[1]];
    if (low >= threshold == high >= threshold) {
      return java.util.Optional.empty();
    }
    double share = (threshold - low) / (high - low);
    return java.util.Optional.of(
        new Point2D.Double(
            x[from[0]] + share * (x[to[0]] - x[from[0]]),
            y[from[1]] + share * (y[to[1]] - y[from[1]])));
  }

  private static int[][] corners(int column, int row) {
    return new int[][] {{column, row}, {column + 1, row}, {column + 1, row + 1}, {column, row + 1}};
  }

  private Point2D point(int column, int row) {
    return new Point2D.Double(x[column], y[row]);
  }

  private static void add(Path2D area, List<Point2D> outline) {
    if (outline.size() < 3) {
      return;
    }
    area.moveTo(outline.get(0).getX(), outline.get(0).getY());
    outline.stream().skip(1).forEach(p -> area.lineTo(p.getX(), p.getY()));
    area.closePath();
  }
}
