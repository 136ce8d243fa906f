package nullplane.driver;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A stated figure that the rest of its sheet contradicts.
 *
 * @param parameter the figure
 * @param stated what the sheet states (SI; dB for levels)
 * @param found what the rest of the sheet gives (SI; dB for levels); for a figure that no woofer
 *     can have, the limit that the rest sets: what Qts and the bare mass must stay below, Mms
 *     above; nothing if that is not known either
 * @param tolerance how far the two may lie apart, as a share of the found value (1); dB for levels
 * @param route how the rest gives it
 * @param cause what probably went wrong
 */
public record Contradiction(
    Parameter parameter,
    double stated,
    OptionalDouble found,
    double tolerance,
    Route route,
    Cause cause) {

  /**
   * Returns by how much the statement exceeds what the rest gives, as a share of that (1); dB for
   * levels; nothing if the rest gives nothing.
   */
  public OptionalDouble deviation() {
    if (found.isEmpty()) {
      return found;
    }
    return OptionalDouble.of(
        parameter.level() ? stated - found.getAsDouble() : stated / found.getAsDouble() - 1);
  }

  /** Returns the stated figures that speak against it. */
  public List<Parameter> against() {
    return route.origins();
  }
}
