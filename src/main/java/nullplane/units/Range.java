package nullplane.units;

/**
 * A closed interval; lower and upper may be equal, which pins the quantity.
 *
 * @param lower lower end (SI unit of the quantity)
 * @param upper upper end (SI unit of the quantity)
 */
public record Range(double lower, double upper) {

  /** Checks that both ends are finite and in order. */
  public Range {
    if (!Double.isFinite(lower) || !Double.isFinite(upper) || !(lower <= upper)) {
      throw new IllegalArgumentException(
          "range " + lower + " .. " + upper + "; allowed: finite, lower end first");
    }
  }

  /** Returns the interval that holds one value only. */
  public static Range pinned(double value) {
    return new Range(value, value);
  }

  /** Returns whether the interval holds one value only. */
  public boolean isPinned() {
    return lower == upper;
  }

  /**
   * Returns the point a given share of the way from lower to upper.
   *
   * @param share share of the way (1), 0 to 1
   */
  public double at(double share) {
    return lower + share * (upper - lower);
  }

  /** Returns whether the value lies in the interval, ends included. */
  public boolean contains(double value) {
    return value >= lower && value <= upper;
  }
}
