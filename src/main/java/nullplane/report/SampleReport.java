package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import nullplane.fit.Finding;
import nullplane.sample.BatchSpread;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.ChangeRequest;
import nullplane.sample.PartsFigures;
import nullplane.sample.SampleOutcome;
import nullplane.sample.SampleResult;
import nullplane.sample.ValueCheck;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackCurves;
import nullplane.units.Curve;

/** Samples against their brief for people: terminal text, a page, and the request to be sent. */
public final class SampleReport {
  private static final String WHAT_IT_IS =
      "Fitted from impedance sweeps at small travel. Travel, noises at large signals and looks are"
          + " judged by the brief's other tests; the levels are computed and replace no measurement"
          + " on the panel.";

  private static final int MOST_DRAWN = 3;
  private static final int MOST_RESIDUALS = 6;
  private static final String LEVEL = "level";
  private static final String BARE = "bare-level";

  private final DesignSpec spec;
  private final SampleOutcome outcome;
  private final RunInfo run;
  private final SampleTexts texts;

  private SampleReport(DesignSpec spec, SampleOutcome outcome, RunInfo run) {
    this.spec = spec;
    this.outcome = outcome;
    this.run = run;
    this.texts = new SampleTexts(outcome.brief());
  }

  /**
   * Returns what makes each file, by its relative path.
   *
   * @param spec the spec
   * @param outcome the samples
   * @param run what tells two prints apart
   */
  public static SortedMap<String, Supplier<byte[]>> parts(
      DesignSpec spec, SampleOutcome outcome, RunInfo run) {
    SampleReport report = new SampleReport(spec, outcome, run);
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    report.picture(parts, LEVEL, "Level with the best parts for each", StackCurves::levelDb);
    report.picture(parts, BARE, "Level without any network", StackCurves::bareLevelDb);
    report.residuals(parts);
    outcome.story().ifPresent(story -> RoundsReport.picture(parts, story));
    parts.put("index.md", () -> DesignReport.utf8(MarkdownWriter.write(report.page())));
    parts.put(
        "index.html",
        () -> DesignReport.utf8(HtmlWriter.write(report.page(), DesignReport.pictures(parts, ""))));
    outcome
        .request()
        .filter(ChangeRequest::asksForSomething)
        .ifPresent(
            request -> {
              parts.put("request.html", () -> html(report.letter(request)));
              parts.put(
                  "request.pdf",
                  () ->
                      PdfWriter.write(
                          report.letter(request),
                          Paper.A4,
                          SampleReport::noPicture,
                          run.digest(),
                          Optional.empty()));
            });
    return Collections.unmodifiableSortedMap(parts);
  }

  /**
   * Returns the terminal text, the verdict first, each line ended by a line feed.
   *
   * @param spec the spec
   * @param outcome the samples
   * @param run what tells two runs apart
   * @param folder where the files went; the last line, which may be wider than 80 columns
   * @param colour whether to set heads off by terminal codes
   */
  public static String terminal(
      DesignSpec spec, SampleOutcome outcome, RunInfo run, String folder, boolean colour) {
    return new SampleReport(spec, outcome, run).terminal(folder, new TerminalPage(colour));
  }

  private void picture(
      SortedMap<String, Supplier<byte[]>> parts,
      String stem,
      String heading,
      Function<StackCurves, Curve> which) {
    parts.put(stem + ".svg", new DesignReport.Once(() -> levels(stem, heading, which).svg()));
  }

  /** A picture of what the fit leaves, for the first samples. */
  private void residuals(SortedMap<String, Supplier<byte[]>> parts) {
    for (int i = 0; i < Math.min(MOST_RESIDUALS, outcome.samples().size()); i++) {
      SampleResult sample = outcome.samples().get(i);
      String stem = residuals(i);
      String heading =
          "Sample " + Lettering.clean(sample.name()) + ": what the fit leaves of the sweeps";
      if (!sample.fit().residuals().isEmpty()) {
        DesignReport.picture(
            parts, stem, () -> new FitResidualChart(sample.fit(), stem, heading).picture());
      }
    }
  }

  private static String residuals(int sample) {
    return "residuals-" + (sample + 1);
  }

  private Picture levels(String stem, String heading, Function<StackCurves, Curve> which) {
    List<Assessment> shown = new ArrayList<>(List.of(outcome.asked()));
    List<String> names = new ArrayList<>(List.of("as asked for"));
    for (SampleResult sample : outcome.samples()) {
      if (sample.assessment().isPresent() && shown.size() <= MOST_DRAWN) {
        shown.add(sample.assessment().orElseThrow());
        names.add("sample " + Lettering.clean(sample.name()));
      }
    }
    outcome
        .request()
        .filter(ChangeRequest::asksForSomething)
        .ifPresent(
            request -> {
              shown.add(request.assessmentAfter());
              names.add("after the change");
            });
    List<CurvesByStack.Named> named = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      List<StackCurves> curves =
          shown.get(i).stacks().stream().map(StackAssessment::curves).toList();
      named.add(
          new CurvesByStack.Named(
              names.get(i),
              curves.stream().map(StackCurves::frequencyHz).toList(),
              curves.stream().map(which).toList()));
    }
    String condition = ", " + Charts.plain(spec.target().voltageV()) + " V";
    return new CurvesByStack(
            spec,
            stem,
            heading,
            Charts.levelTitle(spec, "Level", condition),
            PlotRanges.of(spec, shown).levelDb(),
            named,
            true)
        .picture();
  }

  private static byte[] html(Document document) {
    return DesignReport.utf8(
        HtmlWriter.write(
            document,
            path -> {
              throw new IllegalStateException("no picture " + path);
            }));
  }

  private static Picture noPicture(String path) {
    throw new IllegalStateException("no picture " + path);
  }

  private String terminal(String folder, TerminalPage page) {
    page.paragraph(texts.verdict(outcome));
    outcome.request().ifPresent(request -> page.paragraph(texts.inShort(request)));
    outcome.request().ifPresent(request -> page.paragraph(texts.promise(request)));
    outcome
        .request()
        .map(RoundTexts::reckoning)
        .filter(said -> !said.isEmpty())
        .ifPresent(page::paragraph);
    page.blank();
    for (SampleResult sample : outcome.samples()) {
      page.head(PlainTable.shortened(SampleTexts.heading(sample), TerminalPage.WIDTH));
      PlainTable values =
          new PlainTable(
              List.of(List.of("", "value", "unit", "95 % interval", "window", "decision")), true);
      for (ValueCheck check : sample.checks()) {
        values.add(
            List.of(
                SampleTexts.label(check.value()),
                value(check),
                check.value().unit().shown().replace(" re 20 \u00b5Pa", ""),
                SampleTexts.interval(check),
                SampleTexts.window(check.value()),
                SampleTexts.decision(check)));
      }
      page.table(values);
      if (!sample.notMeasured().isEmpty()) {
        page.paragraph(texts.notMeasured(sample));
      }
      page.list(sample.notes());
      page.blank();
      stacks(page, "The stacks with this sample and the brief's parts", sample.briefParts());
      stacks(page, "The stacks with the best available parts for it", sample.bestParts());
    }
    if (!outcome.spreads().isEmpty()) {
      page.head("The batch");
      PlainTable spread = new PlainTable(List.of(List.of("", "n", "mean", "s", "Cpk", "apart")));
      spreads()
          .forEach(
              row ->
                  spread.add(
                      List.of(
                          row.get(0), row.get(1), row.get(2), row.get(4), row.get(7), row.get(8))));
      page.table(spread);
      page.blank();
    }
    outcome.story().ifPresent(story -> RoundsReport.terminal(story, page));
    page.list(outcome.notes());
    page.blank();
    page.cautions(new Cautions(spec, outcome.asked()));
    page.paragraph(WHAT_IT_IS);
    page.paragraph(foot());
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private static void stacks(TerminalPage page, String head, List<PartsFigures> stacks) {
    if (stacks.isEmpty()) {
      return;
    }
    page.head(head);
    PlainTable table =
        new PlainTable(
            List.of(
                List.of("Stack", "level", "mean", "outside", "margin", "fix", "load", "network"),
                List.of("", "rms dB", "dB", "dB", "dB", "dB", "ohm", "")));
    for (PartsFigures stack : stacks) {
      table.add(
          List.of(
              Lettering.clean(stack.stack()),
              Figures.decibelNumber(stack.rmsDeviationDb()),
              Figures.signedDecibelNumber(stack.meanDeviationDb()),
              Figures.decibelNumber(stack.worstExcessDb()),
              Figures.signedDecibelNumber(stack.outputMarginDb()),
              Figures.decibelNumber(stack.correctionDb()),
              Figures.number(stack.leastLoadOhm()),
              NetworkWords.shortly(stack.network())));
    }
    page.table(table);
    page.blank();
  }

  private static String value(ValueCheck check) {
    return check.finding() instanceof Finding.Estimate estimate
        ? SampleTexts.number(estimate.value(), check.value().unit())
        : Figures.NOT_DETERMINED;
  }

  private String foot() {
    return Lettering.clean(outcome.brief().title())
        + ", "
        + Lettering.clean(outcome.brief().name())
        + "; measurements "
        + run.shortDigest()
        + "; version "
        + Lettering.clean(run.version());
  }

  private Document page() {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(new Document.Paragraph(texts.verdict(outcome), true));
    outcome
        .request()
        .ifPresent(
            request -> {
              blocks.add(new Document.Paragraph(texts.inShort(request)));
              blocks.add(new Document.Paragraph(texts.promise(request)));
              if (!RoundTexts.reckoning(request).isEmpty()) {
                blocks.add(new Document.Paragraph(RoundTexts.reckoning(request)));
              }
              if (request.asksForSomething()) {
                blocks.add(new Document.Link("request.html", "The request to the maker, one page"));
              }
            });
    blocks.add(new Document.Heading(2, "In pictures"));
    blocks.add(
        new Document.Figure(
            BARE + ".svg",
            "Level without any network, where woofers differ most; wired as suits each best."));
    blocks.add(
        new Document.Figure(
            LEVEL + ".svg",
            "Level with the best available parts for each; the band is the corridor."
                + (outcome.samples().size() > MOST_DRAWN
                    ? " Only the first samples are drawn."
                    : "")));
    for (int i = 0; i < outcome.samples().size(); i++) {
      sample(outcome.samples().get(i), i, blocks);
    }
    if (!outcome.spreads().isEmpty()) {
      blocks.add(new Document.Heading(2, "The batch"));
      blocks.add(
          new Document.Table(
              List.of(
                  "Value", "n", "Mean", "Unit", "s", "Least", "Greatest", "Cpk", "Stands apart"),
              spreads(),
              List.of(false, true, true, false, true, true, true, true, false)));
      blocks.add(
          new Document.Paragraph(
              "s is the scatter from unit to unit with that of the measurement. Cpk is stated from "
                  + BatchSpread.FEWEST_FOR_CAPABILITY
                  + " samples on, with the lower end of its 95 % interval. A sample stands apart by"
                  + " Grubbs' test at 5 %."));
    }
    outcome.request().ifPresent(request -> panels(request, blocks));
    outcome.story().ifPresent(story -> RoundsReport.blocks(story, blocks));
    bullets(blocks, "Notes", outcome.notes());
    bullets(blocks, "Cautions", new Cautions(spec, outcome.asked()).sentences());
    blocks.add(new Document.Paragraph(WHAT_IT_IS));
    return new Document("Samples of " + Lettering.clean(outcome.brief().name()), blocks, foot());
  }

  private void sample(SampleResult sample, int index, List<Document.Block> blocks) {
    blocks.add(new Document.Heading(2, SampleTexts.heading(sample)));
    List<List<String>> rows = new ArrayList<>();
    for (ValueCheck check : sample.checks()) {
      String why =
          check.finding() instanceof Finding.NotDetermined none
              ? SampleTexts.decision(check) + ": " + none.reason()
              : SampleTexts.decision(check);
      rows.add(
          List.of(
              SampleTexts.label(check.value()),
              Lettering.clean(check.value().name()),
              value(check),
              check.value().unit().shown(),
              SampleTexts.interval(check),
              SampleTexts.window(check.value()),
              why));
    }
    blocks.add(
        new Document.Table(
            List.of("Symbol", "Value", "Measured", "Unit", "95 % interval", "Window", "Decision"),
            rows,
            List.of(false, false, true, false, true, true, false)));
    if (!sample.notMeasured().isEmpty()) {
      blocks.add(new Document.Paragraph(texts.notMeasured(sample)));
    }
    bullets(blocks, "", sample.notes());
    if (index < MOST_RESIDUALS && !sample.fit().residuals().isEmpty()) {
      blocks.add(
          new Document.Figure(
              residuals(index) + ".svg",
              "Measured less fitted. Points scattered round zero are noise; a wave says that the"
                  + " woofer is not quite the circuit that was fitted."));
    }
    if (!sample.briefParts().isEmpty()) {
      blocks.add(new Document.Heading(3, "In every stack, with the brief's parts"));
      blocks.add(stackTable(sample.briefParts()));
      blocks.add(new Document.Heading(3, "In every stack, with the best available parts"));
      blocks.add(stackTable(sample.bestParts()));
    }
  }

  private static void bullets(List<Document.Block> blocks, String head, List<String> sentences) {
    if (!sentences.isEmpty()) {
      if (!head.isEmpty()) {
        blocks.add(new Document.Heading(2, head));
      }
      blocks.add(new Document.Bullets(sentences.stream().map(Lettering::clean).toList()));
    }
  }

  private static Document.Table stackTable(List<PartsFigures> stacks) {
    List<List<String>> rows = new ArrayList<>();
    for (PartsFigures stack : stacks) {
      rows.add(
          List.of(
              Lettering.clean(stack.stack()),
              stack.wiring().inWords(),
              NetworkWords.shortly(stack.network()),
              Figures.decibels(stack.rmsDeviationDb()),
              Figures.signedDecibels(stack.meanDeviationDb()),
              Figures.decibels(stack.worstExcessDb()),
              Figures.signedDecibels(stack.outputMarginDb()),
              Figures.decibels(stack.correctionDb()),
              Figures.ohms(stack.leastLoadOhm())));
    }
    return new Document.Table(
        List.of(
            "Stack",
            "Wiring",
            "Network",
            "Level deviation, rms",
            "Level against target",
            "Outside the corridor",
            "Loudest-level margin",
            "Correction needed",
            "Least load"),
        rows,
        List.of(false, false, true, true, true, true, true, true, true));
  }

  private List<List<String>> spreads() {
    List<List<String>> rows = new ArrayList<>();
    for (BatchSpread spread : outcome.spreads()) {
      BriefValue value = spread.value();
      boolean level = value.unit() == BriefUnit.DECIBEL;
      boolean share = spread.mean() > 0 && !level;
      rows.add(
          List.of(
              SampleTexts.label(value),
              Integer.toString(spread.count()),
              SampleTexts.number(spread.mean(), value.unit()),
              value.unit().shown(),
              share
                  ? Figures.percent(spread.deviation() / spread.mean())
                  : (level
                      ? Figures.decibels(spread.deviation())
                      : SampleTexts.shown(spread.deviation(), value.unit())),
              SampleTexts.number(spread.least(), value.unit()),
              SampleTexts.number(spread.greatest(), value.unit()),
              spread.capability().isPresent()
                  ? Figures.number(spread.capability().getAsDouble())
                      + " (from "
                      + Figures.number(spread.capabilityLower().orElse(Double.NaN))
                      + ")"
                  : "-",
              spread.outlier().map(Lettering::clean).orElse("-")));
    }
    return rows;
  }

  private void panels(ChangeRequest request, List<Document.Block> blocks) {
    blocks.add(
        new Document.Heading(2, "What the change does on the panels, with the brief's parts"));
    blocks.add(
        ChangeLetter.beforeAfter(request.stacksBefore(), request.stacksAfter(), outcome.nominal()));
    blocks.add(new Document.Heading(2, "The same with the best available parts"));
    blocks.add(ChangeLetter.beforeAfter(request.bestBefore(), request.bestAfter(), List.of()));
  }

  private Document letter(ChangeRequest request) {
    return new ChangeLetter(outcome, request).document(foot());
  }
}
