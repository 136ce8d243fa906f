package nullplane.report;

import nullplane.judging.Comparison;
import nullplane.scoring.DesignSpec;

/** Two woofers side by side at a glance, as plain text of at most 80 columns. */
public final class ComparisonSummary {
  private ComparisonSummary() {}

  /**
   * Returns the summary, each line ended by a line feed.
   *
   * @param spec the spec
   * @param comparison the two woofers
   * @param run what tells two runs apart; its seed is not shown
   * @param folder where the files went
   * @param colour whether to set heads off by terminal codes
   */
  public static String of(
      DesignSpec spec, Comparison comparison, RunInfo run, String folder, boolean colour) {
    TerminalPage page = new TerminalPage(colour);
    ComparisonWords words = new ComparisonWords(spec, comparison);
    page.paragraph(words.verdict());
    page.blank();
    page.head("The two woofers, in free air");
    page.table(plain(words.parameters()));
    page.blank();
    for (int s = 0; s < spec.stacks().size(); s++) {
      page.head(
          "Stack "
              + Lettering.clean(spec.stacks().get(s).name())
              + ", without any network: what each parameter adds");
      page.table(plain(words.shares(s)));
      page.blank();
    }
    page.head("What each parameter adds to the score's cost");
    page.table(plain(words.scoreShares()));
    page.blank();
    page.cautions(new Cautions(spec, comparison.first()));
    page.paragraph(
        PlainTable.shortened(Lettering.clean(spec.title()), 30) + ": " + PanelReport.oneLine(run));
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private static PlainTable plain(Document.Table table) {
    PlainTable text = new PlainTable(java.util.List.of(table.head()));
    table.rows().forEach(text::add);
    return text;
  }
}
