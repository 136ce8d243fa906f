package nullplane.driver;

import nullplane.units.Checks;

/**
 * A figure that a woofer's data sheet may state. The order is the order of trust: of figures that
 * say the same, a completion starts from the earlier ones. First comes what a ruler, an ohmmeter
 * and one impedance sweep give; figures that others are computed from stand before their results,
 * and Qts stands late, since taking Qms out of Qts and Qes multiplies errors.
 *
 * <p>Each figure has a share by which sheets may disagree without meaning it: sheets print averages
 * of several units, rounded, in air of their own. Common practice, without a source.
 */
public enum Parameter {
  /** Effective piston area (m2). */
  AREA("Sd", "effective area", "m2", 0.02),
  /** Diameter of the effective piston (m). */
  DIAMETER("d", "effective diameter", "m", 0.01),
  /** Direct-current resistance of the coil (ohm). */
  RESISTANCE("Re", "coil resistance", "ohm", 0.05),
  /** Resonance in the mounting (Hz). */
  RESONANCE("fs", "resonance", "Hz", 0.03),
  /** Moving mass without air (kg). */
  BARE_MASS("Mmd", "moving mass without air", "kg", 0.05),
  /** Moving mass with the air of the mounting (kg). */
  MOVING_MASS("Mms", "moving mass with air", "kg", 0.05),
  /** Mechanical quality factor in the mounting (1). */
  MECHANICAL_Q("Qms", "mechanical Q", "1", 0.10),
  /** Electrical quality factor in the mounting, from Re alone (1). */
  ELECTRICAL_Q("Qes", "electrical Q", "1", 0.10),
  /** Force factor (T m). */
  FORCE_FACTOR("Bl", "force factor", "T m", 0.05),
  /** Mechanical loss (N s/m). */
  LOSS("Rms", "mechanical loss", "N s/m", 0.10),
  /** Stiffness of the suspension (N/m). */
  STIFFNESS("Kms", "stiffness", "N/m", 0.08),
  /** Compliance of the suspension (m/N). */
  COMPLIANCE("Cms", "compliance", "m/N", 0.08),
  /** Total quality factor in the mounting (1). */
  TOTAL_Q("Qts", "total Q", "1", 0.05),
  /** Volume of air as compliant as the suspension (m3). */
  VOLUME("Vas", "equivalent volume", "m3", 0.08),
  /** Reference efficiency into half space (1). */
  EFFICIENCY("eta0", "reference efficiency", "1", 0.12),
  /** Level at 1 m in half space for 1 W in Re (dB re 20 uPa). */
  LEVEL_ONE_WATT("L(1 W)", "level at 1 W and 1 m", "dB", 0.115),
  /** Level at 1 m in half space for 2.83 V (dB re 20 uPa). */
  LEVEL_VOLTAGE("L(2.83 V)", "level at 2.83 V and 1 m", "dB", 0.115),
  /** Travel, one way (m). */
  TRAVEL("x", "travel, one way", "m", 0.05),
  /** Volume displaced by the travel, one way (m3). */
  DISPLACEMENT("Vd", "displaced volume, one way", "m3", 0.05),
  /** Geometric travel from the heights of coil and gap, one way (m). */
  GEOMETRIC_TRAVEL("x(coil)", "travel of coil over gap, one way", "m", 0.45);

  private static final double DECIBEL = Math.log(10) / 10;

  private final String symbol;
  private final String words;
  private final String unit;
  private final double leeway;

  Parameter(String symbol, String words, String unit, double leeway) {
    this.symbol = symbol;
    this.words = words;
    this.unit = unit;
    this.leeway = leeway;
  }

  /** Returns the symbol people write. */
  public String symbol() {
    return symbol;
  }

  /** Returns the figure's name in words. */
  public String words() {
    return words;
  }

  /** Returns the unit's symbol; "1" for a ratio. */
  public String unit() {
    return unit;
  }

  /** Returns whether the figure is a level in decibels, so that deviations are differences. */
  public boolean level() {
    return this == LEVEL_ONE_WATT || this == LEVEL_VOLTAGE;
  }

  /**
   * Returns the least disagreement that is spoken of (1): a natural logarithm of a ratio; of powers
   * for levels, 0.115 being 0.5 dB.
   */
  double leeway() {
    return leeway;
  }

  /**
   * Returns how much sheets may differ because their authors took other air (1). Air of 1.18 to
   * 1.21 kg/m3 and 343 to 345 m/s changes rho c^2 by 1 % and rho/c by 1.5 %.
   */
  double airLeeway() {
    return switch (this) {
      case VOLUME -> 0.01;
      case EFFICIENCY, LEVEL_ONE_WATT, LEVEL_VOLTAGE -> 0.015;
      default -> 0;
    };
  }

  /** Returns the value's natural logarithm, of power for levels; fails unless it is positive. */
  double toLog(double value) {
    return level()
        ? DECIBEL * Checks.finite(value, symbol, unit)
        : Math.log(Checks.positive(value, symbol, unit));
  }

  /** Returns the value that has the given logarithm. */
  double fromLog(double log) {
    return level() ? log / DECIBEL : Math.exp(log);
  }
}
