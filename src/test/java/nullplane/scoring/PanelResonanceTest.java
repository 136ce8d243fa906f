package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.driver.Woofer;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

/**
 * Resonance and Q of Small 1972 on two woofers whose air is a mass and a resistance, both straight
 * over frequency, so that what lies between the solved frequencies is known.
 */
class PanelResonanceTest {
  private static final Curve AXIS = Curve.of(20, 40, 90, 200);

  /** Row sums: 12 and 14 g of air, mean 13 g; 0.02 f and 0.04 f of resistance, mean 0.03 f. */
  private static PanelResponse response() {
    List<PanelSolution> solutions = new ArrayList<>();
    ComplexMatrix none = new ComplexMatrix(0, 2, new double[0], new double[0]);
    for (int f = 0; f < AXIS.size(); f++) {
      double hz = AXIS.at(f);
      double w = 2 * Math.PI * hz;
      double[] re = {0.015 * hz, 0.005 * hz, 0.005 * hz, 0.035 * hz};
      double[] im = {0.010 * w, 0.002 * w, 0.002 * w, 0.012 * w};
      solutions.add(new PanelSolution(hz, new ComplexMatrix(2, 2, re, im), none, none, 0));
    }
    return new PanelResponse(AXIS, solutions);
  }

  private static Woofer woofer(double stiffness) {
    return new Woofer("w", 0.3, 0.053, 6, 0, 0.06, stiffness, 2.2, 11, 0.008, 100);
  }

  private static void isAsInTheSource(double stiffness, double airOhm) {
    PanelResonance resonance = PanelResonance.of(woofer(stiffness), response(), 1.5);
    double hz = Math.sqrt(stiffness / 0.073) / (2 * Math.PI);
    assertThat(resonance.frequencyHz()).isCloseTo(hz, within(1e-9));
    assertThat(resonance.airMassKg()).isCloseTo(0.013, within(1e-12));
    double loss = 2.2 + airOhm + 11 * 11 / 7.5;
    assertThat(resonance.totalQ()).isCloseTo(Math.sqrt(stiffness * 0.073) / loss, within(1e-9));
  }

  @Test
  void betweenSolvedFrequencies() {
    for (double stiffness : new double[] {1800, 4000, 15_000}) {
      isAsInTheSource(stiffness, 0.03 * Math.sqrt(stiffness / 0.073) / (2 * Math.PI));
    }
  }

  /** Below, the mass stays and the resistance falls as a dipole's, with the fourth power. */
  @Test
  void belowTheLowestFrequency() {
    double hz = Math.sqrt(400 / 0.073) / (2 * Math.PI);
    isAsInTheSource(400, 0.6 * Math.pow(hz / 20, 4));
  }
}
