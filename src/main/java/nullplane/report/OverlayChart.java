package nullplane.report;

import java.awt.Graphics2D;
import java.util.List;
import java.util.function.Function;
import nullplane.report.Lettering.Align;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.units.Curve;
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
    CurvePlot plot = CurvePlot.logarithmic(frame, axis);
    plot.level(allowedWords, allowed);
    for (int i = from; i < to; i++) {
      StackAssessment stack = stacks.get(i);
      plot.add(
          new CurvePlot.Line(
              stack.brief().name(),
              stack.curves().frequencyHz(),
              Curve.of(values.apply(stack)),
              Palette.stack(i),
              LineStyle.MAIN,
              i));
    }
    plot.paint(g, LEFT_PX, top, RIGHT_PX);
  }
}
