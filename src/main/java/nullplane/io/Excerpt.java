package nullplane.io;

/** Text of a file made safe for one line of a message. */
public final class Excerpt {
  private static final int LONGEST = 60;

  private Excerpt() {}

  /** Returns the text without control characters, cut to a length a line can hold. */
  public static String of(String text) {
    StringBuilder safe = new StringBuilder();
    int taken = 0;
    for (int i = 0; i < text.length() && taken < LONGEST; taken++) {
      int c = text.codePointAt(i);
      safe.appendCodePoint(visible(c) ? c : ' ');
      i += Character.charCount(c);
      if (taken == LONGEST - 1 && i < text.length()) {
        safe.append("...");
      }
    }
    return safe.toString();
  }

  /** Returns whether a character shows on a line and does not steer the terminal. */
  static boolean visible(int codePoint) {
    int type = Character.getType(codePoint);
    return type != Character.CONTROL
        && type != Character.FORMAT
        && type != Character.SURROGATE
        && type != Character.PRIVATE_USE
        && type != Character.UNASSIGNED
        && type != Character.LINE_SEPARATOR
        && type != Character.PARAGRAPH_SEPARATOR;
  }
}
