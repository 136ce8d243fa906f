package nullplane.io;

/** Text that is not a quantity. Checked, since whoever reads text knows where the text stood. */
public final class UnreadableQuantityException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String problem;
  private final String hint;

  /**
   * @param problem what is wrong, in a few words
   * @param hint what to write instead; may be empty
   */
  public UnreadableQuantityException(String problem, String hint) {
    super(hint.isEmpty() ? problem : problem + "; " + hint);
    this.problem = problem;
    this.hint = hint;
  }

  /** Returns what is wrong, in a few words. */
  public String problem() {
    return problem;
  }

  /** Returns what to write instead; may be empty. */
  public String hint() {
    return hint;
  }
}
