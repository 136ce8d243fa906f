package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.driver.Woofer;
import nullplane.units.Curve;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RadiationCurveTest {
  private static final Curve AXIS = Curve.of(10, 20, 40, 80);
  private static final double BARE_KG = 0.06;
  private static final double KMS = 1900;
  private static final double RMS = 2.2;
  private static final Woofer OTHERS =
      new Woofer("other", 0.3, 0.05, 6, 0, BARE_KG, KMS, RMS, 10, 0.008, 100);

  /** Made-up air of so many woofers, coupled strongly so that every term shows. */
  private static Complex entry(int i, int j, double hz) {
    double w = 2 * Math.PI * hz;
    double close = i == j ? 1 : 0.4 / (1 + Math.abs(i - j));
    return new Complex(
        (1 + 0.1 * Math.min(i, j)) * close * 1e-4 * w * w, close * w * (0.03 + 0.004 * (i + j)));
  }

  private static PanelResponse panel(int woofers) {
    ComplexMatrix none = new ComplexMatrix(0, woofers, new double[0], new double[0]);
    List<PanelSolution> solutions = new ArrayList<>();
    for (int f = 0; f < AXIS.size(); f++) {
      double[] re = new double[woofers * woofers];
      double[] im = new double[woofers * woofers];
      for (int i = 0; i < woofers; i++) {
        for (int j = 0; j < woofers; j++) {
          re[i * woofers + j] = entry(i, j, AXIS.at(f)).getReal();
          im[i * woofers + j] = entry(i, j, AXIS.at(f)).getImaginary();
        }
      }
      solutions.add(
          new PanelSolution(
              AXIS.at(f), new ComplexMatrix(woofers, woofers, re, im), none, none, 0));
    }
    return new PanelResponse(AXIS, solutions);
  }

  private static Complex cone(double hz) {
    double w = 2 * Math.PI * hz;
    return new Complex(RMS, w * BARE_KG - KMS / w);
  }

  private static void isAt(RadiationCurve curve, int f, Complex expected) {
    assertThat(curve.resistanceNsPerM().at(f))
        .isCloseTo(expected.getReal(), within(1e-12 * expected.abs()));
    assertThat(curve.reactanceNsPerM().at(f))
        .isCloseTo(expected.getImaginary(), within(1e-12 * expected.abs()));
  }

  /** Both force balances by Cramer's rule: z00 - z01^2/(z11 + z). */
  @Test
  void oneOpenWooferIsTakenInByCramersRule() {
    for (int f = 0; f < AXIS.size(); f++) {
      double hz = AXIS.at(f);
      Complex mutual = entry(0, 1, hz);
      Complex other = entry(1, 1, hz).add(cone(hz));
      isAt(
          RadiationCurve.withOpenWoofers(panel(2), 0, OTHERS),
          f,
          entry(0, 0, hz).subtract(mutual.multiply(mutual).divide(other)));
    }
  }

  /**
   * Three woofers, each measured in turn: the driven one moves with 1 m/s, the velocities of the
   * two others by Cramer's rule, then the force on the driven one.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void twoOpenWoofersAreTakenInByCramersRule(int driven) {
    int a = driven == 0 ? 1 : 0;
    int b = driven == 2 ? 1 : 2;
    RadiationCurve curve = RadiationCurve.withOpenWoofers(panel(3), driven, OTHERS);
    for (int f = 0; f < AXIS.size(); f++) {
      double hz = AXIS.at(f);
      Complex aa = entry(a, a, hz).add(cone(hz));
      Complex bb = entry(b, b, hz).add(cone(hz));
      Complex ab = entry(a, b, hz);
      Complex da = entry(driven, a, hz);
      Complex db = entry(driven, b, hz);
      Complex whole = aa.multiply(bb).subtract(ab.multiply(ab));
      Complex ua = db.multiply(ab).subtract(da.multiply(bb)).divide(whole);
      Complex ub = da.multiply(ab).subtract(db.multiply(aa)).divide(whole);
      isAt(curve, f, entry(driven, driven, hz).add(da.multiply(ua)).add(db.multiply(ub)));
    }
  }

  @Test
  void oneAloneHasItsOwnAir() {
    RadiationCurve alone = RadiationCurve.withOpenWoofers(panel(1), 0, OTHERS);
    assertThat(alone).isEqualTo(RadiationCurve.ofPanel(panel(1), 0));
    isAt(alone, 2, entry(0, 0, 40));
  }

  /**
   * Of a constant mass and a loss that goes with w^2, what lies between is known exactly. Below,
   * the mass stays and the loss goes with w^4, as a small dipole's (Beranek and Mellow 2012, ch.
   * 4).
   */
  @Test
  void betweenTheFrequenciesAndBelowThem() {
    double[] re = new double[4];
    double[] im = new double[4];
    for (int f = 0; f < 4; f++) {
      double w = 2 * Math.PI * AXIS.at(f);
      re[f] = 2e-5 * w * w;
      im[f] = 0.04 * w;
    }
    RadiationCurve curve = new RadiationCurve(AXIS, Curve.of(re), Curve.of(im));
    double inside = 2 * Math.PI * 33;
    double below = 2 * Math.PI * 5;
    double[][] at = curve.at(new double[] {below, inside, 2 * Math.PI * 80});
    assertThat(at[0][0]).isCloseTo(re[0] / 16, within(1e-12));
    assertThat(at[1][0]).isCloseTo(0.04 * below, within(1e-12));
    assertThat(at[0][1]).isCloseTo(2e-5 * inside * inside, within(1e-12));
    assertThat(at[1][1]).isCloseTo(0.04 * inside, within(1e-12));
    assertThat(at[1][2]).isCloseTo(im[3], within(1e-12));
  }
}
