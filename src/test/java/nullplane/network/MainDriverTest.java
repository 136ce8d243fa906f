package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.Optional;
import nullplane.faults.ModelRangeException;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class MainDriverTest {
  private static final Curve BAND = SampleStacks.BAND;
  private static final MainDriver MODEL =
      new MainDriver.Modelled(
          0.2,
          Optional.of(new CrossoverFilter(FilterAlignment.BUTTERWORTH_3, 220)),
          Polarity.INVERTED,
          3.1 / 343.2);

  /** Two equal sources, one later by t: |sum| = 2 |cos(w t/2)|, by the sum of phasors. */
  @Test
  void delayCombs() {
    double late = 1.5e-3;
    MainDriverRows main =
        new MainDriver.Modelled(1, Optional.empty(), Polarity.NORMAL, late).rows(BAND);
    double[] re = new double[BAND.size()];
    double[] im = new double[BAND.size()];
    double[] sum = new double[BAND.size()];
    Arrays.fill(re, 1);
    main.sumSquared(re, im, sum);
    for (int f = 0; f < BAND.size(); f++) {
      double half = Math.PI * BAND.at(f) * late;
      assertThat(Math.sqrt(sum[f])).isEqualTo(2 * Math.abs(Math.cos(half)), offset(1e-12));
      assertThat(main.coherence(f, 1, 0)).isEqualTo(Math.abs(Math.cos(half)), offset(1e-12));
      // the woofer, undelayed, leads
      assertThat(Math.IEEEremainder(main.phaseLeadRad(f, 1, 0) - 2 * half, 2 * Math.PI))
          .isEqualTo(0, offset(1e-12));
    }
  }

  /** A model sampled finely and read back as a measurement, its phase wrapped, is the model. */
  @Test
  void measurementOfTheModelIsTheModel() {
    Curve fine = Curve.logSpaced(10, 1200, 1500);
    ComplexCurve sampled = MODEL.pressurePerVolt(fine);
    double[] modulus = new double[fine.size()];
    double[] phase = new double[fine.size()];
    for (int f = 0; f < fine.size(); f++) {
      modulus[f] = sampled.modulus(f);
      phase[f] = sampled.phaseRad(f);
    }
    MainDriver measured =
        new MainDriver.Measured(
            fine, Curve.of(modulus), Curve.of(phase), Optional.empty(), Polarity.NORMAL, 0);
    ComplexCurve expected = MODEL.pressurePerVolt(BAND);
    ComplexCurve found = measured.pressurePerVolt(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      // steps of 0.32 %: the chord of a phase of 2 pi 1000 Hz 9 ms misses it by (57 x 0.0032^2)/8
      double miss =
          Math.hypot(
              found.re().at(f) - expected.re().at(f), found.im().at(f) - expected.im().at(f));
      assertThat(miss / expected.modulus(f)).isLessThan(1e-4);
    }
  }

  /**
   * Halfway by ratio between two points: the geometric mean of the levels, the mean of the phases,
   * the shorter way round where they are wrapped.
   */
  @Test
  void betweenTwoPointsTheMeans() {
    MainDriver measured =
        new MainDriver.Measured(
            Curve.of(20, 80, 320, 1280),
            Curve.of(0.1, 0.4, 0.9, 0.1),
            Curve.of(0.2, 0.8, 3, -3),
            Optional.empty(),
            Polarity.NORMAL,
            0);
    ComplexCurve found = measured.pressurePerVolt(Curve.of(20, 40, 160, 640, 1280));
    double[] levels = {0.1, 0.2, 0.6, 0.3, 0.1};
    double[] phases = {0.2, 0.5, 1.9, Math.PI, -3};
    for (int f = 0; f < levels.length; f++) {
      assertThat(found.modulus(f)).isEqualTo(levels[f], offset(1e-12));
      double miss = Math.IEEEremainder(found.phaseRad(f) - phases[f], 2 * Math.PI);
      assertThat(miss).isEqualTo(0, offset(1e-12));
    }
  }

  /** Rounding of an axis' ends is forgiven, a frequency beyond them is not. */
  @Test
  void theEndsOfAMeasurement() {
    MainDriver measured =
        new MainDriver.Measured(
            Curve.of(20, 80),
            Curve.of(0.1, 0.4),
            Curve.of(0, 0),
            Optional.empty(),
            Polarity.NORMAL,
            0);
    ComplexCurve ends = measured.pressurePerVolt(Curve.of(20 * (1 - 5e-10), 80, 80 * (1 + 5e-10)));
    assertThat(ends.modulus(0)).isEqualTo(0.1, offset(1e-9));
    assertThat(ends.modulus(2)).isEqualTo(0.4, offset(1e-9));
    for (double beyond : new double[] {19.99, 80.01}) {
      assertThatThrownBy(() -> measured.pressurePerVolt(Curve.of(beyond)))
          .isInstanceOf(ModelRangeException.class);
    }
  }

  /**
   * Woofers twice as loud and 0.7 rad ahead, whatever the main driver's phase: |1 + 2 e^0.7j|/3.
   */
  @Test
  void leadAndCoherenceTurnWithBoth() {
    MainDriverRows rows = MODEL.rows(BAND);
    ComplexCurve main = MODEL.pressurePerVolt(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      double re = 2 * main.modulus(f) * Math.cos(main.phaseRad(f) + 0.7);
      double im = 2 * main.modulus(f) * Math.sin(main.phaseRad(f) + 0.7);
      assertThat(rows.phaseLeadRad(f, re, im)).isEqualTo(0.7, offset(1e-12));
      assertThat(rows.coherence(f, re, im))
          .isEqualTo(Math.sqrt(5 + 4 * Math.cos(0.7)) / 3, offset(1e-12));
    }
  }

  /** A network that was not in the measurement, and a turn of polarity, as the model has them. */
  @Test
  void networkAndPolarityComeOnTop() {
    Curve ends = Curve.of(15, 1000);
    MainDriver flat =
        new MainDriver.Measured(
            ends,
            Curve.of(0.2, 0.2),
            Curve.of(0, 0),
            Optional.of(new CrossoverFilter(FilterAlignment.BUTTERWORTH_3, 220)),
            Polarity.INVERTED,
            3.1 / 343.2);
    ComplexCurve found = flat.pressurePerVolt(BAND);
    ComplexCurve expected = MODEL.pressurePerVolt(BAND);
    for (int f = 0; f < BAND.size(); f++) {
      assertThat(found.re().at(f)).isEqualTo(expected.re().at(f), offset(1e-14));
      assertThat(found.im().at(f)).isEqualTo(expected.im().at(f), offset(1e-14));
    }
    assertThatThrownBy(() -> flat.pressurePerVolt(Curve.of(10)))
        .isInstanceOf(ModelRangeException.class)
        .hasMessageContaining("10.0 Hz")
        .hasMessageContaining("15.0 Hz to 1000.0 Hz");
    assertThatThrownBy(
            () ->
                new MainDriver.Measured(
                    Curve.of(20, 20),
                    Curve.of(1, 1),
                    Curve.of(0, 0),
                    Optional.empty(),
                    Polarity.NORMAL,
                    0))
        .hasMessageContaining("rising");
  }

  /** The sum through a network is the sum with the product. */
  @Test
  void sumThroughANetwork() {
    MainDriverRows main = MODEL.rows(BAND);
    ComplexCurve stack = new CrossoverFilter(FilterAlignment.BUTTERWORTH_2, 40).highPass(BAND);
    ComplexCurve network = new CrossoverFilter(FilterAlignment.BUTTERWORTH_1, 200).lowPass(BAND);
    double[] re = new double[BAND.size()];
    double[] im = new double[BAND.size()];
    for (int f = 0; f < re.length; f++) {
      double modulus = stack.modulus(f) * network.modulus(f);
      double phase = stack.phaseRad(f) + network.phaseRad(f);
      re[f] = modulus * Math.cos(phase);
      im[f] = modulus * Math.sin(phase);
    }
    double[] one = new double[re.length];
    double[] other = new double[re.length];
    main.sumSquared(re, im, one);
    main.sumSquared(
        stack.re().toArray(),
        stack.im().toArray(),
        network.re().toArray(),
        network.im().toArray(),
        other);
    for (int f = 0; f < re.length; f++) {
      assertThat(other[f]).isEqualTo(one[f], offset(1e-13));
    }
  }
}
