package nullplane.tolerance;

import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.units.Air;
import nullplane.units.Range;

/**
 * What is measured of a finished woofer in free air, with the tolerance that data sheets usually
 * state (common practice, without a source; half the window).
 *
 * <p>Five are enough to inspect. The moving parts are weighed before assembly; Re comes from an
 * ohmmeter, fs, Qts and Le from one impedance sweep in free air. They fix all others but for what
 * Sd and the loss do: Bl^2 = w Mms Re/Qes, and the level from Bl Sd/(Mms Re). The mass is among
 * them because windows on these five lie along what a line varies by itself: cone, suspension, flux
 * and wire. With the level in its place, windows would admit mass and flux that run apart together,
 * as no line makes them, and would have to be half as wide for the same yield. The mass is weighed,
 * not read from an added mass, which errs by 5 to 6 % for each per cent of error in frequency.
 */
public enum MeasuredQuantity {
  /** Resonance frequency fs (Hz). */
  RESONANCE("fs", "resonance frequency", "Hz", true, 0.10, 0.15),
  /** Total Q factor Qts (1). */
  TOTAL_Q("Qts", "total Q factor", "1", true, 0.15, 0.15),
  /** Moving mass without air (kg). Usual tolerance as that of Mms. */
  BARE_MASS("Mmd", "moving mass, bare", "kg", true, 0.05, 0.08),
  /** Direct-current resistance Re (ohm). */
  RESISTANCE("Re", "coil resistance", "ohm", true, 0.05, 0.05),
  /** Coil inductance Le (H). Its usual tolerance is often not stated at all. */
  INDUCTANCE("Le", "coil inductance", "H", true, 0.15, 0.20),
  /** Electrical Q factor Qes (1). */
  ELECTRICAL_Q("Qes", "electrical Q factor", "1", false, 0.15, 0.15),
  /** Moving mass with air Mms (kg). */
  MOVING_MASS("Mms", "moving mass with air", "kg", false, 0.05, 0.08),
  /** Force factor Bl (T m). */
  FORCE_FACTOR("Bl", "force factor", "T m", false, 0.05, 0.075),
  /** Level at 1 m into half space at 2.83 V, far above fs (dB re 20 uPa). */
  LEVEL("L(2.83 V)", "level at 2.83 V, 1 m, half space", "dB", false, 1, 1),
  /** Equivalent volume Vas (m3). */
  EQUIVALENT_VOLUME("Vas", "equivalent volume", "m3", false, 0.20, 0.25);

  private static final double REFERENCE_VOLTAGE_V = 2.83;

  private final String symbol;
  private final String words;
  private final String unit;
  private final boolean inspected;
  private final double tightestUsual;
  private final double widestUsual;

  MeasuredQuantity(
      String symbol,
      String words,
      String unit,
      boolean inspected,
      double tightestUsual,
      double widestUsual) {
    this.symbol = symbol;
    this.words = words;
    this.unit = unit;
    this.inspected = inspected;
    this.tightestUsual = tightestUsual;
    this.widestUsual = widestUsual;
  }

  /** Returns the symbol. */
  public String symbol() {
    return symbol;
  }

  /** Returns the quantity in words. */
  public String words() {
    return words;
  }

  /** Returns the SI unit's symbol, or dB. */
  public String unit() {
    return unit;
  }

  /** Returns whether it is among the few that an incoming inspection needs. */
  public boolean inspected() {
    return inspected;
  }

  /** Returns whether deviations are decibels; otherwise they are shares of the value. */
  public boolean inDecibels() {
    return this == LEVEL;
  }

  /** Returns half the usual window, from the tightest usual to the widest (1, or dB). */
  public Range practice() {
    return new Range(tightestUsual, widestUsual);
  }

  /**
   * Returns the quantity of a woofer (in {@link #unit}).
   *
   * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383.
   *
   * @param woofer the woofer
   * @param air the air
   */
  public double of(Woofer woofer, Air air) {
    return of(woofer, SmallSignal.of(woofer, Mounting.FREE_AIR, air), air);
  }

  double of(Woofer woofer, SmallSignal freeAir, Air air) {
    return switch (this) {
      case RESONANCE -> freeAir.resonanceHz();
      case TOTAL_Q -> freeAir.totalQ();
      case LEVEL ->
          SmallSignal.levelAtOneWatt(freeAir.referenceEfficiency(), air)
              + SmallSignal.levelOverOneWatt(REFERENCE_VOLTAGE_V, woofer.resistanceOhm());
      case BARE_MASS -> woofer.bareMassKg();
      case RESISTANCE -> woofer.resistanceOhm();
      case INDUCTANCE -> woofer.inductanceH();
      case ELECTRICAL_Q -> freeAir.electricalQ();
      case MOVING_MASS -> freeAir.movingMassKg();
      case FORCE_FACTOR -> woofer.forceFactorTm();
      case EQUIVALENT_VOLUME -> freeAir.equivalentVolumeM3();
    };
  }

  /** Returns how far a value is from the nominal one (share of it, or dB). */
  double deviation(double value, double nominal) {
    return inDecibels() ? value - nominal : nominal == 0 ? 0 : value / nominal - 1;
  }

  /** Returns the value at a deviation from the nominal one. */
  double at(double nominal, double deviation) {
    return inDecibels() ? nominal + deviation : nominal * (1 + deviation);
  }
}
