package nullplane.network;

import nullplane.units.Checks;

/**
 * Resistor and capacitor in series across the stack: levels the rise of its impedance that comes
 * from the voice coils' inductance.
 *
 * <p>Source: circuit theory; 1/(Re + jw Le) + 1/(R + 1/(jw C)) = 1/Re at every frequency for R = Re
 * and C = Le/Re^2. Exact for a resistance and an inductance in series. Beside a {@link
 * MotionalConjugate} it is close where the resonance lies far below Re/(2 pi Le).
 *
 * @param resistor the resistor
 * @param capacitor the capacitor
 */
public record ZobelNetwork(Resistor resistor, Capacitor capacitor) {

  /**
   * Returns the network with the closed form's values, which no table holds.
   *
   * @param resistanceOhm resistance of the load Re (ohm)
   * @param inductanceH inductance of the load Le (H)
   */
  public static ZobelNetwork exact(double resistanceOhm, double inductanceH) {
    Checks.positive(resistanceOhm, "load resistance", "ohm");
    Checks.positive(inductanceH, "load inductance", "H");
    return new ZobelNetwork(
        new Resistor(resistanceOhm), new Capacitor(inductanceH / (resistanceOhm * resistanceOhm)));
  }
}
