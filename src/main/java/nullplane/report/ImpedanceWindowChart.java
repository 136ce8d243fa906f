package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.List;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.sample.ImpedanceWindow;
import nullplane.units.Range;

/** The impedance that a unit may show at incoming inspection: a band round the nominal curve. */
final class ImpedanceWindowChart {
  private static final int LEFT_PX = 72;
  private static final int RIGHT_PX = 28;
  private static final int TOP_PX = 36;
  private static final int HEIGHT_PX = 250;
  private static final int FOOT_PX = 78;
  private static final Color BAND = Palette.tint(Palette.stack(0), 0.3);

  private ImpedanceWindowChart() {}

  /**
   * Returns the picture.
   *
   * @param window the band
   * @param title what to call the woofer
   */
  static Picture picture(ImpedanceWindow window, String title) {
    String heading = title + ": impedance modulus in free air, for incoming inspection";
    return new Picture(
        "window",
        PanelGrid.WIDTH_PX,
        TOP_PX + HEIGHT_PX + FOOT_PX,
        heading + "; nominal curve and the band that the windows leave",
        g -> paint(g, window, heading));
  }

  /** Returns the value axis (ohm): round numbers that hold the band. */
  static Range axis(ImpedanceWindow window) {
    return new Range(
        PlotRanges.nextStep(0.95 * window.lowerOhm().stream().min().orElseThrow(), false),
        PlotRanges.nextStep(1.05 * window.upperOhm().stream().max().orElseThrow(), true));
  }

  private static void paint(Graphics2D g, ImpedanceWindow window, String heading) {
    PlotFrame frame =
        new PlotFrame(
            PanelGrid.WIDTH_PX - LEFT_PX - RIGHT_PX,
            HEIGHT_PX,
            PlotFrame.AUDIO_LOW_END,
            axis(window),
            true);
    Lettering.BOLD.draw(
        g,
        Lettering.BOLD.fitted(heading, PanelGrid.WIDTH_PX - 80.0),
        LEFT_PX,
        20,
        Align.LEFT,
        Palette.INK);
    FrequencyPlot plot = new FrequencyPlot(frame);
    double[] frequency = window.frequencyHz().toArray();
    plot.area(frequency, window.lowerOhm().toArray(), window.upperOhm().toArray(), BAND);
    List<Double> labelled = CurvePlot.steps(frame.value(), true);
    plot.grid(labelled, CurvePlot.steps(frame.value(), false));
    plot.curve(frequency, window.nominalOhm().toArray(), Palette.stack(0), LineStyle.MAIN);
    plot.paint(g, LEFT_PX, TOP_PX);
    AxisLettering.frequencies(g, frame, LEFT_PX, TOP_PX);
    AxisLettering.values(g, frame, LEFT_PX, TOP_PX, labelled, true);
    AxisLettering.valueTitle(g, frame, LEFT_PX - 8.0, TOP_PX, "Impedance modulus (ohm)");
    AxisLettering.legend(
        g,
        List.of(
            new Entry("nominal woofer", Palette.stack(0), LineStyle.MAIN, false),
            new Entry("every parameter within its window", BAND, LineStyle.MAIN, true)),
        LEFT_PX,
        TOP_PX + HEIGHT_PX + 62.0,
        frame.widthPx());
  }
}
