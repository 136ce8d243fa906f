package nullplane.fit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** A frequency in a sentence. */
final class PlainHertz {
  private PlainHertz() {}

  /**
   * Returns a frequency to four digits, with its unit: "80 Hz".
   *
   * @param frequencyHz frequency (Hz)
   */
  static String of(double frequencyHz) {
    BigDecimal rounded =
        BigDecimal.valueOf(frequencyHz).round(new MathContext(4, RoundingMode.HALF_UP));
    return rounded.stripTrailingZeros().toPlainString() + " Hz";
  }
}
