package nullplane.report;

import java.util.List;
import java.util.stream.Collectors;

/** Writes a page as Markdown (CommonMark with tables). */
final class MarkdownWriter {
  private static final String SPECIAL = "\\`*_[]|#~$!";

  private MarkdownWriter() {}

  static String write(Document document) {
    StringBuilder text = new StringBuilder();
    text.append("# ").append(escaped(document.title())).append("\n\n");
    for (Document.Block block : document.blocks()) {
      text.append(block(block)).append('\n');
    }
    return text.append("---\n\n").append(escaped(document.foot())).append('\n').toString();
  }

  private static String block(Document.Block block) {
    if (block instanceof Document.Heading heading) {
      return "#".repeat(heading.level()) + " " + escaped(heading.text()) + "\n";
    }
    if (block instanceof Document.Paragraph paragraph) {
      String text = atLineStart(paragraph.text());
      return (paragraph.verdict() ? "**" + text + "**" : text) + "\n";
    }
    if (block instanceof Document.Bullets bullets) {
      return bullets.items().stream()
          .map(item -> "- " + atLineStart(item) + "\n")
          .collect(Collectors.joining());
    }
    if (block instanceof Document.Figure figure) {
      return "![" + escaped(figure.caption()) + "](" + figure.path() + ")\n";
    }
    if (block instanceof Document.Link link) {
      return "[" + escaped(link.text()) + "](" + link.path() + ")\n";
    }
    return table((Document.Table) block);
  }

  private static String table(Document.Table table) {
    StringBuilder text = new StringBuilder(row(table.head()));
    text.append('|');
    for (boolean numeric : table.numeric()) {
      text.append(numeric ? " ---: |" : " --- |");
    }
    text.append('\n');
    table.rows().forEach(row -> text.append(row(row)));
    return text.toString();
  }

  private static String row(List<String> cells) {
    return cells.stream()
        .map(MarkdownWriter::escaped)
        .collect(Collectors.joining(" | ", "| ", " |\n"));
  }

  /** Returns the text so that Markdown shows it as it is, on one line. */
  static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    Lettering.clean(text)
        .chars()
        .forEach(
            c -> {
              switch (c) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                default -> safe.append(SPECIAL.indexOf(c) >= 0 ? "\\" : "").append((char) c);
              }
            });
    return safe.toString();
  }

  /** Returns the text for the start of a line: nothing starts a list, a rule or a heading. */
  private static String atLineStart(String text) {
    return escaped(text)
        .replaceFirst("^([-+=])", "\\\\$1")
        .replaceFirst("^(\\d+)([.)]) ", "$1\\\\$2 ");
  }
}
