package nullplane.driver;

/**
 * A figure of a completed set.
 *
 * @param parameter what it is
 * @param value its value (SI; dB for levels): as stated, or as derived where nothing is stated or
 *     the statement is contradicted
 * @param consistent its value by the figures the set is completed from (SI; dB for levels); differs
 *     from a stated value by what the sheet's rounding leaves
 * @param origin where the value comes from
 * @param route how it is derived; without steps if the set is completed from it
 */
public record CompletedValue(
    Parameter parameter, double value, double consistent, Origin origin, Route route) {

  /** Where a value comes from. */
  public enum Origin {
    /** The sheet states it, and nothing contradicts it. */
    STATED,
    /** The sheet does not state it. */
    DERIVED,
    /** The sheet states something else, which the rest of it contradicts. */
    CORRECTED
  }
}
