package nullplane.sample;

/**
 * Where a sample hung on the customer's own panel while it was measured.
 *
 * @param stack name of the stack, as in the spec
 * @param woofer its place among the stack's woofers, from 1 in the spec's order
 * @param others what was in the other places
 */
public record PanelPlace(String stack, int woofer, Others others) {
  /** What is in the other places of the stack. */
  public enum Others {
    /** Woofers of the same kind, their terminals open, free to move with the air. */
    OPEN("open"),
    /** Woofers held still, or holes closed flush. */
    STILL("still");

    private final String word;

    Others(String word) {
      this.word = word;
    }

    /** Returns the case as it stands in files. */
    public String word() {
      return word;
    }
  }

  /** Checks that a stack is named and the place counted from 1. */
  public PanelPlace {
    if (stack.isBlank() || woofer < 1) {
      throw new IllegalArgumentException(
          "woofer " + woofer + " of stack \"" + stack + "\"; allowed: a name, and 1 or more");
    }
  }

  /** Returns the place in words. */
  public String words() {
    return "on the panel of stack " + stack + ", place " + woofer + ", others " + others.word();
  }
}
