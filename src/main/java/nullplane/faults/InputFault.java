package nullplane.faults;

/**
 * One thing wrong with an input file.
 *
 * @param file the file as the user named it
 * @param line the line, counted from 1; 0 when the whole file is meant
 * @param key the dotted path of the key, for example {@code stacks[1].panel.width}; may be empty
 * @param value the text found there; may be empty
 * @param problem what is wrong, in a few words
 * @param allowed the allowed range or form; may be empty
 * @param hint what to write instead; may be empty
 */
public record InputFault(
    String file, int line, String key, String value, String problem, String allowed, String hint) {

  /** Returns the fault as one line for a terminal. */
  public String oneLine() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
    }
    text.append(": ");
    if (!key.isEmpty()) {
      text.append(key).append(": ");
    }
    text.append(problem);
    if (!value.isEmpty()) {
      text.append(" (found ").append(value).append(')');
    }
    if (!allowed.isEmpty()) {
      text.append("; allowed: ").append(allowed);
    }
    if (!hint.isEmpty()) {
      text.append("; ").append(hint);
    }
    return text.toString();
  }
}
