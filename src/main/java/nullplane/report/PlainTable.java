package nullplane.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A table in plain text: columns aligned by blanks, no boxes. The first column is flush left, the
 * others flush right, except for units and remarks behind a number; the head may have a second line
 * for units.
 */
final class PlainTable {
  private static final String GAP = "  ";

  private final List<List<String>> rows = new ArrayList<>();
  private final int headRows;
  private final boolean remarks;

  PlainTable(List<List<String>> head) {
    this(head, false);
  }

  /**
   * @param head rows of the head
   * @param remarks whether all columns behind the second are words, flush left and left empty where
   *     there is nothing to say
   */
  PlainTable(List<List<String>> head, boolean remarks) {
    rows.addAll(head);
    headRows = head.size();
    this.remarks = remarks;
  }

  void add(List<String> row) {
    rows.add(
        remarks
            ? List.copyOf(row)
            : row.stream().map(cell -> cell.isBlank() ? "-" : cell).toList());
  }

  /** Returns the lines, no wider than a number of characters; the first column gives way. */
  List<String> lines(int width) {
    int columns = rows.get(0).size();
    int[] widths = new int[columns];
    int sum = 0;
    for (int c = 0; c < columns; c++) {
      int column = c;
      widths[c] = rows.stream().mapToInt(row -> length(row.get(column))).max().orElse(0);
      sum += widths[c] + (c > 0 ? GAP.length() : 0);
    }
    widths[0] = Math.max(4, widths[0] - Math.max(0, sum - width));
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < columns; c++) {
        String cell = c == 0 ? shortened(row.get(c), widths[0]) : row.get(c);
        String pad = " ".repeat(Math.max(0, widths[c] - length(cell)));
        line.append(c == 0 ? "" : GAP);
        line.append(c == 0 || (remarks && c > 1) ? cell + pad : pad + cell);
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  int headRows() {
    return headRows;
  }

  /** Returns the text, shortened to a number of characters. */
  static String shortened(String text, int most) {
    if (length(text) <= most) {
      return text;
    }
    int keep = Math.max(1, most - 3);
    return text.substring(0, text.offsetByCodePoints(0, keep)) + "...".substring(0, most - keep);
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }

  /**
   * Returns a text broken into lines.
   *
   * @param text the text
   * @param width most characters in a line
   * @param indent blanks before the second and further lines
   */
  static List<String> wrapped(String text, int width, int indent) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+", -1)) {
      String rest = word;
      if (line.length() > 0 && length(line + " " + rest) > width && !line.toString().isBlank()) {
        lines.add(line.toString());
        line = new StringBuilder(" ".repeat(indent));
      } else if (line.length() > 0 && !line.toString().isBlank()) {
        line.append(' ');
      }
      while (length(line + rest) > width) {
        int room = width - length(line.toString());
        int cut = rest.offsetByCodePoints(0, room);
        lines.add(line + rest.substring(0, cut));
        rest = rest.substring(cut);
        line = new StringBuilder(" ".repeat(indent));
      }
      line.append(rest);
    }
    lines.add(line.toString());
    return lines;
  }
}
