package nullplane.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.DoubleFunction;
import nullplane.report.Lettering.Align;
import nullplane.units.Range;

/**
 * A plot of measured points, drawn straight onto the picture: dots, intervals, bands and lines over
 * any axis. What lies outside the frame is drawn at its edge.
 */
final class MeasurementPlot {
  private static final double TICK_PX = 4;
  private static final double CAP_PX = 3;

  private final Graphics2D g;
  private final Rectangle2D.Double frame;
  private final Range across;
  private final Range upwards;
  private final boolean logarithmic;

  /**
   * @param g what to draw on
   * @param frame the frame (pixels)
   * @param across the axis across
   * @param logarithmic whether the axis across is logarithmic
   * @param upwards the axis upwards
   */
  MeasurementPlot(
      Graphics2D g, Rectangle2D.Double frame, Range across, boolean logarithmic, Range upwards) {
    this.g = g;
    this.frame = frame;
    this.across = across;
    this.logarithmic = logarithmic;
    this.upwards = upwards;
    g.setColor(Palette.PAPER);
    g.fill(frame);
  }

  double x(double value) {
    double inside = Math.max(across.lower(), Math.min(across.upper(), value));
    double share =
        logarithmic
            ? Math.log(inside / across.lower()) / Math.log(across.upper() / across.lower())
            : (inside - across.lower()) / (across.upper() - across.lower());
    return frame.x + share * frame.width;
  }

  double y(double value) {
    double inside = Math.max(upwards.lower(), Math.min(upwards.upper(), value));
    return frame.y
        + frame.height * (upwards.upper() - inside) / (upwards.upper() - upwards.lower());
  }

  /** Draws hairs at values of either axis. */
  void grid(List<Double> xs, List<Double> ys, Color colour) {
    g.setColor(colour);
    g.setStroke(LineStyle.HAIR.stroke());
    for (double value : xs) {
      g.draw(new Line2D.Double(x(value), frame.y, x(value), frame.y + frame.height));
    }
    for (double value : ys) {
      g.draw(new Line2D.Double(frame.x, y(value), frame.x + frame.width, y(value)));
    }
  }

  /** Fills a rectangle between values of both axes. */
  void band(Range xs, Range ys, Color fill) {
    g.setColor(fill);
    double left = x(xs.lower());
    double top = y(ys.upper());
    g.fill(new Rectangle2D.Double(left, top, x(xs.upper()) - left, y(ys.lower()) - top));
  }

  /** Draws a line between two points. */
  void line(double x1, double y1, double x2, double y2, Color colour, LineStyle style) {
    g.setColor(colour);
    g.setStroke(style.stroke());
    g.draw(new Line2D.Double(x(x1), y(y1), x(x2), y(y2)));
  }

  /** Draws a line through points. */
  void curve(double[] xs, double[] ys, Color colour, LineStyle style) {
    Path2D.Double path = new Path2D.Double();
    for (int i = 0; i < xs.length; i++) {
      if (i == 0) {
        path.moveTo(x(xs[i]), y(ys[i]));
      } else {
        path.lineTo(x(xs[i]), y(ys[i]));
      }
    }
    g.setColor(colour);
    g.setStroke(style.stroke());
    g.draw(path);
  }

  /** Draws a filled dot. */
  void dot(double px, double py, double radiusPx, Color colour) {
    g.setColor(colour);
    g.fill(circle(px, py, radiusPx));
  }

  /** Draws a ring. */
  void ring(double px, double py, double radiusPx, Color colour) {
    g.setColor(colour);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(circle(px, py, radiusPx));
  }

  /** Draws an empty square. */
  void square(double px, double py, double halfPx, Color colour) {
    g.setColor(colour);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(new Rectangle2D.Double(px - halfPx, py - halfPx, 2 * halfPx, 2 * halfPx));
  }

  /** Draws a cross. */
  void cross(double px, double py, double halfPx, Color colour) {
    g.setColor(colour);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(new Line2D.Double(px - halfPx, py - halfPx, px + halfPx, py + halfPx));
    g.draw(new Line2D.Double(px - halfPx, py + halfPx, px + halfPx, py - halfPx));
  }

  /** Draws an interval of the axis upwards at a place across (pixels). */
  void interval(double px, double lower, double upper, Color colour) {
    g.setColor(colour);
    g.setStroke(new BasicStroke(1.2f));
    g.draw(new Line2D.Double(px, y(lower), px, y(upper)));
    g.draw(new Line2D.Double(px - CAP_PX, y(lower), px + CAP_PX, y(lower)));
    g.draw(new Line2D.Double(px - CAP_PX, y(upper), px + CAP_PX, y(upper)));
  }

  private static Ellipse2D.Double circle(double px, double py, double radiusPx) {
    return new Ellipse2D.Double(px - radiusPx, py - radiusPx, 2 * radiusPx, 2 * radiusPx);
  }

  /** Draws the frame and writes the ticks of both axes. */
  void axes(List<Double> xs, List<Double> ys, DoubleFunction<String> number, boolean namesBelow) {
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(frame);
    double below = frame.y + frame.height;
    for (double value : xs) {
      g.setColor(Palette.SOFT_INK);
      g.draw(new Line2D.Double(x(value), below, x(value), below + TICK_PX));
      if (namesBelow) {
        Lettering.SMALL.draw(
            g, Charts.plain(value), x(value), below + 17, Align.CENTRE, Palette.INK);
      }
    }
    for (double value : ys) {
      g.setColor(Palette.SOFT_INK);
      g.draw(new Line2D.Double(frame.x - TICK_PX, y(value), frame.x, y(value)));
      Lettering.SMALL.draw(
          g, number.apply(value), frame.x - 7, y(value) + 4.5, Align.RIGHT, Palette.INK);
    }
  }
}
