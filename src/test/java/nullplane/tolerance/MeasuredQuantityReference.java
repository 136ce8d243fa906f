package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import nullplane.HandbookRow;
import nullplane.driver.Woofer;
import nullplane.units.Air;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is measured of a woofer, and windows on it, by handbook rows and by hand. */
@Tag("reference")
class MeasuredQuantityReference {
  private static final double AREA_M2 = 0.053;

  /** The woofer of rows AM01 to AM03; air of a disc, 8/3 rho a^3 (H. Lamb, 1932, art. 102). */
  private static Woofer bench() {
    HandbookRow row = HandbookRow.of("AM03");
    double airKg = 8.0 / 3 * 1.2041 * Math.pow(AREA_M2 / Math.PI, 1.5);
    return new Woofer(
        "hall bench",
        0.3,
        AREA_M2,
        row.figure("6"),
        0.9e-3,
        row.figure("53.333") * 1e-3 - airKg,
        1e3 / row.figure("0.52775"),
        row.figure("2.0106"),
        row.figure("10.4195"),
        0.008,
        100);
  }

  private static double of(MeasuredQuantity quantity) {
    return quantity.of(bench(), Air.standard());
  }

  /**
   * R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383; the rows print four to five digits. The level
   * comes by the volume, eta0 = 4 pi^2/c^3 fs^3 Vas/Qes, and 112.160 dB of row TS09.
   */
  @Test
  void am03QuantitiesOfTheBenchWoofer() {
    HandbookRow row = HandbookRow.of("AM03");
    row.check("resonance as measured")
        .expected(30, "Hz")
        .computed(of(MeasuredQuantity.RESONANCE))
        .withinPercent(0.02);
    row.check("total Q as measured")
        .expected(0.5, "1")
        .computed(of(MeasuredQuantity.TOTAL_Q))
        .withinPercent(0.02);
    row.check("electrical Q as measured")
        .expected(0.55556, "1")
        .computed(of(MeasuredQuantity.ELECTRICAL_Q))
        .withinPercent(0.02);
    row.check("moving mass as measured")
        .expected(53.333, "g")
        .computed(of(MeasuredQuantity.MOVING_MASS) * 1e3)
        .withinPercent(0.001);
    assertThat(of(MeasuredQuantity.BARE_MASS)).isLessThan(0.0472).isGreaterThan(0.0457);
    assertThat(of(MeasuredQuantity.FORCE_FACTOR)).isEqualTo(10.4195);
    assertThat(of(MeasuredQuantity.RESISTANCE)).isEqualTo(6);
    assertThat(of(MeasuredQuantity.INDUCTANCE)).isEqualTo(0.9e-3);
    double vas = 1.2041 * 343.2 * 343.2 * AREA_M2 * AREA_M2 * 0.52775e-3;
    assertThat(of(MeasuredQuantity.EQUIVALENT_VOLUME)).isCloseTo(vas, withinPercentage(0.01));
    double eta = 4 * Math.PI * Math.PI / Math.pow(343.2, 3) * 27_000 * vas / 0.55556;
    double level =
        HandbookRow.of("TS09").figure("112.160") + 10 * Math.log10(eta * 2.83 * 2.83 / 6);
    assertThat(of(MeasuredQuantity.LEVEL)).isCloseTo(level, within(0.005));
  }

  /** Shares of the value, or decibels; nothing deviates from 0. */
  @Test
  void deviationsAndValuesAreInverse() {
    assertThat(MeasuredQuantity.RESISTANCE.deviation(6.3, 6)).isCloseTo(0.05, within(1e-12));
    assertThat(MeasuredQuantity.RESISTANCE.at(6, -0.05)).isCloseTo(5.7, within(1e-12));
    assertThat(MeasuredQuantity.LEVEL.deviation(91.5, 90)).isEqualTo(1.5);
    assertThat(MeasuredQuantity.LEVEL.at(90, -1.5)).isEqualTo(88.5);
    assertThat(MeasuredQuantity.INDUCTANCE.deviation(0, 0)).isZero();
  }

  /** Two standard deviations about the mean, wherever that lies: shares of 0.9 and 1.1, of 3. */
  @Test
  void spreadOfTwoValuesByHand() {
    for (double shift : new double[] {0, 0.3}) {
      double[] values = {
        3 * (0.9 + shift), 3 * (1.1 + shift), 3 * (0.9 + shift), 3 * (1.1 + shift)
      };
      QuantitySpread spread = QuantitySpread.of(MeasuredQuantity.RESISTANCE, 3, values);
      assertThat(spread.halfWidth()).isCloseTo(0.2, within(1e-12));
      assertThat(spread.lower()).isCloseTo(2.4, within(1e-12));
      assertThat(spread.upper()).isCloseTo(3.6, within(1e-12));
    }
    QuantitySpread level =
        QuantitySpread.of(MeasuredQuantity.LEVEL, 90, new double[] {89, 90, 91, 90});
    assertThat(level.halfWidth()).isCloseTo(2 * Math.sqrt(0.5), within(1e-12));
  }

  /** 5 % of 6 ohm, which is the usual window; half of it costs twice as much. */
  @Test
  void windowOfAResistance() {
    AcceptanceWindow usual =
        new AcceptanceWindow(MeasuredQuantity.RESISTANCE, 6, 0.05, WindowLimit.YIELD);
    assertThat(usual.lower()).isCloseTo(5.7, within(1e-12));
    assertThat(usual.upper()).isCloseTo(6.3, within(1e-12));
    assertThat(usual.accepts(usual.lower())).isTrue();
    assertThat(usual.accepts(usual.upper())).isTrue();
    assertThat(usual.accepts(5.699)).isFalse();
    assertThat(usual.accepts(6.301)).isFalse();
    assertThat(usual.accepts(Double.NaN)).isFalse();
    assertThat(usual.tighterThanUsual()).isFalse();
    assertThat(usual.costShare()).isEqualTo(1);
    AcceptanceWindow half =
        new AcceptanceWindow(MeasuredQuantity.RESISTANCE, 6, 0.025, WindowLimit.YIELD);
    assertThat(half.tighterThanUsual()).isTrue();
    assertThat(half.costShare()).isEqualTo(2);
    AcceptanceWindow level =
        new AcceptanceWindow(MeasuredQuantity.LEVEL, 90, 1.5, WindowLimit.YIELD);
    assertThat(level.upper()).isEqualTo(91.5);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -0.1, 1, Double.NaN, Double.POSITIVE_INFINITY})
  void windowsThatAreNone(double halfWidth) {
    assertThatThrownBy(
            () ->
                new AcceptanceWindow(MeasuredQuantity.RESISTANCE, 6, halfWidth, WindowLimit.YIELD))
        .hasMessageContaining("window of Re");
  }

  /** ISO 2859-1: limits are per cent of nonconforming units. */
  @ParameterizedTest
  @CsvSource({"AQL_0_10, 0.001", "AQL_0_65, 0.0065", "AQL_6_5, 0.065"})
  void qualityLimitsArePerCent(AcceptanceQuality quality, double share) {
    assertThat(quality.share()).isCloseTo(share, within(1e-15));
  }
}
