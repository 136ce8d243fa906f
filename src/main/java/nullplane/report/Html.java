package nullplane.report;

/** Text for HTML, SVG and PDF. */
final class Html {
  private Html() {}

  /**
   * Returns the text with everything escaped that could be read as markup or turn its direction.
   */
  static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '&' -> safe.append("&amp;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> {
                  boolean allowed = c == '\n' || c == '\t' || (c >= 0x20 && c != 0x7f);
                  safe.appendCodePoint(
                      allowed
                              && !(c >= 0xD800 && c <= 0xDFFF)
                              && c != 0xFFFE
                              && c != 0xFFFF
                              && !turnsText(c)
                          ? c
                          : ' ');
                }
              }
            });
    return safe.toString();
  }

  /** Returns whether a character changes the direction of the text round it (Unicode annex 9). */
  private static boolean turnsText(int c) {
    return c == 0x61C
        || c == 0x200E
        || c == 0x200F
        || (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069);
  }
}
