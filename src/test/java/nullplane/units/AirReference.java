package nullplane.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Air against handbook rows in reference/handbook_checks.csv. */
@Tag("reference")
class AirReference {
  private static final double PRESSURE_PA = 101_325;

  /** ISO 9613-1:1993. Printed to 0.01 m/s; table: 0.02 m/s, by another formula as well. */
  @Test
  void air2SpeedOfSound() {
    HandbookRow row = HandbookRow.of("AIR2");
    double at20 = Air.of(293.15, PRESSURE_PA, 0).speedOfSoundMPerS();
    double at25 = Air.of(298.15, PRESSURE_PA, 0).speedOfSoundMPerS();
    row.check("speed of sound at 20 C, ISO 9613-1")
        .expected(row.figure("343.20"), "m/s")
        .computed(at20)
        .within(0.005);
    row.check("speed of sound at 20 C, 331.3 sqrt(T/273.15)")
        .expected(row.figure("343.21"), "m/s")
        .computed(at20)
        .within(0.02);
    row.check("speed of sound at 25 C, ISO 9613-1")
        .expected(row.figure("346.11"), "m/s")
        .computed(at25)
        .within(0.006);
    row.check("speed of sound at 25 C, 331.3 sqrt(T/273.15)")
        .expected(row.figure("346.13"), "m/s")
        .computed(at25)
        .within(0.02);
  }

  /** Ideal gas law. Table: 0.05 %. */
  @Test
  void air3Density() {
    HandbookRow row = HandbookRow.of("AIR3");
    row.check("density of dry air at 20 C")
        .expected(row.figure("1.2041"), "kg/m3")
        .computed(Air.of(293.15, PRESSURE_PA, 0).densityKgPerM3())
        .withinPercent(0.05);
    row.check("density of dry air at 25 C")
        .expected(row.figure("1.1839"), "kg/m3")
        .computed(Air.of(298.15, PRESSURE_PA, 0).densityKgPerM3())
        .withinPercent(0.05);
    row.check("density at 20 C and 50 % humidity")
        .expected(row.figure("1.1989"), "kg/m3")
        .computed(Air.of(293.15, PRESSURE_PA, 0.5).densityKgPerM3())
        .withinPercent(0.05);
  }

  /**
   * Saturated air by Dalton's law from the molar masses 28.965 and 18.015 g/mol (CODATA 2018 gas
   * constant). Saturation pressures: IAPWS-IF97 tables, 2.3393 kPa at 20 degrees C and 7.3849 kPa
   * at 40 degrees C. 0.02 %: the formulas for the vapour pressure differ by less than 0.2 %.
   */
  @ParameterizedTest
  @CsvSource({"293.15, 2339.3", "313.15, 7384.9"})
  void saturatedAirIsTheSumOfItsGases(double temperatureK, double saturationPa) {
    double massPerMole = (PRESSURE_PA - saturationPa) * 28.965e-3 + saturationPa * 18.015e-3;
    assertThat(Air.of(temperatureK, PRESSURE_PA, 1).densityKgPerM3())
        .isCloseTo(massPerMole / (8.314463 * temperatureK), withinPercentage(0.02));
  }

  /** Speeds at the ends of the range; ISO 9613-1:1993 goes with the square root of T. */
  @Test
  void bothEndsOfTheRangeAreAllowed() {
    double cold = Air.of(253, PRESSURE_PA, 0).speedOfSoundMPerS();
    double warm = Air.of(323, PRESSURE_PA, 0).speedOfSoundMPerS();
    assertThat(warm * warm / (cold * cold)).isEqualTo(323.0 / 253.0, offset(1e-12));
  }

  @Test
  void standardAirIsDryAirAtTwentyDegrees() {
    Air found = Air.of(293.15, PRESSURE_PA, 0);
    assertThat(Air.standard().densityKgPerM3()).isEqualTo(found.densityKgPerM3(), offset(5e-5));
    assertThat(Air.standard().speedOfSoundMPerS()).isEqualTo(found.speedOfSoundMPerS());
    assertThat(Air.standard().waveNumber(343.2)).isEqualTo(2 * Math.PI, offset(1e-14));
  }

  @Test
  void rejectsWeatherOutsideTheFormulas() {
    assertThatThrownBy(() -> Air.of(200, PRESSURE_PA, 0)).hasMessageContaining("253 K .. 323 K");
    assertThatThrownBy(() -> Air.of(324, PRESSURE_PA, 0)).hasMessageContaining("253 K .. 323 K");
    assertThatThrownBy(() -> Air.of(Double.NaN, PRESSURE_PA, 0))
        .hasMessageContaining("temperature");
    assertThatThrownBy(() -> Air.of(293, 0, 0)).hasMessageContaining("pressure");
    assertThatThrownBy(() -> Air.of(293, PRESSURE_PA, 50)).hasMessageContaining("humidity");
    assertThatThrownBy(() -> new Air(0, 343)).hasMessageContaining("air density");
  }
}
