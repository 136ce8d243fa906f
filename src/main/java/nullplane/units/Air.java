package nullplane.units;

/**
 * The air the sound travels in.
 *
 * @param densityKgPerM3 density (kg/m3)
 * @param speedOfSoundMPerS speed of sound (m/s)
 */
public record Air(double densityKgPerM3, double speedOfSoundMPerS) {

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
   * Returns the wave number k = 2 pi f / c (1/m).
   *
   * @param frequencyHz frequency (Hz)
   */
  public double waveNumber(double frequencyHz) {
    return 2 * Math.PI * frequencyHz / speedOfSoundMPerS;
  }
}
