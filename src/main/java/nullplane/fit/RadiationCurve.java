package nullplane.fit;

import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.units.Checks;
import nullplane.units.Curve;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexField;
import org.apache.commons.math3.linear.Array2DRowFieldMatrix;
import org.apache.commons.math3.linear.ArrayFieldVector;
import org.apache.commons.math3.linear.FieldLUDecomposition;
import org.apache.commons.math3.linear.FieldVector;

/**
 * The solved radiation impedance that the measured woofer sees: the force on its cone, both faces,
 * per its own velocity, whatever else is on the panel. Other woofers may be absent or held still
 * ({@link #ofPanel}), or free to move with their terminals open ({@link #withOpenWoofers}); any
 * other case can be given as a curve.
 *
 * <p>Between frequencies, reactance over w and resistance over w^2 are natural cubic splines in ln
 * f. Below the lowest frequency the reactance stays a constant mass and the resistance falls as
 * w^4, as that of a small dipole does (L. Beranek and T. Mellow, Acoustics (2012), ch. 4). Above
 * the highest frequency there is no value.
 *
 * @param frequencyHz frequencies (Hz), strictly ascending, at least 4
 * @param resistanceNsPerM real part (N s/m)
 * @param reactanceNsPerM imaginary part (N s/m), e^{+jwt}
 */
public record RadiationCurve(Curve frequencyHz, Curve resistanceNsPerM, Curve reactanceNsPerM)
    implements AirLoad {
  private static final int FEWEST = 4;

  /** Checks that the curves match and the frequencies ascend. */
  public RadiationCurve {
    int points = frequencyHz.size();
    if (points < FEWEST || resistanceNsPerM.size() != points || reactanceNsPerM.size() != points) {
      throw new IllegalArgumentException(
          "a radiation curve needs at least "
              + FEWEST
              + " points, as many of each part; has "
              + points
              + ", "
              + resistanceNsPerM.size()
              + " and "
              + reactanceNsPerM.size());
    }
    for (int i = 0; i < points; i++) {
      Checks.positive(frequencyHz.at(i), "frequency", "Hz");
      Checks.finite(resistanceNsPerM.at(i), "radiation resistance", "N s/m");
      Checks.finite(reactanceNsPerM.at(i), "radiation reactance", "N s/m");
      if (i > 0 && !(frequencyHz.at(i) > frequencyHz.at(i - 1))) {
        throw new IllegalArgumentException("frequencies of a radiation curve must ascend");
      }
    }
  }

  /**
   * Returns the impedance of one woofer on a solved panel while all others are absent (their holes
   * closed flush) or held still: the entry Zii.
   *
   * @param response the panel's acoustics
   * @param woofer index of the measured woofer, from 0
   */
  public static RadiationCurve ofPanel(PanelResponse response, int woofer) {
    return of(
        response, (matrix, f) -> new Complex(matrix.re(woofer, woofer), matrix.im(woofer, woofer)));
  }

  /**
   * Returns the impedance of one woofer on a solved panel while all others hang open and move with
   * the air: Zii - Zio (Zoo + z 1)^{-1} Zoi with z = Rms + j(w M0 - Kms/w) of an open woofer.
   *
   * <p>Source: force balance on the cones without current; derived. Where the other woofers are of
   * the very type being measured, fit first with {@link #ofPanel}, build the woofer, and fit again
   * with this load; the second round settles, since the others act through the air alone.
   *
   * @param response the panel's acoustics
   * @param woofer index of the measured woofer, from 0
   * @param others the woofer in all other places
   */
  public static RadiationCurve withOpenWoofers(PanelResponse response, int woofer, Woofer others) {
    return of(response, (matrix, f) -> amongOpen(matrix, f, woofer, others));
  }

  private interface Entry {
    Complex at(ComplexMatrix impedance, double frequencyHz);
  }

  private static RadiationCurve of(PanelResponse response, Entry entry) {
    int points = response.frequencyHz().size();
    double[] re = new double[points];
    double[] im = new double[points];
    for (int f = 0; f < points; f++) {
      Complex z = entry.at(response.solutions().get(f).impedance(), response.frequencyHz().at(f));
      re[f] = z.getReal();
      im[f] = z.getImaginary();
    }
    return new RadiationCurve(response.frequencyHz(), Curve.of(re), Curve.of(im));
  }

  private static Complex amongOpen(
      ComplexMatrix impedance, double frequencyHz, int woofer, Woofer others) {
    Complex own = new Complex(impedance.re(woofer, woofer), impedance.im(woofer, woofer));
    int count = impedance.rows() - 1;
    if (count == 0) {
      return own;
    }
    double omega = 2 * Math.PI * frequencyHz;
    Complex mechanical =
        new Complex(
            others.lossNsPerM(), omega * others.bareMassKg() - others.stiffnessNPerM() / omega);
    Array2DRowFieldMatrix<Complex> system =
        new Array2DRowFieldMatrix<>(ComplexField.getInstance(), count, count);
    FieldVector<Complex> coupling = new ArrayFieldVector<>(ComplexField.getInstance(), count);
    for (int a = 0; a < count; a++) {
      int i = a < woofer ? a : a + 1;
      coupling.setEntry(a, new Complex(impedance.re(i, woofer), impedance.im(i, woofer)));
      for (int b = 0; b < count; b++) {
        int j = b < woofer ? b : b + 1;
        Complex entry = new Complex(impedance.re(i, j), impedance.im(i, j));
        system.setEntry(a, b, a == b ? entry.add(mechanical) : entry);
      }
    }
    FieldVector<Complex> moved = new FieldLUDecomposition<>(system).getSolver().solve(coupling);
    return own.subtract(coupling.dotProduct(moved));
  }

  /** Returns the highest frequency the curve holds for (Hz). */
  public double highestHz() {
    return frequencyHz.at(frequencyHz.size() - 1);
  }

  /**
   * Returns the impedance at angular frequencies, real parts first (N s/m).
   *
   * @param omega angular frequencies (rad/s), none above the curve's highest
   */
  double[][] at(double[] omega) {
    int points = frequencyHz.size();
    double[] x = new double[points];
    double[] mass = new double[points];
    double[] loss = new double[points];
    for (int i = 0; i < points; i++) {
      double w = 2 * Math.PI * frequencyHz.at(i);
      x[i] = Math.log(w);
      mass[i] = reactanceNsPerM.at(i) / w;
      loss[i] = resistanceNsPerM.at(i) / (w * w);
    }
    PolynomialSplineFunction massSpline = new SplineInterpolator().interpolate(x, mass);
    PolynomialSplineFunction lossSpline = new SplineInterpolator().interpolate(x, loss);
    double[][] out = new double[2][omega.length];
    for (int i = 0; i < omega.length; i++) {
      double w = omega[i];
      double at = Math.log(w);
      if (at < x[0]) {
        double lowest = Math.exp(x[0]);
        out[0][i] = resistanceNsPerM.at(0) * Math.pow(w / lowest, 4);
        out[1][i] = w * mass[0];
      } else {
        double inside = Math.min(at, x[points - 1]); // rounding of the last point
        out[0][i] = w * w * lossSpline.value(inside);
        out[1][i] = w * massSpline.value(inside);
      }
    }
    return out;
  }
}
