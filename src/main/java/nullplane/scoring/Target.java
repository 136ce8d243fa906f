package nullplane.scoring;

import nullplane.units.Checks;

/**
 * What every stack is held to. Between the corners the wanted level is flat; a stack's own level
 * stands in its {@link StackBrief}.
 *
 * @param voltageV root-mean-square voltage at which the level is asked for (V)
 * @param lowCornerHz lower end of the band (Hz)
 * @param upperCornerHz upper end of the band (Hz)
 * @param corridorDb allowed deviation either way (dB)
 */
public record Target(double voltageV, double lowCornerHz, double upperCornerHz, double corridorDb) {
  /** Checks the values and the order of the corners. */
  public Target {
    Checks.positive(voltageV, "target voltage", "V");
    Checks.positive(lowCornerHz, "low corner", "Hz");
    Checks.positive(corridorDb, "corridor", "dB");
    if (!(upperCornerHz > lowCornerHz)) {
      throw new IllegalArgumentException(
          "upper corner " + upperCornerHz + " Hz; allowed: above " + lowCornerHz + " Hz");
    }
  }
}
