package nullplane.scoring;

import java.util.Arrays;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.network.StackNetwork;
import nullplane.units.Curve;

/**
 * A stack as the amplifier drives it, network in place, from below hearing to 22.4 kHz.
 *
 * <p>Below the solved axis the air is continued by {@link SubsonicExtension}. Above it the stack's
 * load is taken as R + jX with R as at the highest solved frequency and X growing with frequency,
 * and the cone as a mass: the current falls as 1/|R + jX|, the excursion as that over f^2. Source:
 * Kirchhoff's and Newton's laws. Both ends hold little of any programme.
 */
final class DrivenStack {
  /** Lowest frequency (Hz). */
  static final double LOWEST_HZ = 5;

  /** Upper end of the highest third-octave of a programme (Hz). */
  private static final double HIGHEST_HZ = 22_400;

  private static final int POINTS_ABOVE = 28;

  private final StackModel model;
  private final StackNetwork network;
  private final int firstSolved;
  private final int solvedPoints;
  private final double[] frequencyHz;

  /** What the stack does per volt at the amplifier, one value per frequency. */
  static final class PerVolt {
    /** Squared modulus of the pressure at the listening point ((Pa/V)^2). */
    final double[] pressureSquared;

    /** Greatest squared modulus of a cone's excursion, root mean square ((m/V)^2). */
    final double[] excursionSquared;

    /** Greatest squared modulus of a coil's current ((A/V)^2). */
    final double[] currentSquared;

    private PerVolt(int points) {
      pressureSquared = new double[points];
      excursionSquared = new double[points];
      currentSquared = new double[points];
    }
  }

  /**
   * @param solved the panel as it was solved; point 0 is the listening point
   * @param wiring the wiring
   * @param network the network
   */
  DrivenStack(PanelResponse solved, Wiring wiring, StackNetwork network) {
    PanelResponse response = SubsonicExtension.below(solved, LOWEST_HZ);
    this.model = new StackModel(response, wiring);
    this.network = network;
    this.firstSolved = response.frequencyHz().size() - solved.frequencyHz().size();
    this.solvedPoints = response.frequencyHz().size();
    double top = response.frequencyHz().at(solvedPoints - 1);
    int above = top < HIGHEST_HZ ? POINTS_ABOVE : 0;
    frequencyHz = new double[solvedPoints + above];
    for (int f = 0; f < solvedPoints; f++) {
      frequencyHz[f] = response.frequencyHz().at(f);
    }
    if (above > 0) {
      Curve upper = Curve.logSpaced(top, HIGHEST_HZ, above + 1);
      for (int i = 1; i <= above; i++) {
        frequencyHz[solvedPoints + i - 1] = upper.at(i);
      }
    }
  }

  /** Returns the frequencies (Hz). */
  double[] frequencyHz() {
    return frequencyHz.clone();
  }

  /** Returns the index of the lowest frequency that was solved. */
  int firstSolved() {
    return firstSolved;
  }

  /**
   * Returns what the stack does with a woofer.
   *
   * @param woofer the woofer
   */
  PerVolt respond(Woofer woofer) {
    StackModel.PerVolt own = new StackModel.PerVolt(solvedPoints, model.wiring().woofers());
    model.respond(woofer, own);
    PerVolt driven = new PerVolt(frequencyHz.length);
    double[] loadRe = Arrays.copyOf(own.loadRe, frequencyHz.length);
    double[] loadIm = Arrays.copyOf(own.loadIm, frequencyHz.length);
    int top = solvedPoints - 1;
    double re = own.loadRe[top];
    double im = Math.max(0, own.loadIm[top]);
    for (int f = solvedPoints; f < frequencyHz.length; f++) {
      loadRe[f] = re;
      loadIm[f] = im * (frequencyHz[f] / frequencyHz[top]);
    }
    DrivenNetwork circuit = DrivenNetwork.of(network, Curve.of(frequencyHz), loadRe, loadIm);
    for (int f = 0; f < frequencyHz.length; f++) {
      double passed = circuit.passed(f);
      int from = Math.min(f, top);
      double ratio = frequencyHz[f] / frequencyHz[from];
      double falls = f <= top ? 1 : (re * re + im * im) / (re * re + im * ratio * im * ratio);
      driven.currentSquared[f] = passed * falls * own.currentSquared[from];
      driven.excursionSquared[f] =
          passed * falls * own.excursionSquared[from] / (ratio * ratio * ratio * ratio);
      driven.pressureSquared[f] = passed * falls * own.pressureSquared[from];
    }
    return driven;
  }
}
