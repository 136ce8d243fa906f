package nullplane.io;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;

/**
 * CSV in the making. Source: RFC 4180 (commas, quotes doubled, lines ended by CR LF). Text that a
 * spreadsheet would take for a formula gets an apostrophe in front.
 */
final class CsvText {
  private static final String FORMULA_STARTS = "=+-@\t\r\n";

  private final StringBuilder text = new StringBuilder();

  /** Adds a row of finished cells; see {@link #name} for cells that hold people's text. */
  void row(List<String> cells) {
    text.append(cells.stream().map(CsvText::quoted).collect(Collectors.joining(",")));
    text.append("\r\n");
  }

  /** Returns the text in UTF-8. */
  byte[] bytes() {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Returns people's text as a cell that no spreadsheet takes for a formula. */
  static String name(String text) {
    String start = text.stripLeading();
    boolean risky =
        (!text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0)
            || (!start.isEmpty() && FORMULA_STARTS.indexOf(start.charAt(0)) >= 0);
    return risky ? "'" + text : text;
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
    return plain ? cell : "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
