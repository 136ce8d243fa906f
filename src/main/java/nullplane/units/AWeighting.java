package nullplane.units;

/**
 * The A-weighting of sound level meters as a closed formula.
 *
 * <p>Source: IEC 61672-1:2013, annex E (formula and pole frequencies from memory; the values are
 * tested against the standard's table 3). Valid from 10 Hz to 20 kHz.
 */
public final class AWeighting {
  private static final double POLE_1_HZ = 20.598997;
  private static final double POLE_2_HZ = 107.65265;
  private static final double POLE_3_HZ = 737.86223;
  private static final double POLE_4_HZ = 12194.217;
  private static final double REFERENCE_HZ = 1000;

  private AWeighting() {}

  /**
   * Returns what is added to an unweighted level (dB): 0 at 1 kHz, below 0 under it.
   *
   * @param frequencyHz frequency (Hz), above 0
   */
  public static double atDb(double frequencyHz) {
    Checks.positive(frequencyHz, "frequency", "Hz");
    return Levels.ofAmplitudeRatio(response(frequencyHz) / response(REFERENCE_HZ));
  }

  private static double response(double frequencyHz) {
    double f2 = frequencyHz * frequencyHz;
    return POLE_4_HZ
        * POLE_4_HZ
        * f2
        * f2
        / ((f2 + POLE_1_HZ * POLE_1_HZ)
            * Math.sqrt(f2 + POLE_2_HZ * POLE_2_HZ)
            * Math.sqrt(f2 + POLE_3_HZ * POLE_3_HZ)
            * (f2 + POLE_4_HZ * POLE_4_HZ));
  }
}
