package nullplane.network;

/** A passive part that can be bought or wound. Equal parts are interchangeable. */
public sealed interface Part permits SeriesCoil, Capacitor, Resistor {
  /** Returns the kind. */
  PartKind kind();

  /** Returns the value a shop asks for (H, F or ohm by {@link #kind}). */
  double value();
}
