package nullplane.fit;

/**
 * What a fit can find. fs, the quality factors, Mms, Rms and Kms hold for free air, whatever the
 * mounting was during the measurement.
 */
public enum FittedParameter {
  /** Direct-current resistance of the coil (ohm). */
  RE("Re", "ohm"),
  /** Resonance in free air (Hz). */
  FS("fs", "Hz"),
  /** Mechanical quality factor in free air (1). */
  QMS("Qms", ""),
  /** Electrical quality factor in free air, from Re alone (1). */
  QES("Qes", ""),
  /** Total quality factor in free air (1). */
  QTS("Qts", ""),
  /** Coil inductance without loss (H). */
  LE("Le", "H"),
  /** Inductance beside the loss resistance (H). */
  L2("L2", "H"),
  /** Loss resistance beside L2 (ohm). */
  R2("R2", "ohm"),
  /** Factor of the semi-inductance K (jw)^n (ohm s^n). */
  K("K", "ohm s^n"),
  /** Exponent of the semi-inductance (1). */
  N("n", ""),
  /** Moving mass with the air of a free disc (kg). */
  MMS("Mms", "kg"),
  /** Moving mass without air (kg). */
  BARE_MASS("bare moving mass", "kg"),
  /** Suspension compliance (m/N). */
  CMS("Cms", "m/N"),
  /** Suspension stiffness (N/m). */
  KMS("Kms", "N/m"),
  /** Mechanical loss (N s/m). */
  RMS("Rms", "N s/m"),
  /** Force factor (T m). */
  BL("Bl", "T m"),
  /** Volume of air as stiff as the suspension (m3). */
  VAS("Vas", "m3");

  private final String symbol;
  private final String unit;

  FittedParameter(String symbol, String unit) {
    this.symbol = symbol;
    this.unit = unit;
  }

  /** Returns the usual symbol or name. */
  public String symbol() {
    return symbol;
  }

  /** Returns the SI unit; empty for a plain number. */
  public String unit() {
    return unit;
  }

  /** Returns whether the value needs a mass anchor. */
  boolean needsMass() {
    return switch (this) {
      case MMS, BARE_MASS, CMS, KMS, RMS, BL, VAS -> true;
      default -> false;
    };
  }

  /** Returns whether the value comes from the resonance. */
  boolean needsResonance() {
    return needsMass() || this == FS || this == QMS || this == QES || this == QTS;
  }

  /** Returns whether the value describes the coil's inductance. */
  boolean ofInductance() {
    return this == LE || this == L2 || this == R2 || this == K || this == N;
  }
}
