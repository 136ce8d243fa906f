package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.scoring.Assessment;
import nullplane.scoring.StackAssessment;
import nullplane.units.Range;

/** Levels of a woofer in panels, one per stack: heads, axes and legend round what is plotted. */
final class StackPanels {
  private static final double LEGEND_PX = PanelGrid.WIDTH_PX - 80.0;

  private final Assessment woofer;
  private final Range levelDb;

  StackPanels(Assessment woofer, Range levelDb) {
    this.woofer = woofer;
    this.levelDb = levelDb;
  }

  /**
   * What is written on a chart.
   *
   * @param description the whole picture in a sentence, for those who do not see it
   * @param heading line over the panels
   * @param axis title of the axis of levels
   * @param legend entries below
   */
  record Words(String description, String heading, String axis, List<Entry> legend) {}

  /** Adds marks to a plot that has been painted with its corner at a place (px). */
  @FunctionalInterface
  interface Marks {
    void paint(Graphics2D g, FrequencyPlot plot, StackAssessment stack, double x, double y);
  }

  /** Returns the frame of each panel. */
  PlotFrame frame() {
    int panels = woofer.stacks().size();
    return PlotFrame.ofLevels(
        PanelGrid.frameWidthPx(panels), levelDb, PanelGrid.dbPerDecade(panels));
  }

  /**
   * Returns the picture.
   *
   * @param kind which chart it is
   * @param words what is written on it
   * @param plot gives the plot of a stack
   * @param verdict gives the second line over its panel
   * @param marks painted over each plot
   */
  Picture picture(
      Charts.Kind kind,
      Words words,
      IntFunction<FrequencyPlot> plot,
      Function<StackAssessment, String> verdict,
      Marks marks) {
    PanelGrid grid = new PanelGrid(woofer.stacks().size(), frame().heightPx());
    return new Picture(
        kind.fileStem(),
        PanelGrid.WIDTH_PX,
        grid.heightPx() + AxisLettering.legendExtraPx(words.legend(), LEGEND_PX),
        words.description(),
        g -> paint(g, grid, words, plot, verdict, marks));
  }

  private void paint(
      Graphics2D g,
      PanelGrid grid,
      Words words,
      IntFunction<FrequencyPlot> plots,
      Function<StackAssessment, String> verdict,
      Marks marks) {
    Lettering.BOLD.draw(
        g,
        Lettering.BOLD.fitted(words.heading(), PanelGrid.WIDTH_PX - 80.0),
        grid.left(0),
        20,
        Align.LEFT,
        Palette.INK);
    List<Double> labelled = Charts.multiples(levelDb, 10);
    for (int i = 0; i < woofer.stacks().size(); i++) {
      FrequencyPlot plot = plots.apply(i);
      double x = grid.left(i);
      double y = grid.top(i);
      plot.paint(g, x, y);
      StackAssessment stack = woofer.stacks().get(i);
      marks.paint(g, plot, stack, x, y);
      head(g, plot.frame(), x, y, stack.brief().name(), Palette.stack(i), verdict.apply(stack));
      AxisLettering.frequencies(g, plot.frame(), x, y);
      AxisLettering.values(g, plot.frame(), x, y, labelled, grid.first(i));
      if (grid.first(i)) {
        AxisLettering.valueTitle(g, plot.frame(), x, y, words.axis());
      }
    }
    AxisLettering.legend(g, words.legend(), grid.left(0), grid.legendTop(), LEGEND_PX);
  }

  /** Writes a panel's two head lines. */
  static void head(
      Graphics2D g,
      PlotFrame frame,
      double x,
      double y,
      String name,
      Color colour,
      String verdict) {
    Lettering.BOLD.draw(
        g,
        Lettering.BOLD.fitted(name, frame.widthPx()),
        x,
        y - 25,
        Align.LEFT,
        Palette.shade(colour, 0.7));
    Lettering.SMALL.draw(
        g, Lettering.SMALL.fitted(verdict, frame.widthPx()), x, y - 8, Align.LEFT, Palette.INK);
  }
}
