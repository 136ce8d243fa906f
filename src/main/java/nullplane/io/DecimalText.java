package nullplane.io;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as plain decimal text: a point, no exponent, no thousands marks, no locale. */
final class DecimalText {
  private DecimalText() {}

  /**
   * Returns a value in a smaller unit, digit for digit.
   *
   * @param value a finite value (SI)
   * @param decimals decimal places the unit is smaller by: 3 for mm from m
   * @throws IllegalStateException if the value is not finite
   */
  static String shifted(double value, int decimals) {
    return plain(exact(value).movePointRight(decimals));
  }

  /**
   * Returns a value in a smaller unit, to six significant digits.
   *
   * @param value a finite value (SI)
   * @param decimals decimal places the unit is smaller by: 3 for mm from m
   * @throws IllegalStateException if the value is not finite
   */
  static String rounded(double value, int decimals) {
    return plain(
        exact(value).movePointRight(decimals).round(new MathContext(6, RoundingMode.HALF_EVEN)));
  }

  private static BigDecimal exact(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException("a value to be written is " + value);
    }
    return BigDecimal.valueOf(value);
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
