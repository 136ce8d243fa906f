package nullplane.sample;

import java.util.OptionalDouble;
import nullplane.units.Checks;

/**
 * What a maker may deliver instead of the target: a closed window, open to a side that has no
 * limit.
 *
 * @param lower least value accepted (SI unit of the value), if there is one
 * @param upper greatest value accepted (SI unit of the value), if there is one
 * @param basis where the window comes from, in words
 */
public record BriefWindow(OptionalDouble lower, OptionalDouble upper, String basis) {
  /** Nothing is held against the value. */
  public static final BriefWindow NONE =
      new BriefWindow(OptionalDouble.empty(), OptionalDouble.empty(), "for information");

  /** Checks that the limits are finite and in order, and that the basis is named. */
  public BriefWindow {
    lower.ifPresent(limit -> Checks.finite(limit, "lower limit", "SI"));
    upper.ifPresent(limit -> Checks.finite(limit, "upper limit", "SI"));
    if (lower.isPresent() && upper.isPresent() && !(lower.getAsDouble() <= upper.getAsDouble())) {
      throw new IllegalArgumentException(
          "window " + lower.getAsDouble() + " .. " + upper.getAsDouble() + "; lower limit first");
    }
    if (basis.isBlank()) {
      throw new IllegalArgumentException("the basis of a window is empty; allowed: any words");
    }
  }

  /**
   * Returns a window of equal shares either way.
   *
   * @param target the middle, above 0 (SI)
   * @param share half width as a share of the target (1)
   * @param basis where it comes from
   */
  public static BriefWindow around(double target, double share, String basis) {
    return between(target * (1 - share), target * (1 + share), basis);
  }

  /** Returns a window with two limits (SI). */
  public static BriefWindow between(double lower, double upper, String basis) {
    return new BriefWindow(OptionalDouble.of(lower), OptionalDouble.of(upper), basis);
  }

  /** Returns a window that is open above (SI). */
  public static BriefWindow atLeast(double lower, String basis) {
    return new BriefWindow(OptionalDouble.of(lower), OptionalDouble.empty(), basis);
  }

  /** Returns a window that is open below (SI). */
  public static BriefWindow atMost(double upper, String basis) {
    return new BriefWindow(OptionalDouble.empty(), OptionalDouble.of(upper), basis);
  }

  /** Returns whether there is any limit. */
  public boolean limits() {
    return lower.isPresent() || upper.isPresent();
  }

  /** Returns whether a value (SI) is accepted; NaN never is where there is a limit. */
  public boolean accepts(double value) {
    return (lower.isEmpty() || value >= lower.getAsDouble())
        && (upper.isEmpty() || value <= upper.getAsDouble());
  }
}
