package nullplane.validation;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as the page prints them: few digits, the same on every machine. */
final class Figures {
  private Figures() {}

  /** A number to so many significant digits, with no zeros at its end. */
  static String rounded(double value, int digits) {
    if (value == 0) {
      return "0";
    }
    BigDecimal number =
        new BigDecimal(value)
            .round(new MathContext(digits, RoundingMode.HALF_UP))
            .stripTrailingZeros();
    double size = Math.abs(number.doubleValue());
    if (size >= 1e-4 && size < 1e7) {
      return number.toPlainString();
    }
    int exponent = number.precision() - number.scale() - 1;
    return number.movePointLeft(exponent).stripTrailingZeros().toPlainString() + "e" + exponent;
  }

  /** A tolerance as it stands in the test. */
  static String shortest(double value) {
    return rounded(value, 6);
  }

  static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** A count with commas between thousands. */
  static String count(int count) {
    return String.format(Locale.ROOT, "%,d", count);
  }

  /** A real or complex number moved by some noise; what is below a floor is nothing. */
  static String number(double[] value, double off, double floor, int digits, String unit) {
    if (value.length == 2) {
      double size = Math.hypot(value[0], value[1]);
      // a part is printed to the digits of the whole
      String re = part(value[0] + off, size, digits);
      String im = part(value[1] + off, size, digits);
      String sum = im.startsWith("-") ? re + " - " + im.substring(1) : re + " + " + im;
      return withUnit(sum + " j", unit);
    }
    if (Math.abs(value[0]) < floor) {
      return withUnit("0", unit);
    }
    return withUnit(rounded(value[0] + off, digits), unit);
  }

  private static String part(double value, double size, int digits) {
    int places = digits - 1 - (int) Math.floor(Math.log10(size));
    BigDecimal number = new BigDecimal(value).setScale(places, RoundingMode.HALF_UP);
    return rounded(number.doubleValue(), digits);
  }

  /** A deviation to one digit, or that it is below the least one worth telling. */
  static String deviation(double value, double floor, String unit) {
    if (value < floor) {
      return "below " + withUnit(rounded(floor, 1), unit);
    }
    return value == 0 ? "none" : withUnit(rounded(value, 1), unit);
  }

  /**
   * The least deviation worth telling: a power of ten about a hundredth of what is allowed, above
   * the noise of the last bits; what is allowed itself if that is within the noise.
   */
  static double floor(double allowed, double noise) {
    if (allowed == 0) {
      return 0;
    }
    double hundredth = Math.pow(10, Math.floor(Math.log10(allowed / 100) + 1e-9));
    if (hundredth >= noise) {
      return hundredth;
    }
    return Math.min(allowed, Math.pow(10, Math.ceil(Math.log10(noise) - 1e-9)));
  }
}
