package nullplane.driver;

/**
 * What probably went wrong with a statement.
 *
 * @param kind the slip
 * @param sentence the slip in words, with its figures
 */
public record Cause(Kind kind, String sentence) {

  /** Slips that sheets are known for. */
  public enum Kind {
    /** The levels at 1 W and at 2.83 V are mixed up. */
    LEVELS_MIXED,
    /** A level for another space or distance. */
    OTHER_SPACE,
    /** A volume, or an area, of another piston. */
    OTHER_AREA,
    /** Travel from peak to peak printed as one way. */
    PEAK_TO_PEAK,
    /** A mass without air printed as one with air. */
    WITHOUT_AIR,
    /** A mass with air printed as one without. */
    WITH_AIR,
    /** A figure of another mounting. */
    OTHER_MOUNTING,
    /** The rated impedance printed as Re. */
    RATED_IMPEDANCE,
    /** One quality factor printed as another. */
    OTHER_Q,
    /** A resistance in series was counted in. */
    SERIES_RESISTANCE,
    /** A radius taken for a diameter, or a diameter for a radius. */
    RADIUS,
    /** A decimal point or a prefix of a unit. */
    DECIMAL_POINT,
    /** Another unit. */
    OTHER_UNIT,
    /** No woofer can be like that. */
    IMPOSSIBLE,
    /** None of the known slips fits. */
    UNKNOWN
  }
}
