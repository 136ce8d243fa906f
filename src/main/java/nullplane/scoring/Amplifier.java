package nullplane.scoring;

import nullplane.units.Checks;

/**
 * The amplifier that drives a stack.
 *
 * @param voltageV greatest undistorted root-mean-square voltage (V)
 * @param lowestLoadOhm lowest load it is rated for (ohm)
 */
public record Amplifier(double voltageV, double lowestLoadOhm) {
  /** Checks both values. */
  public Amplifier {
    Checks.positive(voltageV, "amplifier voltage", "V");
    Checks.positive(lowestLoadOhm, "lowest load", "ohm");
  }
}
