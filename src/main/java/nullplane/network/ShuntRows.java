package nullplane.network;

import nullplane.units.Curve;

/**
 * Complex admittance of parts across the stack, one value per frequency. Immutable.
 *
 * <p>Source: circuit theory. A branch of resistance R, inductance L and capacitance C in series has
 * Y = 1/(R + j X) with X = w L - 1/(w C).
 */
public final class ShuntRows {
  final double[] re;
  final double[] im;

  private ShuntRows(int points) {
    re = new double[points];
    im = new double[points];
  }

  /** Returns the rows of no parts at all: zeros. */
  public static ShuntRows none(Curve frequencyHz) {
    return new ShuntRows(frequencyHz.size());
  }

  /** Returns the rows of a shunt capacitor with its damping. */
  public static ShuntRows of(ShuntCapacitor shunt, Curve frequencyHz) {
    return inSeries(
        shunt.damping().map(Resistor::resistanceOhm).orElse(0.0),
        0,
        shunt.capacitor().capacitanceF(),
        frequencyHz);
  }

  /** Returns the rows of a conjugate of a resonance. */
  public static ShuntRows of(MotionalConjugate conjugate, Curve frequencyHz) {
    return inSeries(
        conjugate.resistanceOhm(),
        conjugate.coil().inductanceH(),
        conjugate.capacitor().capacitanceF(),
        frequencyHz);
  }

  /** Returns the rows of a conjugate of an inductance. */
  public static ShuntRows of(ZobelNetwork zobel, Curve frequencyHz) {
    return inSeries(
        zobel.resistor().resistanceOhm(), 0, zobel.capacitor().capacitanceF(), frequencyHz);
  }

  /** Returns the rows of these and other parts side by side. */
  public ShuntRows plus(ShuntRows other) {
    ShuntRows sum = new ShuntRows(re.length);
    for (int f = 0; f < re.length; f++) {
      sum.re[f] = re[f] + other.re[f];
      sum.im[f] = im[f] + other.im[f];
    }
    return sum;
  }

  private static ShuntRows inSeries(
      double resistanceOhm, double inductanceH, double capacitanceF, Curve frequencyHz) {
    ShuntRows rows = new ShuntRows(frequencyHz.size());
    for (int f = 0; f < rows.re.length; f++) {
      double w = 2 * Math.PI * frequencyHz.at(f);
      double x = w * inductanceH - 1 / (w * capacitanceF);
      double inverse = 1 / (resistanceOhm * resistanceOhm + x * x);
      rows.re[f] = resistanceOhm * inverse;
      rows.im[f] = -x * inverse;
    }
    return rows;
  }
}
