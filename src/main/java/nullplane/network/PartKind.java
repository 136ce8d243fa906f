package nullplane.network;

/** The three kinds of passive part. */
public enum PartKind {
  /** Resistor; value in ohm. */
  RESISTOR("resistor", "ohm"),
  /** Coil; value in henry. */
  COIL("coil", "H"),
  /** Capacitor; value in farad. */
  CAPACITOR("capacitor", "F");

  private final String word;
  private final String unit;

  PartKind(String word, String unit) {
    this.word = word;
    this.unit = unit;
  }

  /** Returns the kind in plain words. */
  public String word() {
    return word;
  }

  /** Returns the unit of the value, an SI symbol or word. */
  public String unit() {
    return unit;
  }
}
