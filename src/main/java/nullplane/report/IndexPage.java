package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackFigures;
import nullplane.search.SearchOutcome;

/** The first page of a run: the ranking, the best woofer's pictures, the way to the sheets. */
public final class IndexPage {
  private final DesignSpec spec;
  private final SearchOutcome outcome;
  private final RunInfo run;

  /**
   * @param spec the spec
   * @param outcome what was found
   * @param run what tells two prints apart
   */
  public IndexPage(DesignSpec spec, SearchOutcome outcome, RunInfo run) {
    this.spec = spec;
    this.outcome = outcome;
    this.run = run;
  }

  /** Returns the page as Markdown, with links to the sheets' Markdown. */
  public String markdown() {
    return MarkdownWriter.write(document("md"));
  }

  /**
   * Returns the page as HTML that needs nothing from outside, with links to the sheets' HTML.
   *
   * @param svg gives the SVG text of a picture by its relative path
   */
  public String html(Function<String, String> svg) {
    return HtmlWriter.write(document("html"), svg);
  }

  private Document document(String ending) {
    List<Document.Block> blocks = new ArrayList<>();
    List<Assessment> shown = DesignReport.shown(outcome);
    if (shown.isEmpty()) {
      blocks.add(new Document.Paragraph(DesignReport.NOTHING_FOUND, true));
    } else {
      Verdict verdict = new Verdict(spec, shown.get(0), "Woofer 1");
      blocks.add(
          new Document.Paragraph(
              verdict.shape() + " " + verdict.output() + verdict.constraints(), true));
      verdict.remedies().forEach(remedy -> blocks.add(new Document.Paragraph(remedy)));
      blocks.add(new Document.Heading(2, "Ranking"));
      blocks.add(ranking(shown));
      for (int i = 0; i < shown.size(); i++) {
        blocks.add(
            new Document.Link(
                DesignReport.folder(i + 1) + "sheet." + ending,
                "Specification sheet of " + SpecificationSheet.title(shown.get(i), i + 1)));
        blocks.add(
            new Document.Link(
                DesignReport.makerFile(i + 1, ".html"),
                "Brief for the maker of "
                    + SpecificationSheet.title(shown.get(i), i + 1)
                    + " (also as PDF, workbook, CSV and JSON beside it)"));
      }
      blocks.add(new Document.Heading(2, "The best woofer in pictures"));
      for (Charts.Kind kind : Charts.Kind.values()) {
        blocks.add(
            new Document.Figure(
                DesignReport.folder(1) + kind.fileStem() + ".svg",
                SpecificationSheet.caption(kind)));
      }
    }
    blocks.add(new Document.Heading(2, "The search"));
    blocks.add(
        new Document.Paragraph(
            outcome.evaluations()
                + " woofers were scored in "
                + outcome.generations()
                + " generations. It stopped because of this: "
                + outcome.stopReason()
                + "."));
    if (!shown.isEmpty()) {
      blocks.add(
          new Document.Paragraph(
              "Each sheet says what the model leaves out and which cautions apply. A simulation does"
                  + " not replace a measured sample."));
    }
    return new Document(
        Lettering.clean(spec.title()) + ": ranked woofers",
        blocks,
        SpecificationSheet.foot(spec, run));
  }

  private Document.Table ranking(List<Assessment> shown) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      Assessment woofer = shown.get(i);
      Verdict verdict = new Verdict(spec, woofer, "Woofer " + (i + 1));
      StackFigures margin = verdict.leastMargin().figures();
      rows.add(
          List.of(
              SpecificationSheet.title(woofer, i + 1),
              Figures.hertz(woofer.freeAir().resonanceHz()),
              Figures.number(woofer.freeAir().totalQ()),
              Figures.grams(woofer.woofer().bareMassKg()),
              Figures.millimetres(woofer.woofer().travelM()),
              Figures.decibels(verdict.worstShape().figures().rmsDeviationDb()),
              Figures.signedDecibels(margin.outputMarginDb()) + ", " + margin.outputLimit().word(),
              Figures.decibels(verdict.mostCorrection().figures().correctionDb()),
              Figures.ohms(verdict.leastLoad().figures().leastLoadOhm()),
              Figures.grams(woofer.budget().remainderKg()),
              woofer.grade().feasible() ? "met" : "broken"));
    }
    return new Document.Table(
        List.of(
            "Woofer",
            "fs, free air",
            "Qts, free air",
            "Bare mass",
            "Travel",
            "Level deviation, rms",
            "Loudest-level margin",
            "Correction needed",
            "Least load",
            "Mass left for the cone",
            "Constraints"),
        rows,
        List.of(false, true, true, true, true, true, true, true, true, true, false));
  }
}
