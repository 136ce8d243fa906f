package nullplane.report;

import java.awt.Graphics2D;
import java.util.List;
import nullplane.report.Lettering.Align;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.units.Curve;
import nullplane.units.Range;

/** Impedance or excursion of two woofers, a plot with logarithmic values for each stack. */
final class PairChart {
  private static final int LEFT_PX = 72;
  private static final int RIGHT_PX = 190;
  private static final int TOP_PX = 36;
  private static final int FRAME_HEIGHT_PX = 200;
  private static final int FOOT_PX = 64;

  private final DesignSpec spec;
  private final List<Assessment> woofers;
  private final boolean impedance;
  private final PlotFrame frame;
  private final String axis;

  PairChart(DesignSpec spec, List<Assessment> woofers, PlotRanges ranges, String stem) {
    this.spec = spec;
    this.woofers = List.copyOf(woofers);
    this.impedance = stem.equals("impedance");
    Range values = impedance ? ranges.impedanceOhm() : ranges.excursionMm();
    this.frame =
        new PlotFrame(
            PanelGrid.WIDTH_PX - LEFT_PX - RIGHT_PX,
            FRAME_HEIGHT_PX,
            PlotFrame.AUDIO_LOW_END,
            values,
            true);
    this.axis =
        impedance
            ? "Impedance modulus (ohm)"
            : "Peak excursion at " + Charts.plain(spec.target().voltageV()) + " V (mm)";
  }

  Picture picture() {
    String heading = impedance ? "Load on the amplifier" : "Excursion";
    return new Picture(
        impedance ? "impedance" : "excursion",
        PanelGrid.WIDTH_PX,
        TOP_PX + spec.stacks().size() * (FRAME_HEIGHT_PX + FOOT_PX),
        heading + " of both woofers in each stack",
        this::paint);
  }

  private void paint(Graphics2D g) {
    for (int s = 0; s < spec.stacks().size(); s++) {
      double top = TOP_PX + s * (double) (FRAME_HEIGHT_PX + FOOT_PX);
      Lettering.BOLD.draw(
          g,
          Lettering.BOLD.fitted(spec.stacks().get(s).name(), frame.widthPx()),
          LEFT_PX,
          top - 10,
          Align.LEFT,
          Palette.INK);
      CurvePlot plot = CurvePlot.logarithmic(frame, axis);
      if (impedance) {
        plot.level(
            "lowest load " + Charts.plain(spec.amplifier().lowestLoadOhm()) + " ohm",
            spec.amplifier().lowestLoadOhm());
      }
      List<StackAssessment> both = ComparisonReport.inStack(woofers, s);
      for (int i = 0; i < both.size(); i++) {
        double[] values =
            impedance
                ? PlotRanges.modulus(both.get(i).curves())
                : both.get(i).curves().excursionM().stream().map(m -> m * 1e3).toArray();
        plot.add(
            new CurvePlot.Line(
                PlainTable.shortened(woofers.get(i).woofer().name(), 20),
                both.get(i).curves().frequencyHz(),
                Curve.of(values),
                Palette.stack(i),
                LineStyle.MAIN,
                i));
      }
      plot.paint(g, LEFT_PX, top, RIGHT_PX);
    }
  }
}
