package nullplane.driver;

import java.util.OptionalDouble;
import nullplane.units.Checks;

/** The rule that ties a rated impedance to the curve. Source: IEC 60268-5, rated impedance. */
public final class RatedImpedance {
  /** Least modulus over the rated range, as a share of the rated impedance (1). IEC 60268-5. */
  private static final double LEAST_SHARE = 0.8;

  /**
   * Rated impedances that are usual (ohm). Common practice; 4 and 8 are by far the most frequent.
   */
  private static final double[] USUAL_OHM = {2, 4, 6, 8, 16};

  private RatedImpedance() {}

  /**
   * Returns the least modulus that a rated impedance allows (ohm).
   *
   * @param ratedOhm rated impedance (ohm)
   */
  public static double leastModulusOhm(double ratedOhm) {
    return LEAST_SHARE * Checks.positive(ratedOhm, "rated impedance", "ohm");
  }

  /**
   * Returns the highest impedance that a curve may be rated at (ohm).
   *
   * @param leastModulusOhm least modulus of the curve (ohm)
   */
  public static double highestRatedOhm(double leastModulusOhm) {
    return Checks.positive(leastModulusOhm, "least impedance modulus", "ohm") / LEAST_SHARE;
  }

  /**
   * Returns the highest usual impedance that a curve may be rated at (ohm); empty if its least
   * modulus is too low for any.
   *
   * @param leastModulusOhm least modulus of the curve (ohm)
   */
  public static OptionalDouble highestUsualOhm(double leastModulusOhm) {
    Checks.positive(leastModulusOhm, "least impedance modulus", "ohm");
    OptionalDouble highest = OptionalDouble.empty();
    for (double usual : USUAL_OHM) {
      if (leastModulusOhm >= leastModulusOhm(usual)) {
        highest = OptionalDouble.of(usual);
      }
    }
    return highest;
  }
}
