package nullplane.network;

import nullplane.units.Checks;

/**
 * A capacitor without losses of its own; a stated loss goes into the resistor in series with it.
 *
 * @param capacitanceF capacitance (F)
 */
public record Capacitor(double capacitanceF) implements Part {
  /** Checks that the value is finite and above zero. */
  public Capacitor {
    Checks.positive(capacitanceF, "capacitance", "F");
  }

  @Override
  public PartKind kind() {
    return PartKind.CAPACITOR;
  }

  @Override
  public double value() {
    return capacitanceF;
  }
}
