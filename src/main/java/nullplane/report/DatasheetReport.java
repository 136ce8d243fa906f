package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import nullplane.driver.Datasheet;

/** One woofer's data for people: terminal text of 80 columns, and a page. */
public final class DatasheetReport {
  private static final String WHAT_IT_IS =
      "Computed from the stated figures; it does not replace a measured sample.";

  private final Datasheet sheet;
  private final DatasheetTexts texts;

  private DatasheetReport(Datasheet sheet) {
    this.sheet = sheet;
    this.texts = new DatasheetTexts(sheet);
  }

  /**
   * Returns the terminal text, each line ended by a line feed: the verdict first, then
   * contradictions, what is missing, the figures, the mountings.
   *
   * @param sheet the data, with the mountings wanted
   * @param run what tells two runs apart
   * @param notes sentences about the panel's rows
   * @param folder where the files went; the last line, which may be wider than 80 columns
   * @param colour whether to set heads off by terminal codes
   */
  public static String terminal(
      Datasheet sheet, RunInfo run, List<String> notes, String folder, boolean colour) {
    return new DatasheetReport(sheet).terminal(run, notes, folder, new TerminalPage(colour));
  }

  /**
   * Returns the page as Markdown and as HTML, by file name.
   *
   * @param sheet the data, with the mountings wanted
   * @param run what tells two prints apart
   * @param notes sentences about the panel's rows
   */
  public static SortedMap<String, byte[]> pages(Datasheet sheet, RunInfo run, List<String> notes) {
    Document page = new DatasheetReport(sheet).page(run, notes);
    SortedMap<String, byte[]> pages = new TreeMap<>();
    pages.put("index.md", DesignReport.utf8(MarkdownWriter.write(page)));
    pages.put(
        "index.html",
        DesignReport.utf8(
            HtmlWriter.write(
                page,
                path -> {
                  throw new IllegalStateException("no picture " + path);
                })));
    return Collections.unmodifiableSortedMap(pages);
  }

  private String terminal(RunInfo run, List<String> notes, String folder, TerminalPage page) {
    page.head(PlainTable.shortened(Lettering.clean(sheet.name()), TerminalPage.WIDTH));
    page.paragraph(texts.verdict());
    page.blank();
    section(page, "Contradictions", texts.contradictions());
    section(page, "Missing, the easiest to measure first", texts.gaps());
    page.head("All figures");
    PlainTable figures = new PlainTable(List.of(List.of("", "value", "unit", "")), true);
    for (List<String> row : texts.figures()) {
      String label = String.format("%-10s", row.get(0)) + row.get(1);
      figures.add(List.of(label, row.get(2), row.get(3), row.get(4)));
    }
    page.table(figures);
    page.paragraph(texts.heldFor());
    page.blank();
    if (!texts.mountings().isEmpty()) {
      page.head("The same woofer in each mounting");
      PlainTable mountings =
          new PlainTable(
              List.of(
                  List.of("", "air", "Mms", "fs", "Qms", "Qes", "Qts"),
                  List.of("", "g", "g", "Hz", "", "", "")));
      texts.mountings().forEach(mountings::add);
      page.table(mountings);
      notes.forEach(page::paragraph);
      page.blank();
    }
    page.paragraph(WHAT_IT_IS);
    page.paragraph(foot(run));
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  private static void section(TerminalPage page, String head, List<String> sentences) {
    if (!sentences.isEmpty()) {
      page.head(head);
      page.list(sentences);
      page.blank();
    }
  }

  private static String foot(RunInfo run) {
    return "Woofer file " + run.shortDigest() + ", version " + run.version();
  }

  private Document page(RunInfo run, List<String> notes) {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(new Document.Paragraph(texts.verdict(), true));
    bullets(blocks, "Contradictions", texts.contradictions());
    bullets(blocks, "Missing, the easiest to measure first", texts.gaps());
    blocks.add(new Document.Heading(2, "All figures"));
    blocks.add(
        new Document.Table(
            List.of("Symbol", "Figure", "Value", "Unit", "From"),
            texts.figures().stream().map(DatasheetReport::filled).toList(),
            List.of(false, false, true, false, false)));
    blocks.add(new Document.Paragraph(texts.heldFor()));
    if (!texts.mountings().isEmpty()) {
      blocks.add(new Document.Heading(2, "The same woofer in each mounting"));
      blocks.add(
          new Document.Table(
              List.of("Mounting", "Air (g)", "Mms (g)", "fs (Hz)", "Qms", "Qes", "Qts"),
              texts.mountings(),
              List.of(false, true, true, true, true, true, true)));
      notes.forEach(note -> blocks.add(new Document.Paragraph(note)));
    }
    bullets(blocks, "How the derived figures follow", texts.formulas());
    blocks.add(new Document.Paragraph(WHAT_IT_IS));
    return new Document(sheet.name(), blocks, foot(run));
  }

  /** Returns a row whose empty cells say that there is nothing to say, not that it is unknown. */
  private static List<String> filled(List<String> row) {
    return row.stream().map(cell -> cell.isEmpty() ? "-" : cell).toList();
  }

  private static void bullets(List<Document.Block> blocks, String head, List<String> sentences) {
    if (!sentences.isEmpty()) {
      blocks.add(new Document.Heading(2, head));
      blocks.add(new Document.Bullets(sentences));
    }
  }
}
