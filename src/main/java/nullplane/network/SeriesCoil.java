package nullplane.network;

import nullplane.units.Checks;

/**
 * A coil with its own resistance. In series with a stack it is the least crossover there is.
 *
 * @param inductanceH inductance (H), 0 for a straight wire
 * @param resistanceOhm direct-current resistance (ohm)
 * @param copperKg copper in it (kg)
 */
public record SeriesCoil(double inductanceH, double resistanceOhm, double copperKg)
    implements Part {
  /** No coil: the stack sits straight on the amplifier. */
  public static final SeriesCoil NONE = new SeriesCoil(0, 0, 0);

  /** Checks that the values are finite and not negative. */
  public SeriesCoil {
    Checks.notNegative(inductanceH, "coil inductance", "H");
    Checks.notNegative(resistanceOhm, "coil resistance", "ohm");
    Checks.notNegative(copperKg, "coil copper", "kg");
  }

  @Override
  public PartKind kind() {
    return PartKind.COIL;
  }

  @Override
  public double value() {
    return inductanceH;
  }

  /** Returns whether there is a coil at all. */
  public boolean present() {
    return inductanceH > 0;
  }
}
