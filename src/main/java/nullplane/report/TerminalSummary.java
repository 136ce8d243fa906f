package nullplane.report;

import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.search.SearchOutcome;

/** A run at a glance, as plain text of at most 80 columns. */
public final class TerminalSummary {
  /** The most characters in a line. */
  public static final int WIDTH = TerminalPage.WIDTH;

  /** Characters of the network's column: two parts. */
  private static final int NETWORK_WIDTH = 19;

  private final DesignSpec spec;
  private final SearchOutcome outcome;
  private final RunInfo run;
  private final String folder;
  private final TerminalPage page;

  private TerminalSummary(
      DesignSpec spec, SearchOutcome outcome, RunInfo run, String folder, boolean colour) {
    this.spec = spec;
    this.outcome = outcome;
    this.run = run;
    this.folder = folder;
    this.page = new TerminalPage(colour);
  }

  /**
   * Returns the summary, each line ended by a line feed.
   *
   * @param spec the spec
   * @param outcome what was found
   * @param run what tells two runs apart
   * @param folder where the files went; the last line, which may be wider than 80 columns so that
   *     the path can be copied whole
   * @param colour whether to set heads off by terminal codes
   */
  public static String of(
      DesignSpec spec, SearchOutcome outcome, RunInfo run, String folder, boolean colour) {
    return new TerminalSummary(spec, outcome, run, folder, colour).text();
  }

  private String text() {
    List<Assessment> shown = DesignReport.shown(outcome);
    if (shown.isEmpty()) {
      page.paragraph(DesignReport.NOTHING_FOUND);
      page.blank();
    } else {
      relax();
      best(shown.get(0));
      ranking(shown);
      stacks(shown.get(0));
      page.cautions(new Cautions(spec, shown.get(0)));
    }
    page.paragraph(
        "Scored "
            + outcome.evaluations()
            + " woofers in "
            + outcome.generations()
            + " generations: "
            + Lettering.clean(outcome.stopReason())
            + ".");
    page.paragraph(PlainTable.shortened(Lettering.clean(spec.title()), 30) + ": " + run.oneLine());
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private void relax() {
    Relaxation relaxation = new Relaxation(spec, outcome);
    relaxation.verdict().ifPresent(page::paragraph);
    if (!relaxation.ways().isEmpty()) {
      page.paragraph("What to relax:");
      page.list(relaxation.ways());
    }
    if (relaxation.verdict().isPresent()) {
      page.blank();
    }
  }

  private void best(Assessment best) {
    String title = "Woofer 1";
    Verdict verdict = new Verdict(spec, best, title);
    page.head(PlainTable.shortened(SpecificationSheet.title(best, 1) + ", best of the run", WIDTH));
    for (List<String> figure : verdict.deciding()) {
      String start = String.format("  %-22s  %9s  ", figure.get(0), figure.get(1));
      List<String> where = PlainTable.wrapped(figure.get(2), WIDTH - start.length(), 0);
      page.line(start + where.get(0));
      where.stream().skip(1).forEach(more -> page.line(" ".repeat(start.length()) + more));
    }
    page.blank();
    page.paragraph(verdict.shape());
    page.paragraph(verdict.output());
    if (new Relaxation(spec, outcome).ways().isEmpty()) {
      verdict.remedies().forEach(page::paragraph);
    }
    best.violations().forEach(broken -> page.paragraph("Constraint broken: " + broken));
    page.blank();
  }

  private void ranking(List<Assessment> shown) {
    page.head("Ranked woofers; fs and Qts in free air, worst stack counted");
    PlainTable table =
        new PlainTable(
            List.of(
                List.of(
                    "", "fs", "Qts", "bare", "travel", "level", "margin", "limit", "fix", "load"),
                List.of("", "Hz", "", "g", "mm", "rms dB", "dB", "", "dB", "ohm")));
    for (int i = 0; i < shown.size(); i++) {
      Assessment woofer = shown.get(i);
      Verdict verdict = new Verdict(spec, woofer, "Woofer " + (i + 1));
      StackFigures margin = verdict.leastMargin().figures();
      table.add(
          List.of(
              "Woofer " + (i + 1) + (woofer.grade().feasible() ? "" : " *"),
              Figures.number(woofer.freeAir().resonanceHz()),
              Figures.number(woofer.freeAir().totalQ()),
              Figures.number(woofer.woofer().bareMassKg() * 1e3),
              Figures.number(woofer.woofer().travelM() * 1e3),
              Figures.decibelNumber(verdict.worstShape().figures().rmsDeviationDb()),
              Figures.signedDecibelNumber(margin.outputMarginDb()),
              margin.outputLimit().word(),
              Figures.decibelNumber(verdict.mostCorrection().figures().correctionDb()),
              Figures.number(verdict.leastLoad().figures().leastLoadOhm())));
    }
    page.table(table);
    if (shown.stream().anyMatch(woofer -> !woofer.grade().feasible())) {
      page.line("* breaks a constraint; its sheet says which");
    }
    page.blank();
  }

  private void stacks(Assessment best) {
    page.head("Woofer 1 in each stack; fix: correction needed without its network");
    PlainTable table =
        new PlainTable(
            List.of(
                List.of(
                    "Stack", "level", "mean", "outside", "margin", "limit", "load", "network",
                    "fix"),
                List.of("", "rms dB", "dB", "dB", "dB", "", "ohm", "", "dB")));
    for (StackAssessment stack : best.stacks()) {
      StackFigures figures = stack.figures();
      table.add(
          List.of(
              Verdict.name(stack),
              Figures.decibelNumber(figures.rmsDeviationDb()),
              Figures.signedDecibelNumber(figures.meanDeviationDb()),
              Figures.decibelNumber(figures.worstExcessDb()),
              Figures.signedDecibelNumber(figures.outputMarginDb()),
              figures.outputLimit().word(),
              Figures.number(figures.leastLoadOhm()),
              NetworkWords.within(stack.network(), NETWORK_WIDTH),
              Figures.decibelNumber(figures.correctionDb())));
    }
    page.table(table);
    for (StackAssessment stack : best.stacks()) {
      if (NetworkWords.shortly(stack.network()).length() > NETWORK_WIDTH) {
        page.paragraph(Verdict.name(stack) + ": " + NetworkWords.fully(stack.network()));
      }
    }
    page.blank();
  }
}
