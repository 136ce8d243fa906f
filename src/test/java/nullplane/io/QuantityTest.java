package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class QuantityTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "42 cm | LENGTH | 0.42",
        "42cm | LENGTH | 0.42",
        "  42   cm  | LENGTH | 0.42",
        "-25 cm | LENGTH | -0.25",
        "\u221225 cm | LENGTH | -0.25",
        "+1.5 m | LENGTH | 1.5",
        ".5 m | LENGTH | 0.5",
        "5. m | LENGTH | 5",
        "42\u00a0cm | LENGTH | 0.42",
        "300 mm | LENGTH | 0.3",
        "12\" | LENGTH | 0.3048",
        "12 inches | LENGTH | 0.3048",
        "35 Hz | FREQUENCY | 35",
        "1.2 kHz | FREQUENCY | 1200",
        "6 ohm | RESISTANCE | 6",
        "6 ohms | RESISTANCE | 6",
        "6 \u03a9 | RESISTANCE | 6",
        "6 \u2126 | RESISTANCE | 6",
        "50 m\u03a9 | RESISTANCE | 0.05",
        "0.9 mH | INDUCTANCE | 0.0009",
        "900 uH | INDUCTANCE | 0.0009",
        "900 \u00b5H | INDUCTANCE | 0.0009",
        "900 \u03bcH | INDUCTANCE | 0.0009",
        "531 cm2 | AREA | 0.0531",
        "531 cm\u00b2 | AREA | 0.0531",
        "531 cm^2 | AREA | 0.0531",
        "531 sq cm | AREA | 0.0531",
        "0.0531 m2 | AREA | 0.0531",
        "78 dB | LEVEL | 78",
        "-3 dB | LEVEL | -3",
        "2.83 V | VOLTAGE | 2.83",
        "150 W | POWER | 150",
        "0.15 kW | POWER | 150",
        "1.0 T | FLUX_DENSITY | 1",
        "1100 mT | FLUX_DENSITY | 1.1",
        "100 g | MASS | 0.1",
        "0.1 kg | MASS | 0.1",
        "250 l | VOLUME | 0.25",
        "250 L | VOLUME | 0.25",
        "0.25 m\u00b3 | VOLUME | 0.25",
        "3000 N/m | STIFFNESS | 3000",
        "3 N/mm | STIFFNESS | 3000",
        "0.4 mm/N | COMPLIANCE | 0.0004",
        "9.5 Tm | FORCE_FACTOR | 9.5",
        "9.5 T m | FORCE_FACTOR | 9.5",
        "9.5 T\u00b7m | FORCE_FACTOR | 9.5",
        "9.5 N/A | FORCE_FACTOR | 9.5",
        "2.5 N s/m | MECHANICAL_RESISTANCE | 2.5",
        "2.5 N\u00b7s/m | MECHANICAL_RESISTANCE | 2.5",
        "2.5 kg/s | MECHANICAL_RESISTANCE | 2.5",
        "0.73 | NUMBER | 0.73",
        "1e3 Hz | FREQUENCY | 1000",
        "9e-4 H | INDUCTANCE | 0.0009",
        "0 mm | LENGTH | 0",
      })
  void readsWhatPeopleWrite(String text, Dimension dimension, double si)
      throws UnreadableQuantityException {
    assertThat(Quantity.parse(text, dimension)).isEqualTo(si);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "42 | LENGTH | the unit is missing | write 42 cm",
        "0 | LENGTH | the unit is missing | write 0 cm",
        "35 | FREQUENCY | the unit is missing | write 35 Hz",
        "1,5 cm | LENGTH | numbers are written with a decimal point and no other marks | write 1.5 cm",
        "1,000 mm | LENGTH | numbers are written with a decimal point and no other marks | write 1.000"
            + " mm, or 1000 mm if thousands are meant",
        "0,7 | NUMBER | numbers are written with a decimal point and no other marks | write 0.7",
        "42 Hz | LENGTH | Hz is a unit of frequency, not of length | write a number and its unit, such"
            + " as 5 cm",
        "35 HERTZ | FREQUENCY | unknown unit of frequency: HERTZ | write 35 Hz",
        "0.9 MH | INDUCTANCE | unknown unit of inductance: MH | write 0.9 mH",
        "0.7 cm | NUMBER | a bare number is needed, without a unit | write 0.7",
        "NaN | NUMBER | the number must be finite | write a number such as 0.7",
        "nan cm | LENGTH | the number must be finite | write a number and its unit, such as 5 cm",
        ".inf Hz | FREQUENCY | the number must be finite | write a number and its unit, such as 5 Hz",
        "-Infinity V | VOLTAGE | the number must be finite | write a number and its unit, such as 5 V",
        "-5 Hz | FREQUENCY | a frequency below zero has no meaning here | write a number and its unit,"
            + " such as 5 Hz",
        "-0.7 | NUMBER | a number below zero has no meaning here | write a number such as 0.7",
        "1e400 cm | LENGTH | the exponent 400 is absurd | write a number and its unit, such as 5 cm",
        "1e999999999999 cm | LENGTH | the exponent 999999999999 is absurd | write a number and its"
            + " unit, such as 5 cm",
        "1e-31 | NUMBER | the exponent -31 is absurd | write a number such as 0.7",
        "'' | LENGTH | the value is missing | write a number and its unit, such as 5 cm",
        "wide | LENGTH | this is not a quantity | write a number and its unit, such as 5 cm",
        "high | NUMBER | this is not a number | write a number such as 0.7",
        "1 cm .. 2 cm | LENGTH | one value is needed, not a range | write a number and its unit, such"
            + " as 5 cm",
      })
  void refusesTheRestAndSaysWhatToWrite(
      String text, Dimension dimension, String problem, String hint) {
    UnreadableQuantityException fault = fault(text, dimension);
    assertThat(fault.problem()).isEqualTo(problem);
    assertThat(fault.hint()).isEqualTo(hint);
  }

  @Test
  void refusesVeryLongText() {
    assertThat(fault("1".repeat(100_000) + " cm", Dimension.LENGTH).problem())
        .isEqualTo("this is not a quantity");
  }

  @Test
  void rangeHasTwoEndsOrPins() throws UnreadableQuantityException {
    assertThat(Quantity.parseRange("20 Hz .. 45 Hz", Dimension.FREQUENCY))
        .isEqualTo(new Range(20, 45));
    assertThat(Quantity.parseRange("0.3..1.5", Dimension.NUMBER)).isEqualTo(new Range(0.3, 1.5));
    assertThat(Quantity.parseRange("40 g \u2026 0.11 kg", Dimension.MASS))
        .isEqualTo(new Range(0.04, 0.11));
    assertThat(Quantity.parseRange("31 Hz", Dimension.FREQUENCY)).isEqualTo(Range.pinned(31));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "45 Hz .. 20 Hz | the range is reversed | write the lower end first: 20 Hz .. 45 Hz",
        "20 .. 45 Hz | the lower end has no unit | write 20 Hz .. 45 Hz",
        "20 .. 45 | the unit is missing | write 20 Hz",
        "20 Hz .. | a range needs a lower and an upper end | write a number and its unit, such as 5 Hz",
        "20 Hz .. 30 Hz .. 40 Hz | a range needs a lower and an upper end | write a number and its"
            + " unit, such as 5 Hz",
        "20 Hz .. NaN Hz | the number must be finite | write a number and its unit, such as 5 Hz",
      })
  void refusesBadRanges(String text, String problem, String hint) {
    UnreadableQuantityException fault =
        catchThrowableOfType(
            UnreadableQuantityException.class,
            () -> Quantity.parseRange(text, Dimension.FREQUENCY));
    assertThat(fault.problem()).isEqualTo(problem);
    assertThat(fault.hint()).isEqualTo(hint);
  }

  @Test
  void listHasCommasBetween() throws UnreadableQuantityException {
    assertThat(Quantity.parseList("31.5 Hz, 63 Hz,0.1 kHz", Dimension.FREQUENCY))
        .isEqualTo(List.of(31.5, 63.0, 100.0));
    assertThat(
            catchThrowableOfType(
                UnreadableQuantityException.class,
                () -> Quantity.parseList("31.5 Hz,", Dimension.FREQUENCY)))
        .hasMessageContaining("the value is missing");
  }

  @ParameterizedTest
  @EnumSource(value = Dimension.class, names = "NUMBER", mode = EnumSource.Mode.EXCLUDE)
  void everyDimensionKnowsItsUsualUnit(Dimension dimension) throws UnreadableQuantityException {
    assertThat(Quantity.parse("3 " + dimension.usualUnit(), dimension)).isPositive();
  }

  @Test
  void messagesRoundLengths() {
    assertThat(Quantity.centimetres(0.025)).isEqualTo("2.5 cm");
    assertThat(Quantity.centimetres(0.31)).isEqualTo("31 cm");
    assertThat(Quantity.centimetres(-0.00001)).isEqualTo("0 cm");
    assertThat(Quantity.digits(100)).isEqualTo("100");
    assertThat(Quantity.digits(2.0 / 3)).isEqualTo("0.666667");
  }

  private static UnreadableQuantityException fault(String text, Dimension dimension) {
    return catchThrowableOfType(
        UnreadableQuantityException.class, () -> Quantity.parse(text, dimension));
  }
}
