package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.search.ConvergencePoint;
import nullplane.search.FrontObjective;
import nullplane.search.SearchOutcome;

/** The first page of a run: the ranking, the best woofer's pictures, the way to the sheets. */
public final class IndexPage {
  /** What counts as the last value of the best cost (dB). */
  private static final double NEAR_BEST_DB = 0.01;

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
      Relaxation relaxation = new Relaxation(spec, outcome);
      relaxation.verdict().ifPresent(text -> blocks.add(new Document.Paragraph(text, true)));
      if (!relaxation.ways().isEmpty()) {
        blocks.add(new Document.Heading(2, "What to relax"));
        blocks.add(new Document.Bullets(relaxation.ways()));
        blocks.add(new Document.Heading(2, "The best of what was found"));
      }
      Verdict verdict = new Verdict(spec, shown.get(0), "Woofer 1");
      blocks.add(
          new Document.Paragraph(
              verdict.shape() + " " + verdict.output() + verdict.constraints(), true));
      if (relaxation.ways().isEmpty()) {
        verdict.remedies().forEach(remedy -> blocks.add(new Document.Paragraph(remedy)));
      }
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
      price(blocks, shown);
      front(blocks);
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
                + "."
                + progress()));
    if (!outcome.history().isEmpty()) {
      blocks.add(
          new Document.Figure(
              ConvergenceChart.STEM + ".svg",
              "Best cost so far, and below it the volume between the front and the worst values"
                  + " still worth having, as a share of its last value. A search that ends on a long"
                  + " level stretch is done; one that still falls wants more evaluations."));
    }
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

  /** Returns when the search found what it found, in a sentence; empty if it found nothing. */
  private String progress() {
    List<ConvergencePoint> feasible =
        outcome.history().stream().filter(point -> point.violation() == 0).toList();
    if (feasible.isEmpty()) {
      return "";
    }
    ConvergencePoint last = feasible.get(feasible.size() - 1);
    ConvergencePoint near =
        feasible.stream()
            .filter(point -> point.bestCostDb() <= last.bestCostDb() + NEAR_BEST_DB)
            .findFirst()
            .orElse(last);
    ConvergencePoint earlier =
        feasible.stream()
            .filter(point -> point.evaluations() >= 0.75 * last.evaluations())
            .findFirst()
            .orElse(last);
    return " While it evolved, the best cost came within "
        + Figures.decibels(NEAR_BEST_DB)
        + " of its last value, "
        + Figures.decibels(last.bestCostDb())
        + ", after "
        + near.evaluations()
        + " woofers"
        + (earlier.hypervolume() > 0
            ? "; over the last quarter the front's hypervolume grew by "
                + Figures.percent(last.hypervolume() / earlier.hypervolume() - 1)
            : "")
        + ".";
  }

  /** What correction each ranked woofer needs, so that they can be held side by side. */
  private void price(List<Document.Block> blocks, List<Assessment> shown) {
    blocks.add(new Document.Heading(2, "The price of correction"));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      for (StackAssessment stack : shown.get(i).stacks()) {
        rows.add(
            List.of(
                "Woofer " + (i + 1),
                Verdict.name(stack),
                Figures.decibels(stack.figures().correctionDb()),
                Figures.decibels(stack.figures().networkBendDb()),
                Figures.decibels(stack.figures().levelLossDb()),
                NetworkWords.shortly(stack.network()),
                Integer.toString(stack.network().partCount())));
      }
    }
    blocks.add(
        new Document.Table(
            List.of(
                "Woofer",
                "Stack",
                "Correction needed",
                "Bend by the network",
                "Level lost in it",
                "Network",
                "Parts"),
            rows,
            List.of(false, false, true, true, true, false, true)));
    blocks.add(
        new Document.Paragraph(
            "Correction needed is what the bare stack's level strays over the band; copper and"
                + " capacitors stand in each sheet, with the parts to swap between stacks."));
  }

  private void front(List<Document.Block> blocks) {
    if (outcome.front().isEmpty()) {
      return;
    }
    blocks.add(new Document.Heading(2, "What better shape costs"));
    blocks.add(
        new Document.Paragraph(
            "Each dot is one of "
                + outcome.front().size()
                + " woofers with their networks none of which is better than another in everything;"
                + " front.csv lists them. Shape, correction and material are weighted by the"
                + " priorities, as in the cost; the worst stack counts. Yield is the share of a"
                + " production run, without windows, that stays in the corridor in every stack. The numbers"
                + " are the ranked woofers, which the priorities chose. Below and to the better side"
                + " of the line nothing was found in these two respects: where it is steep, a little"
                + " of one buys much of the other. A dot far from the line in one picture lies near"
                + " it in another."));
    for (FrontObjective other : TradeChart.others()) {
      blocks.add(
          new Document.Figure(
              TradeChart.stem(other) + ".svg", "Shape against " + other.word() + "."));
    }
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
