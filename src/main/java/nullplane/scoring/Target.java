package nullplane.scoring;

import nullplane.units.Checks;
import nullplane.units.Levels;

/**
 * What every stack is held to. Between the corners the wanted level is flat; a stack's own level
 * stands in its {@link StackBrief}.
 *
 * <p>Above the upper corner nothing is asked for if the order is 0. Otherwise the wanted level
 * falls as a Butterworth low-pass of that order whose 3 dB point is the upper corner (S.
 * Butterworth, Wireless Engineer 7 (1930) 536), and the stack is held to it up to {@link #BEYOND}
 * times the corner.
 *
 * @param voltageV root-mean-square voltage at which the level is asked for (V)
 * @param lowCornerHz lower end of the band (Hz)
 * @param upperCornerHz upper end of the band (Hz)
 * @param corridorDb allowed deviation either way (dB)
 * @param upperOrder order of the slope above the upper corner, 6 dB per octave each; 0 if nothing
 *     is asked for there
 */
public record Target(
    double voltageV, double lowCornerHz, double upperCornerHz, double corridorDb, int upperOrder) {
  /** How far above the upper corner a slope or a sum is judged, as a ratio: an octave. */
  public static final double BEYOND = 2;

  /** Steepest slope: 24 dB per octave. */
  public static final int STEEPEST_ORDER = 4;

  /** A target that asks for nothing above the upper corner. */
  public Target(double voltageV, double lowCornerHz, double upperCornerHz, double corridorDb) {
    this(voltageV, lowCornerHz, upperCornerHz, corridorDb, 0);
  }

  /** Checks the values and the order of the corners. */
  public Target {
    if (upperOrder < 0 || upperOrder > STEEPEST_ORDER) {
      throw new IllegalArgumentException(
          "slope of order " + upperOrder + "; allowed: 0 to " + STEEPEST_ORDER);
    }
    Checks.positive(voltageV, "target voltage", "V");
    Checks.positive(lowCornerHz, "low corner", "Hz");
    Checks.positive(corridorDb, "corridor", "dB");
    if (!(upperCornerHz > lowCornerHz)) {
      throw new IllegalArgumentException(
          "upper corner " + upperCornerHz + " Hz; allowed: above " + lowCornerHz + " Hz");
    }
  }

  /**
   * Returns the gain of the wanted slope (dB), 0 or below.
   *
   * @param cornerHz its corner (Hz)
   * @param frequencyHz where (Hz)
   */
  double slopeDb(double cornerHz, double frequencyHz) {
    return upperOrder == 0
        ? 0
        : -Levels.ofPowerRatio(1 + Math.pow(frequencyHz / cornerHz, 2 * upperOrder));
  }
}
