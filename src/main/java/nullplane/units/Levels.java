package nullplane.units;

/** Sound pressure levels and amplitude ratios. Source: ISO 80000-8, definitions. */
public final class Levels {
  /** Reference sound pressure, 20 micropascal (Pa, root mean square). ISO 1683. */
  public static final double REFERENCE_PRESSURE_PA = 20e-6;

  private Levels() {}

  /**
   * Returns the sound pressure level (dB re 20 uPa).
   *
   * @param rmsPressurePa root-mean-square sound pressure (Pa), above 0
   */
  public static double soundPressureLevel(double rmsPressurePa) {
    return 20 * Math.log10(rmsPressurePa / REFERENCE_PRESSURE_PA);
  }

  /**
   * Returns an amplitude ratio in decibels, 20 lg ratio (dB).
   *
   * @param ratio amplitude ratio (1), above 0
   */
  public static double ofAmplitudeRatio(double ratio) {
    return 20 * Math.log10(ratio);
  }

  /**
   * Returns the amplitude ratio of a difference of levels, 10^(L/20) (1).
   *
   * @param decibels difference of levels (dB)
   */
  public static double amplitudeRatio(double decibels) {
    return Math.pow(10, decibels / 20);
  }

  /**
   * Returns a power ratio in decibels, 10 lg ratio (dB).
   *
   * @param ratio power ratio (1), above 0
   */
  public static double ofPowerRatio(double ratio) {
    return 10 * Math.log10(ratio);
  }
}
