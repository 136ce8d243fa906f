package nullplane.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as people read them: three significant digits, SI prefixes, a unit after every value.
 * Full precision belongs into JSON and CSV, not here.
 */
public final class Figures {
  /** What stands where a number is missing. */
  public static final String NOT_DETERMINED = "not determined";

  private static final int DIGITS = 3;
  private static final MathContext THREE = new MathContext(DIGITS, RoundingMode.HALF_UP);

  private Figures() {}

  /**
   * Returns the value with three significant digits and no exponent; "not determined" for NaN and
   * infinity.
   *
   * @param value the value (in any unit)
   */
  public static String number(double value) {
    if (!Double.isFinite(value)) {
      return NOT_DETERMINED;
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(THREE);
    int before = rounded.precision() - rounded.scale();
    return rounded.setScale(Math.max(0, DIGITS - before), RoundingMode.HALF_UP).toPlainString();
  }

  /**
   * Returns the value with three significant digits and its unit.
   *
   * @param value the value (in the unit named)
   * @param unit the unit's symbol
   */
  public static String of(double value, String unit) {
    return Double.isFinite(value) ? number(value) + " " + unit : NOT_DETERMINED;
  }

  /** Returns a length in millimetres, from metres (m). */
  public static String millimetres(double lengthM) {
    return of(lengthM * 1e3, "mm");
  }

  /** Returns a length in metres (m). */
  public static String metres(double lengthM) {
    return of(lengthM, "m");
  }

  /** Returns a mass in grams, from kilograms (kg). */
  public static String grams(double massKg) {
    return of(massKg * 1e3, "g");
  }

  /** Returns an inductance in millihenries, from henries (H). */
  public static String millihenries(double inductanceH) {
    return of(inductanceH * 1e3, "mH");
  }

  /** Returns a frequency (Hz). */
  public static String hertz(double frequencyHz) {
    return of(frequencyHz, "Hz");
  }

  /** Returns a resistance or impedance modulus (ohm). */
  public static String ohms(double resistanceOhm) {
    return of(resistanceOhm, "ohm");
  }

  /** Returns a share as percent, from a ratio (1). */
  public static String percent(double share) {
    return of(share * 100, "%");
  }

  /**
   * Returns a level or a difference of levels (dB). Three significant digits, but never more than
   * two decimals: a hundredth of a decibel is far below anything that can be measured in a room.
   */
  public static String decibels(double levelDb) {
    return Double.isFinite(levelDb) ? decibelNumber(levelDb) + " dB" : NOT_DETERMINED;
  }

  /** Returns a difference of levels (dB) with its sign, as decibels() otherwise. */
  public static String signedDecibels(double levelDb) {
    return Double.isFinite(levelDb) ? signedDecibelNumber(levelDb) + " dB" : NOT_DETERMINED;
  }

  /** Returns the number of decibels() without its unit. */
  static String decibelNumber(double levelDb) {
    if (!Double.isFinite(levelDb)) {
      return NOT_DETERMINED;
    }
    BigDecimal exact = BigDecimal.valueOf(levelDb);
    int decimals = Math.abs(levelDb) >= 9.995 ? (Math.abs(levelDb) >= 99.95 ? 0 : 1) : 2;
    BigDecimal rounded = exact.setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0.00" : rounded.toPlainString();
  }

  /** Returns the number of signedDecibels() without its unit. */
  static String signedDecibelNumber(double levelDb) {
    String plain = decibelNumber(levelDb);
    return plain.startsWith("-") || !Double.isFinite(levelDb) || "0.00".equals(plain)
        ? plain
        : "+" + plain;
  }
}
