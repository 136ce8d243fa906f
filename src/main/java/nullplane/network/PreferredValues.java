package nullplane.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import nullplane.units.Checks;

/**
 * Values that parts are sold in. Source: IEC 60063, the tables as printed; they are not the rounded
 * steps of a geometric series.
 */
public enum PreferredValues {
  /** Six values a decade. */
  E6,
  /** Twelve values a decade. */
  E12,
  /** Twenty-four values a decade. */
  E24;

  /** Share by which a limit may be off, so that rounding of its unit drops no value (1). */
  private static final double SLACK = 1e-9;

  private static final List<Integer> SIX = List.of(10, 15, 22, 33, 47, 68);
  private static final List<Integer> TWELVE =
      List.of(10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82);
  private static final List<Integer> TWENTY_FOUR =
      List.of(
          10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75,
          82, 91);

  /** Returns the values of the decade from 10, in rising order. */
  public List<Integer> decade() {
    return switch (this) {
      case E6 -> SIX;
      case E12 -> TWELVE;
      case E24 -> TWENTY_FOUR;
    };
  }

  /**
   * Returns all values from a lower to an upper one, both included, in rising order (unit of the
   * limits). Each is the double nearest to its decimal figure.
   *
   * @param lower lower limit, 1e-18 or more
   * @param upper upper limit, at least the lower and at most 1e18
   * @throws IllegalArgumentException if the limits are out of range or order
   */
  public List<Double> between(double lower, double upper) {
    Checks.positive(lower, "lower limit", "(unit of the part)");
    if (!(lower >= 1e-18 && upper >= lower && upper <= 1e18)) {
      throw new IllegalArgumentException(
          "limits " + lower + " .. " + upper + "; allowed: 1e-18 .. 1e18, lower one first");
    }
    List<Double> values = new ArrayList<>();
    int last = (int) Math.floor(Math.log10(upper));
    for (int power = (int) Math.floor(Math.log10(lower)) - 2; power <= last; power++) {
      for (int figure : decade()) {
        double value = scaled(figure, power);
        if (value >= lower * (1 - SLACK) && value <= upper * (1 + SLACK)) {
          values.add(value);
        }
      }
    }
    return Collections.unmodifiableList(values);
  }

  /**
   * Returns the value of the series nearest by ratio, the lower one of two equally near (unit of
   * the value).
   *
   * @param wanted the value wanted, 1e-17 to 1e17
   * @throws IllegalArgumentException if it is out of range
   */
  public double nearest(double wanted) {
    if (!(wanted >= 1e-17 && wanted <= 1e17)) {
      throw new IllegalArgumentException("value is " + wanted + "; allowed: 1e-17 .. 1e17");
    }
    double best = 0;
    double bestRatio = Double.POSITIVE_INFINITY;
    for (double value : between(wanted / 2, wanted * 2)) {
      double ratio = Math.max(value / wanted, wanted / value);
      if (ratio < bestRatio) {
        bestRatio = ratio;
        best = value;
      }
    }
    return best;
  }

  /** Returns figure times ten to the power, rounded once (1): powers up to 22 are exact. */
  private static double scaled(int figure, int power) {
    return power < 0 ? figure / powerOfTen(-power) : figure * powerOfTen(power);
  }

  private static double powerOfTen(int power) {
    double result = 1;
    for (int i = 0; i < power; i++) {
      result *= 10;
    }
    return result;
  }
}
