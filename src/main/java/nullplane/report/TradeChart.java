package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.report.Lettering.Align;
import nullplane.search.FrontMember;
import nullplane.search.FrontObjective;
import nullplane.units.Range;

/** What better shape costs in another objective: a dot for each compromise, the ranked numbered. */
final class TradeChart {
  /** Shape beyond which a compromise is not drawn unless it is ranked (dB); by judgement. */
  static final double WORTH_SHOWING_DB = 6;

  private static final int LEFT_PX = 72;
  private static final int RIGHT_PX = 28;
  private static final int TOP_PX = 36;
  private static final int HEIGHT_PX = 330;
  private static final int FOOT_PX = 84;
  private static final double DOT_PX = 5;
  private static final double MARK_PX = 9;
  private static final double LEAST_SHAPE_SPAN_DB = 2;
  private static final Color INSIDE = Palette.stack(2);
  private static final Color RANKED = Palette.stack(4);

  private final FrontObjective other;
  private final List<FrontMember> front;
  private final List<FrontMember> drawn;
  private final LinearFrame frame;

  private TradeChart(FrontObjective other, List<FrontMember> front) {
    this.other = other;
    this.front = front;
    drawn = front.stream().filter(TradeChart::isDrawn).toList();
    frame =
        new LinearFrame(
            LEFT_PX,
            TOP_PX,
            PanelGrid.WIDTH_PX - LEFT_PX - RIGHT_PX,
            HEIGHT_PX,
            axis(drawn, other),
            axis(drawn, FrontObjective.SHAPE));
  }

  /** Returns the objectives that shape is held against, each in a picture of its own. */
  static List<FrontObjective> others() {
    return List.of(FrontObjective.values()).stream()
        .filter(objective -> objective != FrontObjective.SHAPE)
        .toList();
  }

  /** Returns the picture's file name without its ending. */
  static String stem(FrontObjective other) {
    return "trade-" + other.word().replace(' ', '-');
  }

  /**
   * Returns the picture.
   *
   * @param other what shape is held against
   * @param front the compromises, one or more
   */
  static Picture picture(FrontObjective other, List<FrontMember> front) {
    TradeChart chart = new TradeChart(other, front);
    return new Picture(
        stem(other),
        PanelGrid.WIDTH_PX,
        TOP_PX + HEIGHT_PX + FOOT_PX,
        "Shape of the level against " + other.word() + ", a dot for each compromise",
        chart::paint);
  }

  static boolean isDrawn(FrontMember member) {
    return member.rank().isPresent() || FrontObjective.SHAPE.of(member) <= WORTH_SHOWING_DB;
  }

  private static Range axis(List<FrontMember> drawn, FrontObjective objective) {
    double lowest = drawn.stream().mapToDouble(objective::of).min().orElse(0);
    double highest = drawn.stream().mapToDouble(objective::of).max().orElse(1);
    return switch (objective) {
      case SHAPE -> LinearFrame.axis(0, highest, LEAST_SHAPE_SPAN_DB);
      case OUTPUT -> LinearFrame.axis(Math.min(0, lowest), Math.max(0, highest), 6);
      case CORRECTION, MATERIAL -> LinearFrame.axis(0, highest, 0.5);
      case YIELD -> new Range(0, 100);
    };
  }

  /** Returns the title of an objective's axis, with its unit and the better direction. */
  static String title(FrontObjective objective) {
    String words =
        switch (objective) {
          case SHAPE -> "Shape: rms deviation and distance outside";
          case OUTPUT -> "Margin of the loudest level over what is asked for";
          case CORRECTION -> "Correction: decibels and parts of the networks";
          case MATERIAL -> "Material: copper, capacitors, coil wire and magnet";
          case YIELD -> "Yield: units that stay in the corridor in every stack";
        };
    String unit = objective.moreIsBetter() ? objective.unit() : "weighted " + objective.unit();
    return words + " (" + unit + (objective.moreIsBetter() ? ", more" : ", less") + " is better)";
  }

  private void paint(Graphics2D g) {
    Lettering.BOLD.draw(g, "Shape against " + other.word(), LEFT_PX, 20, Align.LEFT, Palette.INK);
    frame.paint(g, title(other), "Shape (weighted dB, less is better)");
    edge(g);
    drawn.stream().filter(m -> m.rank().isEmpty()).forEach(member -> dot(g, member));
    List<Rectangle2D> taken = new ArrayList<>();
    List<FrontMember> ranked =
        drawn.stream()
            .filter(m -> m.rank().isPresent())
            // from the top down, so that numbers stand in the order of their marks
            .sorted(Comparator.comparingDouble(this::y))
            .toList();
    for (FrontMember member : ranked) {
      double x = x(member);
      double y = y(member);
      taken.add(new Rectangle2D.Double(x - MARK_PX / 2, y - MARK_PX / 2, MARK_PX, MARK_PX));
      mark(g, x, y, isInside(member));
    }
    ranked.forEach(member -> number(g, member, taken));
    frame.border(g);
    legend(g);
  }

  private double x(FrontMember member) {
    return frame.xOf(other.of(member));
  }

  private double y(FrontMember member) {
    return frame.yOf(FrontObjective.SHAPE.of(member));
  }

  private static boolean isInside(FrontMember member) {
    return member.score().outsideDb() < Verdict.UNSEEN_DB;
  }

  private static void mark(Graphics2D g, double x, double y, boolean inside) {
    Ellipse2D mark = new Ellipse2D.Double(x - MARK_PX / 2, y - MARK_PX / 2, MARK_PX, MARK_PX);
    g.setColor(inside ? RANKED : Palette.PAPER);
    g.fill(mark);
    g.setColor(RANKED);
    g.setStroke(LineStyle.RING.stroke());
    g.draw(mark);
  }

  private void dot(Graphics2D g, FrontMember member) {
    Ellipse2D dot =
        new Ellipse2D.Double(x(member) - DOT_PX / 2, y(member) - DOT_PX / 2, DOT_PX, DOT_PX);
    if (isInside(member)) {
      g.setColor(INSIDE);
      g.fill(dot);
    } else {
      g.setColor(Palette.SOFT_INK);
      g.setStroke(LineStyle.HAIR.stroke());
      g.draw(dot);
    }
  }

  /** Joins the compromises that no other beats in these two objectives. */
  private void edge(Graphics2D g) {
    List<FrontMember> best = new ArrayList<>();
    double sign = other.moreIsBetter() ? -1 : 1;
    List<FrontMember> ordered =
        drawn.stream()
            .sorted(
                Comparator.comparingDouble((FrontMember m) -> sign * other.of(m))
                    .thenComparingDouble(FrontObjective.SHAPE::of))
            .toList();
    double least = Double.POSITIVE_INFINITY;
    for (FrontMember member : ordered) {
      if (FrontObjective.SHAPE.of(member) < least) {
        least = FrontObjective.SHAPE.of(member);
        best.add(member);
      }
    }
    Path2D path = new Path2D.Double();
    for (int i = 0; i < best.size(); i++) {
      if (i == 0) {
        path.moveTo(x(best.get(i)), y(best.get(i)));
      } else {
        path.lineTo(x(best.get(i)), y(best.get(i - 1)));
        path.lineTo(x(best.get(i)), y(best.get(i)));
      }
    }
    if (!best.isEmpty()) {
      g.setColor(Palette.tint(Palette.stack(0), 0.6));
      g.setStroke(LineStyle.RING.stroke());
      g.draw(path);
    }
  }

  /** Writes a rank beside its mark where nothing is yet, with a leader to the mark. */
  private void number(Graphics2D g, FrontMember member, List<Rectangle2D> taken) {
    String text = Integer.toString(member.rank().getAsInt());
    double wide = Lettering.BOLD.width(text);
    double[][] ways = {{1, -1}, {1, 0}, {1, 1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, -1}, {0, 1}};
    for (int ring = 1; ring <= 4; ring++) {
      for (double[] way : ways) {
        double centreX = x(member) + way[0] * (6 + 8.0 * ring);
        double centreY = y(member) + way[1] * (6 + 8.0 * ring);
        Rectangle2D place =
            new Rectangle2D.Double(centreX - wide / 2 - 1, centreY - 7, wide + 2, 14);
        boolean free =
            taken.stream().noneMatch(place::intersects)
                && place.getMinX() > frame.leftPx()
                && place.getMaxX() < frame.leftPx() + frame.widthPx()
                && place.getMinY() > frame.topPx()
                && place.getMaxY() < frame.topPx() + frame.heightPx();
        if (free) {
          taken.add(place);
          g.setColor(RANKED);
          g.setStroke(LineStyle.HAIR.stroke());
          g.draw(
              new Line2D.Double(x(member), y(member), centreX - 5 * way[0], centreY - 5 * way[1]));
          Lettering.BOLD.draw(
              g, text, centreX, centreY + 5, Align.CENTRE, Palette.shade(RANKED, 0.8));
          return;
        }
      }
    }
  }

  private void legend(Graphics2D g) {
    double y = TOP_PX + HEIGHT_PX + 62.0;
    double x = LEFT_PX;
    mark(g, x + MARK_PX / 2, y - 4, true);
    x = words(g, "ranked woofer", x + 16, y);
    g.setColor(INSIDE);
    g.fill(new Ellipse2D.Double(x, y - 4 - DOT_PX / 2, DOT_PX, DOT_PX));
    x = words(g, "filled: inside the corridor in every stack", x + 12, y);
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.HAIR.stroke());
    g.draw(new Ellipse2D.Double(x, y - 4 - DOT_PX / 2, DOT_PX, DOT_PX));
    x = words(g, "hollow: outside somewhere", x + 12, y);
    g.setColor(Palette.tint(Palette.stack(0), 0.6));
    g.setStroke(LineStyle.RING.stroke());
    g.draw(new Line2D.Double(x, y - 4, x + 28, y - 4));
    words(g, "best in these two respects", x + 36, y);
    int hidden = front.size() - drawn.size();
    if (hidden > 0) {
      Lettering.SMALL.draw(
          g,
          hidden
              + " of "
              + front.size()
              + " lie beyond "
              + Charts.plain(WORTH_SHOWING_DB)
              + " dB of shape and are not drawn; front.csv has them",
          LEFT_PX,
          y + 17,
          Align.LEFT,
          Palette.SOFT_INK);
    }
  }

  private static double words(Graphics2D g, String text, double x, double y) {
    Lettering.SMALL.draw(g, text, x, y, Align.LEFT, Palette.INK);
    return x + Lettering.SMALL.width(text) + 22;
  }
}
