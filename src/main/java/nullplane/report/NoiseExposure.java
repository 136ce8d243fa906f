package nullplane.report;

import nullplane.units.Levels;

/**
 * How long a level may be heard, by two published rules. Levels are A-weighted in both; a level
 * without weighting may be put in their place below 1 kHz, where it is never the lower one.
 */
final class NoiseExposure {
  /**
   * Level that the working day's rule allows for 8 h (dB). Source: NIOSH Publication 98-126 (1998),
   * criteria for occupational noise exposure: 85 dB(A) over 8 h, 3 dB for half the time.
   */
  static final double WORKING_DAY_DB = 85;

  private static final double WORKING_DAY_MIN = 480;
  private static final double EXCHANGE_DB = 3;

  /**
   * What a week may hold of sound listened to for pleasure (Pa2 h). Source: ITU-T H.870, mode 1: 80
   * dB(A) for 40 h; from memory.
   */
  static final double ADULTS_PA2H = 1.6;

  /** The same for children, mode 2: 75 dB(A) for 40 h (Pa2 h). Source: ITU-T H.870; from memory. */
  static final double CHILDREN_PA2H = 0.51;

  /** Level at which {@link #CHILDREN_PA2H} last for 40 h (dB); below it nothing is said. */
  static final double LEAST_DB = 75;

  private static final double MIN_PER_H = 60;
  private static final double WEEK_MIN = 7 * 24 * MIN_PER_H;

  private NoiseExposure() {}

  /**
   * Returns the longest time per working day at a level (min), T = 480/2^((L - 85)/3).
   *
   * <p>Source: NIOSH Publication 98-126 (1998), table 1-1. Valid from 80 to 140 dB(A).
   *
   * @param levelDb level (dB re 20 uPa, A-weighted)
   */
  static double minutesPerDay(double levelDb) {
    return WORKING_DAY_MIN * Math.pow(2, -(levelDb - WORKING_DAY_DB) / EXCHANGE_DB);
  }

  /**
   * Returns the time per week at a level that uses an allowance up (min), E/p^2; a week at most.
   *
   * @param levelDb level (dB re 20 uPa, A-weighted)
   * @param allowancePa2h the allowance (Pa2 h)
   */
  static double minutesPerWeek(double levelDb, double allowancePa2h) {
    double pressurePa = Levels.REFERENCE_PRESSURE_PA * Levels.amplitudeRatio(levelDb);
    return Math.min(WEEK_MIN, MIN_PER_H * allowancePa2h / (pressurePa * pressurePa));
  }
}
