package nullplane.network;

/** Where in a branch a part sits, in the order from the amplifier to the stack. */
public enum PartPlace {
  /** In series with the stack, first. */
  SERIES_RESISTOR("series resistor", "R1", PartKind.RESISTOR),
  /** In series with the stack. */
  SERIES_COIL("series coil", "L1", PartKind.COIL),
  /** Across the stack, behind the coil. */
  SHUNT_CAPACITOR("shunt capacitor", "C1", PartKind.CAPACITOR),
  /** In series with the shunt capacitor. */
  DAMPING_RESISTOR("damping resistor", "R2", PartKind.RESISTOR),
  /** In the branch across the stack that levels its resonance. */
  RESONANCE_RESISTOR("resonance resistor", "R3", PartKind.RESISTOR),
  /** In the branch across the stack that levels its resonance. */
  RESONANCE_COIL("resonance coil", "L2", PartKind.COIL),
  /** In the branch across the stack that levels its resonance. */
  RESONANCE_CAPACITOR("resonance capacitor", "C2", PartKind.CAPACITOR),
  /** In the branch across the stack that levels its inductance. */
  ZOBEL_RESISTOR("Zobel resistor", "R4", PartKind.RESISTOR),
  /** In the branch across the stack that levels its inductance. */
  ZOBEL_CAPACITOR("Zobel capacitor", "C3", PartKind.CAPACITOR);

  private final String label;
  private final String designator;
  private final PartKind kind;

  PartPlace(String label, String designator, PartKind kind) {
    this.label = label;
    this.designator = designator;
    this.kind = kind;
  }

  /** Returns the place in plain words. */
  public String label() {
    return label;
  }

  /** Returns the letter and number the part carries in a drawing, the same in every stack. */
  public String designator() {
    return designator;
  }

  /** Returns what kind of part sits there. */
  public PartKind kind() {
    return kind;
  }
}
