package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.report.AxisLettering.EndLabel;
import nullplane.report.Lettering.Align;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.units.Range;

/**
 * All stacks in one plot with logarithmic values, curves named at their ends, and one dotted line
 * for what is allowed. More than five stacks are split over plots below each other.
 */
final class OverlayChart {
  private static final int MOST_CURVES = 5;
  private static final int LEFT_PX = 72;
  private static final int RIGHT_PX = 148;
  private static final int TOP_PX = 36;
  private static final int FRAME_HEIGHT_PX = 300;
  private static final int FOOT_PX = 52;
  private static final double[] MARKS_HZ = {28, 63, 140, 315, 710};

  private final Charts.Kind kind;
  private final String heading;
  private final String axis;
  private final PlotFrame frame;
  private final List<StackAssessment> stacks;
  private final Function<StackAssessment, double[]> values;
  private final double allowed;
  private final String allowedWords;

  private OverlayChart(
      Charts.Kind kind,
      String heading,
      String axis,
      Range range,
      List<StackAssessment> stacks,
      Function<StackAssessment, double[]> values,
      double allowed,
      String allowedWords) {
    this.kind = kind;
    this.heading = heading;
    this.axis = axis;
    this.stacks = stacks;
    this.values = values;
    this.allowed = allowed;
    this.allowedWords = allowedWords;
    frame =
        new PlotFrame(
            PanelGrid.WIDTH_PX - LEFT_PX - RIGHT_PX,
            FRAME_HEIGHT_PX,
            PlotFrame.AUDIO_LOW_END,
            range,
            true);
  }

  static Picture impedance(DesignSpec spec, Assessment woofer, String title, PlotRanges ranges) {
    double lowest = spec.amplifier().lowestLoadOhm();
    return new OverlayChart(
            Charts.Kind.IMPEDANCE,
            title + ": load on the amplifier",
            "Impedance modulus (ohm)",
            ranges.impedanceOhm(),
            woofer.stacks(),
            stack -> PlotRanges.modulus(stack.curves()),
            lowest,
            "lowest load " + Charts.plain(lowest) + " ohm")
        .picture("impedance modulus of each stack over frequency, and the amplifier's lowest load");
  }

  static Picture excursion(DesignSpec spec, Assessment woofer, String title, PlotRanges ranges) {
    double travelMm = woofer.woofer().travelM() * 1e3;
    return new OverlayChart(
            Charts.Kind.EXCURSION,
            title + ": excursion at " + Charts.plain(spec.target().voltageV()) + " V",
            "Peak excursion at " + Charts.plain(spec.target().voltageV()) + " V (mm)",
            ranges.excursionMm(),
            woofer.stacks(),
            stack -> stack.curves().excursionM().stream().map(m -> m * 1e3).toArray(),
            travelMm,
            "travel " + Figures.of(travelMm, "mm"))
        .picture("peak excursion of each stack over frequency, and the woofer's travel limit");
  }

  private Picture picture(String what) {
    int groups = (stacks.size() + MOST_CURVES - 1) / MOST_CURVES;
    return new Picture(
        kind.fileStem(),
        PanelGrid.WIDTH_PX,
        TOP_PX + groups * (FRAME_HEIGHT_PX + FOOT_PX),
        heading + "; " + what,
        g -> {
          Lettering.BOLD.draw(
              g,
              Lettering.BOLD.fitted(heading, PanelGrid.WIDTH_PX - 80.0),
              LEFT_PX,
              20,
              Align.LEFT,
              Palette.INK);
          for (int group = 0; group < groups; group++) {
            paint(
                g,
                group * MOST_CURVES,
                Math.min(stacks.size(), (group + 1) * MOST_CURVES),
                TOP_PX + group * (FRAME_HEIGHT_PX + FOOT_PX));
          }
        });
  }

  private void paint(Graphics2D g, int from, int to, double top) {
    FrequencyPlot plot = new FrequencyPlot(frame);
    plot.grid(steps(frame.value(), true), steps(frame.value(), false));
    List<EndLabel> labels = new ArrayList<>();
    plot.level(frame.frequencyHz(), allowed, Palette.INK, LineStyle.ASKED);
    labels.add(new EndLabel(allowedWords, frame.yOf(allowed), Palette.INK));
    for (int i = from; i < to; i++) {
      StackAssessment stack = stacks.get(i);
      Color colour = Palette.stack(i);
      double[] frequency = stack.curves().frequencyHz().toArray();
      double[] y = values.apply(stack);
      plot.curve(frequency, y, colour, LineStyle.MAIN);
      plot.marks(frequency, y, shifted(i), colour, i);
      double end = plot.valueAt(frequency, y, frame.frequencyHz().upper());
      double at = Double.isFinite(end) && end > 0 ? frame.yOf(end) : frame.heightPx();
      labels.add(new EndLabel(stack.brief().name(), at, colour));
    }
    plot.paint(g, LEFT_PX, top);
    AxisLettering.frequencies(g, frame, LEFT_PX, top);
    AxisLettering.values(g, frame, LEFT_PX, top, steps(frame.value(), true), true);
    AxisLettering.valueTitle(g, frame, LEFT_PX - 8.0, top, axis);
    AxisLettering.endLabels(g, frame, LEFT_PX, top, labels, RIGHT_PX);
  }

  /** Marks of different stacks stand apart, so that curves on top of each other stay legible. */
  private static double[] shifted(int index) {
    double[] at = MARKS_HZ.clone();
    for (int i = 0; i < at.length; i++) {
      at[i] *= Math.pow(10, 0.06 * (index % MOST_CURVES));
    }
    return at;
  }

  /** Returns 1, 2, 5 of each decade in a range, or the other digits. */
  private static List<Double> steps(Range range, boolean labelled) {
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
