package nullplane.report;

import java.awt.Graphics2D;
import java.util.List;
import nullplane.judging.Comparison;
import nullplane.judging.ConeDecay;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.scoring.DesignSpec;
import nullplane.units.Curve;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * How the cones of two woofers answer a step of voltage and come to rest, a plot for each stack.
 */
final class StepChart {
  private static final int FRAME_HEIGHT_PX = 200;
  private static final int POINTS = 400;
  private static final double LONGEST_S = 0.15;
  private static final double HIGHEST = 2;

  private final DesignSpec spec;
  private final Comparison comparison;

  StepChart(DesignSpec spec, Comparison comparison) {
    this.spec = spec;
    this.comparison = comparison;
  }

  Picture picture() {
    PanelGrid grid = new PanelGrid(spec.stacks().size(), FRAME_HEIGHT_PX);
    return new Picture(
        "step",
        PanelGrid.WIDTH_PX,
        grid.heightPx(),
        "displacement after a step of voltage, as a share of where it ends, over time",
        g -> paint(g, grid));
  }

  private void paint(Graphics2D g, PanelGrid grid) {
    Lettering.BOLD.draw(
        g,
        "Cone after a step of voltage: displacement as a share of where it ends",
        grid.left(0),
        20,
        Align.LEFT,
        Palette.INK);
    int width = PanelGrid.frameWidthPx(spec.stacks().size());
    for (int s = 0; s < spec.stacks().size(); s++) {
      double x = grid.left(s);
      double y = grid.top(s);
      XYChart chart = chart(s, width);
      var before = g.getTransform();
      g.translate(x, y);
      chart.paint(g, width, FRAME_HEIGHT_PX);
      g.setColor(Palette.SOFT_INK);
      g.setStroke(LineStyle.HAIR.stroke());
      g.drawRect(0, 0, width, FRAME_HEIGHT_PX);
      g.setTransform(before);
      Lettering.BOLD.draw(
          g,
          Lettering.BOLD.fitted(spec.stacks().get(s).name(), width),
          x,
          y - 25,
          Align.LEFT,
          Palette.INK);
      Lettering.SMALL.draw(
          g,
          "20 dB down after "
              + milliseconds(comparison.firstDecays().get(s))
              + " and "
              + milliseconds(comparison.secondDecays().get(s)),
          x,
          y - 8,
          Align.LEFT,
          Palette.INK);
      for (int tick = 0; tick <= 3; tick++) {
        Lettering.SMALL.draw(
            g,
            Integer.toString(50 * tick),
            x + width * tick / 3.0,
            y + FRAME_HEIGHT_PX + 14,
            Align.CENTRE,
            Palette.INK);
      }
      Lettering.SMALL.draw(
          g, "Time (ms)", x + width / 2.0, y + FRAME_HEIGHT_PX + 32, Align.CENTRE, Palette.INK);
      if (grid.first(s)) {
        for (int tick = 0; tick <= 2; tick++) {
          Lettering.SMALL.draw(
              g,
              Integer.toString(tick),
              x - 6,
              y + FRAME_HEIGHT_PX * (1 - tick / HIGHEST) + 4,
              Align.RIGHT,
              Palette.INK);
        }
      }
    }
    AxisLettering.legend(
        g,
        List.of(
            entry(comparison.first().woofer().name(), 0),
            entry(comparison.second().woofer().name(), 1)),
        grid.left(0),
        grid.legendTop(),
        PanelGrid.WIDTH_PX - 80.0);
  }

  private static Entry entry(String name, int index) {
    return new Entry(
        PlainTable.shortened(Lettering.clean(name), 30),
        Palette.stack(index),
        LineStyle.MAIN,
        false);
  }

  private XYChart chart(int stack, int width) {
    XYChart chart = new XYChart(width, FRAME_HEIGHT_PX);
    var styler = chart.getStyler();
    styler.setChartPadding(0);
    styler.setPlotMargin(0);
    styler.setPlotContentSize(1);
    styler.setLegendVisible(false);
    styler.setChartTitleVisible(false);
    styler.setAxisTitlesVisible(false);
    styler.setAxisTicksVisible(false);
    styler.setPlotGridLinesVisible(false);
    styler.setPlotTicksMarksVisible(false);
    styler.setPlotBorderVisible(false);
    styler.setChartBackgroundColor(Palette.PAPER);
    styler.setPlotBackgroundColor(Palette.PAPER);
    styler.setXAxisMin(0.0);
    styler.setXAxisMax(LONGEST_S);
    styler.setYAxisMin(0.0);
    styler.setYAxisMax(HIGHEST);
    double[] time = new double[POINTS + 1];
    for (int i = 0; i <= POINTS; i++) {
      time[i] = LONGEST_S * i / POINTS;
    }
    for (int tick = 1; tick <= 2; tick++) {
      rule(chart, "t" + tick, new double[] {0.05 * tick, 0.05 * tick}, new double[] {0, HIGHEST});
    }
    rule(chart, "end", new double[] {0, LONGEST_S}, new double[] {1, 1});
    curve(chart, time, comparison.firstDecays().get(stack), 0);
    curve(chart, time, comparison.secondDecays().get(stack), 1);
    return chart;
  }

  private static void rule(XYChart chart, String name, double[] x, double[] y) {
    XYSeries series = chart.addSeries(name, x, y);
    series.setMarker(SeriesMarkers.NONE);
    series.setLineColor(Palette.MAJOR_GRID);
    series.setLineStyle(LineStyle.HAIR.piece());
  }

  private static void curve(XYChart chart, double[] time, ConeDecay decay, int index) {
    XYSeries series =
        chart.addSeries("woofer " + index, time, decay.step(Curve.of(time)).toArray());
    series.setMarker(SeriesMarkers.NONE);
    series.setLineColor(Palette.stack(index));
    series.setLineStyle(LineStyle.MAIN.piece());
  }

  private static String milliseconds(ConeDecay decay) {
    return Figures.of(1e3 * decay.timeToFallS(20), "ms");
  }
}
