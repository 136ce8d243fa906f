package nullplane.judging;

import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * A woofer as its free-air data sheet states it, one quantity per {@link ParameterGroup}: what can
 * be exchanged between two woofers one at a time.
 */
final class FreeAirSheet {
  /** Figures that differ by less, as a share, are one figure: rounding of the arithmetic. */
  private static final double SAME = 1e-12;

  private final String name;
  private final double nominalM;
  private final double[] quantities;

  private FreeAirSheet(String name, double nominalM, double[] quantities) {
    this.name = name;
    this.nominalM = nominalM;
    this.quantities = quantities;
  }

  /** Returns the sheet of a woofer. */
  static FreeAirSheet of(Woofer woofer, Air air) {
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, air);
    double[] quantities = new double[ParameterGroup.values().length];
    quantities[ParameterGroup.RESONANCE.ordinal()] = set.resonanceHz();
    quantities[ParameterGroup.ELECTRICAL_Q.ordinal()] = set.electricalQ();
    quantities[ParameterGroup.MECHANICAL_Q.ordinal()] = set.mechanicalQ();
    quantities[ParameterGroup.MOVING_MASS.ordinal()] = woofer.bareMassKg();
    quantities[ParameterGroup.AREA.ordinal()] = woofer.effectiveAreaM2();
    quantities[ParameterGroup.TRAVEL.ordinal()] = woofer.travelM();
    quantities[ParameterGroup.INDUCTANCE.ordinal()] = woofer.inductanceH();
    quantities[ParameterGroup.RESISTANCE.ordinal()] = woofer.resistanceOhm();
    quantities[ParameterGroup.POWER.ordinal()] = woofer.powerW();
    return new FreeAirSheet(woofer.name(), woofer.nominalM(), quantities);
  }

  /** Returns a group's quantity, in the unit of {@link Woofer} or {@link SmallSignal}. */
  double quantity(ParameterGroup group) {
    return quantities[group.ordinal()];
  }

  /**
   * Returns this sheet with another's quantities where a bit is set, in the order of the groups.
   * Quantities that agree up to rounding are the same number in all mixtures, whichever of the two
   * sheets comes first, so that they have no share in any difference.
   */
  FreeAirSheet with(FreeAirSheet other, int bits) {
    double[] mixed = new double[quantities.length];
    for (int i = 0; i < mixed.length; i++) {
      double own = quantities[i];
      double others = other.quantities[i];
      boolean same = Math.abs(own - others) <= SAME * Math.max(Math.abs(own), Math.abs(others));
      mixed[i] = same ? Math.min(own, others) : (bits >> i & 1) == 0 ? own : others;
    }
    return new FreeAirSheet(name, nominalM, mixed);
  }

  /** Returns the woofer of this sheet. */
  Woofer woofer(Air air) {
    double qes = quantity(ParameterGroup.ELECTRICAL_Q);
    double qms = quantity(ParameterGroup.MECHANICAL_Q);
    // stiffness, loss and force factor of the shell are placeholders that withResonance replaces
    Woofer shell =
        new Woofer(
            name,
            nominalM,
            quantity(ParameterGroup.AREA),
            quantity(ParameterGroup.RESISTANCE),
            quantity(ParameterGroup.INDUCTANCE),
            quantity(ParameterGroup.MOVING_MASS),
            1,
            1,
            1,
            quantity(ParameterGroup.TRAVEL),
            quantity(ParameterGroup.POWER));
    return Woofer.withResonance(
        shell,
        quantity(ParameterGroup.RESONANCE),
        qms,
        qes * qms / (qes + qms),
        Mounting.FREE_AIR,
        air);
  }
}
