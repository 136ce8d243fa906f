package nullplane.judging;

/** The parameters that two woofers can differ in, one group for each thing a maker sets. */
public enum ParameterGroup {
  /** Resonance in free air. */
  RESONANCE("fs", "resonance"),
  /** Electrical Q in free air. */
  ELECTRICAL_Q("Qes", "electrical Q"),
  /** Mechanical Q in free air. */
  MECHANICAL_Q("Qms", "mechanical Q"),
  /** Moving mass without air. */
  MOVING_MASS("bare mass", "moving mass"),
  /** Effective piston area. */
  AREA("Sd", "effective area"),
  /** One-way travel. */
  TRAVEL("travel", "travel"),
  /** Coil inductance. */
  INDUCTANCE("Le", "inductance"),
  /** Direct-current resistance of the coil. */
  RESISTANCE("Re", "resistance"),
  /** Rated power. */
  POWER("power", "rated power");

  private final String symbol;
  private final String word;

  ParameterGroup(String symbol, String word) {
    this.symbol = symbol;
    this.word = word;
  }

  /** Returns the symbol a data sheet prints. */
  public String symbol() {
    return symbol;
  }

  /** Returns the name in words. */
  public String word() {
    return word;
  }
}
