package nullplane.tolerance;

/** What varies from unit to unit for reasons of its own. Everything measured follows from these. */
public enum ProductionVariable {
  /** Bare moving mass: cone pulp, coating, glue. */
  BARE_MASS("bare moving mass", "bareMass"),
  /** Suspension stiffness Kms: spider cloth and its resin, surround. */
  STIFFNESS("suspension stiffness", "kms"),
  /** Mechanical loss Rms: surround, spider, air in the gap. */
  LOSS("mechanical loss", "rms"),
  /** Flux through the winding, and with it Bl: magnet, its charge, gap width. */
  FLUX("flux", "bl"),
  /** Resistance Re: wire diameter, winding tension. */
  RESISTANCE("coil resistance", "re"),
  /** Inductance Le: steel, place of the coil. */
  INDUCTANCE("coil inductance", "le"),
  /** Effective area Sd: place of the surround, glue line. */
  AREA("effective area", "sd"),
  /** Rest position of the coil in the gap: height of the spider's seat. Takes travel away. */
  REST_POSITION("coil rest position", "restPositionM");

  private final String words;
  private final String key;

  ProductionVariable(String words, String key) {
    this.words = words;
    this.key = key;
  }

  /** Returns a short name without spaces, for files. */
  public String key() {
    return key;
  }

  /** Returns the variable in words. */
  public String words() {
    return words;
  }
}
