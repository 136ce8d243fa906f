package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.search.ConvergencePoint;
import nullplane.search.SearchOutcome;
import nullplane.units.Range;

/** How a search went: the best cost and the hypervolume, by evaluations. */
final class ConvergenceChart {
  static final String STEM = "convergence";

  private static final int LEFT_PX = 72;
  private static final int RIGHT_PX = 28;
  private static final int TOP_PX = 36;
  private static final int COST_PX = 220;
  private static final int GAP_PX = 34;
  private static final int VOLUME_PX = 90;
  private static final int FOOT_PX = 78;
  private static final Color COST = Palette.stack(0);
  private static final Color VOLUME = Palette.stack(2);
  private static final double LEAST_COST_SPAN_DB = 2;

  private final SearchOutcome outcome;
  private final List<ConvergencePoint> feasible;
  private final Range evaluations;

  private ConvergenceChart(SearchOutcome outcome) {
    this.outcome = outcome;
    feasible = outcome.history().stream().filter(point -> point.violation() == 0).toList();
    evaluations = LinearFrame.axis(0, (double) outcome.evaluations(), 1);
  }

  /** Returns the picture of a search with a history. */
  static Picture picture(SearchOutcome outcome) {
    return new Picture(
        STEM,
        PanelGrid.WIDTH_PX,
        TOP_PX + COST_PX + GAP_PX + VOLUME_PX + FOOT_PX,
        "Best cost and hypervolume of the search by the number of woofers scored",
        new ConvergenceChart(outcome)::paint);
  }

  private void paint(Graphics2D g) {
    Lettering.BOLD.draw(g, "How the search went", LEFT_PX, 20, Align.LEFT, Palette.INK);
    double width = PanelGrid.WIDTH_PX - LEFT_PX - RIGHT_PX;
    double mostCost = feasible.stream().mapToDouble(ConvergencePoint::bestCostDb).max().orElse(1);
    LinearFrame cost =
        new LinearFrame(
            LEFT_PX,
            TOP_PX,
            width,
            COST_PX,
            evaluations,
            LinearFrame.axis(0, mostCost, LEAST_COST_SPAN_DB));
    double mostVolume =
        feasible.stream().mapToDouble(ConvergencePoint::hypervolume).max().orElse(1);
    LinearFrame volume =
        new LinearFrame(
            LEFT_PX,
            TOP_PX + COST_PX + (double) GAP_PX,
            width,
            VOLUME_PX,
            evaluations,
            new Range(0, 1));
    cost.paint(g, "", "Best cost (dB)");
    volume.paint(g, "Woofers scored", "Volume / last");
    restarts(g, cost);
    restarts(g, volume);
    curve(g, cost, ConvergencePoint::bestCostDb, COST);
    if (mostVolume > 0) {
      curve(g, volume, point -> point.hypervolume() / mostVolume, VOLUME);
    }
    polished(g, cost);
    cost.border(g);
    volume.border(g);
    List<Entry> entries = new ArrayList<>();
    entries.add(new Entry("best cost while evolving", COST, LineStyle.MAIN, false));
    entries.add(new Entry("hypervolume of the front", VOLUME, LineStyle.MAIN, false));
    if (outcome.history().stream().anyMatch(point -> point.restarts() > 0)) {
      entries.add(new Entry("fresh population", Palette.SOFT_INK, LineStyle.BARE, false));
    }
    AxisLettering.legend(g, entries, LEFT_PX, TOP_PX + COST_PX + GAP_PX + VOLUME_PX + 62.0, width);
  }

  /** A value holds until the next generation is scored: steps, and no slopes. */
  private void curve(
      Graphics2D g, LinearFrame frame, ToDoubleFunction<ConvergencePoint> value, Color colour) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < feasible.size(); i++) {
      double x = frame.xOf((double) feasible.get(i).evaluations());
      double y = frame.yOf(value.applyAsDouble(feasible.get(i)));
      if (i == 0) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, frame.yOf(value.applyAsDouble(feasible.get(i - 1))));
        path.lineTo(x, y);
      }
    }
    if (!feasible.isEmpty()) {
      g.setColor(colour);
      g.setStroke(LineStyle.MAIN.stroke());
      g.draw(path);
    }
  }

  private void restarts(Graphics2D g, LinearFrame frame) {
    List<ConvergencePoint> history = outcome.history();
    g.setColor(Palette.SOFT_INK);
    g.setStroke(LineStyle.BARE.stroke());
    for (int i = 1; i < history.size(); i++) {
      if (history.get(i).restarts() > history.get(i - 1).restarts()) {
        double x = frame.xOf((double) history.get(i).evaluations());
        g.draw(new Line2D.Double(x, frame.topPx(), x, frame.topPx() + frame.heightPx()));
      }
    }
  }

  /** Marks what the polish made of the best. */
  private void polished(Graphics2D g, LinearFrame frame) {
    if (outcome.ranked().isEmpty() || !outcome.ranked().get(0).grade().feasible()) {
      return;
    }
    double cost = outcome.ranked().get(0).grade().costDb();
    if (!frame.contains((double) outcome.evaluations(), cost)) {
      return;
    }
    double x = frame.xOf((double) outcome.evaluations());
    double y = frame.yOf(cost);
    g.setColor(Palette.stack(4));
    g.fill(new Ellipse2D.Double(x - 4.5, y - 4.5, 9, 9));
    Lettering.SMALL.draw(
        g,
        "woofer 1, polished: " + Figures.decibels(cost),
        x - 10,
        y - 9,
        Align.RIGHT,
        Palette.INK);
  }
}
