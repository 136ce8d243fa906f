package nullplane.network;

/**
 * One network of a {@link NetworkCatalogue}, by the place of each part in its list; 0 is "none".
 * Six whole genes.
 *
 * @param resistor series resistor
 * @param coil series coil
 * @param capacitor shunt capacitor
 * @param damping damping resistor
 * @param resonance conjugate of the resonance
 * @param zobel conjugate of the inductance
 */
public record NetworkChoice(
    int resistor, int coil, int capacitor, int damping, int resonance, int zobel) {
  /** Nothing at all. */
  public static final NetworkChoice NONE = new NetworkChoice(0, 0, 0, 0, 0, 0);

  /** Checks that no index is negative. */
  public NetworkChoice {
    if ((resistor | coil | capacitor | damping | resonance | zobel) < 0) {
      throw new IllegalArgumentException("a choice is negative; allowed: 0 for none, or more");
    }
  }

  /** Returns the index on an axis. */
  public int on(CatalogueAxis axis) {
    return switch (axis) {
      case RESISTOR -> resistor;
      case COIL -> coil;
      case CAPACITOR -> capacitor;
      case DAMPING -> damping;
      case RESONANCE -> resonance;
      case ZOBEL -> zobel;
    };
  }

  /** Returns this choice with another index on an axis. */
  public NetworkChoice with(CatalogueAxis axis, int index) {
    return new NetworkChoice(
        axis == CatalogueAxis.RESISTOR ? index : resistor,
        axis == CatalogueAxis.COIL ? index : coil,
        axis == CatalogueAxis.CAPACITOR ? index : capacitor,
        axis == CatalogueAxis.DAMPING ? index : damping,
        axis == CatalogueAxis.RESONANCE ? index : resonance,
        axis == CatalogueAxis.ZOBEL ? index : zobel);
  }
}
