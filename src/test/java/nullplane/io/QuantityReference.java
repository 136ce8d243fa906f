package nullplane.io;

import java.util.Map;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Units against their definitions.
 *
 * <p>Source: B. N. Taylor and A. Thompson, NIST Special Publication 811 (2008), appendix B.8; the
 * factors printed bold there are exact. Tolerance: none. The conversion rounds once, so the result
 * must be the very double that Java reads from the exact decimal value.
 */
@Tag("reference")
class QuantityReference {
  private static final Map<Dimension, String> SI =
      Map.of(
          Dimension.LENGTH, "m",
          Dimension.MASS, "kg",
          Dimension.AREA, "m2",
          Dimension.VOLUME, "m3",
          Dimension.FLUX_DENSITY, "T");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // inch = 2.54 E-02 m, foot = 3.048 E-01 m, exact
        "1 in | LENGTH | 0.0254",
        "16.5 in | LENGTH | 0.4191",
        "1 ft | LENGTH | 0.3048",
        "3 feet | LENGTH | 0.9144",
        // pound (avoirdupois) = 4.5359237 E-01 kg, exact
        "1 lb | MASS | 0.45359237",
        // ounce (avoirdupois) = 1/16 lb = 2.8349523125 E-02 kg
        "1 oz | MASS | 0.028349523125",
        "16 oz | MASS | 0.45359237",
        // square inch = 6.4516 E-04 m2, square foot = 9.290304 E-02 m2, exact
        "1 in2 | AREA | 0.00064516",
        "144 sq in | AREA | 0.09290304",
        "1 ft2 | AREA | 0.09290304",
        // cubic foot = 2.831685 E-02 m3: 0.3048 cubed; litre = 1 E-03 m3, exact
        "1 ft3 | VOLUME | 0.028316846592",
        "1728 in3 | VOLUME | 0.0283168465920",
        "250 litres | VOLUME | 0.25",
        // gauss = 1 E-04 T, exact
        "10000 gauss | FLUX_DENSITY | 1",
      })
  void unitHasItsDefinedSize(String text, Dimension dimension, double exact)
      throws UnreadableQuantityException {
    Validation.check(
            text,
            "B. N. Taylor and A. Thompson, NIST Special Publication 811 (2008), appendix B.8.")
        .expected(exact, SI.get(dimension))
        .computed(Quantity.parse(text, dimension))
        .exactly();
  }
}
