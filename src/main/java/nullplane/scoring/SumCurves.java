package nullplane.scoring;

import nullplane.units.Curve;

/**
 * Main driver and woofers together at the listening point, at the target's voltage.
 *
 * @param frequencyHz frequencies of the band (Hz)
 * @param mainDb level of the main driver alone (dB re 20 uPa)
 * @param sumDb level of both (dB re 20 uPa)
 * @param leadRad phase of the woofers before the main driver (rad), above -pi and at most pi
 */
public record SumCurves(Curve frequencyHz, Curve mainDb, Curve sumDb, Curve leadRad) {
  /** Checks that all lengths agree. */
  public SumCurves {
    int points = frequencyHz.size();
    if (mainDb.size() != points || sumDb.size() != points || leadRad.size() != points) {
      throw new IllegalArgumentException("curves of a sum differ in length");
    }
  }
}
