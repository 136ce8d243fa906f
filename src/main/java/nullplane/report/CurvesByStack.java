package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.scoring.DesignSpec;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * Several curves in one picture, a plot for each stack: of woofers that are compared, or of the
 * parameters that make the difference. Here the colour says which of them it is, and marks tell
 * them apart in grey print; the corridor belongs to the stack.
 */
final class CurvesByStack {
  /** The most curves in a plot. */
  static final int MOST = 5;

  private static final double BAND_TINT = 0.25;
  private static final double[] MARKS_HZ = {28, 63, 140, 315, 710};

  private final DesignSpec spec;
  private final String stem;
  private final String heading;
  private final String axis;
  private final Range values;
  private final List<Named> woofers;
  private final boolean corridor;
  private final double step;

  /**
   * What is compared.
   *
   * @param name what the legend calls it
   * @param frequencyHz the axis of its curve in each stack, in the spec's order (Hz)
   * @param values its curve in each stack (unit of the axis)
   */
  record Named(String name, List<Curve> frequencyHz, List<Curve> values) {
    Named {
      frequencyHz = List.copyOf(frequencyHz);
      values = List.copyOf(values);
    }
  }

  /**
   * @param spec the spec
   * @param stem the picture's file name without its ending
   * @param heading what stands above it
   * @param axis title of the value axis
   * @param values the value axis
   * @param woofers at most {@link #MOST}
   * @param corridor whether to show each stack's corridor
   */
  CurvesByStack(
      DesignSpec spec,
      String stem,
      String heading,
      String axis,
      Range values,
      List<Named> woofers,
      boolean corridor) {
    if (woofers.size() > MOST) {
      throw new IllegalArgumentException(woofers.size() + " curves; allowed: " + MOST);
    }
    this.spec = spec;
    this.stem = stem;
    this.heading = heading;
    this.axis = axis;
    this.values = values;
    this.woofers = List.copyOf(woofers);
    this.corridor = corridor;
    this.step = values.upper() - values.lower() > 30 ? 10 : 2;
  }

  Picture picture() {
    PanelGrid grid = new PanelGrid(spec.stacks().size(), frame().heightPx());
    return new Picture(
        stem,
        PanelGrid.WIDTH_PX,
        grid.heightPx(),
        heading + ": one plot for each stack, the same curves in each",
        g -> paint(g, grid));
  }

  private PlotFrame frame() {
    int panels = spec.stacks().size();
    return PlotFrame.ofLevels(
        PanelGrid.frameWidthPx(panels), values, PanelGrid.dbPerDecade(panels) * step / 10);
  }

  private FrequencyPlot plot(int stack) {
    FrequencyPlot plot = new FrequencyPlot(frame());
    if (corridor) {
      Charts.corridor(
          plot, spec, spec.stacks().get(stack), Palette.tint(Palette.SOFT_INK, BAND_TINT));
    }
    plot.grid(Charts.multiples(values, step), Charts.multiples(values, step / 5));
    for (int i = 0; i < woofers.size(); i++) {
      double[] frequency = woofers.get(i).frequencyHz().get(stack).toArray();
      double[] y = woofers.get(i).values().get(stack).toArray();
      Color colour = Palette.stack(i);
      plot.curve(frequency, y, colour, LineStyle.MAIN);
      double[] at = MARKS_HZ.clone();
      for (int m = 0; m < at.length; m++) {
        at[m] *= Math.pow(10, 0.06 * i);
      }
      plot.marks(frequency, y, at, colour, i);
    }
    return plot;
  }

  private void paint(Graphics2D g, PanelGrid grid) {
    Lettering.BOLD.draw(
        g,
        Lettering.BOLD.fitted(heading, PanelGrid.WIDTH_PX - 80.0),
        grid.left(0),
        20,
        Align.LEFT,
        Palette.INK);
    List<Double> labelled = Charts.multiples(values, step);
    for (int i = 0; i < spec.stacks().size(); i++) {
      FrequencyPlot plot = plot(i);
      double x = grid.left(i);
      double y = grid.top(i);
      plot.paint(g, x, y);
      StackPanels.head(
          g, plot.frame(), x, y, spec.stacks().get(i).name(), Palette.INK, condition(i));
      AxisLettering.frequencies(g, plot.frame(), x, y);
      AxisLettering.values(g, plot.frame(), x, y, labelled, grid.first(i));
      if (grid.first(i)) {
        AxisLettering.valueTitle(g, plot.frame(), x, y, axis);
      }
    }
    List<Entry> legend = new ArrayList<>();
    for (int i = 0; i < woofers.size(); i++) {
      legend.add(
          new Entry(
              PlainTable.shortened(Lettering.clean(woofers.get(i).name()), 26),
              Palette.stack(i),
              LineStyle.MAIN,
              false));
    }
    AxisLettering.legend(g, legend, grid.left(0), grid.legendTop(), PanelGrid.WIDTH_PX - 80.0);
  }

  private String condition(int stack) {
    return corridor
        ? "band: "
            + Charts.plain(spec.stacks().get(stack).levelDb())
            + " \u00b1"
            + Charts.plain(spec.target().corridorDb())
            + " dB"
        : spec.stacks().get(stack).pistons().size() == 1
            ? "one woofer"
            : spec.stacks().get(stack).pistons().size() + " woofers";
  }
}
