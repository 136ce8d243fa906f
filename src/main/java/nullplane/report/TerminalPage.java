package nullplane.report;

import java.util.ArrayList;
import java.util.List;

/** Plain text as it grows on a terminal of 80 columns: heads, paragraphs, tables, lists. */
final class TerminalPage {
  /** Columns of a line. */
  static final int WIDTH = 80;

  private static final String BOLD = "\u001b[1m";
  private static final String PLAIN = "\u001b[0m";

  private final List<String> lines = new ArrayList<>();
  private final boolean colour;

  /**
   * @param colour whether to set heads off by terminal codes
   */
  TerminalPage(boolean colour) {
    this.colour = colour;
  }

  void head(String text) {
    lines.add(strong(text));
  }

  void paragraph(String text) {
    lines.addAll(PlainTable.wrapped(Lettering.clean(text), WIDTH, 0));
  }

  void table(PlainTable table) {
    List<String> rows = table.lines(WIDTH);
    for (int i = 0; i < rows.size(); i++) {
      lines.add(i < table.headRows() ? strong(rows.get(i)) : rows.get(i));
    }
  }

  void list(List<String> items) {
    for (String item : items) {
      List<String> wrapped = PlainTable.wrapped(Lettering.clean(item), WIDTH - 2, 0);
      for (int i = 0; i < wrapped.size(); i++) {
        lines.add((i == 0 ? "- " : "  ") + wrapped.get(i));
      }
    }
  }

  /** Adds the cautions of a woofer under their head. */
  void cautions(Cautions cautions) {
    head("Cautions");
    list(cautions.sentences());
    blank();
  }

  void line(String text) {
    lines.add(text);
  }

  void blank() {
    lines.add("");
  }

  /** Returns the text, each line ended by a line feed. */
  String text() {
    return String.join("\n", lines) + "\n";
  }

  private String strong(String text) {
    return colour ? BOLD + text + PLAIN : text;
  }
}
