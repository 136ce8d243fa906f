package nullplane.network;

/**
 * The main driver's pressure per volt on one frequency axis, for sums with the woofers' in an inner
 * loop. Immutable; nothing is allocated in a call.
 *
 * <p>Source: superposition; pressures at one point from one amplifier voltage add as complex
 * numbers.
 */
public final class MainDriverRows {
  private final double[] re;
  private final double[] im;

  /**
   * @param pressurePerVolt the main driver's pressure per volt at the listening point (Pa/V)
   */
  public MainDriverRows(ComplexCurve pressurePerVolt) {
    re = pressurePerVolt.re().toArray();
    im = pressurePerVolt.im().toArray();
  }

  /**
   * Writes the squared modulus of woofers and main driver together ((Pa/V)^2).
   *
   * @param wooferRe woofers' pressure behind their network, real parts (Pa/V)
   * @param wooferIm imaginary parts (Pa/V)
   * @param out receives the row
   */
  public void sumSquared(double[] wooferRe, double[] wooferIm, double[] out) {
    for (int f = 0; f < re.length; f++) {
      double sumRe = re[f] + wooferRe[f];
      double sumIm = im[f] + wooferIm[f];
      out[f] = sumRe * sumRe + sumIm * sumIm;
    }
  }

  /**
   * Writes the squared modulus of woofers and main driver together, from the woofers' pressure per
   * volt at their terminals and the transfer of their network ((Pa/V)^2).
   *
   * @param stackRe woofers' pressure per volt at the stack, real parts (Pa/V)
   * @param stackIm imaginary parts (Pa/V)
   * @param transferRe stack voltage over amplifier voltage, real parts (1)
   * @param transferIm imaginary parts (1)
   * @param out receives the row
   */
  public void sumSquared(
      double[] stackRe, double[] stackIm, double[] transferRe, double[] transferIm, double[] out) {
    for (int f = 0; f < re.length; f++) {
      double sumRe = re[f] + (stackRe[f] * transferRe[f] - stackIm[f] * transferIm[f]);
      double sumIm = im[f] + (stackRe[f] * transferIm[f] + stackIm[f] * transferRe[f]);
      out[f] = sumRe * sumRe + sumIm * sumIm;
    }
  }

  /**
   * Returns the phase of the woofers before the main driver (rad), above -pi and at most pi; 0 is
   * in step.
   *
   * @param f frequency, counted from 0
   * @param wooferRe woofers' pressure there, real part (Pa/V)
   * @param wooferIm imaginary part (Pa/V)
   */
  public double phaseLeadRad(int f, double wooferRe, double wooferIm) {
    return Math.atan2(wooferIm * re[f] - wooferRe * im[f], wooferRe * re[f] + wooferIm * im[f]);
  }

  /**
   * Returns the modulus of the sum over the sum of the moduli (1): 1 in step, 0 when they cancel.
   *
   * @param f frequency, counted from 0
   * @param wooferRe woofers' pressure there, real part (Pa/V)
   * @param wooferIm imaginary part (Pa/V)
   */
  public double coherence(int f, double wooferRe, double wooferIm) {
    return Math.hypot(re[f] + wooferRe, im[f] + wooferIm)
        / (Math.hypot(re[f], im[f]) + Math.hypot(wooferRe, wooferIm));
  }
}
