package nullplane.units;

import java.util.Locale;

/** Sentences with numbers in them, none of which may be NaN or infinite. */
public final class FiniteText {
  private FiniteText() {}

  /**
   * Returns a text as {@link String#format} makes it, with a decimal point.
   *
   * @param format the text with a place for each value
   * @param values what stands there
   * @throws IllegalStateException if a value is a number that is not finite; names the text
   */
  public static String of(String format, Object... values) {
    for (Object value : values) {
      if ((value instanceof Double number && !Double.isFinite(number))
          || (value instanceof Float single && !Float.isFinite(single))) {
        throw new IllegalStateException("a number is " + value + " in: " + format);
      }
    }
    return String.format(Locale.ROOT, format, values);
  }
}
