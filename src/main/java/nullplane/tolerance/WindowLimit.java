package nullplane.tolerance;

/** What keeps a window from being wider. */
public enum WindowLimit {
  /** The response or the load: more would cost yield. */
  YIELD("the yield"),
  /** Twice the usual width: nothing is saved by more. */
  TWICE_USUAL("twice the usual width");

  private final String words;

  WindowLimit(String words) {
    this.words = words;
  }

  /** Returns the limit in words. */
  public String words() {
    return words;
  }
}
