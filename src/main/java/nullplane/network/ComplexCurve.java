package nullplane.network;

import nullplane.units.Curve;

/**
 * A complex quantity, one value per point of a frequency axis. Phase convention e^{+jwt}.
 *
 * @param re real parts (unit as stated where the curve is declared)
 * @param im imaginary parts
 */
public record ComplexCurve(Curve re, Curve im) {
  /** Checks that both have the same length and are finite. */
  public ComplexCurve {
    if (re.size() != im.size()) {
      throw new IllegalArgumentException(
          "real parts number " + re.size() + ", imaginary parts " + im.size() + "; allowed: equal");
    }
    for (int f = 0; f < re.size(); f++) {
      if (!Double.isFinite(re.at(f)) || !Double.isFinite(im.at(f))) {
        throw new IllegalArgumentException(
            "value " + f + " is " + re.at(f) + " + j " + im.at(f) + "; allowed: finite");
      }
    }
  }

  /** Returns the curve of arrays, which are copied. */
  public static ComplexCurve of(double[] re, double[] im) {
    return new ComplexCurve(Curve.of(re), Curve.of(im));
  }

  /** Returns the number of points. */
  public int size() {
    return re.size();
  }

  /** Returns the modulus at a point, counted from 0. */
  public double modulus(int f) {
    return Math.hypot(re.at(f), im.at(f));
  }

  /** Returns the phase at a point, counted from 0 (rad), above -pi and at most pi. */
  public double phaseRad(int f) {
    return Math.atan2(im.at(f), re.at(f));
  }
}
