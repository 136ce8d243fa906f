package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import nullplane.units.Range;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * One plot over frequency. XChart draws exactly the frame: no padding, no ticks of its own, so that
 * one pixel means the same on every plot and the proportions are those that were computed. The grid
 * is made of series too, because XChart's own grid cannot tell major from minor lines.
 *
 * <p>Things are painted in the order in which they are added.
 */
final class FrequencyPlot {
  /** Frequencies that carry a label (Hz). */
  static final List<Integer> LABELLED_HZ = List.of(20, 50, 100, 200, 500, 1000);

  /** Distance between the points a curve is drawn through (pixels). */
  private static final double STEP_PX = 3;

  private final PlotFrame frame;
  private final XYChart chart;
  private int count;

  FrequencyPlot(PlotFrame frame) {
    this.frame = frame;
    chart = new XYChart(frame.widthPx(), frame.heightPx());
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
    styler.setXAxisLogarithmic(true);
    styler.setXAxisMin(frame.frequencyHz().lower());
    styler.setXAxisMax(frame.frequencyHz().upper());
    styler.setYAxisLogarithmic(frame.logValue());
    styler.setYAxisMin(frame.value().lower());
    styler.setYAxisMax(frame.value().upper());
    styler.setMarkerSize(8);
  }

  PlotFrame frame() {
    return frame;
  }

  /** Returns XChart's own chart, for checks of its geometry. */
  XYChart chart() {
    return chart;
  }

  /** Adds a filled rectangle, for example a corridor over a band. */
  void band(Range frequencyHz, Range value, Color fill) {
    double left = Math.max(frequencyHz.lower(), frame.frequencyHz().lower());
    double right = Math.min(frequencyHz.upper(), frame.frequencyHz().upper());
    double low = clamped(value.lower());
    double high = clamped(value.upper());
    XYSeries series =
        add(
            new double[] {left, right, right, left, left},
            new double[] {low, low, high, high, low});
    series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
    series.setLineStyle(SeriesLines.NONE);
    series.setFillColor(fill);
  }

  /** Adds the area between two curves that share their frequencies. */
  void area(double[] frequencyHz, double[] lower, double[] upper, Color fill) {
    int points = frequencyHz.length;
    double[] x = new double[2 * points + 1];
    double[] y = new double[2 * points + 1];
    for (int i = 0; i < points; i++) {
      x[i] = frequencyHz[i];
      y[i] = clamped(lower[i]);
      x[2 * points - 1 - i] = frequencyHz[i];
      y[2 * points - 1 - i] = clamped(upper[i]);
    }
    x[2 * points] = x[0];
    y[2 * points] = y[0];
    XYSeries series = add(x, y);
    series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
    series.setLineStyle(SeriesLines.NONE);
    series.setFillColor(fill);
  }

  /**
   * Adds the grid: a line for every digit of each decade, stronger where there is a label, and the
   * value axis's own lines.
   *
   * @param strong values with a label
   * @param faint values without
   */
  void grid(List<Double> strong, List<Double> faint) {
    List<Double> strongHz = new ArrayList<>();
    List<Double> faintHz = new ArrayList<>();
    for (int decade = 10; decade <= 1000; decade *= 10) {
      for (int digit = 1; digit <= 9; digit++) {
        int hz = digit * decade;
        if (frame.frequencyHz().contains(hz)) {
          (LABELLED_HZ.contains(hz) ? strongHz : faintHz).add((double) hz);
        }
      }
    }
    gridLines(faintHz, faint, Palette.MINOR_GRID);
    gridLines(strongHz, strong, Palette.MAJOR_GRID);
  }

  private void gridLines(List<Double> frequencies, List<Double> values, Color colour) {
    int lines = frequencies.size() + values.size();
    double[] x = new double[3 * lines];
    double[] y = new double[3 * lines];
    int at = 0;
    for (double hz : frequencies) {
      x[at] = x[at + 1] = x[at + 2] = hz;
      y[at] = frame.value().lower();
      y[at + 1] = frame.value().upper();
      y[at + 2] = Double.NaN;
      at += 3;
    }
    for (double value : values) {
      x[at] = frame.frequencyHz().lower();
      x[at + 1] = x[at + 2] = frame.frequencyHz().upper();
      y[at] = y[at + 1] = value;
      y[at + 2] = Double.NaN;
      at += 3;
    }
    if (lines > 0) {
      lineSeries(x, y, colour, LineStyle.HAIR);
    }
  }

  /** Adds a curve. Points that are not finite leave a gap. */
  void curve(double[] frequencyHz, double[] values, Color colour, LineStyle style) {
    int points = (int) Math.ceil(frame.widthPx() / STEP_PX) + 1;
    double[] x = new double[points];
    double[] y = new double[points];
    double decades = Math.log10(frame.frequencyHz().upper() / frame.frequencyHz().lower());
    for (int i = 0; i < points; i++) {
      x[i] = frame.frequencyHz().lower() * Math.pow(10, decades * i / (points - 1));
      y[i] = clamped(valueAt(frequencyHz, values, x[i]));
    }
    polyline(x, y, colour, style);
  }

  /** Adds a level line over a stretch of the frequency axis. */
  void level(Range frequencyHz, double value, Color colour, LineStyle style) {
    double left = Math.max(frequencyHz.lower(), frame.frequencyHz().lower());
    double right = Math.min(frequencyHz.upper(), frame.frequencyHz().upper());
    double at = clamped(value);
    polyline(new double[] {left, right}, new double[] {at, at}, colour, style);
  }

  /** Adds marks on a curve that tell it apart in grey print. */
  void marks(double[] frequencyHz, double[] values, double[] at, Color colour, int shape) {
    double[] y = new double[at.length];
    for (int i = 0; i < at.length; i++) {
      y[i] = clamped(valueAt(frequencyHz, values, at[i]));
    }
    XYSeries series = add(at.clone(), y);
    series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
    series.setMarker(marker(shape));
    series.setMarkerColor(colour);
  }

  private static Marker marker(int shape) {
    return switch (shape % 5) {
      case 0 -> SeriesMarkers.CIRCLE;
      case 1 -> SeriesMarkers.SQUARE;
      case 2 -> SeriesMarkers.TRIANGLE_UP;
      case 3 -> SeriesMarkers.DIAMOND;
      default -> SeriesMarkers.TRIANGLE_DOWN;
    };
  }

  /** Paints the plot with its upper left corner at a point, and a border round it. */
  void paint(Graphics2D g, double x, double y) {
    AffineTransform before = g.getTransform();
    g.translate(x, y);
    chart.paint(g, frame.widthPx(), frame.heightPx());
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.drawRect(0, 0, frame.widthPx(), frame.heightPx());
    g.setTransform(before);
  }

  /**
   * Returns a curve's value between its points, linear over the logarithm of frequency; over the
   * logarithm of the value too where the axis is logarithmic. NaN outside the curve.
   */
  double valueAt(double[] frequencyHz, double[] values, double at) {
    int last = frequencyHz.length - 1;
    double slack = 1e-9 * at;
    if (at < frequencyHz[0] - slack || at > frequencyHz[last] + slack) {
      return Double.NaN;
    }
    int upper = 1;
    while (upper < last && frequencyHz[upper] < at) {
      upper++;
    }
    if (last == 0) {
      return values[0];
    }
    double share =
        Math.log(at / frequencyHz[upper - 1])
            / Math.log(frequencyHz[upper] / frequencyHz[upper - 1]);
    double left = values[upper - 1];
    double right = values[upper];
    if (frame.logValue() && left > 0 && right > 0) {
      return left * Math.pow(right / left, share);
    }
    return left + share * (right - left);
  }

  private void polyline(double[] x, double[] y, Color colour, LineStyle style) {
    float[] pattern = style.dashes();
    if (pattern.length == 0) {
      lineSeries(x, y, colour, style);
      return;
    }
    double[] xPx = new double[x.length];
    double[] yPx = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      xPx[i] = frame.xOf(x[i]);
      yPx[i] = frame.yOf(y[i]);
    }
    double[][] cut = Dashes.cut(xPx, yPx, pattern);
    for (int i = 0; i < cut[0].length; i++) {
      cut[0][i] = frame.frequencyAt(cut[0][i]);
      cut[1][i] = frame.valueAt(cut[1][i]);
    }
    lineSeries(cut[0], cut[1], colour, style);
  }

  private void lineSeries(double[] x, double[] y, Color colour, LineStyle style) {
    if (Arrays.stream(y).allMatch(Double::isNaN)) {
      return;
    }
    XYSeries series = add(x, y);
    series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Line);
    series.setLineColor(colour);
    series.setLineStyle(style.piece());
  }

  private XYSeries add(double[] x, double[] y) {
    XYSeries series = chart.addSeries("series " + count++, x, y);
    series.setMarker(SeriesMarkers.NONE);
    return series;
  }

  /** Keeps a value within reach of the frame: what lies far outside would be clipped anyway. */
  private double clamped(double value) {
    if (!Double.isFinite(value)) {
      return Double.NaN;
    }
    Range axis = frame.value();
    if (frame.logValue()) {
      return Math.max(axis.lower() / 2, Math.min(axis.upper() * 2, value));
    }
    double slack = (axis.upper() - axis.lower()) / 4;
    return Math.max(axis.lower() - slack, Math.min(axis.upper() + slack, value));
  }
}
