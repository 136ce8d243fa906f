package nullplane.scoring;

import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;

/**
 * Resonance and total Q of a woofer on its panel while the whole stack moves together.
 *
 * <p>The air adds the mass X/w per woofer, X the imaginary part of the mean row sum of the
 * radiation impedance, which hardly changes with frequency below the panel's corner; the resonance
 * is found by fixed-point iteration between the solved frequencies. Q takes in suspension loss,
 * radiation and the coil with all resistance in its circuit.
 *
 * <p>Source: derived; R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383, for the definitions.
 *
 * @param frequencyHz resonance on the panel (Hz)
 * @param totalQ total Q there (1)
 * @param airMassKg air that moves with each cone there (kg)
 */
record PanelResonance(double frequencyHz, double totalQ, double airMassKg) {
  private static final int ITERATIONS = 50;

  /**
   * @param woofer the woofer
   * @param response the panel's acoustics
   * @param seriesOhm resistance in series with each woofer, besides its own (ohm)
   */
  static PanelResonance of(Woofer woofer, PanelResponse response, double seriesOhm) {
    double frequency = response.frequencyHz().at(0);
    double airMass = 0;
    for (int i = 0; i < ITERATIONS; i++) {
      airMass = meanRowSum(response, frequency, false) / (2 * Math.PI * frequency);
      frequency =
          Math.sqrt(woofer.stiffnessNPerM() / (woofer.bareMassKg() + airMass)) / (2 * Math.PI);
    }
    double bl = woofer.forceFactorTm();
    double loss =
        woofer.lossNsPerM()
            + meanRowSum(response, frequency, true)
            + bl * bl / (woofer.resistanceOhm() + seriesOhm);
    double mass = woofer.bareMassKg() + airMass;
    return new PanelResonance(frequency, 2 * Math.PI * frequency * mass / loss, airMass);
  }

  /** Mean over the woofers of a row sum of Z, between frequencies by straight lines (N s/m). */
  private static double meanRowSum(PanelResponse response, double frequencyHz, boolean real) {
    int last = response.frequencyHz().size() - 1;
    int upper = 1;
    while (upper < last && response.frequencyHz().at(upper) < frequencyHz) {
      upper++;
    }
    double low = response.frequencyHz().at(upper - 1);
    double high = response.frequencyHz().at(upper);
    double atLow = meanRowSum(response.solutions().get(upper - 1).impedance(), real);
    double atHigh = meanRowSum(response.solutions().get(upper).impedance(), real);
    if (frequencyHz < low) {
      // below the axis: reactance as the frequency, resistance as its fourth power
      return atLow * Math.pow(frequencyHz / low, real ? 4 : 1);
    }
    double share = Math.min(1, (frequencyHz - low) / (high - low));
    return atLow + share * (atHigh - atLow);
  }

  private static double meanRowSum(ComplexMatrix impedance, boolean real) {
    double sum = 0;
    for (int i = 0; i < impedance.rows(); i++) {
      for (int j = 0; j < impedance.columns(); j++) {
        sum += real ? impedance.re(i, j) : impedance.im(i, j);
      }
    }
    return sum / impedance.rows();
  }
}
