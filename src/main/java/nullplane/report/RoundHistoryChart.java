package nullplane.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.fit.Finding;
import nullplane.report.AxisLettering.Entry;
import nullplane.report.Lettering.Align;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.ProjectRound;
import nullplane.sample.RoundHistory;
import nullplane.units.Range;

/**
 * Every value of the brief that the rounds show, by round, against its window: a small plot for
 * each. Dots are samples with their 95 % intervals, rings what the round before was to give, empty
 * squares golden samples.
 */
final class RoundHistoryChart {
  private static final int WIDTH_PX = 900;
  private static final int COLUMNS = 3;
  private static final double LEFT_PX = 58;
  private static final double GAP_PX = 62;
  private static final double PLOT_PX =
      (WIDTH_PX - LEFT_PX - 18 - (COLUMNS - 1) * GAP_PX) / COLUMNS;
  private static final double HEIGHT_PX = 130;
  private static final double TITLE_PX = 34;
  private static final double HEAD_PX = 24;
  private static final double FOOT_PX = 42;
  private static final int MOST_ROUNDS = 12;
  private static final double SPREAD_PX = 7;
  private static final Color WINDOW = Palette.tint(Palette.stack(2), 0.22);
  private static final Color SAMPLE = Palette.stack(0);
  private static final Color PREDICTED = Palette.stack(4);

  private final RoundHistory history;
  private final List<ProjectRound> rounds;
  private final List<BriefValue> values;
  private final String title;

  /**
   * @param history the rounds, one or more
   * @param title what to call the woofer
   */
  RoundHistoryChart(RoundHistory history, String title) {
    this.history = history;
    this.title = title;
    int all = history.rounds().size();
    rounds = history.rounds().subList(Math.max(0, all - MOST_ROUNDS), all);
    values = RoundTexts.shownValues(history);
  }

  Picture picture() {
    int rows = (values.size() + COLUMNS - 1) / COLUMNS;
    return new Picture(
        "history",
        WIDTH_PX,
        (int) (TITLE_PX + rows * (HEAD_PX + HEIGHT_PX + FOOT_PX) + 44),
        title + ": each value by round against its window",
        this::paint);
  }

  private void paint(Graphics2D g) {
    Lettering.BOLD.draw(
        g,
        Lettering.BOLD.fitted(title + ": each value by round against its window", WIDTH_PX - 80.0),
        LEFT_PX,
        20,
        Align.LEFT,
        Palette.INK);
    for (int v = 0; v < values.size(); v++) {
      double left = LEFT_PX + (v % COLUMNS) * (PLOT_PX + GAP_PX);
      int row = v / COLUMNS;
      double top = TITLE_PX + row * (HEAD_PX + HEIGHT_PX + FOOT_PX) + HEAD_PX;
      plot(g, values.get(v), left, top);
    }
    int rows = (values.size() + COLUMNS - 1) / COLUMNS;
    AxisLettering.legend(
        g,
        List.of(
            new Entry("window of the brief", WINDOW, LineStyle.MAIN, true),
            new Entry("target", Palette.SOFT_INK, LineStyle.AMPLIFIER, false),
            new Entry("dots: samples, 95 %", SAMPLE, LineStyle.MAIN, false),
            new Entry("rings: as predicted", PREDICTED, LineStyle.RING, false),
            new Entry("squares: golden", Palette.SOFT_INK, LineStyle.RING, false)),
        LEFT_PX,
        TITLE_PX + rows * (HEAD_PX + HEIGHT_PX + FOOT_PX) + 20,
        WIDTH_PX - 80.0);
  }

  private BriefWindow window(ProjectRound round, BriefValue value) {
    return history
        .briefOf(round)
        .flatMap(
            brief -> brief.values().stream().filter(v -> v.key().equals(value.key())).findFirst())
        .map(BriefValue::window)
        .orElse(BriefWindow.NONE);
  }

  private static Optional<Finding.Estimate> shown(SampleEntry sample, BriefValue value) {
    return RoundTexts.estimate(sample, value.key());
  }

  /** What was predicted for a round by the one before it. */
  private OptionalDouble predicted(int round, BriefValue value) {
    int at = history.rounds().indexOf(rounds.get(round));
    if (at == 0) {
      return OptionalDouble.empty();
    }
    Double found =
        history
            .rounds()
            .get(at - 1)
            .end()
            .map(end -> end.predicted().get(value.key()))
            .orElse(null);
    return found == null ? OptionalDouble.empty() : OptionalDouble.of(found);
  }

  private Range range(BriefValue value) {
    List<Double> all = new ArrayList<>();
    value.target().ifPresent(all::add);
    for (int r = 0; r < rounds.size(); r++) {
      BriefWindow window = window(rounds.get(r), value);
      window.lower().ifPresent(all::add);
      window.upper().ifPresent(all::add);
      predicted(r, value).ifPresent(all::add);
      for (SampleEntry sample : rounds.get(r).samples()) {
        shown(sample, value)
            .ifPresent(
                estimate -> {
                  all.add(estimate.lower95());
                  all.add(estimate.upper95());
                });
      }
    }
    BriefUnit unit = value.unit();
    double least = all.stream().mapToDouble(unit::toShown).min().orElse(0);
    double most = all.stream().mapToDouble(unit::toShown).max().orElse(1);
    double room = Math.max(0.12 * (most - least), 1e-6 * Math.max(1, Math.abs(most)));
    return new Range(least - room, most + room);
  }

  private void plot(Graphics2D g, BriefValue value, double left, double top) {
    BriefUnit unit = value.unit();
    Range upwards = range(value);
    int first = rounds.get(0).number();
    int last = rounds.get(rounds.size() - 1).number();
    Range across = new Range(first - 0.5, last + 0.5);
    MeasurementPlot plot =
        new MeasurementPlot(
            g, new Rectangle2D.Double(left, top, PLOT_PX, HEIGHT_PX), across, false, upwards);
    for (int r = 0; r < rounds.size(); r++) {
      BriefWindow window = window(rounds.get(r), value);
      int end = r;
      while (end + 1 < rounds.size() && window(rounds.get(end + 1), value).equals(window)) {
        end++;
      }
      if (window.limits()) {
        plot.band(
            new Range(rounds.get(r).number() - 0.5, rounds.get(end).number() + 0.5),
            new Range(
                window.lower().isPresent()
                    ? unit.toShown(window.lower().getAsDouble())
                    : upwards.lower(),
                window.upper().isPresent()
                    ? unit.toShown(window.upper().getAsDouble())
                    : upwards.upper()),
            WINDOW);
      }
      r = end;
    }
    double step = PlotRanges.nextStep((upwards.upper() - upwards.lower()) / 3, false);
    List<Double> labelled = Charts.multiples(upwards, step);
    plot.grid(List.of(), labelled, Palette.MINOR_GRID);
    if (value.target().isPresent()) {
      double target = unit.toShown(value.target().getAsDouble());
      plot.line(
          across.lower(), target, across.upper(), target, Palette.SOFT_INK, LineStyle.AMPLIFIER);
    }
    List<Double> numbers = new ArrayList<>();
    for (int r = 0; r < rounds.size(); r++) {
      ProjectRound round = rounds.get(r);
      numbers.add((double) round.number());
      double middle = plot.x(round.number());
      List<SampleEntry> samples =
          round.samples().stream().filter(s -> shown(s, value).isPresent()).toList();
      double apart = Math.min(SPREAD_PX, 0.7 * PLOT_PX / rounds.size() / (samples.size() + 1.0));
      for (int s = 0; s < samples.size(); s++) {
        Finding.Estimate estimate = shown(samples.get(s), value).orElseThrow();
        double x = middle + apart * (s - (samples.size() - 1) / 2.0);
        boolean golden = samples.get(s).golden();
        Color colour = golden ? Palette.SOFT_INK : SAMPLE;
        plot.interval(
            x, unit.toShown(estimate.lower95()), unit.toShown(estimate.upper95()), colour);
        double y = plot.y(unit.toShown(estimate.value()));
        if (golden) {
          plot.square(x, y, 3, colour);
        } else {
          plot.dot(x, y, 3.2, colour);
        }
      }
      OptionalDouble expected = predicted(r, value);
      if (expected.isPresent()) {
        plot.ring(middle, plot.y(unit.toShown(expected.getAsDouble())), 5.5, PREDICTED);
      }
    }
    plot.axes(numbers, labelled, Charts::plain, true);
    Lettering.SMALL.draw(
        g,
        Lettering.SMALL.fitted(
            SampleTexts.label(value) + (unit == BriefUnit.ONE ? "" : " (" + unit.shown() + ")"),
            PLOT_PX),
        left,
        top - 7,
        Align.LEFT,
        Palette.INK);
    Lettering.SMALL.draw(
        g, "Round", left + PLOT_PX / 2, top + HEIGHT_PX + 31, Align.CENTRE, Palette.SOFT_INK);
  }
}
