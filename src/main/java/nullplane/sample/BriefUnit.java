package nullplane.sample;

/** Units of a brief's values: SI for machines, and the one that people read on a sheet. */
public enum BriefUnit {
  /** A plain number. */
  ONE("1", "1", 0),
  /** Frequency. */
  HERTZ("Hz", "Hz", 0),
  /** Resistance or impedance. */
  OHM("ohm", "ohm", 0),
  /** Inductance. */
  HENRY("H", "mH", 3),
  /** Mass. */
  KILOGRAM("kg", "g", 3),
  /** Length. */
  METRE("m", "mm", 3),
  /** Area. */
  SQUARE_METRE("m2", "cm\u00b2", 4),
  /** Volume. */
  CUBIC_METRE("m3", "l", 3),
  /** Force factor. */
  TESLA_METRE("T m", "T m", 0),
  /** Flux density. */
  TESLA("T", "T", 0),
  /** Stiffness. */
  NEWTON_PER_METRE("N/m", "N/m", 0),
  /** Mechanical resistance. */
  NEWTON_SECOND_PER_METRE("N s/m", "N s/m", 0),
  /** Power. */
  WATT("W", "W", 0),
  /** Energy. */
  JOULE("J", "J", 0),
  /** Temperature difference. */
  KELVIN("K", "K", 0),
  /** Voltage, root mean square. */
  VOLT("V", "V", 0),
  /** A share of something. */
  SHARE("1", "%", 2),
  /** Sound pressure level. */
  DECIBEL("dB re 20 uPa", "dB re 20 \u00b5Pa", 0);

  private final String si;
  private final String shown;
  private final int decimals;

  BriefUnit(String si, String shown, int decimals) {
    this.si = si;
    this.shown = shown;
    this.decimals = decimals;
  }

  /** Returns the SI unit's symbol, in ASCII. */
  public String si() {
    return si;
  }

  /** Returns the symbol of the unit that people read. */
  public String shown() {
    return shown;
  }

  /** Returns by how many decimal places the shown unit is smaller than the SI unit. */
  public int decimals() {
    return decimals;
  }

  /**
   * Returns a value in the shown unit.
   *
   * @param value the value (SI)
   */
  public double toShown(double value) {
    return value * Math.pow(10, decimals);
  }
}
