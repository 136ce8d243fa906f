package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import nullplane.report.AxisLettering.EndLabel;
import nullplane.units.Curve;
import nullplane.units.Range;

/** Curves over frequency in one plot, each named at its end, and dotted lines for fixed values. */
final class CurvePlot {
  private static final double[] MARKS_HZ = {28, 63, 140, 315, 710};
  private static final int SHAPES = 5;

  private final PlotFrame frame;
  private final String axis;
  private final List<Double> labelled;
  private final List<Double> faint;
  private final List<Line> lines = new ArrayList<>();
  private final List<Level> levels = new ArrayList<>();

  /**
   * A curve.
   *
   * @param name what stands at its end
   * @param frequencyHz its frequencies (Hz)
   * @param values its values (unit of the axis)
   * @param colour its colour
   * @param style its line
   * @param mark shape of the marks on it, 0 to 4; below 0 for none
   */
  record Line(
      String name, Curve frequencyHz, Curve values, Color colour, LineStyle style, int mark) {}

  /** A fixed value (unit of the axis) and its name. */
  private record Level(String name, double value) {}

  /**
   * @param frame the frame
   * @param axis title of the value axis
   * @param labelled values with a label and a strong line
   * @param faint values with a faint line
   */
  CurvePlot(PlotFrame frame, String axis, List<Double> labelled, List<Double> faint) {
    this.frame = frame;
    this.axis = axis;
    this.labelled = labelled;
    this.faint = faint;
  }

  /** Returns an empty plot with logarithmic values: 1, 2, 5 of each decade carry a label. */
  static CurvePlot logarithmic(PlotFrame frame, String axis) {
    return new CurvePlot(frame, axis, steps(frame.value(), true), steps(frame.value(), false));
  }

  /** Adds a curve. */
  void add(Line line) {
    lines.add(line);
  }

  /** Adds a dotted line at a fixed value. */
  void level(String name, double value) {
    levels.add(new Level(name, value));
  }

  /** Paints plot, axes and names; the names may take a width (pixels) right of the plot. */
  void paint(Graphics2D g, double left, double top, double namesPx) {
    FrequencyPlot plot = new FrequencyPlot(frame);
    plot.grid(labelled, faint);
    List<EndLabel> labels = new ArrayList<>();
    for (Level level : levels) {
      plot.level(frame.frequencyHz(), level.value(), Palette.INK, LineStyle.ASKED);
      labels.add(new EndLabel(level.name(), frame.yOf(level.value()), Palette.INK));
    }
    for (Line line : lines) {
      double[] frequency = line.frequencyHz().toArray();
      double[] y = line.values().toArray();
      plot.curve(frequency, y, line.colour(), line.style());
      if (line.mark() >= 0) {
        plot.marks(frequency, y, shifted(line.mark()), line.colour(), line.mark());
      }
      double end = plot.valueAt(frequency, y, frame.frequencyHz().upper());
      boolean drawn = Double.isFinite(end) && (!frame.logValue() || end > 0);
      labels.add(
          new EndLabel(line.name(), drawn ? frame.yOf(end) : frame.heightPx(), line.colour()));
    }
    plot.paint(g, left, top);
    AxisLettering.frequencies(g, frame, left, top);
    AxisLettering.values(g, frame, left, top, labelled, true);
    AxisLettering.valueTitle(g, frame, left - 8.0, top, axis);
    AxisLettering.endLabels(g, frame, left, top, labels, namesPx);
  }

  /** Marks of different curves stand apart, so that curves on top of each other stay legible. */
  private static double[] shifted(int index) {
    double[] at = MARKS_HZ.clone();
    for (int i = 0; i < at.length; i++) {
      at[i] *= Math.pow(10, 0.06 * (index % SHAPES));
    }
    return at;
  }

  /** Returns 1, 2, 5 of each decade in a range, or the other digits. */
  static List<Double> steps(Range range, boolean labelled) {
    List<Double> steps = new ArrayList<>();
    int first = (int) Math.floor(Math.log10(range.lower()) + 1e-9);
    int last = (int) Math.ceil(Math.log10(range.upper()) - 1e-9);
    for (int decade = first; decade <= last; decade++) {
      for (int digit = 1; digit <= 9; digit++) {
        double value = digit * Math.pow(10, decade);
        boolean strong = digit == 1 || digit == 2 || digit == 5;
        if (strong == labelled
            && value >= range.lower() * (1 - 1e-9)
            && value <= range.upper() * (1 + 1e-9)) {
          steps.add(value);
        }
      }
    }
    return steps;
  }
}
