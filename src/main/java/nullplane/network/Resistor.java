package nullplane.network;

import nullplane.units.Checks;

/**
 * A resistor.
 *
 * @param resistanceOhm resistance (ohm)
 */
public record Resistor(double resistanceOhm) implements Part {
  /** Checks that the value is finite and above zero. */
  public Resistor {
    Checks.positive(resistanceOhm, "resistance", "ohm");
  }

  @Override
  public PartKind kind() {
    return PartKind.RESISTOR;
  }

  @Override
  public double value() {
    return resistanceOhm;
  }
}
