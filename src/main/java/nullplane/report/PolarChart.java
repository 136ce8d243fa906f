package nullplane.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.scoring.PanelStudy;
import nullplane.units.Levels;

/**
 * Level round the panel at six frequencies: the horizontal and the vertical plane, the listener to
 * the right. The back is the mirror image of the front, with opposite sign, so its level is drawn
 * from the front's.
 */
final class PolarChart {
  /** Frequencies drawn: exact third-octave midbands (Hz). */
  static final List<Double> FREQUENCIES_HZ =
      List.of(midband(-14), midband(-11), midband(-8), midband(-5), midband(-3), midband(-1));

  private static final double RANGE_DB = 25;
  private static final int COLUMNS = 3;
  private static final double RADIUS_PX = 112;
  private static final double CELL_WIDTH_PX = 292;
  private static final double CELL_HEIGHT_PX = 286;
  private static final double TOP_PX = 36;
  private static final double LEFT_PX = 12;
  private static final double NEAR_PX = 0.02;
  private static final double STEP_DEG = 1;

  private final PanelStudy study;
  private final Color colour;

  PolarChart(PanelStudy study, Color colour) {
    this.study = study;
    this.colour = colour;
  }

  private static double midband(int n) {
    return 1000 * Math.pow(10, n / 10.0);
  }

  Picture picture(String name, String title) {
    int rows = (FREQUENCIES_HZ.size() + COLUMNS - 1) / COLUMNS;
    return new Picture(
        name,
        StudyCharts.WIDTH_PX,
        (int) (TOP_PX + rows * CELL_HEIGHT_PX + 56),
        title + ": level round the panel at six frequencies, horizontally and vertically",
        g -> paint(g, title, rows));
  }

  private void paint(Graphics2D g, String title, int rows) {
    StudyCharts.heading(g, title + ": level round the panel, listener to the right", 30);
    ArcField horizontal = new ArcField(study, false);
    ArcField vertical = new ArcField(study, true);
    double[] across = StudyCharts.even(-90, 90, (int) (180 / STEP_DEG) + 1);
    double lowest = vertical.lowestDeg();
    double[] upwards = StudyCharts.even(lowest, 90, (int) ((90 - lowest) / STEP_DEG) + 1);
    for (int i = 0; i < FREQUENCIES_HZ.size(); i++) {
      double hertz = FREQUENCIES_HZ.get(i);
      double x = LEFT_PX + (i % COLUMNS) * CELL_WIDTH_PX + CELL_WIDTH_PX / 2;
      int row = i / COLUMNS;
      double y = TOP_PX + row * CELL_HEIGHT_PX + 30 + RADIUS_PX;
      double[] flat = horizontal.moduli(new double[] {hertz}, across)[0];
      double[] upright = vertical.moduli(new double[] {hertz}, upwards)[0];
      double loudest = Math.max(largest(flat), largest(upright));
      web(g, x, y);
      Lettering.BOLD.draw(
          g, Figures.hertz(hertz), x - RADIUS_PX - 16, y - RADIUS_PX - 4, Align.LEFT, Palette.INK);
      curve(g, x, y, across, flat, loudest, colour, LineStyle.MAIN.stroke());
      curve(g, x, y, upwards, upright, loudest, Palette.INK, LineStyle.BARE.stroke());
      rings(g, x, y);
    }
    AxisLettering.legend(
        g,
        List.of(
            new Entry("horizontal plane, seen from above", colour, LineStyle.MAIN, false),
            new Entry(
                study.overFloor()
                    ? "vertical plane, above the floor"
                    : "vertical plane, seen from the side",
                Palette.INK,
                LineStyle.BARE,
                false)),
        30,
        TOP_PX + rows * CELL_HEIGHT_PX + 10,
        StudyCharts.WIDTH_PX - 60.0);
    Lettering.SMALL.draw(
        g,
        "Rings every 5 dB; the outer ring is the loudest direction at that frequency, the centre "
            + Charts.plain(RANGE_DB)
            + " dB below it.",
        30,
        TOP_PX + rows * CELL_HEIGHT_PX + 34,
        Align.LEFT,
        Palette.INK);
  }

  private static double largest(double[] values) {
    double largest = 0;
    for (double value : values) {
      largest = Math.max(largest, value);
    }
    return largest;
  }

  private void web(Graphics2D g, double x, double y) {
    g.setStroke(LineStyle.HAIR.stroke());
    for (double decibels = 0; decibels < RANGE_DB; decibels += 5) {
      double radius = RADIUS_PX * (1 - decibels / RANGE_DB);
      boolean outer = decibels == 0;
      g.setColor(
          outer ? Palette.SOFT_INK : decibels % 10 == 0 ? Palette.MAJOR_GRID : Palette.MINOR_GRID);
      g.draw(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
    }
    for (int angle = 0; angle < 360; angle += 30) {
      double along = Math.cos(Math.toRadians(angle));
      double up = Math.sin(Math.toRadians(angle));
      g.setColor(angle % 90 == 0 ? Palette.MAJOR_GRID : Palette.MINOR_GRID);
      g.draw(new Line2D.Double(x, y, x + RADIUS_PX * along, y - RADIUS_PX * up));
      int shown = angle > 180 ? angle - 360 : angle;
      Lettering.SMALL.draw(
          g,
          shown + "\u00b0",
          x + (RADIUS_PX + 14) * along,
          y - (RADIUS_PX + 12) * up + 4.5,
          Align.CENTRE,
          Palette.SOFT_INK);
    }
  }

  /** Writes the rings' levels over the curves, on white. */
  private static void rings(Graphics2D g, double x, double y) {
    for (int decibels = 10; decibels < RANGE_DB; decibels += 10) {
      String text = "-" + decibels;
      double at = y + RADIUS_PX * (1 - decibels / RANGE_DB);
      double width = Lettering.SMALL.width(text);
      g.setColor(Palette.PAPER);
      g.fill(new Rectangle2D.Double(x - width / 2 - 2, at - 7, width + 4, 14));
      Lettering.SMALL.draw(g, text, x, at + 4.5, Align.CENTRE, Palette.SOFT_INK);
    }
  }

  /** Draws front and back of one plane. */
  private static void curve(
      Graphics2D g,
      double x,
      double y,
      double[] anglesDeg,
      double[] moduli,
      double loudest,
      Color colour,
      BasicStroke stroke) {
    g.setColor(colour);
    g.setStroke(stroke);
    for (int side = 1; side >= -1; side -= 2) {
      Path2D path = new Path2D.Double();
      for (int i = 0; i < anglesDeg.length; i++) {
        double level = Levels.ofAmplitudeRatio(Math.max(1e-9, moduli[i] / loudest));
        double radius = RADIUS_PX * Math.max(0, 1 + level / RANGE_DB);
        double angle = Math.toRadians(anglesDeg[i]);
        double px = x + side * radius * Math.cos(angle);
        double py = y - radius * Math.sin(angle);
        if (i == 0) {
          path.moveTo(px, py);
        } else if (path.getCurrentPoint().distance(px, py) > NEAR_PX) {
          path.lineTo(px, py);
        }
      }
      g.draw(path);
    }
  }
}
