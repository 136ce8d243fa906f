package nullplane.scoring;

import java.util.List;
import nullplane.network.CircuitState;
import nullplane.network.ComplexCurve;
import nullplane.network.LowPassBranch;
import nullplane.network.StackParts;
import nullplane.units.Curve;

/**
 * What the parts in front of a stack must stand when it is played as loud as it can be.
 *
 * <p>Assumed: a lasting sine, at each frequency as high as the amplifier goes, or as high as the
 * first woofer's travel or rated heat lets it go. Frequencies are those of the stack's curves, from
 * 20 Hz or below to 1 kHz or above. Source: Kirchhoff's laws; level is proportional to voltage.
 */
public final class StackRatings {
  private StackRatings() {}

  /**
   * Returns the greatest voltage the amplifier gives before something holds the stack back (V,
   * root-mean-square), by frequency.
   *
   * @param amplifier the amplifier
   * @param curves the stack's curves, of a passive network or none
   */
  public static Curve driveV(Amplifier amplifier, StackCurves curves) {
    double[] voltage = new double[curves.frequencyHz().size()];
    for (int f = 0; f < voltage.length; f++) {
      double backDb = curves.loudestDb().at(f) - curves.amplifierLimitDb().at(f);
      // where no level is known, the amplifier is not held back
      voltage[f] = amplifier.voltageV() * Math.pow(10, backDb < 0 ? backDb / 20 : 0);
    }
    return Curve.of(voltage);
  }

  /**
   * Returns the passive parts of a stack with what they must stand; none for a filter.
   *
   * @param amplifier the amplifier
   * @param stack the stack
   */
  public static StackParts of(Amplifier amplifier, StackAssessment stack) {
    StackCurves curves = stack.curves();
    if (stack.network() instanceof LowPassBranch branch && !branch.none()) {
      ComplexCurve input = new ComplexCurve(curves.impedanceReOhm(), curves.impedanceImOhm());
      return new StackParts(
          stack.brief().name(),
          CircuitState.ofInput(branch, curves.frequencyHz(), input)
              .ratings(driveV(amplifier, curves)));
    }
    return new StackParts(stack.brief().name(), List.of());
  }
}
