package nullplane.network;

/**
 * Complex admittance of a load, one value per frequency: the stack alone, or with parts across it.
 * Work space of one thread; set anew for each candidate. Phase convention e^{+jwt}.
 */
public final class LoadRows {
  final double[] re;
  final double[] im;

  /**
   * @param points number of frequencies, 1 or more
   * @throws IllegalArgumentException otherwise
   */
  public LoadRows(int points) {
    if (points < 1) {
      throw new IllegalArgumentException("points is " + points + "; allowed: 1 or more");
    }
    re = new double[points];
    im = new double[points];
  }

  /** Returns the number of frequencies. */
  public int size() {
    return re.length;
  }

  /**
   * Sets the load from its impedance, which must not be zero anywhere; that is not checked.
   *
   * @param impedanceRe real parts (ohm), as many as frequencies or more
   * @param impedanceIm imaginary parts (ohm)
   */
  public void setImpedance(double[] impedanceRe, double[] impedanceIm) {
    for (int f = 0; f < re.length; f++) {
      double r = impedanceRe[f];
      double x = impedanceIm[f];
      double inverse = 1 / (r * r + x * x);
      re[f] = r * inverse;
      im[f] = -x * inverse;
    }
  }

  /**
   * Sets this to another load with parts across it.
   *
   * @param load the other load; may be this one
   * @param shunt the parts across it
   */
  public void setShunted(LoadRows load, ShuntRows shunt) {
    for (int f = 0; f < re.length; f++) {
      re[f] = load.re[f] + shunt.re[f];
      im[f] = load.im[f] + shunt.im[f];
    }
  }

  /** Returns the conductance at a frequency, counted from 0 (S). */
  public double conductance(int f) {
    return re[f];
  }

  /** Returns the susceptance at a frequency, counted from 0 (S). */
  public double susceptance(int f) {
    return im[f];
  }

  double squaredModulus(int f) {
    return re[f] * re[f] + im[f] * im[f];
  }
}
