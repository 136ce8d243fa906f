package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import nullplane.report.Lettering.Align;
import nullplane.units.Range;

/**
 * A plot with two linear axes: its place in a picture and the way from values to pixels.
 *
 * @param leftPx left edge (pixels)
 * @param topPx upper edge (pixels)
 * @param widthPx width (pixels)
 * @param heightPx height (pixels)
 * @param across the axis from left to right (in the unit of its title)
 * @param up the axis from bottom to top (in the unit of its title)
 */
record LinearFrame(
    double leftPx, double topPx, double widthPx, double heightPx, Range across, Range up) {
  /** About how many steps an axis is divided into. */
  private static final int STEPS = 6;

  /** Returns the place of a value on the axis across (pixels). */
  double xOf(double value) {
    return leftPx + widthPx * (value - across.lower()) / (across.upper() - across.lower());
  }

  /** Returns the place of a value on the axis up (pixels). */
  double yOf(double value) {
    return topPx + heightPx * (1 - (value - up.lower()) / (up.upper() - up.lower()));
  }

  /** Returns whether a point lies on the plot. */
  boolean contains(double x, double y) {
    return across.contains(x) && up.contains(y);
  }

  /**
   * Returns an axis with round ends.
   *
   * @param lowest least value
   * @param highest greatest value
   * @param leastSpan what the axis covers at least, so that no small difference fills a plot
   */
  static Range axis(double lowest, double highest, double leastSpan) {
    double span = Math.max(leastSpan, highest - lowest);
    double step = step(span);
    double lower = step * Math.floor(lowest / step + 1e-9);
    double upper = step * Math.ceil(Math.max(highest, lower + span) / step - 1e-9);
    return new Range(lower, upper);
  }

  /** Returns the distance of labelled values: 1, 2 or 5 of a decade. */
  private static double step(double span) {
    return PlotRanges.nextStep(span / STEPS, true);
  }

  /** Paints paper, grid, tick labels, titles and border. */
  void paint(Graphics2D g, String acrossTitle, String upTitle) {
    g.setColor(Palette.PAPER);
    g.fill(new Rectangle2D.Double(leftPx, topPx, widthPx, heightPx));
    double bottom = topPx + heightPx;
    for (double value : ticks(across)) {
      double x = xOf(value);
      line(g, x, topPx, x, bottom, Palette.MAJOR_GRID);
      line(g, x, bottom, x, bottom + 4, Palette.SOFT_INK);
      Lettering.SMALL.draw(g, label(value), x, bottom + 17, Align.CENTRE, Palette.INK);
    }
    for (double value : ticks(up)) {
      double y = yOf(value);
      line(g, leftPx, y, leftPx + widthPx, y, Palette.MAJOR_GRID);
      line(g, leftPx - 4, y, leftPx, y, Palette.SOFT_INK);
      Lettering.SMALL.draw(g, label(value), leftPx - 7, y + 4.5, Align.RIGHT, Palette.INK);
    }
    if (!acrossTitle.isEmpty()) {
      Lettering.PLAIN.draw(
          g, acrossTitle, leftPx + widthPx / 2, bottom + 36, Align.CENTRE, Palette.INK);
    }
    Lettering.PLAIN.drawUpwards(g, upTitle, leftPx - 52, topPx + heightPx / 2, Palette.INK);
  }

  /** Paints the border, on top of what is drawn. */
  void border(Graphics2D g) {
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(new Rectangle2D.Double(leftPx, topPx, widthPx, heightPx));
  }

  private static List<Double> ticks(Range axis) {
    return Charts.multiples(axis, step(axis.upper() - axis.lower()));
  }

  private static void line(Graphics2D g, double x1, double y1, double x2, double y2, Color colour) {
    g.setColor(colour);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(new Line2D.Double(x1, y1, x2, y2));
  }

  private static String label(double value) {
    return value == 0 ? "0" : Charts.plain(value);
  }
}
