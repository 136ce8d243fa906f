package nullplane.report;

import java.util.List;
import nullplane.faults.InputFault;
import nullplane.judging.Finding;
import nullplane.judging.Judgement;
import nullplane.judging.JudgingOutcome;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;

/** Judged woofers at a glance, as plain text of at most 80 columns. */
public final class JudgingSummary {
  private static final int MOST_ROWS = 20;
  private static final int MOST_TOLD = 3;

  private JudgingSummary() {}

  /**
   * Returns the summary, each line ended by a line feed.
   *
   * @param spec the spec
   * @param outcome the ranking
   * @param refused what was wrong with rows and files that could not be judged
   * @param run what tells two runs apart
   * @param folder where the files went
   * @param colour whether to set heads off by terminal codes
   */
  public static String of(
      DesignSpec spec,
      JudgingOutcome outcome,
      List<InputFault> refused,
      RunInfo run,
      String folder,
      boolean colour) {
    TerminalPage page = new TerminalPage(colour);
    page.paragraph(JudgingReport.verdict(outcome));
    page.blank();
    if (!outcome.ranked().isEmpty()) {
      page.head("Judged woofers; fs and Qts in free air, worst stack counted");
      page.table(table(spec, outcome));
      if (outcome.ranked().size() > MOST_ROWS) {
        page.line((outcome.ranked().size() - MOST_ROWS) + " more stand in the files.");
      }
      if (outcome.ranked().stream().anyMatch(w -> !w.assessment().grade().feasible())) {
        page.line("* breaks a constraint");
      }
      page.blank();
      outcome.ranked().stream().limit(MOST_TOLD).forEach(woofer -> tell(page, woofer));
    }
    for (JudgingOutcome.Misfit misfit : outcome.misfits().stream().limit(MOST_ROWS).toList()) {
      page.paragraph("Not judged: " + misfit.name() + ": " + misfit.reason());
    }
    if (!refused.isEmpty()) {
      page.paragraph(
          "Not judged: "
              + refused.size()
              + (refused.size() == 1 ? " fault" : " faults")
              + " in rows or files, told on standard error.");
    }
    outcome.ranked().stream()
        .limit(1)
        .forEach(first -> page.cautions(new Cautions(spec, first.assessment())));
    page.paragraph(PlainTable.shortened(Lettering.clean(spec.title()), 30) + ": " + run.oneLine());
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private static PlainTable table(DesignSpec spec, JudgingOutcome outcome) {
    PlainTable table =
        new PlainTable(
            List.of(
                List.of("", "cost", "fs", "Qts", "bare", "travel", "level", "margin", "fix"),
                List.of("", "dB", "Hz", "", "g", "mm", "rms dB", "dB", "dB")));
    outcome.best().ifPresent(best -> table.add(row(spec, "(best buildable)", best)));
    for (Judgement judgement : outcome.ranked().stream().limit(MOST_ROWS).toList()) {
      Assessment woofer = judgement.assessment();
      table.add(
          row(
              spec,
              Lettering.clean(woofer.woofer().name()) + (woofer.grade().feasible() ? "" : " *"),
              woofer));
    }
    return table;
  }

  private static List<String> row(DesignSpec spec, String name, Assessment woofer) {
    Verdict verdict = new Verdict(spec, woofer, name);
    return List.of(
        name,
        Figures.decibelNumber(woofer.grade().costDb()),
        Figures.number(woofer.freeAir().resonanceHz()),
        Figures.number(woofer.freeAir().totalQ()),
        Figures.number(woofer.woofer().bareMassKg() * 1e3),
        Figures.number(woofer.woofer().travelM() * 1e3),
        Figures.decibelNumber(verdict.worstShape().figures().rmsDeviationDb()),
        Figures.signedDecibelNumber(verdict.leastMargin().figures().outputMarginDb()),
        Figures.decibelNumber(verdict.mostCorrection().figures().correctionDb()));
  }

  private static void tell(TerminalPage page, Judgement judgement) {
    page.head(Lettering.clean(judgement.assessment().woofer().name()));
    if (judgement.findings().isEmpty()) {
      page.paragraph("It lacks nothing that was asked for.");
    }
    page.list(judgement.findings().stream().map(Finding::sentence).toList());
    page.blank();
  }
}
