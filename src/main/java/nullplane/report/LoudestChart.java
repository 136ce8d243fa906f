package nullplane.report;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Limit;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.scoring.StackFigures;
import nullplane.units.Range;

/**
 * Loudest level of each stack, one panel per stack. A broad line in the stack's colour is the
 * loudest level; the three limits are thin lines, and the one that binds lies on the broad one.
 */
final class LoudestChart {
  private static final double LEAST_STRETCH_PX = 24;

  private final DesignSpec spec;
  private final Assessment woofer;
  private final String title;
  private final PlotRanges ranges;

  LoudestChart(DesignSpec spec, Assessment woofer, String title, PlotRanges ranges) {
    this.spec = spec;
    this.woofer = woofer;
    this.title = title;
    this.ranges = ranges;
  }

  Picture picture() {
    return panels()
        .picture(
            Charts.Kind.LOUDEST,
            new StackPanels.Words(
                title + ": loudest level of each stack over frequency, and the limit that binds",
                title + ": loudest level and the limit that binds",
                Charts.levelTitle(spec, "Loudest level", ""),
                List.of(
                    new Entry(
                        "loudest level",
                        Palette.tint(Palette.SOFT_INK, 0.5),
                        LineStyle.BROAD,
                        false),
                    new Entry("excursion limit", Palette.INK, LineStyle.EXCURSION, false),
                    new Entry("heat limit", Palette.INK, LineStyle.HEAT, false),
                    new Entry("amplifier limit", Palette.INK, LineStyle.AMPLIFIER, false),
                    new Entry("level asked for", Palette.INK, LineStyle.ASKED, false))),
            this::plot,
            stack -> verdict(stack.figures()),
            (g, plot, stack, x, y) -> {
              bindingWords(g, plot, stack.curves(), x, y, stack.brief().loudestDb());
              leastMargin(g, plot, stack, x, y);
            });
  }

  private StackPanels panels() {
    return new StackPanels(woofer, ranges.loudestDb());
  }

  /** Returns the frame of each panel. */
  PlotFrame frame() {
    return panels().frame();
  }

  private static String verdict(StackFigures figures) {
    return "margin "
        + Figures.signedDecibels(figures.outputMarginDb())
        + " at "
        + Figures.hertz(figures.outputMarginHz())
        + ": "
        + figures.outputLimit().word();
  }

  private FrequencyPlot plot(int index) {
    StackAssessment stack = woofer.stacks().get(index);
    StackCurves curves = stack.curves();
    FrequencyPlot plot = new FrequencyPlot(frame());
    plot.grid(Charts.multiples(ranges.loudestDb(), 10), Charts.multiples(ranges.loudestDb(), 5));
    double[] frequency = curves.frequencyHz().toArray();
    plot.curve(
        frequency,
        curves.loudestDb().toArray(),
        Palette.tint(Palette.stack(index), 0.75),
        LineStyle.BROAD);
    for (Limit limit : Limit.values()) {
      plot.curve(frequency, limitDb(curves, limit), Palette.INK, LineStyle.of(limit));
    }
    plot.level(
        new Range(spec.target().lowCornerHz(), spec.upperCornerHz(stack.brief())),
        stack.brief().loudestDb(),
        Palette.INK,
        LineStyle.ASKED);
    return plot;
  }

  private static double[] limitDb(StackCurves curves, Limit limit) {
    return switch (limit) {
      case EXCURSION -> curves.excursionLimitDb().toArray();
      case HEAT -> curves.heatLimitDb().toArray();
      case AMPLIFIER -> curves.amplifierLimitDb().toArray();
    };
  }

  /** Rings the point of the least margin. */
  private static void leastMargin(
      Graphics2D g, FrequencyPlot plot, StackAssessment stack, double x, double y) {
    StackFigures figures = stack.figures();
    PlotFrame frame = plot.frame();
    double loudest =
        plot.valueAt(
            stack.curves().frequencyHz().toArray(),
            stack.curves().loudestDb().toArray(),
            figures.outputMarginHz());
    if (!frame.frequencyHz().contains(figures.outputMarginHz())
        || !frame.value().contains(loudest)) {
      return;
    }
    double atX = x + frame.xOf(figures.outputMarginHz());
    double atY = y + frame.yOf(loudest);
    Ellipse2D ring = new Ellipse2D.Double(atX - 4.5, atY - 4.5, 9, 9);
    g.setColor(Palette.PAPER);
    g.fill(ring);
    g.setColor(Palette.INK);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(ring);
  }

  /** Writes the word of the limit that binds under each stretch that is long enough to hold it. */
  private static void bindingWords(
      Graphics2D g, FrequencyPlot plot, StackCurves curves, double x, double y, double askedDb) {
    PlotFrame frame = plot.frame();
    double[] frequency = curves.frequencyHz().toArray();
    int start = 0;
    for (int i = 1; i <= frequency.length; i++) {
      if (i < frequency.length && curves.binding().get(i) == curves.binding().get(start)) {
        continue;
      }
      double left = Math.max(0, frame.xOf(frequency[start]));
      double right =
          Math.min(frame.widthPx(), frame.xOf(frequency[Math.min(i, frequency.length - 1)]));
      if (right - left >= LEAST_STRETCH_PX) {
        word(
            g, plot, curves, x, y, (left + right) / 2, curves.binding().get(start).word(), askedDb);
      }
      start = i;
    }
  }

  /** Writes a word near a point of the loudest curve, clear of it and of the level asked for. */
  private static void word(
      Graphics2D g,
      FrequencyPlot plot,
      StackCurves curves,
      double x,
      double y,
      double middlePx,
      String word,
      double askedDb) {
    PlotFrame frame = plot.frame();
    double[] frequency = curves.frequencyHz().toArray();
    double[] loudest = curves.loudestDb().toArray();
    double wide = Lettering.SMALL.width(word);
    double at = Math.max(5, Math.min(middlePx + 8, frame.widthPx() - wide - 5));
    double lowest = 0;
    for (int i = 0; i <= 8; i++) {
      double value =
          plot.valueAt(frequency, loudest, frame.frequencyAt(at - 4 + i * (wide + 8) / 8));
      if (Double.isFinite(value)) {
        lowest = Math.max(lowest, frame.yOf(value));
      }
    }
    double base = lowest + 20;
    double asked = frame.yOf(askedDb);
    if (asked > base - 14 && asked < base + 6) {
      base = asked + 18;
    }
    if (base > frame.heightPx() - 5) {
      return;
    }
    g.setColor(Palette.PAPER);
    g.fill(new Rectangle2D.Double(x + at - 2, y + base - 11, wide + 4, 14));
    Lettering.SMALL.draw(g, word, x + at, y + base, Align.LEFT, Palette.INK);
  }
}
