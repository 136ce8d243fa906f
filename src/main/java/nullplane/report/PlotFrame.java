package nullplane.report;

import nullplane.units.Range;

/**
 * The rectangle that curves are drawn in, and its two axes. The frequency axis is logarithmic.
 *
 * @param widthPx width (pixels at screen size)
 * @param heightPx height (pixels at screen size)
 * @param frequencyHz frequency axis (Hz)
 * @param value the other axis (in the unit of its title)
 * @param logValue whether the other axis is logarithmic too
 */
record PlotFrame(int widthPx, int heightPx, Range frequencyHz, Range value, boolean logValue) {
  /** The frequency axis of every plot (Hz). */
  static final Range AUDIO_LOW_END = new Range(20, 1000);

  PlotFrame {
    if (widthPx < 60 || heightPx < 60) {
      throw new IllegalArgumentException(
          "plot of " + widthPx + " x " + heightPx + " pixels; allowed: 60 or more each way");
    }
  }

  /**
   * Returns a frame for levels in which one decade is as long as a number of decibels.
   *
   * <p>Source: IEC 60263, proportions for frequency-response plots: one decade as long as 10, 25 or
   * 50 dB. The height is rounded to whole pixels, which changes the proportion by less than 0.5 %.
   *
   * @param widthPx width (pixels)
   * @param levelDb level axis (dB)
   * @param dbPerDecade decibels as long as one decade (dB)
   */
  static PlotFrame ofLevels(int widthPx, Range levelDb, double dbPerDecade) {
    double decades = Math.log10(AUDIO_LOW_END.upper() / AUDIO_LOW_END.lower());
    double pxPerDb = widthPx / decades / dbPerDecade;
    int heightPx = (int) Math.round(pxPerDb * (levelDb.upper() - levelDb.lower()));
    return new PlotFrame(widthPx, heightPx, AUDIO_LOW_END, levelDb, false);
  }

  /** Returns the length of one decade of frequency (pixels). */
  double decadePx() {
    return widthPx / Math.log10(frequencyHz.upper() / frequencyHz.lower());
  }

  /** Returns how many units of a linear value axis are as long as one decade of frequency. */
  double valuePerDecade() {
    return decadePx() * (value.upper() - value.lower()) / heightPx;
  }

  /** Returns where a frequency (Hz) lies, from the left edge (pixels). */
  double xOf(double frequency) {
    return Math.log10(frequency / frequencyHz.lower()) * decadePx();
  }

  /** Returns where a value lies, from the upper edge (pixels). */
  double yOf(double at) {
    double share =
        logValue
            ? Math.log(at / value.lower()) / Math.log(value.upper() / value.lower())
            : (at - value.lower()) / (value.upper() - value.lower());
    return (1 - share) * heightPx;
  }

  /** Returns the frequency at a distance from the left edge (Hz). */
  double frequencyAt(double xPx) {
    return frequencyHz.lower() * Math.pow(10, xPx / decadePx());
  }

  /** Returns the value at a distance from the upper edge (unit of the axis). */
  double valueAt(double yPx) {
    double share = 1 - yPx / heightPx;
    return logValue
        ? value.lower() * Math.pow(value.upper() / value.lower(), share)
        : value.lower() + share * (value.upper() - value.lower());
  }
}
