package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.report.Lettering.Align;

/** What stands round a plot: tick labels, axis titles, names at the ends of curves, the legend. */
final class AxisLettering {
  static final String FREQUENCY_TITLE = "Frequency (Hz)";

  private static final double LINE_PX = 16;
  private static final double SAMPLE_PX = 34;

  private AxisLettering() {}

  /**
   * A name at the right end of a curve.
   *
   * @param text the name
   * @param valuePx height of the curve's end, from the plot's upper edge (pixels)
   * @param colour the curve's colour
   */
  record EndLabel(String text, double valuePx, Color colour) {}

  /**
   * One entry of a legend.
   *
   * @param text what the line or area is
   * @param colour its colour
   * @param style line style; ignored for an area
   * @param area whether it is an area
   */
  record Entry(String text, Color colour, LineStyle style, boolean area) {}

  /** Writes 20, 50, 100, ... under a plot, and the title under them. */
  static void frequencies(Graphics2D g, PlotFrame frame, double x, double y) {
    double below = y + frame.heightPx();
    int last = FrequencyPlot.LABELLED_HZ.size() - 1;
    for (int i = 0; i <= last; i++) {
      int hz = FrequencyPlot.LABELLED_HZ.get(i);
      double at = x + frame.xOf(hz);
      g.setColor(Palette.SOFT_INK);
      g.setStroke(LineStyle.HAIR.stroke());
      g.draw(new java.awt.geom.Line2D.Double(at, below, at, below + 4));
      Lettering.SMALL.draw(g, Integer.toString(hz), at, below + 17, Align.CENTRE, Palette.INK);
    }
    Lettering.PLAIN.draw(
        g, FREQUENCY_TITLE, x + frame.widthPx() / 2.0, below + 36, Align.CENTRE, Palette.INK);
  }

  /** Writes the labelled values to the left of a plot. */
  static void values(
      Graphics2D g, PlotFrame frame, double x, double y, List<Double> labelled, boolean numbers) {
    for (double value : labelled) {
      double at = y + frame.yOf(value);
      g.setColor(Palette.SOFT_INK);
      g.setStroke(LineStyle.HAIR.stroke());
      g.draw(new java.awt.geom.Line2D.Double(x - 4, at, x, at));
      if (numbers) {
        Lettering.SMALL.draw(g, tick(value), x - 7, at + 4.5, Align.RIGHT, Palette.INK);
      }
    }
  }

  /** Writes the value axis's title upwards, left of its tick labels. */
  static void valueTitle(Graphics2D g, PlotFrame frame, double x, double y, String title) {
    Lettering.PLAIN.drawUpwards(g, title, x - 44, y + frame.heightPx() / 2.0, Palette.INK);
  }

  private static String tick(double value) {
    return java.math.BigDecimal.valueOf(value)
        .round(new java.math.MathContext(3))
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Writes names at the curves' ends, moved apart where they would cover each other. */
  static void endLabels(
      Graphics2D g, PlotFrame frame, double x, double y, List<EndLabel> labels, double widthPx) {
    List<EndLabel> ordered = new ArrayList<>(labels);
    ordered.sort(Comparator.comparingDouble(EndLabel::valuePx));
    double[] at = new double[ordered.size()];
    double next = 4;
    for (int i = 0; i < at.length; i++) {
      double wanted = Math.max(0, Math.min(frame.heightPx(), ordered.get(i).valuePx()));
      at[i] = Math.max(wanted, next);
      next = at[i] + LINE_PX;
    }
    double last = frame.heightPx() - 2.0;
    for (int i = at.length - 1; i >= 0; i--) {
      at[i] = Math.min(at[i], last);
      last = at[i] - LINE_PX;
    }
    double right = x + frame.widthPx();
    for (int i = 0; i < at.length; i++) {
      EndLabel label = ordered.get(i);
      double end = Math.max(0, Math.min(frame.heightPx(), label.valuePx()));
      g.setColor(label.colour());
      g.setStroke(LineStyle.HAIR.stroke());
      g.draw(new java.awt.geom.Line2D.Double(right + 2, y + end, right + 14, y + at[i]));
      Lettering.SMALL.draw(
          g,
          Lettering.SMALL.fitted(label.text(), widthPx - 20),
          right + 18,
          y + at[i] + 4.5,
          Align.LEFT,
          Palette.shade(label.colour(), 0.7));
    }
  }

  /** Returns how much higher a legend is than one of a single row (pixels). */
  static int legendExtraPx(List<Entry> entries, double widthPx) {
    double left = 0;
    double extra = 0;
    for (Entry entry : entries) {
      double wide = entryPx(entry);
      if (left > 0 && left + wide > widthPx) {
        left = 0;
        extra += LINE_PX + 3;
      }
      left += wide;
    }
    return (int) Math.round(extra);
  }

  private static double entryPx(Entry entry) {
    return SAMPLE_PX + 8 + Lettering.SMALL.width(entry.text()) + 22;
  }

  /** Writes a legend in rows from a point, entries side by side; returns the height used (px). */
  static double legend(Graphics2D g, List<Entry> entries, double x, double y, double widthPx) {
    double left = x;
    double line = y;
    for (Entry entry : entries) {
      double wide = entryPx(entry);
      if (left > x && left + wide > x + widthPx) {
        left = x;
        line += LINE_PX + 3;
      }
      g.setColor(entry.colour());
      if (entry.area()) {
        g.fill(new java.awt.geom.Rectangle2D.Double(left, line - 9, SAMPLE_PX, 11));
      } else {
        g.setStroke(entry.style().stroke());
        g.draw(new java.awt.geom.Line2D.Double(left, line - 4, left + SAMPLE_PX, line - 4));
      }
      Lettering.SMALL.draw(g, entry.text(), left + SAMPLE_PX + 8, line, Align.LEFT, Palette.INK);
      left += wide;
    }
    return line + LINE_PX - y;
  }
}
