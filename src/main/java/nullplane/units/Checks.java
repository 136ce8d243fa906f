package nullplane.units;

/** Argument checks that also reject NaN, with messages that name quantity, value and unit. */
public final class Checks {
  private Checks() {}

  /**
   * Returns the value if it is finite and greater than zero.
   *
   * @param value the value (in the unit named)
   * @param name the quantity's name
   * @param unit the unit's symbol
   * @throws IllegalArgumentException otherwise
   */
  public static double positive(double value, String name, String unit) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          name + " is " + value + " " + unit + "; allowed: finite and above 0 " + unit);
    }
    return value;
  }

  /**
   * Returns the value if it is finite and not negative.
   *
   * @param value the value (in the unit named)
   * @param name the quantity's name
   * @param unit the unit's symbol
   * @throws IllegalArgumentException otherwise
   */
  public static double notNegative(double value, String name, String unit) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          name + " is " + value + " " + unit + "; allowed: finite, 0 " + unit + " or more");
    }
    return value;
  }

  /**
   * Returns the value if it is finite.
   *
   * @param value the value (in the unit named)
   * @param name the quantity's name
   * @param unit the unit's symbol
   * @throws IllegalArgumentException otherwise
   */
  public static double finite(double value, String name, String unit) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          name + " is " + value + " " + unit + "; allowed: a finite number");
    }
    return value;
  }
}
