package nullplane.fit;

import java.util.Arrays;
import java.util.List;

/**
 * The equivalent circuit of a woofer and its distance to one or two sweeps.
 *
 * <p>Symbols: w0 resonance in free air, M moving mass in free air, E(w) what the cone moved beyond
 * that (added mass; the panel's air less that of a free disc), s = Bl^2/M = w0 Re/Qes:
 *
 * <pre>
 *   Z = Re + ZL(w) + s / [w0/Qms + j (w - w0^2/w) + E(w)/M]
 * </pre>
 *
 * <p>Distance: ln Z of the circuit less ln Z of the sweep: the relative error of the modulus, and
 * the error of the phase. To the first order this is the relative complex error; unlike it, it has
 * no bias from the weights. Parameters: ln Re, ln w0, ln Qms, ln Qes, those of the coil, then, with
 * a second sweep, ln M and ln Re of that sweep (a coil warms between sweeps).
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383, with Zm extended by E. Small travel;
 * a cone that moves as one.
 */
final class Circuit {
  static final int LN_RE = 0;
  static final int LN_W0 = 1;
  static final int LN_QMS = 2;
  static final int LN_QES = 3;
  static final int COIL = 4;

  /** How the moving mass is known. */
  enum MassRule {
    /** Not at all; E must not matter. */
    NONE,
    /** As a parameter of the fit. */
    FITTED,
    /** As a number, ln M. */
    STATED,
    /** By the force factor, M = Bl^2/s, from ln Bl. */
    BY_FORCE_FACTOR
  }

  private final List<PreparedSweep> sweeps;
  private final List<double[][]> extra;
  private final CoilForm coil;
  private final MassRule rule;
  private final double stated;
  private final double reference;
  private final double weightMagnitude;
  private final double weightPhase;

  /**
   * @param sweeps one or two sweeps
   * @param extra E(w) of each, real parts first (N s/m)
   * @param coil form of the inductance
   * @param rule how the mass is known
   * @param stated ln M or ln Bl where the rule asks for it
   * @param reference angular frequency of the semi-inductance's modulus (rad/s)
   * @param weightMagnitude factor on modulus errors (1)
   * @param weightPhase factor on phase errors (1)
   */
  Circuit(
      List<PreparedSweep> sweeps,
      List<double[][]> extra,
      CoilForm coil,
      MassRule rule,
      double stated,
      double reference,
      double weightMagnitude,
      double weightPhase) {
    this.sweeps = List.copyOf(sweeps);
    this.extra = List.copyOf(extra);
    this.coil = coil;
    this.rule = rule;
    this.stated = stated;
    this.reference = reference;
    this.weightMagnitude = weightMagnitude;
    this.weightPhase = weightPhase;
  }

  /** Returns this circuit with other weights. */
  Circuit withWeights(double magnitude, double phase) {
    return new Circuit(sweeps, extra, coil, rule, stated, reference, magnitude, phase);
  }

  CoilForm coil() {
    return coil;
  }

  MassRule rule() {
    return rule;
  }

  double reference() {
    return reference;
  }

  double weightMagnitude() {
    return weightMagnitude;
  }

  double weightPhase() {
    return weightPhase;
  }

  List<PreparedSweep> sweeps() {
    return sweeps;
  }

  /** Returns the number of parameters. */
  int parameters() {
    return COIL + coil.count() + (rule == MassRule.FITTED ? 1 : 0) + sweeps.size() - 1;
  }

  /** Returns the index of ln M; there is one if the mass is fitted. */
  int massAt() {
    return COIL + coil.count();
  }

  /** Returns the number of rows: one per modulus and one per phase. */
  int rows() {
    return sweeps.stream().mapToInt(s -> s.hasPhase() ? 2 * s.size() : s.size()).sum();
  }

  /** What follows from the parameters at every frequency, and work space. */
  private static final class Motion {
    final double w0;
    final double loss;
    final double strength;
    final double inverseMass;
    final double firstResistance;
    final double secondResistance;
    final double[] coilOut;

    Motion(Circuit circuit, double[] theta) {
      w0 = Math.exp(theta[LN_W0]);
      loss = w0 / Math.exp(theta[LN_QMS]);
      firstResistance = Math.exp(theta[LN_RE]);
      strength = w0 * firstResistance / Math.exp(theta[LN_QES]);
      inverseMass = circuit.rule == MassRule.NONE ? 0 : Math.exp(-circuit.lnMass(theta));
      secondResistance = Math.exp(theta[theta.length - 1]);
      coilOut = new double[2 + 2 * circuit.coil.count()];
    }
  }

  /** Returns the parameters moved to where nothing overflows. */
  double[] clamped(double[] theta) {
    double[] near = Arrays.stream(theta).map(t -> Math.max(-40, Math.min(40, t))).toArray();
    if (coil == CoilForm.SEMI) {
      near[COIL + 1] = Math.max(0, Math.min(1.5, near[COIL + 1]));
    }
    return near;
  }

  /** Returns ln M at given parameters; 0 if it is not known. */
  double lnMass(double[] theta) {
    return switch (rule) {
      case NONE -> 0;
      case FITTED -> theta[massAt()];
      case STATED -> stated;
      case BY_FORCE_FACTOR -> 2 * stated - theta[LN_W0] - theta[LN_RE] + theta[LN_QES];
    };
  }

  /** Returns the distance of each row, weighted (1, rad), without derivatives. */
  double[] residuals(double[] theta) {
    double[] residual = new double[rows()];
    evaluate(theta, residual, new double[0][]);
    return residual;
  }

  /**
   * Computes the distance of each row and its derivatives.
   *
   * @param theta the parameters
   * @param residual one per row, overwritten
   * @param jacobian rows x parameters, overwritten; of no rows if not wanted
   */
  void evaluate(double[] theta, double[] residual, double[][] jacobian) {
    int row = 0;
    int parameters = parameters();
    double[] derivative = new double[2 * parameters];
    double[] z = new double[2];
    Motion motion = new Motion(this, theta);
    for (int s = 0; s < sweeps.size(); s++) {
      PreparedSweep sweep = sweeps.get(s);
      for (int i = 0; i < sweep.size(); i++) {
        impedance(theta, motion, s, i, z, derivative);
        double squared = z[0] * z[0] + z[1] * z[1];
        residual[row] = weightMagnitude * (0.5 * Math.log(squared) - sweep.lnMagnitude(i));
        boolean phased = sweep.hasPhase();
        if (phased) {
          double turn = Math.atan2(z[1], z[0]) - sweep.phase(i);
          residual[row + 1] = weightPhase * wrapped(turn);
        }
        if (jacobian.length > 0) {
          for (int p = 0; p < parameters; p++) {
            double dRe = derivative[2 * p];
            double dIm = derivative[2 * p + 1];
            jacobian[row][p] = weightMagnitude * (dRe * z[0] + dIm * z[1]) / squared;
            if (phased) {
              jacobian[row + 1][p] = weightPhase * (dIm * z[0] - dRe * z[1]) / squared;
            }
          }
        }
        row += phased ? 2 : 1;
      }
    }
  }

  /** Returns the difference of two angles, each in -pi .. pi, as the shorter way round (rad). */
  private static double wrapped(double turn) {
    return turn > Math.PI ? turn - 2 * Math.PI : turn < -Math.PI ? turn + 2 * Math.PI : turn;
  }

  /**
   * Computes the impedance at a point and its derivatives by the parameters (ohm).
   *
   * @param theta the parameters
   * @param motion what follows from them at every frequency
   * @param s index of the sweep
   * @param i index of the point
   * @param z real and imaginary part, overwritten
   * @param derivative real and imaginary part for each parameter, overwritten
   */
  private void impedance(
      double[] theta, Motion motion, int s, int i, double[] z, double[] derivative) {
    double w = sweeps.get(s).omega(i);
    double w0 = motion.w0;
    double loss = motion.loss;
    double strength = motion.strength;
    double eRe = extra.get(s)[0][i] * motion.inverseMass;
    double eIm = extra.get(s)[1][i] * motion.inverseMass;
    double dRe = loss + eRe;
    double dIm = w - w0 * w0 / w + eIm;
    double squared = dRe * dRe + dIm * dIm;
    double mRe = strength * dRe / squared; // motional impedance
    double mIm = -strength * dIm / squared;
    // s/D^2 = motional^2/s
    double qRe = (mRe * mRe - mIm * mIm) / strength;
    double qIm = 2 * mRe * mIm / strength;

    double[] coilOut = motion.coilOut;
    coil.evaluate(w, reference, theta, COIL, coilOut);
    boolean second = s > 0;
    double ownResistance = second ? motion.secondResistance : motion.firstResistance;
    z[0] = ownResistance + coilOut[0] + mRe;
    z[1] = coilOut[1] + mIm;

    Arrays.fill(derivative, 0);
    derivative[2 * LN_RE] = mRe + (second ? 0 : ownResistance);
    derivative[2 * LN_RE + 1] = mIm;
    double slope = 2 * w0 * w0 / w; // -d(D)/d(ln w0) is -(loss - j slope)
    derivative[2 * LN_W0] = mRe - (qRe * loss + qIm * slope);
    derivative[2 * LN_W0 + 1] = mIm - (qIm * loss - qRe * slope);
    derivative[2 * LN_QMS] = qRe * loss;
    derivative[2 * LN_QMS + 1] = qIm * loss;
    derivative[2 * LN_QES] = -mRe;
    derivative[2 * LN_QES + 1] = -mIm;
    System.arraycopy(coilOut, 2, derivative, 2 * COIL, 2 * coil.count());
    double byMassRe = qRe * eRe - qIm * eIm;
    double byMassIm = qRe * eIm + qIm * eRe;
    if (rule == MassRule.FITTED) {
      derivative[2 * massAt()] = byMassRe;
      derivative[2 * massAt() + 1] = byMassIm;
    } else if (rule == MassRule.BY_FORCE_FACTOR) {
      derivative[2 * LN_W0] -= byMassRe;
      derivative[2 * LN_W0 + 1] -= byMassIm;
      derivative[2 * LN_RE] -= byMassRe;
      derivative[2 * LN_RE + 1] -= byMassIm;
      derivative[2 * LN_QES] += byMassRe;
      derivative[2 * LN_QES + 1] += byMassIm;
    }
    if (second) {
      derivative[derivative.length - 2] = ownResistance;
    }
  }

  /**
   * Returns the modulus of the motional impedance at each point of the first sweep, as a share of
   * what it would be at a resonance without extra loss (1).
   */
  double[] motionalShare(double[] theta) {
    PreparedSweep sweep = sweeps.get(0);
    Motion motion = new Motion(this, theta);
    double[] share = new double[sweep.size()];
    for (int i = 0; i < share.length; i++) {
      double w = sweep.omega(i);
      double re = motion.loss + extra.get(0)[0][i] * motion.inverseMass;
      double im = w - motion.w0 * motion.w0 / w + extra.get(0)[1][i] * motion.inverseMass;
      share[i] = motion.loss / Math.hypot(re, im);
    }
    return share;
  }
}
