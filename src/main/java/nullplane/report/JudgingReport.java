package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import nullplane.faults.InputFault;
import nullplane.judging.Finding;
import nullplane.judging.Judgement;
import nullplane.judging.JudgingOutcome;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;

/** Every file for people that judging woofers gives: the page and its pictures, as bytes. */
public final class JudgingReport {
  /** How many woofers the page ranks; all stand in the table and in the JSON document. */
  static final int MOST_ROWS = 500;

  /** How many woofers are told about one by one. */
  static final int MOST_TOLD = 30;

  private final DesignSpec spec;
  private final JudgingOutcome outcome;
  private final List<InputFault> refused;
  private final RunInfo run;

  private JudgingReport(
      DesignSpec spec, JudgingOutcome outcome, List<InputFault> refused, RunInfo run) {
    this.spec = spec;
    this.outcome = outcome;
    this.refused = List.copyOf(refused);
    this.run = run;
  }

  /**
   * Returns what makes each file, by its relative path. The suppliers can be called in any order
   * and on several threads.
   *
   * @param spec the spec
   * @param outcome the ranking
   * @param refused what was wrong with rows and files that could not be judged
   * @param run what tells two prints apart
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, JudgingOutcome outcome, List<InputFault> refused, RunInfo run) {
    JudgingReport report = new JudgingReport(spec, outcome, refused, run);
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    if (!outcome.ranked().isEmpty()) {
      DesignReport.picture(parts, "level", report::levels);
      DesignReport.picture(parts, "bare-level", report::bareLevels);
      DesignReport.picture(parts, "loudest", report::loudest);
    }
    parts.put("index.md", () -> DesignReport.utf8(MarkdownWriter.write(report.document())));
    parts.put(
        "index.html",
        () ->
            DesignReport.utf8(
                HtmlWriter.write(report.document(), DesignReport.pictures(parts, ""))));
    return Collections.unmodifiableSortedMap(parts);
  }

  private Picture levels() {
    return curves("level", "Level with the best network of each", JudgingReport::judged, true);
  }

  private Picture bareLevels() {
    return curves(
        "bare-level", "Level without any network", c -> of(c, StackCurves::bareLevelDb), true);
  }

  private Picture loudest() {
    return curves("loudest", "Loudest level", c -> of(c, StackCurves::loudestDb), false);
  }

  /** A curve with its frequencies (Hz). */
  private record Drawn(Curve frequencyHz, Curve values) {}

  private static Drawn of(StackCurves curves, Function<StackCurves, Curve> which) {
    return new Drawn(curves.frequencyHz(), which.apply(curves));
  }

  /** The level that is held against the corridor: with the main driver, if there is one. */
  private static Drawn judged(StackCurves curves) {
    return curves
        .sum()
        .map(sum -> new Drawn(sum.frequencyHz(), sum.sumDb()))
        .orElseGet(() -> of(curves, StackCurves::levelDb));
  }

  private Picture curves(
      String stem, String heading, Function<StackCurves, Drawn> which, boolean atVoltage) {
    List<Assessment> shown = new ArrayList<>();
    outcome.best().ifPresent(shown::add);
    for (Judgement judgement : outcome.ranked()) {
      if (shown.size() < CurvesByStack.MOST) {
        shown.add(judgement.assessment());
      }
    }
    PlotRanges ranges = PlotRanges.of(spec, shown);
    List<CurvesByStack.Named> named = new ArrayList<>();
    for (Assessment woofer : shown) {
      boolean best = outcome.best().isPresent() && named.isEmpty();
      List<Drawn> drawn = woofer.stacks().stream().map(s -> which.apply(s.curves())).toList();
      named.add(
          new CurvesByStack.Named(
              best ? "best buildable" : woofer.woofer().name(),
              drawn.stream().map(Drawn::frequencyHz).toList(),
              drawn.stream().map(Drawn::values).toList()));
    }
    String condition = atVoltage ? ", " + Charts.plain(spec.target().voltageV()) + " V" : "";
    return new CurvesByStack(
            spec,
            stem,
            heading,
            Charts.levelTitle(spec, atVoltage ? "Level" : "Loudest level", condition),
            atVoltage ? ranges.levelDb() : ranges.loudestDb(),
            named,
            atVoltage)
        .picture();
  }

  private Document document() {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(new Document.Paragraph(verdict(outcome), true));
    if (!outcome.ranked().isEmpty()) {
      blocks.add(new Document.Heading(2, "Ranking"));
      blocks.add(
          new Document.Paragraph(
              "Cost is the score of the search: smaller is better. Level, margin and correction are"
                  + " those of the worst stack, with the best wiring and network for each"
                  + " woofer; correction is what the response needs without a network."));
      blocks.add(ranking());
      if (outcome.ranked().size() > MOST_ROWS) {
        blocks.add(
            new Document.Paragraph(
                (outcome.ranked().size() - MOST_ROWS) + " more stand in judging.csv."));
      }
      blocks.add(new Document.Heading(2, "In pictures"));
      blocks.add(
          new Document.Figure(
              "bare-level.svg", "Level without any network, where woofers differ most."));
      blocks.add(
          new Document.Figure(
              "level.svg", "Level with the best network of each; the band is the corridor."));
      blocks.add(new Document.Figure("loudest.svg", "Loudest level before a limit binds."));
      blocks.add(new Document.Heading(2, "What each lacks"));
      outcome.ranked().stream().limit(MOST_TOLD).forEach(woofer -> tell(woofer, blocks));
    }
    unjudged(blocks);
    if (!outcome.ranked().isEmpty()) {
      Cautions cautions = new Cautions(spec, outcome.ranked().get(0).assessment());
      blocks.add(new Document.Heading(2, "What the model leaves out"));
      blocks.add(new Document.Bullets(cautions.model()));
      blocks.add(new Document.Heading(2, "Cautions"));
      blocks.add(new Document.Bullets(cautions.sentences()));
    }
    return new Document(
        Lettering.clean(spec.title()) + ": judged woofers",
        blocks,
        SpecificationSheet.foot(spec, run));
  }

  /** Returns the verdict on the whole set: one or two sentences. */
  static String verdict(JudgingOutcome outcome) {
    if (outcome.ranked().isEmpty()) {
      return "No woofer could be judged on these panels.";
    }
    Judgement first = outcome.ranked().get(0);
    long clean = outcome.ranked().stream().filter(w -> w.findings().isEmpty()).count();
    String behind =
        first.behindBestDb().isPresent()
            ? ", "
                + Figures.decibels(Math.abs(first.behindBestDb().getAsDouble()))
                + (first.behindBestDb().getAsDouble() >= 0 ? " behind" : " ahead of")
                + " the best woofer that was found to be buildable"
            : "";
    return Lettering.clean(first.assessment().woofer().name())
        + " suits these panels best"
        + behind
        + ". "
        + (clean == 0
            ? "Every woofer lacks something."
            : outcome.ranked().size() == 1
                ? "It lacks nothing that was asked for."
                : clean + " of " + outcome.ranked().size() + " lack nothing that was asked for.");
  }

  private Document.Table ranking() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < Math.min(MOST_ROWS, outcome.ranked().size()); i++) {
      Judgement judgement = outcome.ranked().get(i);
      Assessment woofer = judgement.assessment();
      Verdict verdict = new Verdict(spec, woofer, woofer.woofer().name());
      rows.add(
          List.of(
              Integer.toString(i + 1),
              Lettering.clean(woofer.woofer().name()),
              Figures.decibels(woofer.grade().costDb()),
              Figures.hertz(woofer.freeAir().resonanceHz()),
              Figures.number(woofer.freeAir().totalQ()),
              Figures.grams(woofer.woofer().bareMassKg()),
              Figures.millimetres(woofer.woofer().travelM()),
              Figures.decibels(verdict.worstShape().figures().rmsDeviationDb()),
              Figures.signedDecibels(judgement.leastOutputMarginDb()),
              Figures.decibels(judgement.mostCorrectionDb()),
              woofer.grade().feasible() ? "met" : "broken"));
    }
    return new Document.Table(
        List.of(
            "Rank",
            "Woofer",
            "Cost",
            "fs, free air",
            "Qts, free air",
            "Bare mass",
            "Travel",
            "Level deviation, rms",
            "Loudest-level margin",
            "Correction needed",
            "Constraints"),
        rows,
        List.of(true, false, true, true, true, true, true, true, true, true, false));
  }

  private void tell(Judgement judgement, List<Document.Block> blocks) {
    Assessment woofer = judgement.assessment();
    blocks.add(new Document.Heading(3, Lettering.clean(woofer.woofer().name())));
    List<String> sentences = new ArrayList<>();
    for (Finding finding : judgement.findings()) {
      sentences.add(finding.sentence() + " " + finding.remedy());
    }
    blocks.add(
        sentences.isEmpty()
            ? new Document.Paragraph("It lacks nothing that was asked for.")
            : new Document.Bullets(sentences));
    List<List<String>> rows = new ArrayList<>();
    for (StackAssessment stack : woofer.stacks()) {
      rows.add(
          List.of(
              Verdict.name(stack),
              stack.wiring().inWords(),
              NetworkWords.shortly(stack.network()),
              Figures.signedDecibels(stack.figures().meanDeviationDb()),
              Figures.signedDecibels(stack.figures().outputMarginDb())
                  + ", "
                  + stack.figures().outputLimit().word(),
              Figures.hertz(stack.figures().panelResonanceHz()),
              Figures.number(stack.figures().panelTotalQ())));
    }
    blocks.add(
        new Document.Table(
            List.of(
                "Stack",
                "Wiring",
                "Network",
                "Level against target",
                "Loudest-level margin",
                "fs on the panel",
                "Qts on the panel"),
            rows,
            List.of(false, false, false, true, true, true, true)));
    blocks.add(
        new Document.Paragraph(
            "The price of correction"
                + (outcome.best().isPresent() ? ", and that of the best buildable woofer:" : ":")));
    blocks.add(StackTables.price(woofer, outcome.best()));
  }

  private void unjudged(List<Document.Block> blocks) {
    if (outcome.misfits().isEmpty() && refused.isEmpty()) {
      return;
    }
    blocks.add(new Document.Heading(2, "Not judged"));
    List<String> sentences = new ArrayList<>();
    outcome
        .misfits()
        .forEach(misfit -> sentences.add(Lettering.clean(misfit.name()) + ": " + misfit.reason()));
    refused.forEach(fault -> sentences.add(Lettering.clean(fault.oneLine())));
    blocks.add(new Document.Bullets(sentences));
  }
}
