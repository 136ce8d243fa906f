package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import nullplane.report.Lettering.Align;
import nullplane.scoring.PanelStudy;
import nullplane.units.Curve;
import nullplane.units.Levels;
import nullplane.units.Range;

/**
 * Level over frequency and angle, the horizontal plane left and the vertical one right, each
 * frequency against its loudest direction; lines where it is 3, 6 and 12 dB down.
 */
final class DirectivityMap {
  private static final double STEP_DB = 3;
  private static final int STEPS = 8;
  private static final List<Integer> LINES_DB = List.of(-3, -6, -12);
  private static final int FRAME_WIDTH_PX = 360;
  private static final int FRAME_HEIGHT_PX = 330;
  private static final int LEFT_PX = 76;
  private static final int GAP_PX = 66;
  private static final int TOP_PX = 62;
  private static final int COLUMNS = 121;
  private static final double LEAST_RATIO = 1e-4;
  private static final Color HALO = Color.WHITE;

  private final PanelStudy study;

  DirectivityMap(PanelStudy study) {
    this.study = study;
  }

  Picture picture(String name, String title) {
    return new Picture(
        name,
        StudyCharts.WIDTH_PX,
        TOP_PX + FRAME_HEIGHT_PX + 128,
        title + ": level over frequency and angle, horizontally and vertically",
        g -> {
          StudyCharts.heading(g, title + ": level over frequency and angle", LEFT_PX);
          map(g, false, LEFT_PX);
          map(g, true, LEFT_PX + FRAME_WIDTH_PX + GAP_PX);
          scale(g);
        });
  }

  private void map(Graphics2D g, boolean vertical, double left) {
    ArcField arc = new ArcField(study, vertical);
    PlotFrame frame =
        new PlotFrame(
            FRAME_WIDTH_PX,
            FRAME_HEIGHT_PX,
            PlotFrame.AUDIO_LOW_END,
            new Range(arc.lowestDeg(), 90),
            false);
    ContourField field = field(arc, frame, left);
    Rectangle2D inside = new Rectangle2D.Double(left, TOP_PX, FRAME_WIDTH_PX, FRAME_HEIGHT_PX);
    g.setColor(colour(-STEPS));
    g.fill(inside);
    StudyCharts.clipped(
        g,
        inside,
        clipped -> {
          for (int step = STEPS; step >= 1; step--) {
            clipped.setColor(colour(1 - step));
            clipped.fill(field.above(-step * STEP_DB));
          }
          for (int decibels : LINES_DB) {
            line(clipped, field, decibels, left + frame.xOf(lineLabelHz(decibels)));
          }
        });
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(inside);
    Lettering.PLAIN.draw(
        g,
        vertical
            ? study.overFloor() ? "Vertical, above the floor" : "Vertical, up is positive"
            : "Horizontal, listener's right is positive",
        left,
        TOP_PX - 10.0,
        Align.LEFT,
        Palette.INK);
    AxisLettering.frequencies(g, frame, left, TOP_PX);
    AxisLettering.values(
        g,
        frame,
        left,
        TOP_PX,
        Charts.multiples(frame.value(), frame.value().lower() < 0 ? 30 : 15),
        true);
    if (!vertical) {
      AxisLettering.valueTitle(g, frame, left - 4, TOP_PX, "Angle off the axis (degrees)");
    }
  }

  private static ContourField field(ArcField arc, PlotFrame frame, double left) {
    double[] hertz =
        Curve.logSpaced(frame.frequencyHz().lower(), frame.frequencyHz().upper(), COLUMNS)
            .toArray();
    int rows = 145;
    double[] angles = StudyCharts.even(frame.value().lower(), 90, rows);
    double[][] levels = arc.moduli(hertz, angles);
    double[] x = new double[hertz.length];
    double[] y = new double[rows];
    for (int f = 0; f < hertz.length; f++) {
      x[f] = left + frame.xOf(hertz[f]);
      double loudest = 0;
      for (double modulus : levels[f]) {
        loudest = Math.max(loudest, modulus);
      }
      for (int a = 0; a < rows; a++) {
        levels[f][a] = Levels.ofAmplitudeRatio(Math.max(LEAST_RATIO, levels[f][a] / loudest));
      }
    }
    for (int a = 0; a < rows; a++) {
      y[a] = TOP_PX + frame.yOf(angles[a]);
    }
    return new ContourField(x, y, levels);
  }

  private static double lineLabelHz(int decibels) {
    return decibels == -3 ? 32 : decibels == -6 ? 63 : 126;
  }

  private static void line(Graphics2D g, ContourField field, int decibels, double labelX) {
    Path2D line = field.edge(decibels);
    g.setColor(Palette.INK);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(line);
    Point2D best = new Point2D.Double(Double.NaN, Double.NaN);
    double nearest = Double.POSITIVE_INFINITY;
    double[] at = new double[6];
    for (PathIterator points = line.getPathIterator(null); !points.isDone(); points.next()) {
      points.currentSegment(at);
      // of the places on one height of frequency, the uppermost
      double distance = Math.abs(at[0] - labelX) + at[1] / 20;
      if (distance < nearest) {
        nearest = distance;
        best = new Point2D.Double(at[0], at[1]);
      }
    }
    if (Double.isFinite(nearest)) {
      String text = decibels + " dB";
      double width = Lettering.SMALL.width(text);
      g.setColor(HALO);
      g.fill(new Rectangle2D.Double(best.getX() - width / 2 - 3, best.getY() - 8, width + 6, 16));
      Lettering.SMALL.draw(g, text, best.getX(), best.getY() + 4.5, Align.CENTRE, Palette.INK);
    }
  }

  /** Returns the colour of a band, counted from 0 at the loudest downwards to -8. */
  private static Color colour(int band) {
    return ColourScale.at(1 + band / (double) STEPS);
  }

  private static void scale(Graphics2D g) {
    double width = 48;
    double left = LEFT_PX;
    double top = TOP_PX + FRAME_HEIGHT_PX + 68.0;
    for (int band = -STEPS; band <= 0; band++) {
      double x = left + (band + STEPS) * width;
      g.setColor(colour(band));
      g.fill(new Rectangle2D.Double(x, top, width, 14));
      if (band > -STEPS) {
        Lettering.SMALL.draw(
            g, Charts.plain((band - 1) * STEP_DB), x, top + 29, Align.CENTRE, Palette.INK);
      }
    }
    double end = left + (STEPS + 1) * width;
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(new Rectangle2D.Double(left, top, end - left, 14));
    Lettering.SMALL.draw(g, "0", end, top + 29, Align.CENTRE, Palette.INK);
    Lettering.SMALL.draw(
        g,
        "dB re the loudest direction at that frequency",
        end + 16,
        top + 12,
        Align.LEFT,
        Palette.INK);
  }
}
