package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Panel;
import nullplane.acoustics.Piston;
import nullplane.acoustics.RectangularOutline;
import nullplane.report.Lettering.Align;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.PanelStudy;

/**
 * A panel as it stands: from the listener's side with its woofers, and from the side with floor and
 * ear. Lengths in centimetres; each view has one scale for width and height.
 */
final class PanelDrawing {
  private static final double TOP_PX = 64;
  private static final double VIEW_HEIGHT_PX = 350;
  private static final double FRONT_LEFT_PX = 92;
  private static final double FRONT_WIDTH_PX = 214;
  private static final double SIDE_LEFT_PX = 490;
  private static final double SIDE_WIDTH_PX = 310;
  private static final double FLOOR_PX = 7;
  private static final int TRACE = 240;

  private final Panel panel;
  private final List<Piston> pistons;
  private final double earHeightM;
  private final double distanceM;
  private final Color colour;

  PanelDrawing(DesignSpec spec, PanelStudy study, int index) {
    panel = study.brief().panel();
    pistons = study.brief().pistons();
    earHeightM = spec.listening().heightM();
    distanceM = spec.listening().distanceM();
    colour = Palette.stack(index);
  }

  Picture picture(String name, String title) {
    return new Picture(
        name,
        StudyCharts.WIDTH_PX,
        (int) (TOP_PX + VIEW_HEIGHT_PX + 66),
        title + ": the panel from the listener's side and from the side, lengths in cm",
        g -> {
          StudyCharts.heading(g, title + ": the panel and the listener", 30);
          front(g);
          side(g);
        });
  }

  private boolean overFloor() {
    return panel.clearanceM().isPresent();
  }

  private double clearanceM() {
    return panel.clearanceM().orElse(0);
  }

  private double widthM() {
    return panel.outline().widthM();
  }

  private double heightM() {
    return panel.outline().heightM();
  }

  private double topM() {
    return Math.max(clearanceM() + heightM(), earHeightM) * 1.02;
  }

  /** Draws the view from the listener's side. */
  private void front(Graphics2D g) {
    double scale = Math.min(VIEW_HEIGHT_PX / topM(), FRONT_WIDTH_PX / widthM());
    double ground = TOP_PX + VIEW_HEIGHT_PX;
    double middle = FRONT_LEFT_PX + FRONT_WIDTH_PX / 2;
    double left = middle - widthM() * scale / 2;
    double right = middle + widthM() * scale / 2;
    double lower = ground - clearanceM() * scale;
    double upper = lower - heightM() * scale;
    ground(g, FRONT_LEFT_PX - 60, FRONT_LEFT_PX + FRONT_WIDTH_PX + 70, ground);
    outline(g, middle, (upper + lower) / 2, scale);
    double labelBelow = TOP_PX;
    List<Integer> order =
        java.util.stream.IntStream.range(0, pistons.size())
            .boxed()
            .sorted((a, b) -> Double.compare(pistons.get(b).yM(), pistons.get(a).yM()))
            .toList();
    for (int i : order) {
      Piston piston = pistons.get(i);
      double y = (upper + lower) / 2 - piston.yM() * scale;
      double at = Math.max(labelBelow, y);
      leader(g, middle + piston.xM() * scale, y, FRONT_LEFT_PX + FRONT_WIDTH_PX + 16, at);
      Lettering.SMALL.draw(
          g, place(piston), FRONT_LEFT_PX + FRONT_WIDTH_PX + 20, at + 4.5, Align.LEFT, Palette.INK);
      labelBelow = at + 17;
    }
    for (int i : order) {
      Piston piston = pistons.get(i);
      double x = middle + piston.xM() * scale;
      double y = (upper + lower) / 2 - piston.yM() * scale;
      double radius = piston.radiusM() * scale;
      Ellipse2D circle = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
      g.setColor(Palette.PAPER);
      g.fill(circle);
      g.setColor(Palette.INK);
      g.setStroke(LineStyle.RING.stroke());
      g.draw(circle);
      Lettering.BOLD.draw(g, Integer.toString(i + 1), x, y + 5, Align.CENTRE, Palette.INK);
    }
    dimensionAcross(g, left, right, upper - 12, centimetres(widthM()));
    dimensionUp(g, left - 18, lower, upper, centimetres(heightM()));
    if (overFloor() && clearanceM() > 0) {
      Lettering.SMALL.draw(
          g, "gap " + centimetres(clearanceM()), left - 30, ground - 3, Align.RIGHT, Palette.INK);
    }
    caption(
        g,
        FRONT_LEFT_PX - 60,
        ground,
        "seen by the listener; pistons " + centimetres(2 * pistons.get(0).radiusM()) + " across");
  }

  /** Returns where a woofer's centre is, and how wide its piston. */
  private String place(Piston piston) {
    String height =
        centimetres(panel.centreHeightM() + piston.yM()) + (overFloor() ? " high" : " up");
    long aside = Math.round(Math.abs(piston.xM()) * 1000);
    return aside == 0
        ? height
        : height
            + ", "
            + centimetres(Math.abs(piston.xM()))
            + (piston.xM() > 0 ? " right" : " left");
  }

  /** Draws the view from the side. */
  private void side(Graphics2D g) {
    double scale = Math.min(VIEW_HEIGHT_PX / topM(), SIDE_WIDTH_PX / distanceM);
    double ground = TOP_PX + VIEW_HEIGHT_PX;
    double plane = SIDE_LEFT_PX + 20;
    double lower = ground - clearanceM() * scale;
    double upper = lower - heightM() * scale;
    double ear = ground - earHeightM * scale;
    double listener = plane + distanceM * scale;
    ground(g, SIDE_LEFT_PX - 20, StudyCharts.WIDTH_PX - 24.0, ground);
    g.setColor(Palette.shade(colour, 0.7));
    g.fill(new Rectangle2D.Double(plane - 2, upper, 4, lower - upper));
    g.setColor(Palette.INK);
    for (Piston piston : pistons) {
      double y = (upper + lower) / 2 - piston.yM() * scale;
      double radius = piston.radiusM() * scale;
      g.fill(new Rectangle2D.Double(plane - 4, y - radius, 8, 2 * radius));
    }
    g.setStroke(LineStyle.BARE.stroke());
    g.setColor(Palette.SOFT_INK);
    g.draw(new Line2D.Double(plane, (upper + lower) / 2, listener, ear));
    g.setColor(Palette.INK);
    g.fill(new Ellipse2D.Double(listener - 5, ear - 5, 10, 10));
    Lettering.SMALL.draw(g, "ear", listener + 9, ear - 6, Align.LEFT, Palette.INK);
    dimensionAcross(g, plane, listener, ground - 12, centimetres(distanceM));
    dimensionUp(g, listener, ground, ear + 6, "");
    Lettering.SMALL.draw(
        g, centimetres(earHeightM), listener + 7, (ground + ear) / 2, Align.LEFT, Palette.INK);
    caption(
        g,
        SIDE_LEFT_PX - 20,
        ground,
        "seen from the side; "
            + (overFloor()
                ? "hatched: rigid floor"
                : "free space, heights from the panel's lower edge"));
  }

  private void caption(Graphics2D g, double x, double ground, String view) {
    Lettering.SMALL.draw(g, view, x, ground + 34, Align.LEFT, Palette.SOFT_INK);
  }

  private void ground(Graphics2D g, double from, double to, double y) {
    if (!overFloor()) {
      return;
    }
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(new Line2D.Double(from, y, to, y));
    g.setStroke(LineStyle.HAIR.stroke());
    for (double x = from + FLOOR_PX; x <= to; x += FLOOR_PX) {
      g.draw(new Line2D.Double(x, y, x - FLOOR_PX, y + FLOOR_PX));
    }
  }

  /** Paints the panel's shape; what is no rectangle is traced along its rim. */
  private void outline(Graphics2D g, double x, double y, double scale) {
    Outline shape = panel.outline();
    double width = shape.widthM() * scale;
    double height = shape.heightM() * scale;
    Color fill = Palette.tint(colour, 0.18);
    Color edge = Palette.shade(colour, 0.7);
    g.setStroke(LineStyle.RING.stroke());
    if (shape instanceof RectangularOutline) {
      Rectangle2D rectangle = new Rectangle2D.Double(x - width / 2, y - height / 2, width, height);
      g.setColor(fill);
      g.fill(rectangle);
      g.setColor(edge);
      g.draw(rectangle);
      return;
    }
    double[] xPx = StudyCharts.even(x - width / 2 - 1, x + width / 2 + 1, TRACE);
    double[] yPx = StudyCharts.even(y - height / 2 - 1, y + height / 2 + 1, TRACE);
    double[][] distance = new double[TRACE][TRACE];
    for (int i = 0; i < TRACE; i++) {
      for (int j = 0; j < TRACE; j++) {
        distance[i][j] = shape.distanceToRim((xPx[i] - x) / scale, (y - yPx[j]) / scale);
      }
    }
    ContourField rim = new ContourField(xPx, yPx, distance);
    g.setColor(fill);
    g.fill(rim.above(0));
    g.setColor(edge);
    g.draw(rim.edge(0));
  }

  private static void leader(Graphics2D g, double x1, double y1, double x2, double y2) {
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(new Line2D.Double(x1, y1, x2, y2));
  }

  private static void dimensionAcross(Graphics2D g, double from, double to, double y, String text) {
    leader(g, from, y, to, y);
    leader(g, from, y - 4, from, y + 4);
    leader(g, to, y - 4, to, y + 4);
    Lettering.SMALL.draw(g, text, (from + to) / 2, y - 5, Align.CENTRE, Palette.INK);
  }

  private static void dimensionUp(Graphics2D g, double x, double from, double to, String text) {
    leader(g, x, from, x, to);
    leader(g, x - 4, from, x + 4, from);
    leader(g, x - 4, to, x + 4, to);
    if (!text.isEmpty()) {
      Lettering.SMALL.draw(g, text, x - 6, (from + to) / 2 + 4.5, Align.RIGHT, Palette.INK);
    }
  }

  /** Returns a length in centimetres (cm), to a millimetre, from metres (m). */
  static String centimetres(double lengthM) {
    return java.math.BigDecimal.valueOf(Math.round(lengthM * 1000), 1)
            .stripTrailingZeros()
            .toPlainString()
        + " cm";
  }
}
