package nullplane.io;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nullplane.units.Range;

/**
 * Quantities as people write them, "42 cm" or "20 Hz .. 45 Hz", and as the program computes with
 * them, in SI. Decimal point only. The conversion is exact and rounded once, so "42 cm" is the
 * double nearest to 0.42.
 */
public final class Quantity {
  private static final int LONGEST_TEXT = 64;
  private static final int LARGEST_EXPONENT = 30;
  private static final Pattern NUMBER =
      Pattern.compile("([+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE]([+-]?[0-9]+))?)(.*)");
  private static final Pattern COMMA = Pattern.compile("([+-]?[0-9]+),([0-9]+)(.*)");
  private static final Pattern NOT_FINITE =
      Pattern.compile("[+-]?\\.?(nan|inf|infinity|\u221e).*", Pattern.CASE_INSENSITIVE);
  private static final Pattern DOTS = Pattern.compile("\\.{2,}|\u2026");

  private Quantity() {}

  /**
   * Returns the value of a quantity (SI unit of the dimension; dB for levels).
   *
   * @param text for example "16.5 in"
   * @param dimension what the quantity measures
   * @throws UnreadableQuantityException if the text is not a finite quantity of that dimension, or
   *     is negative where that has no meaning
   */
  public static double parse(String text, Dimension dimension) throws UnreadableQuantityException {
    return parse(text, Form.of(dimension));
  }

  /** Returns the value of a quantity, with the given form's unit and example in messages. */
  static double parse(String text, Form form) throws UnreadableQuantityException {
    Dimension dimension = form.dimension();
    String trimmed = plain(text);
    if (trimmed.isEmpty()) {
      throw new UnreadableQuantityException("the value is missing", form.hint());
    }
    if (trimmed.length() > LONGEST_TEXT) {
      throw new UnreadableQuantityException("this is not a quantity", form.hint());
    }
    if (DOTS.matcher(trimmed).find()) {
      throw new UnreadableQuantityException("one value is needed, not a range", form.hint());
    }
    if (NOT_FINITE.matcher(trimmed).matches()) {
      throw new UnreadableQuantityException("the number must be finite", form.hint());
    }
    Matcher comma = COMMA.matcher(trimmed);
    if (comma.matches()) {
      String unit = Excerpt.of(comma.group(3).strip());
      String whole = comma.group(1);
      String part = comma.group(2);
      String write = ("write " + whole + "." + part + " " + unit).strip();
      throw new UnreadableQuantityException(
          "numbers are written with a decimal point and no other marks",
          part.length() == 3
              ? write + ", or " + (whole + part + " " + unit).strip() + " if thousands are meant"
              : write);
    }
    Matcher number = NUMBER.matcher(trimmed);
    if (!number.matches()) {
      throw new UnreadableQuantityException(
          dimension == Dimension.NUMBER ? "this is not a number" : "this is not a quantity",
          form.hint());
    }
    double value = inSi(number, form);
    if (value < 0 && !dimension.signed()) {
      throw new UnreadableQuantityException(
          "a " + dimension.word() + " below zero has no meaning here", form.hint());
    }
    return value + 0.0; // turns -0.0 into 0.0
  }

  /**
   * Returns half of the last digit written, as a share of the number (1); 0 for zero and for what
   * is no number. "31 Hz" may be anything from 30.5 to 31.5 Hz: 0.016.
   *
   * @param text for example "31 Hz"
   */
  static double rounding(String text) {
    Matcher number = NUMBER.matcher(plain(text));
    if (!number.matches() || plain(text).length() > LONGEST_TEXT) {
      return 0;
    }
    String exponent = number.group(2);
    if (exponent != null && exponent.length() > 3) {
      return 0;
    }
    BigDecimal value = new BigDecimal(number.group(1));
    return value.signum() == 0 ? 0 : value.ulp().doubleValue() / 2 / value.abs().doubleValue();
  }

  /**
   * Returns a range of a quantity (SI unit of the dimension); a single value pins it.
   *
   * @param text for example "20 Hz .. 45 Hz" or "31 Hz"
   * @param dimension what the quantity measures
   * @throws UnreadableQuantityException if an end is unreadable or the ends are reversed
   */
  public static Range parseRange(String text, Dimension dimension)
      throws UnreadableQuantityException {
    return parseRange(text, Form.of(dimension));
  }

  /** Returns a range of a quantity, with the given form's unit and example in messages. */
  static Range parseRange(String text, Form form) throws UnreadableQuantityException {
    Dimension dimension = form.dimension();
    String trimmed = plain(text);
    Matcher dots = DOTS.matcher(trimmed);
    if (!dots.find()) {
      return Range.pinned(parse(trimmed, form));
    }
    String from = trimmed.substring(0, dots.start()).strip();
    String to = trimmed.substring(dots.end()).strip();
    if (from.isEmpty() || to.isEmpty() || DOTS.matcher(to).find()) {
      throw new UnreadableQuantityException("a range needs a lower and an upper end", form.hint());
    }
    if (dimension != Dimension.NUMBER && isBareNumber(from) && !isBareNumber(to)) {
      String unit = unitOf(to);
      throw new UnreadableQuantityException(
          "the lower end has no unit", "write " + rangeInWords(from + " " + unit, to));
    }
    double lower = parse(from, form);
    double upper = parse(to, form);
    if (lower > upper) {
      throw new UnreadableQuantityException(
          "the range is reversed", "write the lower end first: " + rangeInWords(to, from));
    }
    return new Range(lower, upper);
  }

  private static String rangeInWords(String from, String to) {
    return Excerpt.of(from) + " .. " + Excerpt.of(to);
  }

  /**
   * Returns the values of a list with commas between them (SI unit of the dimension).
   *
   * @param text for example "31.5 Hz, 63 Hz"
   * @param dimension what the quantities measure
   * @throws UnreadableQuantityException if one of them is unreadable
   */
  public static List<Double> parseList(String text, Dimension dimension)
      throws UnreadableQuantityException {
    List<Double> values = new ArrayList<>();
    for (String part : text.split(",", -1)) {
      values.add(parse(part, dimension));
    }
    return List.copyOf(values);
  }

  /**
   * Returns a length in centimetres for a message, to a tenth of a millimetre: "2.5 cm".
   *
   * @param lengthM the length (m)
   */
  static String centimetres(double lengthM) {
    BigDecimal rounded = BigDecimal.valueOf(lengthM * 100).setScale(2, RoundingMode.HALF_UP);
    return plainDigits(rounded) + " cm";
  }

  /**
   * Returns a number for a message, to six significant digits.
   *
   * @param value a finite number (any unit)
   */
  static String digits(double value) {
    return plainDigits(BigDecimal.valueOf(value).round(new MathContext(6, RoundingMode.HALF_UP)));
  }

  private static String plainDigits(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }

  private static double inSi(Matcher number, Form form) throws UnreadableQuantityException {
    Dimension dimension = form.dimension();
    String exponent = number.group(2);
    if (exponent != null
        && (exponent.length() > 3 || Math.abs(Integer.parseInt(exponent)) > LARGEST_EXPONENT)) {
      throw new UnreadableQuantityException("the exponent " + exponent + " is absurd", form.hint());
    }
    BigDecimal value = new BigDecimal(number.group(1));
    String written = number.group(3).strip();
    String unit = Dimension.normalised(written);
    if (dimension == Dimension.NUMBER) {
      if (!unit.isEmpty()) {
        throw new UnreadableQuantityException(
            "a bare number is needed, without a unit", "write " + number.group(1));
      }
      return value.doubleValue();
    }
    if (unit.isEmpty()) {
      throw new UnreadableQuantityException(
          "the unit is missing", "write " + number.group(1) + " " + form.unit());
    }
    BigDecimal factor = dimension.factor(unit).orElse(BigDecimal.ZERO);
    if (factor.signum() == 0) {
      throw unknownUnit(number.group(1), written, unit, form);
    }
    return value.multiply(factor).doubleValue();
  }

  private static UnreadableQuantityException unknownUnit(
      String number, String written, String unit, Form form) {
    Dimension dimension = form.dimension();
    String write = "write " + number + " " + dimension.sameButForCase(unit).orElse(form.unit());
    return Dimension.knowing(unit)
        .map(
            other ->
                new UnreadableQuantityException(
                    Excerpt.of(written)
                        + " is a unit of "
                        + other.word()
                        + ", not of "
                        + dimension.word(),
                    form.hint()))
        .orElseGet(
            () ->
                new UnreadableQuantityException(
                    "unknown unit of " + dimension.word() + ": " + Excerpt.of(written), write));
  }

  private static boolean isBareNumber(String text) {
    Matcher number = NUMBER.matcher(text);
    return number.matches() && number.group(3).isBlank();
  }

  private static String unitOf(String text) {
    Matcher number = NUMBER.matcher(text);
    return number.matches() ? number.group(3).strip() : "";
  }

  /** Returns the text with typographic minus signs made plain and blanks cut off its ends. */
  private static String plain(String text) {
    return text.replace('\u2212', '-').replace('\u00a0', ' ').replace('\u202f', ' ').strip();
  }

  /**
   * How a quantity is asked for.
   *
   * @param dimension what it measures
   * @param unit the unit to propose when there is none
   * @param hint what to write, with an example
   */
  record Form(Dimension dimension, String unit, String hint) {
    static Form of(Dimension dimension) {
      String unit = dimension.usualUnit();
      return new Form(
          dimension,
          unit,
          dimension == Dimension.NUMBER
              ? "write a number such as 0.7"
              : "write a number and its unit, such as 5 " + unit);
    }
  }
}
