package nullplane.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.ProjectRound;
import nullplane.sample.ProjectStory;

/** The rounds of a project for people: a page, terminal text, and the picture of its history. */
public final class RoundsReport {
  private static final String HISTORY = "history";
  private static final String CAPTION =
      "Each value by round. The green band is the brief's window, the dotted line its target. Dots"
          + " are samples with their 95 % intervals, rings what the round before was to give, empty"
          + " squares golden samples.";
  private static final String MARKS =
      "Means of the samples; x: one lies outside its window, ?: one cannot be told.";
  private static final int ROUNDS_ON_TERMINAL = 4;
  private static final int ROUNDS_ON_PAGE = 8;

  private RoundsReport() {}

  /**
   * Returns what makes each file, by its relative path.
   *
   * @param story the rounds, one or more
   * @param run what tells two prints apart
   */
  public static SortedMap<String, Supplier<byte[]>> parts(ProjectStory story, RunInfo run) {
    SortedMap<String, Supplier<byte[]>> parts = new TreeMap<>();
    picture(parts, story);
    Document page = page(story, run);
    parts.put("index.md", () -> DesignReport.utf8(MarkdownWriter.write(page)));
    parts.put(
        "index.html",
        () -> DesignReport.utf8(HtmlWriter.write(page, DesignReport.pictures(parts, ""))));
    return Collections.unmodifiableSortedMap(parts);
  }

  /**
   * Returns the terminal text, each line ended by a line feed.
   *
   * @param story the rounds, one or more
   * @param run what tells two runs apart
   * @param folder where the files went; the last line, which may be wider than 80 columns
   * @param colour whether to set heads off by terminal codes
   */
  public static String terminal(ProjectStory story, RunInfo run, String folder, boolean colour) {
    TerminalPage page = new TerminalPage(colour);
    page.paragraph(new RoundTexts(story).verdict());
    page.blank();
    terminal(story, page);
    page.paragraph(foot(story, run));
    page.line("Files: " + Lettering.clean(folder));
    return page.text();
  }

  /** Adds the tables to a page of the terminal. */
  static void terminal(ProjectStory story, TerminalPage page) {
    RoundTexts texts = new RoundTexts(story);
    List<ProjectRound> rounds = texts.lastRounds(ROUNDS_ON_TERMINAL);
    page.head("The rounds so far");
    table(page, historyHead(rounds), texts.history(rounds));
    page.paragraph(MARKS);
    page.blank();
    if (!texts.moves().isEmpty()) {
      page.head("What was asked, and what came");
      table(page, RoundTexts.MOVES_HEAD, texts.moves());
      page.blank();
    }
    if (!texts.gains().isEmpty()) {
      page.head("How this maker answers");
      table(page, RoundTexts.GAINS_HEAD, texts.gains());
      page.paragraph(RoundTexts.GAINS_SAID);
      page.blank();
    }
    if (!texts.drifts().isEmpty()) {
      page.head("Golden samples against their own earlier fits");
      table(page, RoundTexts.DRIFT_HEAD, texts.drifts());
      page.paragraph(RoundTexts.DRIFT_SAID);
      page.blank();
    }
  }

  private static void table(TerminalPage page, List<String> head, List<List<String>> rows) {
    PlainTable table = new PlainTable(List.of(head));
    rows.forEach(table::add);
    page.table(table);
  }

  private static List<String> historyHead(List<ProjectRound> rounds) {
    List<String> head = new ArrayList<>(List.of("", "unit", "window"));
    rounds.forEach(round -> head.add("round " + round.number()));
    return head;
  }

  /** Adds the picture of the history, as PNG and as SVG. */
  static void picture(SortedMap<String, Supplier<byte[]>> parts, ProjectStory story) {
    DesignReport.picture(
        parts, HISTORY, () -> new RoundHistoryChart(story.history(), name(story)).picture());
  }

  /** Adds what the rounds teach to a page; the picture must be beside it. */
  static void blocks(ProjectStory story, List<Document.Block> blocks) {
    RoundTexts texts = new RoundTexts(story);
    blocks.add(new Document.Heading(2, "The rounds so far"));
    blocks.add(new Document.Figure(HISTORY + ".svg", CAPTION));
    List<ProjectRound> rounds = texts.lastRounds(ROUNDS_ON_PAGE);
    List<String> head = historyHead(rounds);
    head.set(0, "Value");
    head.set(1, "Unit");
    head.set(2, "Window");
    blocks.add(table(head, texts.history(rounds), 1));
    blocks.add(new Document.Paragraph(MARKS));
    if (!texts.moves().isEmpty()) {
      blocks.add(new Document.Heading(2, "What was asked, and what came"));
      blocks.add(table(RoundTexts.MOVES_HEAD, texts.moves(), 2));
    }
    if (!texts.gains().isEmpty()) {
      blocks.add(new Document.Heading(2, "How this maker answers"));
      blocks.add(table(RoundTexts.GAINS_HEAD, texts.gains(), 1));
      blocks.add(new Document.Paragraph(RoundTexts.GAINS_SAID));
    }
    if (!texts.drifts().isEmpty()) {
      blocks.add(new Document.Heading(2, "Golden samples against their own earlier fits"));
      List<String> drift = new ArrayList<>(RoundTexts.DRIFT_HEAD);
      drift.set(drift.size() - 1, "verdict");
      blocks.add(table(drift, texts.drifts(), 2));
      blocks.add(new Document.Paragraph(RoundTexts.DRIFT_SAID));
    }
  }

  private static Document.Table table(List<String> head, List<List<String>> rows, int wordColumns) {
    List<Boolean> numeric = new ArrayList<>();
    for (int c = 0; c < head.size(); c++) {
      numeric.add(c >= wordColumns);
    }
    return new Document.Table(head, rows, numeric);
  }

  private static Document page(ProjectStory story, RunInfo run) {
    List<Document.Block> blocks = new ArrayList<>();
    blocks.add(new Document.Paragraph(new RoundTexts(story).verdict(), true));
    blocks(story, blocks);
    List<List<String>> rounds = new ArrayList<>();
    for (ProjectRound round : story.history().rounds()) {
      rounds.add(
          List.of(
              Integer.toString(round.number()),
              round.stamp().time().toString(),
              Integer.toString(round.samples().size()),
              round.end().map(end -> end.decision().words()).orElse("unfinished"),
              shortened(round.stamp().measurementsDigest()),
              shortened(round.stamp().briefDigest())));
    }
    blocks.add(new Document.Heading(2, "Where it comes from"));
    blocks.add(
        table(
            List.of("Round", "Recorded", "Samples", "Decision", "Measurements", "Brief"),
            rounds,
            6));
    return new Document("Rounds of " + name(story), blocks, foot(story, run));
  }

  private static String shortened(String digest) {
    return Lettering.clean(digest.substring(0, Math.min(12, digest.length())));
  }

  private static String name(ProjectStory story) {
    return story.history().brief().map(BriefEntry::name).map(Lettering::clean).orElse("a woofer");
  }

  private static String foot(ProjectStory story, RunInfo run) {
    return story.history().brief().map(BriefEntry::title).map(Lettering::clean).orElse("Rounds")
        + ", "
        + name(story)
        + "; ledger "
        + run.shortDigest()
        + "; version "
        + Lettering.clean(run.version());
  }
}
