package nullplane.units;

/**
 * The air the sound travels in.
 *
 * @param densityKgPerM3 density (kg/m3)
 * @param speedOfSoundMPerS speed of sound (m/s)
 */
public record Air(double densityKgPerM3, double speedOfSoundMPerS) {
  /** Specific gas constant of dry air (J/(kg K)): 8.314463 J/(mol K) over 0.0289652 kg/mol. */
  private static final double DRY_GAS_CONSTANT = 287.05;

  /** One minus the ratio of the molar masses of water and dry air (1). */
  private static final double VAPOUR_DEFICIT = 0.378;

  /** Checks that both values are finite and positive. */
  public Air {
    Checks.positive(densityKgPerM3, "air density", "kg/m3");
    Checks.positive(speedOfSoundMPerS, "speed of sound", "m/s");
  }

  /**
   * Dry air at 20 degrees C and 101.325 kPa: 1.2041 kg/m3, 343.2 m/s.
   *
   * <p>Source: ideal gas law for the density; ISO 9613-1:1993, c = 343.2 sqrt(T/293.15) m/s.
   */
  public static Air standard() {
    return new Air(1.2041, 343.2);
  }

  /**
   * Returns the air of a room.
   *
   * <p>Source: density by the ideal gas law for dry air and water vapour, rho = (p - 0.378 e)/(Rd
   * T); vapour pressure by ISO 9613-1:1993, annex B, psat/101.325 kPa = 10^(-6.8346 (273.16
   * K/T)^1.261 + 4.6151); speed of sound by ISO 9613-1:1993, c = 343.2 sqrt(T/293.15) m/s, which
   * leaves humidity out (50 % at 20 degrees C adds 0.2 %). Valid from 253 K to 323 K.
   *
   * @param temperatureK temperature (K), 253 to 323
   * @param pressurePa pressure (Pa), above 0
   * @param relativeHumidity relative humidity (1), 0 to 1
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Air of(double temperatureK, double pressurePa, double relativeHumidity) {
    if (!(temperatureK >= 253 && temperatureK <= 323)) {
      throw new IllegalArgumentException(
          "temperature is " + temperatureK + " K; allowed: 253 K .. 323 K");
    }
    Checks.positive(pressurePa, "air pressure", "Pa");
    if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
      throw new IllegalArgumentException(
          "relative humidity is " + relativeHumidity + "; allowed: 0 .. 1");
    }
    double saturationPa =
        101_325 * Math.pow(10, -6.8346 * Math.pow(273.16 / temperatureK, 1.261) + 4.6151);
    double vapourPa = relativeHumidity * saturationPa;
    return new Air(
        (pressurePa - VAPOUR_DEFICIT * vapourPa) / (DRY_GAS_CONSTANT * temperatureK),
        343.2 * Math.sqrt(temperatureK / 293.15));
  }

  /**
   * Returns the wave number k = 2 pi f / c (1/m).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double waveNumber(double frequencyHz) {
    return 2 * Math.PI * frequencyHz / speedOfSoundMPerS;
  }
}
