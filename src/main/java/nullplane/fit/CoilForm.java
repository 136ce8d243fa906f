package nullplane.fit;

import java.util.List;

/**
 * The forms of a coil's inductance that a sweep is tried against, simplest first, with their
 * derivatives.
 *
 * <p>Sources: J. R. Wright, J. Audio Eng. Soc. 38(10) (1990) 749 and W. M. Leach, J. Audio Eng.
 * Soc. 50(6) (2002) 442 for K (jw)^n; J. Vanderkooy, J. Audio Eng. Soc. 37(3) (1989) 119 for the
 * eddy currents behind it; Le + L2||R2 by circuit theory. n from 0.5 to 1.
 */
enum CoilForm {
  /** jw Le; parameter ln Le. */
  PLAIN("Le", 1) {
    @Override
    void evaluate(double omega, double reference, double[] theta, int at, double[] out) {
      out[0] = 0;
      out[1] = omega * Math.exp(theta[at]);
      out[2] = 0;
      out[3] = out[1];
    }
  },
  /** K (jw)^n; parameters ln of the modulus at the reference frequency, n. */
  SEMI("K (jw)^n", 2) {
    @Override
    void evaluate(double omega, double reference, double[] theta, int at, double[] out) {
      double n = theta[at + 1];
      double ln = Math.log(omega / reference);
      double modulus = Math.exp(theta[at] + n * ln);
      double angle = n * Math.PI / 2;
      out[0] = modulus * Math.cos(angle);
      out[1] = modulus * Math.sin(angle);
      out[2] = out[0];
      out[3] = out[1];
      out[4] = out[0] * ln - out[1] * Math.PI / 2;
      out[5] = out[1] * ln + out[0] * Math.PI / 2;
    }
  },
  /** jw Le + jw L2 R2/(R2 + jw L2); parameters ln Le, ln L2, ln R2. */
  LOSSY("Le + L2||R2", 3) {
    @Override
    void evaluate(double omega, double reference, double[] theta, int at, double[] out) {
      double first = omega * Math.exp(theta[at]);
      double x = omega * Math.exp(theta[at + 1]);
      double r = Math.exp(theta[at + 2]);
      double sum = r * r + x * x;
      double shareRe = r * r / sum; // R2/(R2 + jw L2)
      double shareIm = -r * x / sum;
      double pRe = -x * shareIm; // jw L2 R2/(R2 + jw L2)
      double pIm = x * shareRe;
      out[0] = pRe;
      out[1] = first + pIm;
      out[2] = 0;
      out[3] = first;
      out[4] = pRe * shareRe - pIm * shareIm;
      out[5] = pRe * shareIm + pIm * shareRe;
      out[6] = pRe - out[4];
      out[7] = pIm - out[5];
    }
  };

  private final String words;
  private final int count;

  CoilForm(String words, int count) {
    this.words = words;
    this.count = count;
  }

  /** Returns the form as people write it. */
  String words() {
    return words;
  }

  /** Returns what the form's parameters are called. */
  List<FittedParameter> parameters() {
    return switch (this) {
      case PLAIN -> List.of(FittedParameter.LE);
      case SEMI -> List.of(FittedParameter.K, FittedParameter.N);
      case LOSSY -> List.of(FittedParameter.LE, FittedParameter.L2, FittedParameter.R2);
    };
  }

  /** Returns the number of parameters. */
  int count() {
    return count;
  }

  /**
   * Computes the impedance and its derivatives by the parameters (ohm).
   *
   * @param omega angular frequency (rad/s)
   * @param reference angular frequency that the semi-inductance's modulus is stated at (rad/s)
   * @param theta all parameters of the fit
   * @param at index of the form's first one
   * @param out real and imaginary part of the impedance, then of each derivative
   */
  abstract void evaluate(double omega, double reference, double[] theta, int at, double[] out);
}
