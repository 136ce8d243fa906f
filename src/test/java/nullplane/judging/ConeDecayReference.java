package nullplane.judging;

import nullplane.units.Curve;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("reference")
class ConeDecayReference {
  private static final double HZ = 33;

  /**
   * The closed form against the equation of motion, x'' + w0/Q x' + w0^2 (x - 1) = 0 from rest,
   * integrated by a library: ringing, critical and creeping.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.4999, 0.5, 0.5001, 0.9, 3})
  void stepAgainstTheEquationOfMotion(double q) {
    double omega = 2 * Math.PI * HZ;
    FirstOrderDifferentialEquations motion =
        new FirstOrderDifferentialEquations() {
          @Override
          public int getDimension() {
            return 2;
          }

          @Override
          public void computeDerivatives(double t, double[] y, double[] dy) {
            dy[0] = y[1];
            dy[1] = -omega / q * y[1] - omega * omega * (y[0] - 1);
          }
        };
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(1e-9, 1e-3, 1e-12, 1e-12);
    double[] times = {1e-6, 0.004, 0.02, 0.06, 0.15};
    double[] step = new ConeDecay(HZ, q).step(Curve.of(times)).toArray();
    Check steps =
        Validation.check(
            "step of a cone with Q " + q + ", five times from 1 us to 150 ms",
            "Equation of motion, integrated by a library (Dormand and Prince, order 8).");
    for (int i = 0; i < times.length; i++) {
      double[] end = new double[2];
      integrator.integrate(motion, 0, new double[2], times[i], end);
      steps.add(end[0], step[i]);
    }
    steps.within(1e-7);
  }

  /**
   * 60 dB take ln(1000) Q/(pi f) = 2.2 Q/f seconds where the cone swings (reverberation time of a
   * resonator; Morse and Ingard 1968).
   */
  @Test
  void timeToFallBySixtyDecibels() {
    Validation.check(
            "time to fall by 60 dB, 30 Hz, Q 1.5",
            "Closed form: ln(1000) Q/(pi f) (P. M. Morse and K. U. Ingard 1968).")
        .expected(Math.log(1000) * 1.5 / (Math.PI * 30), "s")
        .computed(new ConeDecay(30, 1.5).timeToFallS(60))
        .within(1e-12);
    // without swinging, the slower root of s^2 + w0/Q s + w0^2 = 0 remains
    double omega = 2 * Math.PI * 30;
    double slow = omega * (2.5 - Math.sqrt(2.5 * 2.5 - 1));
    Validation.check(
            "time to fall by 20 dB, 30 Hz, Q 0.2",
            "Closed form: slower root of s^2 + w0/Q s + w0^2 = 0.")
        .expected(Math.log(10) / slow, "s")
        .computed(new ConeDecay(30, 0.2).timeToFallS(20))
        .within(1e-12);
  }
}
