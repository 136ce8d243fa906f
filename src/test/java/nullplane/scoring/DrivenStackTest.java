package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import nullplane.acoustics.PanelResponse;
import nullplane.driver.Woofer;
import nullplane.network.LowPassBranch;
import nullplane.network.SeriesCoil;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What a stack does outside the solved frequencies, by Ohm's and Newton's laws. */
class DrivenStackTest {
  private static final SeriesCoil COIL = new SeriesCoil(0.003, 0.4, 0.5);
  private static final Woofer WOOFER =
      WorkshopSpecs.woofer(WorkshopSpecs.brief300(), 33, 0.8, 0.06, 0.008);
  private static PanelResponse panel;

  @BeforeAll
  static void solve() {
    DesignSpec spec = WorkshopSpecs.singleAndPair();
    panel = WorkshopSpecs.acoustics(spec, ScoringAxis.of(spec)).get(0).response();
  }

  /**
   * Above the highest solved frequency the coil's resistance stays, its reactance goes with f, the
   * current is that of the whole circuit, the cone is a mass, and the level follows its
   * acceleration.
   */
  @Test
  void aboveTheSolvedFrequenciesTheConeIsAMass() {
    DrivenStack stack = new DrivenStack(panel, new Wiring(1, 1), LowPassBranch.ofCoil(COIL));
    DrivenStack.PerVolt driven = stack.respond(WOOFER);
    double[] hz = stack.frequencyHz();
    assertThat(hz[hz.length - 1]).isCloseTo(22_400, within(1e-6));
    StackModel.PerVolt own = new StackModel.PerVolt(panel.frequencyHz().size(), 1);
    new StackModel(panel, new Wiring(1, 1)).respond(WOOFER, own);
    int highest = panel.frequencyHz().size() - 1;
    int top = stack.firstSolved() + highest;
    double topHz = hz[top];
    assertThat(topHz).isEqualTo(panel.frequencyHz().at(highest));
    for (int f = top; f < hz.length; f++) {
      double ratio = hz[f] / topHz;
      Complex load = new Complex(own.loadRe[highest], own.loadIm[highest] * ratio);
      Complex whole = load.add(new Complex(0.4, 2 * Math.PI * hz[f] * 0.003));
      double current = 1 / whole.abs();
      assertThat(Math.sqrt(driven.currentSquared[f])).isCloseTo(current, withinPercentage(1e-7));
      double perAmpere = driven.pressureSquared[top] / driven.currentSquared[top];
      assertThat(driven.pressureSquared[f] / driven.currentSquared[f])
          .isCloseTo(perAmpere, withinPercentage(1e-7));
      assertThat(driven.excursionSquared[f] / driven.currentSquared[f] * Math.pow(ratio, 4))
          .isCloseTo(
              driven.excursionSquared[top] / driven.currentSquared[top], withinPercentage(1e-7));
    }
  }

  /**
   * Far below resonance the suspension holds the cone: x = Bl V/(Kms (Re + R)) over 1 - (f/f0)^2, R
   * the coil's.
   */
  @Test
  void belowTheSolvedFrequenciesTheSuspensionHolds() {
    DrivenStack stack = new DrivenStack(panel, new Wiring(1, 1), LowPassBranch.ofCoil(COIL));
    double[] hz = stack.frequencyHz();
    assertThat(hz[0]).isCloseTo(5, within(1e-12));
    double held = WOOFER.forceFactorTm() / (WOOFER.stiffnessNPerM() * (5.6 + 0.4));
    double resonance = PanelResonance.of(WOOFER, panel, 0.4).frequencyHz();
    double below = 5 / resonance;
    assertThat(Math.sqrt(stack.respond(WOOFER).excursionSquared[0]))
        .isCloseTo(held / (1 - below * below), withinPercentage(4));
  }

  /**
   * A small dipole: pressure per velocity goes with f^2 (Beranek and Mellow 2012, ch. 4), so with a
   * held cone, whose velocity goes with f, the pressure goes with f^3.
   */
  @Test
  void farBelowTheLevelFallsBy18DecibelsAnOctave() {
    DrivenStack stack = new DrivenStack(panel, new Wiring(1, 1), LowPassBranch.NONE);
    Woofer stiff = new Woofer("stiff", 0.3, 0.0531, 5.6, 0, 0.06, 5e6, 2, 10, 0.01, 100);
    DrivenStack.PerVolt driven = stack.respond(stiff);
    double[] hz = stack.frequencyHz();
    int first = stack.firstSolved();
    for (int f = 0; f < first; f++) {
      assertThat(Math.sqrt(driven.pressureSquared[f] / driven.pressureSquared[first]))
          .isCloseTo(Math.pow(hz[f] / hz[first], 3), withinPercentage(0.1));
    }
  }
}
