package nullplane.network;

import java.util.Optional;
import nullplane.units.Checks;

/**
 * Resistor, coil and capacitor in series across the stack: levels the peak of its impedance at the
 * resonance. The coil's own resistance is part of the branch.
 *
 * <p>Symbols: Re resistance of the load, Qes and Qms its electrical and mechanical Q, fs its
 * resonance, ws = 2 pi fs. For a stack, the figures are those of its impedance peak on the panel.
 *
 * @param resistor the resistor; none if the coil has all the resistance that is wanted
 * @param coil the coil with its own resistance
 * @param capacitor the capacitor
 */
public record MotionalConjugate(Optional<Resistor> resistor, SeriesCoil coil, Capacitor capacitor) {
  /** Checks that there is a coil, and resistance in the branch. */
  public MotionalConjugate {
    Checks.positive(coil.inductanceH(), "resonance coil inductance", "H");
    if (!(coil.resistanceOhm() > 0) && resistor.isEmpty()) {
      throw new IllegalArgumentException(
          "resonance branch has 0 ohm and would short the stack; allowed: a resistor, or a coil"
              + " with resistance");
    }
  }

  /** Returns the resistance of resistor and coil together (ohm). */
  public double resistanceOhm() {
    return coil.resistanceOhm() + resistor.map(Resistor::resistanceOhm).orElse(0.0);
  }

  /**
   * Values of the branch that makes the load a plain resistance.
   *
   * <p>Source: circuit theory, the dual of the motional branch: 1/(Re + Zm) + 1/(Re + Re^2/Zm) =
   * 1/Re, where Re + Re^2/Zm is R = Re (1 + Qes/Qms), L = Re Qes/ws, C = 1/(ws Re Qes) in series.
   * Exact for a load without inductance and with one resonance.
   *
   * @param resistanceOhm R, the coil's own included (ohm)
   * @param inductanceH L (H)
   * @param capacitanceF C (F)
   */
  public record Values(double resistanceOhm, double inductanceH, double capacitanceF) {
    /** Checks that the values are above zero. */
    public Values {
      Checks.positive(resistanceOhm, "resonance branch resistance", "ohm");
      Checks.positive(inductanceH, "resonance coil inductance", "H");
      Checks.positive(capacitanceF, "capacitance", "F");
    }

    /**
     * Returns the values for a load.
     *
     * @param loadOhm Re (ohm)
     * @param electricalQ Qes (1)
     * @param mechanicalQ Qms (1)
     * @param resonanceHz fs (Hz)
     */
    public static Values of(
        double loadOhm, double electricalQ, double mechanicalQ, double resonanceHz) {
      Checks.positive(loadOhm, "load resistance", "ohm");
      Checks.positive(electricalQ, "electrical Q", "(1)");
      Checks.positive(mechanicalQ, "mechanical Q", "(1)");
      double w = 2 * Math.PI * Checks.positive(resonanceHz, "resonance", "Hz");
      return new Values(
          loadOhm * (1 + electricalQ / mechanicalQ),
          loadOhm * electricalQ / w,
          1 / (w * loadOhm * electricalQ));
    }

    /**
     * Returns the branch with exactly these values.
     *
     * @param make how the coil is made; what it lacks of the resistance is the resistor's
     */
    public MotionalConjugate exact(CoilMake make) {
      SeriesCoil coil = make.coil(inductanceH);
      double rest = resistanceOhm - coil.resistanceOhm();
      return new MotionalConjugate(
          rest > 0 ? Optional.of(new Resistor(rest)) : Optional.empty(),
          coil,
          new Capacitor(capacitanceF));
    }

    /**
     * Returns the branch with the nearest values of the tables, by ratio.
     *
     * @param coils series of the coil, for example E12
     * @param capacitors series of the capacitor
     * @param resistors series of the resistor
     * @param make how the coil is made
     */
    public MotionalConjugate nearest(
        PreferredValues coils,
        PreferredValues capacitors,
        PreferredValues resistors,
        CoilMake make) {
      SeriesCoil coil = make.coil(coils.nearest(inductanceH));
      double rest = resistanceOhm - coil.resistanceOhm();
      return new MotionalConjugate(
          // common practice: a resistor below a tenth of the branch's resistance is left out
          rest > 0.1 * resistanceOhm
              ? Optional.of(new Resistor(resistors.nearest(rest)))
              : Optional.empty(),
          coil,
          new Capacitor(capacitors.nearest(capacitanceF)));
    }
  }
}
