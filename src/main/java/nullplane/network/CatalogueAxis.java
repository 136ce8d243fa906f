package nullplane.network;

/** The lists of a {@link NetworkCatalogue}. */
public enum CatalogueAxis {
  /** Series resistors. */
  RESISTOR,
  /** Conjugates of the resonance. */
  RESONANCE,
  /** Conjugates of the inductance. */
  ZOBEL,
  /** Shunt capacitors. */
  CAPACITOR,
  /** Damping resistors. */
  DAMPING,
  /** Series coils. */
  COIL
}
