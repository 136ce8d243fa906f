package nullplane.fit;

import java.util.List;

/** What the points of a sweep can determine at all, whatever the numbers come out as. */
final class Determination {
  /** Motional impedance at the peak over Re below which there is no peak to speak of (1). */
  private static final double LEAST_PEAK = 0.05;

  private static final int LEAST_BESIDE = 2;
  private static final int LEAST_ON_PEAK = 3;

  private Determination() {}

  /**
   * Returns why the resonance is not determined; empty if it is.
   *
   * @param circuit the circuit
   * @param theta its parameters
   */
  static String resonanceProblem(Circuit circuit, double[] theta) {
    PreparedSweep sweep = circuit.sweeps().get(0);
    double[] share = circuit.motionalShare(theta);
    int peak = 0;
    for (int i = 1; i < share.length; i++) {
      peak = share[i] > share[peak] ? i : peak;
    }
    if (Math.exp(theta[Circuit.LN_QMS] - theta[Circuit.LN_QES]) < LEAST_PEAK) {
      return "the sweep shows no resonance peak; measure from well below the resonance, and check"
          + " that the cone is free";
    }
    if (peak < LEAST_BESIDE) {
      return "the sweep starts at "
          + PlainHertz.of(sweep.frequencyHz(0))
          + ", not below the resonance; start at a third of the resonance";
    }
    if (peak > share.length - 1 - LEAST_BESIDE) {
      return "the sweep ends at "
          + PlainHertz.of(sweep.frequencyHz(sweep.size() - 1))
          + ", not above the resonance; go on to at least ten times the resonance";
    }
    int onPeak = 0;
    for (double value : share) {
      onPeak += value > 0.5 * share[peak] ? 1 : 0;
    }
    if (onPeak < LEAST_ON_PEAK || fallsBetweenPoints(sweep, share[peak])) {
      return "too few points on the resonance peak near "
          + PlainHertz.of(sweep.frequencyHz(peak))
          + "; measure at least 12 per octave there";
    }
    return "";
  }

  /** In free air the highest point must reach half of the peak that the circuit claims. */
  private static boolean fallsBetweenPoints(PreparedSweep sweep, double highest) {
    return !sweep.isLoadedOtherwise() && highest < 0.5;
  }

  /**
   * Tells whether what is left of a sweep follows a pattern, by the correlation of neighbours in
   * the modulus.
   *
   * <p>Source: M. S. Bartlett, J. R. Statist. Soc. Suppl. 8 (1946) 27: for noise the correlation of
   * neighbours has a standard deviation of 1/sqrt(n); beyond four of it there is a pattern.
   *
   * @param curves what is left of each sweep
   * @param noise its size (1)
   */
  static boolean hasPattern(List<SweepFit.ResidualCurve> curves, double noise) {
    for (SweepFit.ResidualCurve curve : curves) {
      int n = curve.modulusError().size();
      double product = 0;
      double square = 0;
      for (int i = 0; i < n; i++) {
        double value = curve.modulusError().at(i);
        square += value * value;
        product += i > 0 ? value * curve.modulusError().at(i - 1) : 0;
      }
      if (noise > 1e-6 && n >= 30 && product > 4 / Math.sqrt(n) * square) {
        return true;
      }
    }
    return false;
  }
}
