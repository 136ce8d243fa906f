package nullplane.judging;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
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
  private final Map<ParameterGroup, Double> quantities;

  private FreeAirSheet(String name, double nominalM, Map<ParameterGroup, Double> quantities) {
    this.name = name;
    this.nominalM = nominalM;
    this.quantities = quantities;
  }

  /** Returns the sheet of a woofer. */
  static FreeAirSheet of(Woofer woofer, Air air) {
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, air);
    Map<ParameterGroup, Double> quantities = new EnumMap<>(ParameterGroup.class);
    quantities.put(ParameterGroup.RESONANCE, set.resonanceHz());
    quantities.put(ParameterGroup.ELECTRICAL_Q, set.electricalQ());
    quantities.put(ParameterGroup.MECHANICAL_Q, set.mechanicalQ());
    quantities.put(ParameterGroup.MOVING_MASS, woofer.bareMassKg());
    quantities.put(ParameterGroup.AREA, woofer.effectiveAreaM2());
    quantities.put(ParameterGroup.TRAVEL, woofer.travelM());
    quantities.put(ParameterGroup.INDUCTANCE, woofer.inductanceH());
    quantities.put(ParameterGroup.RESISTANCE, woofer.resistanceOhm());
    quantities.put(ParameterGroup.POWER, woofer.powerW());
    return new FreeAirSheet(woofer.name(), woofer.nominalM(), quantities);
  }

  /** Returns a group's quantity, in the unit of {@link Woofer} or {@link SmallSignal}. */
  double quantity(ParameterGroup group) {
    return Objects.requireNonNull(quantities.get(group));
  }

  /**
   * Returns this sheet with another's quantities where a bit is set, in the order of the groups.
   * Quantities that agree up to rounding are the same number in all mixtures, whichever of the two
   * sheets comes first, so that they have no share in any difference.
   */
  FreeAirSheet with(FreeAirSheet other, int bits) {
    Map<ParameterGroup, Double> mixed = new EnumMap<>(ParameterGroup.class);
    int bit = 1;
    for (ParameterGroup group : ParameterGroup.values()) {
      double own = quantity(group);
      double others = other.quantity(group);
      boolean same = Math.abs(own - others) <= SAME * Math.max(Math.abs(own), Math.abs(others));
      mixed.put(group, same ? Math.min(own, others) : (bits & bit) == 0 ? own : others);
      bit <<= 1;
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
