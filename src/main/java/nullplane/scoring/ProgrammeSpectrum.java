package nullplane.scoring;

import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A signal as it comes out of the amplifier: how its power is spread over third-octaves, and how
 * far its peaks stand above its root-mean-square value. Within a third-octave the power is spread
 * evenly over log frequency.
 *
 * @param name what to call it
 * @param crestFactor peak over root-mean-square value (1), above 1
 * @param bandLevelDb level of each third-octave from 20 Hz to 20 kHz, on any common reference (dB)
 */
public record ProgrammeSpectrum(String name, double crestFactor, Curve bandLevelDb) {
  /** Number of third-octaves from 20 Hz to 20 kHz. */
  public static final int BANDS = 31;

  /** The band of 20 Hz is 1000 Hz times 10^(-17/10). IEC 61260-1. */
  private static final int FIRST_INDEX = -17;

  /** Half a third-octave as a ratio of frequencies, 10^(1/20). IEC 61260-1. */
  private static final double HALF_BAND = Math.pow(10, 0.05);

  /**
   * Third-octave levels of the simulated programme signal of IEC 60268-1, against pink noise.
   * Recalled from memory, not read again: good to about 0.5 dB up to 200 Hz and 2 dB above 2 kHz.
   * The bands from 1.25 kHz up hold some fifth of the power, so such an error there moves every
   * level here by less than 0.5 dB.
   */
  private static final Curve SIMULATED_PROGRAMME_DB =
      Curve.of(
          -13.5, -10.2, -7.4, -5.2, -3.3, -2.0, -1.1, -0.6, -0.2, 0.0, 0.0, 0.0, 0.0, 0.0, -0.1,
          -0.2, -0.4, -0.6, -1.0, -1.5, -2.1, -2.9, -4.0, -5.3, -6.8, -8.5, -10.5, -12.7, -15.4,
          -18.1, -20.8);

  /**
   * The simulated programme as it is used to test power: clipped to a crest factor of 2. IEC
   * 60268-1 and IEC 60268-5 (crest factor 1.8 to 2.2), recalled from memory.
   */
  public static final ProgrammeSpectrum TEST_NOISE =
      new ProgrammeSpectrum("simulated programme, test noise", 2, SIMULATED_PROGRAMME_DB);

  /**
   * The same spectrum with the crest factor 4 (12 dB) of music that was not pressed hard. The crest
   * factor is common practice without a source.
   */
  public static final ProgrammeSpectrum MUSIC =
      new ProgrammeSpectrum("simulated programme, music", 4, SIMULATED_PROGRAMME_DB);

  /** What every stack is asked to play. */
  static final List<ProgrammeSpectrum> STANDARD = List.of(TEST_NOISE, MUSIC);

  /** Checks the crest factor and the number of bands. */
  public ProgrammeSpectrum {
    if (!(crestFactor > 1) || Double.isInfinite(crestFactor)) {
      throw new IllegalArgumentException(
          "crest factor of " + name + " is " + crestFactor + "; allowed: finite and above 1");
    }
    if (bandLevelDb.size() != BANDS) {
      throw new IllegalArgumentException(
          name + " has " + bandLevelDb.size() + " bands; allowed: " + BANDS);
    }
    bandLevelDb.stream().forEach(level -> Checks.finite(level, "band level", "dB"));
  }

  /**
   * Returns the exact middle of a band, 1000 Hz times a power of 10^(1/10) (Hz). Source: IEC
   * 61260-1.
   *
   * @param band band, 0 for 20 Hz to 30 for 20 kHz
   */
  public static double middleHz(int band) {
    return 1000 * Math.pow(10, (FIRST_INDEX + band) / 10.0);
  }

  /** Returns the lower end of a band (Hz). */
  static double lowerHz(int band) {
    return middleHz(band) / HALF_BAND;
  }

  /** Returns the upper end of a band (Hz). */
  static double upperHz(int band) {
    return middleHz(band) * HALF_BAND;
  }

  /** Returns the share of the whole power that lies in each band (1); they sum to 1. */
  double[] shares() {
    double[] shares = bandLevelDb.stream().map(level -> Math.pow(10, level / 10)).toArray();
    double sum = 0;
    for (double share : shares) {
      sum += share;
    }
    for (int b = 0; b < BANDS; b++) {
      shares[b] /= sum;
    }
    return shares;
  }

  /** Returns the share of the whole power that lies between two frequencies (1). */
  double shareBetween(double fromHz, double toHz) {
    double[] shares = shares();
    double sum = 0;
    for (int b = 0; b < BANDS; b++) {
      double from = Math.max(fromHz, lowerHz(b));
      double to = Math.min(toHz, upperHz(b));
      if (to > from) {
        sum += shares[b] * Math.log(to / from) / Math.log(upperHz(b) / lowerHz(b));
      }
    }
    return sum;
  }

  /**
   * Returns weights that turn a curve, taken as straight between its points over log frequency,
   * into its power-weighted sum over the part of the programme between two frequencies: sum of
   * weight times value. With a transfer function squared that is the mean square that the programme
   * of one volt makes.
   *
   * @param frequencyHz points of the curve, ascending (Hz); what lies outside them counts nothing
   * @param fromHz lower end (Hz)
   * @param toHz upper end (Hz)
   */
  double[] weights(double[] frequencyHz, double fromHz, double toHz) {
    double[] shares = shares();
    double[] weights = new double[frequencyHz.length];
    for (int b = 0; b < BANDS; b++) {
      double low = Math.log(Math.max(fromHz, lowerHz(b)));
      double high = Math.log(Math.min(toHz, upperHz(b)));
      double perLog = shares[b] / Math.log(upperHz(b) / lowerHz(b));
      for (int i = 0; i + 1 < frequencyHz.length; i++) {
        double left = Math.log(frequencyHz[i]);
        double right = Math.log(frequencyHz[i + 1]);
        double from = Math.max(low, left);
        double to = Math.min(high, right);
        if (to > from) {
          // a straight line's integral is its width times its value in the middle
          double towardsRight = ((from + to) / 2 - left) / (right - left);
          weights[i] += perLog * (to - from) * (1 - towardsRight);
          weights[i + 1] += perLog * (to - from) * towardsRight;
        }
      }
    }
    return weights;
  }
}
