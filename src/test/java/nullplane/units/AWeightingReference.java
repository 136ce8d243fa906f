package nullplane.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The closed formula against the printed table of the standard. */
@Tag("reference")
class AWeightingReference {
  /**
   * IEC 61672-1, table 3, column A, at the exact base-ten frequencies 1000 * 10^(n/10) Hz that the
   * nominal ones stand for. Printed to 0.1 dB, so that half of that is the tolerance.
   */
  @ParameterizedTest
  @CsvSource({
    "-20, -70.4", // 10 Hz
    "-19, -63.4", // 12.5 Hz
    "-18, -56.7", // 16 Hz
    "-17, -50.5", // 20 Hz
    "-16, -44.7", // 25 Hz
    "-15, -39.4", // 31.5 Hz
    "-14, -34.6", // 40 Hz
    "-13, -30.2", // 50 Hz
    "-12, -26.2", // 63 Hz
    "-11, -22.5", // 80 Hz
    "-10, -19.1", // 100 Hz
    "-9, -16.1", // 125 Hz
    "-8, -13.4", // 160 Hz
    "-7, -10.9", // 200 Hz
    "-6, -8.6", // 250 Hz
    "-5, -6.6", // 315 Hz
    "-4, -4.8", // 400 Hz
    "-3, -3.2", // 500 Hz
    "-2, -1.9", // 630 Hz
    "-1, -0.8", // 800 Hz
    "0, 0.0" // 1 kHz
  })
  void table(int tenths, double printedDb) {
    assertThat(AWeighting.atDb(1000 * Math.pow(10, tenths / 10.0)))
        .isCloseTo(printedDb, within(0.05 + 1e-9));
  }
}
