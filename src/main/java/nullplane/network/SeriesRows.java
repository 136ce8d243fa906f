package nullplane.network;

import nullplane.units.Curve;

/**
 * Parts in series before a load, prepared for one frequency axis: a resistance R and an inductance
 * L. Immutable; nothing is allocated in a call.
 *
 * <p>Symbols: Y = G + jB admittance of the load, D = 1 + (R + j w L) Y.
 *
 * <p>Source: circuit theory, voltage divider: load voltage over input voltage is 1/D; input
 * impedance is D/Y.
 */
public final class SeriesRows {
  private final double resistance;
  private final double[] reactance;

  /**
   * @param resistanceOhm resistance of all parts together (ohm), 0 or more
   * @param inductanceH inductance (H), 0 or more
   * @param frequencyHz frequencies (Hz)
   */
  SeriesRows(double resistanceOhm, double inductanceH, Curve frequencyHz) {
    resistance = resistanceOhm;
    reactance = frequencyHz.stream().map(f -> 2 * Math.PI * f * inductanceH).toArray();
  }

  /** Returns the resistance (ohm). */
  public double resistanceOhm() {
    return resistance;
  }

  /**
   * Returns the squared modulus of load voltage over input voltage at one frequency (1), for loops
   * that stop early.
   *
   * @param load admittance of the load
   * @param f frequency, counted from 0
   */
  public double transferSquaredAt(LoadRows load, int f) {
    double g = load.re[f];
    double b = load.im[f];
    double x = reactance[f];
    double re = 1 + (resistance * g - x * b);
    double im = resistance * b + x * g;
    return 1 / (re * re + im * im);
  }

  /**
   * Writes the squared modulus of load voltage over input voltage (1).
   *
   * @param load admittance of the load
   * @param out receives the row
   */
  public void transferSquared(LoadRows load, double[] out) {
    transferSquared(load, 0, reactance.length - 1, out);
  }

  /**
   * Writes the squared modulus of load voltage over input voltage on part of the axis (1).
   *
   * @param load admittance of the load
   * @param from first frequency, counted from 0
   * @param to last frequency
   * @param out receives the row
   */
  void transferSquared(LoadRows load, int from, int to, double[] out) {
    double r = resistance;
    for (int f = from; f <= to; f++) {
      double g = load.re[f];
      double b = load.im[f];
      double x = reactance[f];
      double re = 1 + (r * g - x * b);
      double im = r * b + x * g;
      out[f] = 1 / (re * re + im * im);
    }
  }

  /**
   * Writes load voltage over input voltage (1).
   *
   * @param load admittance of the load
   * @param outRe receives the real parts
   * @param outIm receives the imaginary parts
   */
  public void transfer(LoadRows load, double[] outRe, double[] outIm) {
    transfer(load, 0, reactance.length - 1, outRe, outIm);
  }

  /**
   * Writes load voltage over input voltage on part of the axis (1).
   *
   * @param load admittance of the load
   * @param from first frequency, counted from 0
   * @param to last frequency
   * @param outRe receives the real parts
   * @param outIm receives the imaginary parts
   */
  void transfer(LoadRows load, int from, int to, double[] outRe, double[] outIm) {
    double r = resistance;
    for (int f = from; f <= to; f++) {
      double g = load.re[f];
      double b = load.im[f];
      double x = reactance[f];
      double re = 1 + (r * g - x * b);
      double im = r * b + x * g;
      double inverse = 1 / (re * re + im * im);
      outRe[f] = re * inverse;
      outIm[f] = -im * inverse;
    }
  }

  /**
   * Writes the input impedance (ohm).
   *
   * @param load admittance of the load, not zero anywhere
   * @param outRe receives the real parts (ohm)
   * @param outIm receives the imaginary parts (ohm)
   */
  public void inputImpedance(LoadRows load, double[] outRe, double[] outIm) {
    for (int f = 0; f < reactance.length; f++) {
      double g = load.re[f];
      double b = load.im[f];
      double inverse = 1 / (g * g + b * b);
      outRe[f] = resistance + g * inverse;
      outIm[f] = reactance[f] - b * inverse;
    }
  }

  /**
   * Returns the least squared modulus of the input impedance, 1/max(|Y|^2/|D|^2) (ohm^2).
   *
   * @param load admittance of the load, not zero everywhere
   * @param transferSquared what {@link #transferSquared} wrote for this load
   */
  public double leastInputSquared(LoadRows load, double[] transferSquared) {
    // two running maxima, so that one comparison need not wait for the other
    double even = 0;
    double odd = 0;
    int last = reactance.length - 1;
    for (int f = 0; f < last; f += 2) {
      double one = load.squaredModulus(f) * transferSquared[f];
      double other = load.squaredModulus(f + 1) * transferSquared[f + 1];
      even = one > even ? one : even;
      odd = other > odd ? other : odd;
    }
    double rest = load.squaredModulus(last) * transferSquared[last];
    return 1 / Math.max(rest, Math.max(even, odd));
  }

  /**
   * Returns the least squared modulus of the input impedance, 1/max(|Y|^2/|D|^2) (ohm^2).
   *
   * @param load admittance of the load, not zero everywhere
   */
  double leastInputSquared(LoadRows load) {
    double r = resistance;
    double most = 0;
    for (int f = 0; f < reactance.length; f++) {
      double g = load.re[f];
      double b = load.im[f];
      double x = reactance[f];
      double re = 1 + (r * g - x * b);
      double im = r * b + x * g;
      double square = (g * g + b * b) / (re * re + im * im);
      most = square > most ? square : most;
    }
    return 1 / most;
  }
}
