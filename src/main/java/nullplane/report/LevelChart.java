package nullplane.report;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.report.AxisLettering.Entry;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.scoring.SumCurves;

/** Level of each stack, one panel per stack, over its corridor. */
final class LevelChart {
  private static final double BAND_TINT = 0.3;

  private final DesignSpec spec;
  private final Assessment woofer;
  private final String title;
  private final PlotRanges ranges;

  LevelChart(DesignSpec spec, Assessment woofer, String title, PlotRanges ranges) {
    this.spec = spec;
    this.woofer = woofer;
    this.title = title;
    this.ranges = ranges;
  }

  Picture picture() {
    return panels()
        .picture(
            Charts.Kind.LEVEL,
            new StackPanels.Words(
                title
                    + ": level of each stack over frequency, against the corridor round its target"
                    + " level",
                title + ": level against target",
                Charts.levelTitle(
                    spec, "Level", ", " + Charts.plain(spec.target().voltageV()) + " V"),
                entries()),
            this::plot,
            stack -> verdict(stack.figures()),
            (g, plot, stack, x, y) -> {});
  }

  private StackPanels panels() {
    return new StackPanels(woofer, ranges.levelDb());
  }

  /** Returns the frame of each panel. */
  PlotFrame frame() {
    return panels().frame();
  }

  /** Returns the plot of one stack. */
  FrequencyPlot plot(int index) {
    StackAssessment stack = woofer.stacks().get(index);
    Color colour = Palette.stack(index);
    FrequencyPlot plot = new FrequencyPlot(frame());
    Charts.corridor(plot, spec, stack.brief(), Palette.tint(colour, BAND_TINT));
    plot.grid(Charts.multiples(ranges.levelDb(), 10), Charts.multiples(ranges.levelDb(), 2));
    double[] frequency = stack.curves().frequencyHz().toArray();
    if (!stack.network().none()) {
      plot.curve(
          frequency, stack.curves().bareLevelDb().toArray(), Palette.SOFT_INK, LineStyle.BARE);
    }
    stack
        .limits()
        .ifPresent(
            limits ->
                plot.curve(
                    frequency,
                    limits.hotLevelDb().toArray(),
                    Palette.shade(colour, 0.7),
                    LineStyle.HEAT));
    Optional<SumCurves> sum = stack.curves().sum();
    plot.curve(
        frequency,
        stack.curves().levelDb().toArray(),
        colour,
        sum.isPresent() ? LineStyle.THIN : LineStyle.MAIN);
    sum.ifPresent(
        both -> {
          double[] band = both.frequencyHz().toArray();
          plot.curve(band, both.mainDb().toArray(), Palette.INK, LineStyle.THIN);
          plot.curve(band, both.sumDb().toArray(), colour, LineStyle.MAIN);
        });
    return plot;
  }

  private List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    boolean sums = woofer.stacks().stream().anyMatch(s -> s.curves().sum().isPresent());
    boolean alone = woofer.stacks().stream().anyMatch(s -> s.curves().sum().isEmpty());
    entries.add(
        new Entry(
            sums
                ? alone ? "sum with the main driver, or woofers alone" : "sum with the main driver"
                : "with its network",
            Palette.SOFT_INK,
            LineStyle.MAIN,
            false));
    if (sums) {
      entries.add(new Entry("main driver", Palette.INK, LineStyle.THIN, false));
      entries.add(new Entry("woofers with their network", Palette.stack(0), LineStyle.THIN, false));
    }
    entries.add(new Entry("without network", Palette.SOFT_INK, LineStyle.BARE, false));
    if (woofer.stacks().stream().anyMatch(stack -> stack.limits().isPresent())) {
      entries.add(new Entry("hot, at rated power", Palette.SOFT_INK, LineStyle.HEAT, false));
    }
    entries.add(
        new Entry(
            Charts.corridorWords(spec),
            Palette.tint(Palette.SOFT_INK, BAND_TINT),
            LineStyle.MAIN,
            true));
    return entries;
  }

  private static String verdict(StackFigures figures) {
    return figures.worstExcessDb() >= Verdict.UNSEEN_DB
        ? "outside by "
            + Figures.decibels(figures.worstExcessDb())
            + " at "
            + Figures.hertz(figures.worstExcessHz())
        : "inside the corridor, rms " + Figures.decibels(figures.rmsDeviationDb());
  }
}
