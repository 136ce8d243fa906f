package nullplane.fit;

import nullplane.units.Checks;

/** What a fit says about one parameter: a value with its uncertainty, or why there is none. */
public sealed interface Finding {

  /**
   * A value.
   *
   * @param value best estimate (SI unit of the parameter)
   * @param standardError standard uncertainty (same unit)
   * @param lower95 lower end of the 95 % interval (same unit)
   * @param upper95 upper end of the 95 % interval (same unit)
   */
  record Estimate(double value, double standardError, double lower95, double upper95)
      implements Finding {
    /** Checks that all are finite and in order. */
    public Estimate {
      Checks.finite(value, "estimate", "");
      Checks.notNegative(standardError, "standard error", "");
      Checks.finite(lower95, "lower end", "");
      Checks.finite(upper95, "upper end", "");
      if (!(lower95 <= value && value <= upper95)) {
        throw new IllegalArgumentException(
            value + " lies outside its interval " + lower95 + " .. " + upper95);
      }
    }

    /** Returns whether a value lies in the 95 % interval. */
    public boolean covers(double candidate) {
      return lower95 <= candidate && candidate <= upper95;
    }
  }

  /**
   * No value.
   *
   * @param reason why, and what would help, in one sentence
   */
  record NotDetermined(String reason) implements Finding {}
}
