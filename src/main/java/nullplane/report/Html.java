package nullplane.report;

/** Text for HTML and SVG. */
final class Html {
  private Html() {}

  /** Returns the text with everything escaped that could be read as markup. */
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
                      allowed && !(c >= 0xD800 && c <= 0xDFFF) && c != 0xFFFE && c != 0xFFFF
                          ? c
                          : ' ');
                }
              }
            });
    return safe.toString();
  }
}
