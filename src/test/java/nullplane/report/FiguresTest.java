package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "31, 31.0",
    "0.85, 0.850",
    "1234.4, 1230",
    "99.96, 100",
    "0.0123456, 0.0123",
    "-0.5, -0.500",
    "9.995, 10.0",
    "530.93, 531",
    "0, 0",
    "1e-5, 0.0000100",
    "1500000, 1500000"
  })
  void numbersHaveThreeSignificantDigitsAndNoExponent(double value, String text) {
    assertThat(Figures.number(value)).isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "94.26, 94.3 dB",
    "1.304, 1.30 dB",
    "0.0041, 0.00 dB",
    "-0.0041, 0.00 dB",
    "112.16, 112 dB",
    "-12.34, -12.3 dB",
    "9.996, 10.0 dB"
  })
  void decibelsNeverShowMoreThanHundredths(double level, String text) {
    assertThat(Figures.decibels(level)).isEqualTo(text);
  }

  @Test
  void differencesCarryTheirSign() {
    assertThat(Figures.signedDecibels(1.3)).isEqualTo("+1.30 dB");
    assertThat(Figures.signedDecibels(-1.3)).isEqualTo("-1.30 dB");
    assertThat(Figures.signedDecibels(0.001)).isEqualTo("0.00 dB");
  }

  @Test
  void siValuesBecomeReadableUnits() {
    assertThat(Figures.millimetres(0.008)).isEqualTo("8.00 mm");
    assertThat(Figures.grams(0.078)).isEqualTo("78.0 g");
    assertThat(Figures.millihenries(0.0009)).isEqualTo("0.900 mH");
    assertThat(Figures.hertz(41)).isEqualTo("41.0 Hz");
    assertThat(Figures.ohms(3)).isEqualTo("3.00 ohm");
    assertThat(Figures.percent(0.25)).isEqualTo("25.0 %");
  }

  @Test
  void whatIsNoNumberIsNotDetermined() {
    assertThat(Figures.hertz(Double.NaN)).isEqualTo("not determined");
    assertThat(Figures.decibels(Double.POSITIVE_INFINITY)).isEqualTo("not determined");
    assertThat(Figures.signedDecibels(Double.NEGATIVE_INFINITY)).isEqualTo("not determined");
    assertThat(Figures.number(Double.NaN)).isEqualTo("not determined");
  }
}
