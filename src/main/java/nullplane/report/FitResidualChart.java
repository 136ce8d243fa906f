package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import nullplane.fit.SweepFit;
import nullplane.fit.SweepFit.ResidualCurve;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * What the fit leaves of the sweeps: modulus and phase, measured less fitted, over frequency. Noise
 * scatters round the zero line; a pattern says that the circuit is not the woofer's.
 */
final class FitResidualChart {
  private static final double LEFT_PX = 72;
  private static final double WIDTH_PX = 800;
  private static final double TOP_PX = 40;
  private static final double HEIGHT_PX = 170;
  private static final double GAP_PX = 22;
  private static final double DOT_PX = 1.7;
  private static final double LEAST_PERCENT = 0.01;
  private static final double LEAST_DEGREES = 0.01;
  private static final Color[] SWEEPS = {Palette.stack(0), Palette.stack(4)};
  private static final Color NOISE = Palette.tint(Palette.SOFT_INK, 0.16);

  private final SweepFit fit;
  private final String stem;
  private final String heading;
  private final Range frequencyHz;

  /**
   * @param fit the fit, with one residual curve or more
   * @param stem the picture's file name without its ending
   * @param heading what stands above it
   */
  FitResidualChart(SweepFit fit, String stem, String heading) {
    this.fit = fit;
    this.stem = stem;
    this.heading = heading;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    for (ResidualCurve curve : fit.residuals()) {
      lowest = Math.min(lowest, curve.frequencyHz().at(0));
      highest = Math.max(highest, curve.frequencyHz().at(curve.frequencyHz().size() - 1));
    }
    frequencyHz = new Range(lowest, Math.max(highest, 1.01 * lowest));
  }

  Picture picture() {
    int rows = hasPhase() ? 2 : 1;
    return new Picture(
        stem,
        PanelGrid.WIDTH_PX,
        (int) (TOP_PX + rows * HEIGHT_PX + (rows - 1) * GAP_PX + 82),
        heading + ": modulus and phase, measured less fitted, over frequency",
        this::paint);
  }

  private boolean hasPhase() {
    return fit.residuals().stream().anyMatch(curve -> curve.phaseErrorRad().isPresent());
  }

  private void paint(Graphics2D g) {
    Lettering.BOLD.draw(
        g, Lettering.BOLD.fitted(heading, WIDTH_PX), LEFT_PX, 20, Align.LEFT, Palette.INK);
    row(
        g,
        TOP_PX,
        "Modulus (%)",
        curve -> Optional.of(curve.modulusError()),
        100,
        LEAST_PERCENT,
        !hasPhase());
    if (hasPhase()) {
      row(
          g,
          TOP_PX + HEIGHT_PX + GAP_PX,
          "Phase (degrees)",
          ResidualCurve::phaseErrorRad,
          180 / Math.PI,
          LEAST_DEGREES,
          true);
    }
    double bottom = TOP_PX + (hasPhase() ? 2 * HEIGHT_PX + GAP_PX : HEIGHT_PX);
    Lettering.PLAIN.draw(
        g,
        AxisLettering.FREQUENCY_TITLE,
        LEFT_PX + WIDTH_PX / 2,
        bottom + 36,
        Align.CENTRE,
        Palette.INK);
    List<Entry> legend = new ArrayList<>();
    legend.add(new Entry("sweep", SWEEPS[0], LineStyle.MAIN, false));
    if (fit.residuals().size() > 1) {
      legend.add(new Entry("sweep with added mass", SWEEPS[1], LineStyle.MAIN, false));
    }
    legend.add(new Entry("95 % of the points, if all is noise", NOISE, LineStyle.MAIN, true));
    if (fit.residuals().stream().anyMatch(curve -> curve.leftOutHz().size() > 0)) {
      legend.add(new Entry("crosses: points left out", Palette.INK, LineStyle.RING, false));
    }
    AxisLettering.legend(g, legend, LEFT_PX, bottom + 64, WIDTH_PX);
  }

  private void row(
      Graphics2D g,
      double top,
      String title,
      Function<ResidualCurve, Optional<Curve>> which,
      double unit,
      double least,
      boolean last) {
    double most = Math.max(least, 2 * fit.noise() * unit);
    for (ResidualCurve curve : fit.residuals()) {
      most =
          Math.max(
              most,
              which.apply(curve).stream()
                  .flatMapToDouble(Curve::stream)
                  .map(error -> unit * Math.abs(error))
                  .max()
                  .orElse(0));
    }
    double reach = PlotRanges.nextStep(1.05 * most, true);
    MeasurementPlot plot =
        new MeasurementPlot(
            g,
            new Rectangle2D.Double(LEFT_PX, top, WIDTH_PX, HEIGHT_PX),
            frequencyHz,
            true,
            new Range(-reach, reach));
    double noise = 1.96 * fit.noise() * unit;
    plot.band(frequencyHz, new Range(-noise, noise), NOISE);
    List<Double> labelled = CurvePlot.steps(frequencyHz, true);
    List<Double> values = Charts.multiples(new Range(-reach, reach), reach / 2);
    plot.grid(CurvePlot.steps(frequencyHz, false), List.of(), Palette.MINOR_GRID);
    plot.grid(labelled, values, Palette.MAJOR_GRID);
    plot.line(frequencyHz.lower(), 0, frequencyHz.upper(), 0, Palette.SOFT_INK, LineStyle.HAIR);
    for (int s = 0; s < fit.residuals().size(); s++) {
      ResidualCurve curve = fit.residuals().get(s);
      Color colour = SWEEPS[s % SWEEPS.length];
      which
          .apply(curve)
          .ifPresent(
              errors -> {
                double[] shown = errors.stream().map(error -> unit * error).toArray();
                plot.curve(
                    curve.frequencyHz().toArray(),
                    shown,
                    Palette.tint(colour, 0.45),
                    LineStyle.HAIR);
                for (int i = 0; i < shown.length; i++) {
                  plot.dot(plot.x(curve.frequencyHz().at(i)), plot.y(shown[i]), DOT_PX, colour);
                }
              });
      for (int i = 0; i < curve.leftOutHz().size(); i++) {
        plot.cross(plot.x(curve.leftOutHz().at(i)), plot.y(-reach) - 8, 4, Palette.INK);
      }
    }
    plot.axes(labelled, values, Charts::plain, last);
    Lettering.PLAIN.drawUpwards(g, title, LEFT_PX - 50, top + HEIGHT_PX / 2, Palette.INK);
  }
}
