package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import nullplane.validation.Validation;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class MakerResponseReference {
  private static final double STIFFNESS_SCATTER = 0.05;

  private static MakerMove stiffened(double asked, double before, double after, double error) {
    return new MakerMove(
        1,
        2,
        new AskedChange(0, asked, 0, Optional.empty(), 0),
        Map.of(),
        Map.of(Lever.STIFFNESS, new LeverReading(before, error * before, 1)),
        Map.of(Lever.STIFFNESS, new LeverReading(after, error * after, 1)));
  }

  /** One lever, one round: the mean of observation and prior, each weighted by its precision. */
  @Test
  void oneRoundIsTheWeightedMeanOfDataAndPrior() {
    double x = Math.log(0.7);
    double y = Math.log(0.76); // near enough to the prior that the scatter does not widen it
    double variance = 2 * (0.01 * 0.01 + STIFFNESS_SCATTER * STIFFNESS_SCATTER);
    double data = x * x / variance;
    double prior = 1 / (0.3 * 0.3);
    LearnedGain gain =
        MakerResponse.learned(List.of(stiffened(-0.3, 3000, 2280, 0.01))).of(Lever.STIFFNESS);
    // Gauss' combination of two independent results, for example JCGM 100:2008, sec. F.1
    String gauss = "Weighted mean of two results (C. F. Gauss; JCGM 100:2008, F.1).";
    Validation.check("gain learned in one round", gauss)
        .expected((data * (y / x) + prior) / (data + prior), "")
        .computed(gain.gain())
        .within(1e-12);
    Validation.check("standard error of that gain", gauss)
        .expected(1 / Math.sqrt(data + prior), "")
        .computed(gain.standardError())
        .within(1e-12);
    assertThat(gain.rounds()).isEqualTo(1);
  }

  /** Many rounds: ordinary least squares through the origin, by another routine of the library. */
  @Test
  void manyRoundsAreOrdinaryLeastSquares() {
    Random chance = new Random(11);
    SimpleRegression expected = new SimpleRegression(false);
    List<MakerMove> moves = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      double x = 2 * chance.nextDouble() - 1;
      double y = 0.6 * x + 0.07 * chance.nextGaussian();
      expected.addData(x, y);
      moves.add(stiffened(Math.expm1(x), 3000, 3000 * Math.exp(y), 0));
    }
    LearnedGain gain = MakerResponse.learned(moves).of(Lever.STIFFNESS);
    // the prior weighs 11 against some 26,000 of the data: it moves the gain by 2e-4
    String regression = "Least squares through the origin by another routine of a library.";
    Validation.check("gain learned in 400 rounds", regression)
        .expected(expected.getSlope(), "")
        .computed(gain.gain())
        .within(4e-4);
    assertThat(gain.gain()).isCloseTo(0.6, within(0.02));
    Validation.check("standard error of the gain of 400 rounds", regression)
        .expected(expected.getSlopeStdErr(), "")
        .computed(gain.standardError())
        .within(6e-4);
  }

  /**
   * A new winding acts on mass and force too; what it does there is not the other levers' doing.
   */
  @Test
  void windingAndFluxAreToldApart() {
    double winding = 0.5;
    double flux = 1.2;
    List<MakerMove> moves = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      double share = i % 2 == 0 ? 0.2 : -0.15;
      AskedChange.WindingStep step =
          new AskedChange.WindingStep(0.002, i % 3 == 0 ? 0.8 : 1.3, i % 3 == 0 ? 0.9 : 1.1);
      double force = 10 * Math.pow(1 + share, flux) * Math.pow(step.forceRatio(), winding);
      moves.add(
          new MakerMove(
              1,
              2,
              new AskedChange(0, 0, share, Optional.of(step), 0),
              Map.of(),
              Map.of(
                  Lever.FLUX, new LeverReading(10, 0, 1),
                  Lever.WINDING, new LeverReading(6, 0, 1),
                  Lever.MASS, new LeverReading(0.06, 0, 1)),
              Map.of(
                  Lever.FLUX, new LeverReading(force, 0, 1),
                  Lever.WINDING,
                      new LeverReading(6 * Math.pow(step.resistanceRatio(), winding), 0, 1),
                  Lever.MASS, new LeverReading(0.06 + winding * 0.002, 0, 1))));
    }
    MakerResponse response = MakerResponse.learned(moves);
    String made = "A maker made up with these gains.";
    Validation.check("gain of the winding beside that of the flux", made)
        .expected(winding, "")
        .computed(response.of(Lever.WINDING).gain())
        .within(2e-3);
    Validation.check("gain of the flux beside that of the winding", made)
        .expected(flux, "")
        .computed(response.of(Lever.FLUX).gain())
        .within(2e-3);
    assertThat(response.knows(Lever.STIFFNESS)).isFalse();
    assertThat(response.used(Lever.STIFFNESS)).isEqualTo(1);
    assertThat(moves.get(0).achieved(Lever.FLUX, winding).orElseThrow())
        .isCloseTo(Math.pow(1.2, flux) - 1, within(1e-12));
  }

  /** What is expected of a request is what a maker with these gains delivers. */
  @Test
  void expectedChangeFollowsTheGains() {
    MakerResponse response = MakerResponse.learned(List.of(stiffened(-0.3, 3000, 2400, 0.01)));
    double gain = response.used(Lever.STIFFNESS);
    Change expected = response.expected(new Change(0.003, -0.4, 0.1, Optional.empty(), 0, 0));
    assertThat(1 + expected.stiffnessShare()).isCloseTo(Math.pow(0.6, gain), within(1e-12));
    assertThat(expected.massKg()).isEqualTo(0.003);
    assertThat(expected.fluxShare()).isCloseTo(0.1, within(1e-12));
  }

  /** A lever that answers the wrong way, or not at all, is not asked for without bounds. */
  @Test
  void aDeafLeverIsBounded() {
    List<MakerMove> moves = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      moves.add(stiffened(-0.4, 3000, 3300, 0.001));
    }
    MakerResponse response = MakerResponse.learned(moves);
    assertThat(response.of(Lever.STIFFNESS).gain()).isNegative();
    assertThat(response.used(Lever.STIFFNESS)).isEqualTo(0.25);
  }
}
