package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BriefUnitTest {
  /** Prefixes of the SI brochure (BIPM, 9th ed.), table 7; the litre is 1e-3 m3, table 8. */
  @ParameterizedTest
  @CsvSource({
    "HENRY, 0.0009, 0.9, mH, H",
    "KILOGRAM, 0.06, 60, g, kg",
    "METRE, 0.038, 38, mm, m",
    "SQUARE_METRE, 0.0531, 531, cm\u00b2, m2",
    "CUBIC_METRE, 0.12, 120, l, m3",
    "SHARE, 0.05, 5, %, 1",
    "OHM, 5.6, 5.6, ohm, ohm",
    "HERTZ, 32, 32, Hz, Hz",
    "KELVIN, 60, 60, K, K"
  })
  void shownUnitsAreDecimalPartsOfSi(
      BriefUnit unit, double si, double shown, String symbol, String siSymbol) {
    assertThat(unit.toShown(si)).isCloseTo(shown, within(1e-12 * shown));
    assertThat(unit.shown()).isEqualTo(symbol);
    assertThat(unit.si()).isEqualTo(siSymbol);
  }

  @ParameterizedTest
  @EnumSource(BriefUnit.class)
  void decimalsAreThoseOfTheShownValue(BriefUnit unit) {
    assertThat(Math.log10(unit.toShown(1))).isCloseTo(unit.decimals(), within(1e-12));
  }
}
