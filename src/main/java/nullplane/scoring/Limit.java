package nullplane.scoring;

/** What stops a stack from playing louder. */
public enum Limit {
  /** A cone reaches its travel. */
  EXCURSION("excursion"),
  /** A coil reaches its rated heat. */
  HEAT("heat"),
  /** The amplifier reaches its voltage. */
  AMPLIFIER("amplifier");

  private final String word;

  Limit(String word) {
    this.word = word;
  }

  /** Returns the limit as one word. */
  public String word() {
    return word;
  }
}
