package nullplane.network;

import nullplane.units.Checks;

/**
 * A coil in series with a stack, with its own resistance: the least crossover there is.
 *
 * @param inductanceH inductance (H), 0 for a straight wire
 * @param resistanceOhm direct-current resistance (ohm)
 * @param copperKg copper in it (kg)
 */
public record SeriesCoil(double inductanceH, double resistanceOhm, double copperKg) {
  /** No coil: the stack sits straight on the amplifier. */
  public static final SeriesCoil NONE = new SeriesCoil(0, 0, 0);

  /** Checks that the values are finite and not negative. */
  public SeriesCoil {
    Checks.notNegative(inductanceH, "coil inductance", "H");
    Checks.notNegative(resistanceOhm, "coil resistance", "ohm");
    Checks.notNegative(copperKg, "coil copper", "kg");
  }

  /** Returns whether there is a coil at all. */
  public boolean present() {
    return inductanceH > 0;
  }
}
