package nullplane.fit;

import java.util.Optional;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A measured electrical impedance over frequency.
 *
 * @param frequencyHz the frequencies (Hz), strictly ascending
 * @param magnitudeOhm modulus at each frequency (ohm), above 0
 * @param phaseRad phase at each frequency (rad), e^{+jwt}; empty if it was not measured
 */
public record ImpedanceSweep(Curve frequencyHz, Curve magnitudeOhm, Optional<Curve> phaseRad) {

  /** Checks that the curves match, that frequencies ascend and that all values are finite. */
  public ImpedanceSweep {
    int points = frequencyHz.size();
    int phases = phaseRad.map(Curve::size).orElse(points);
    if (points == 0 || magnitudeOhm.size() != points || phases != points) {
      throw new IllegalArgumentException(
          points
              + " frequencies with "
              + magnitudeOhm.size()
              + " moduli and "
              + phases
              + " phases; allowed: one of each per frequency, at least one");
    }
    for (int i = 0; i < points; i++) {
      Checks.positive(frequencyHz.at(i), "frequency", "Hz");
      Checks.positive(magnitudeOhm.at(i), "impedance", "ohm");
      if (i > 0 && !(frequencyHz.at(i) > frequencyHz.at(i - 1))) {
        throw new IllegalArgumentException(
            frequencyHz.at(i)
                + " Hz stands after "
                + frequencyHz.at(i - 1)
                + " Hz; allowed: strictly ascending frequencies");
      }
    }
    phaseRad.ifPresent(phase -> phase.stream().forEach(p -> Checks.finite(p, "phase", "rad")));
  }

  /**
   * Returns a sweep from real and imaginary parts.
   *
   * @param frequencyHz the frequencies (Hz), strictly ascending
   * @param realOhm real parts (ohm)
   * @param imaginaryOhm imaginary parts (ohm)
   */
  public static ImpedanceSweep ofComplex(Curve frequencyHz, Curve realOhm, Curve imaginaryOhm) {
    double[] magnitude = new double[frequencyHz.size()];
    double[] phase = new double[frequencyHz.size()];
    if (realOhm.size() != magnitude.length || imaginaryOhm.size() != magnitude.length) {
      throw new IllegalArgumentException("real and imaginary parts do not match the frequencies");
    }
    for (int i = 0; i < magnitude.length; i++) {
      magnitude[i] = Math.hypot(realOhm.at(i), imaginaryOhm.at(i));
      phase[i] = Math.atan2(imaginaryOhm.at(i), realOhm.at(i));
    }
    return new ImpedanceSweep(frequencyHz, Curve.of(magnitude), Optional.of(Curve.of(phase)));
  }

  /** Returns the number of points. */
  public int size() {
    return frequencyHz.size();
  }
}
