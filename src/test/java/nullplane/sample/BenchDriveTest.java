package nullplane.sample;

import static nullplane.sample.MakerBriefs.AIR;
import static nullplane.sample.MakerBriefs.WOOFER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchDriveTest {
  private static final double AIR_KG = Mounting.FREE_AIR.airMassKg(WOOFER.radiusM(), AIR);

  /** So lossy that the cone moves most at the lowest tone, 20 Hz. */
  private static Woofer lossy(double travelM) {
    return new Woofer(
        "lossy",
        WOOFER.nominalM(),
        WOOFER.effectiveAreaM2(),
        6,
        0.5e-3,
        WOOFER.bareMassKg(),
        WOOFER.stiffnessNPerM(),
        40,
        9,
        travelM,
        100);
  }

  /** Z = Re + jw Le + Bl^2/(Rms + j(w M - K/w)); the heat is that of Re by Ohm's law, I^2 Re. */
  @ParameterizedTest
  @CsvSource({"20", "32", "45", "300", "5000"})
  void heatIsThatOfTheCoilsResistance(double hz) {
    double w = 2 * Math.PI * hz;
    double bl = WOOFER.forceFactorTm();
    Complex mechanical =
        new Complex(
            WOOFER.lossNsPerM(), w * (WOOFER.bareMassKg() + AIR_KG) - WOOFER.stiffnessNPerM() / w);
    Complex z =
        new Complex(WOOFER.resistanceOhm(), w * WOOFER.inductanceH())
            .add(mechanical.reciprocal().multiply(bl * bl));
    double expected = Math.pow(20 / z.abs(), 2) * WOOFER.resistanceOhm();
    assertThat(new BenchDrive(WOOFER, AIR).heatW(hz, 20) / expected).isCloseTo(1, within(1e-12));
  }

  /** Root-mean-square velocity u per volt: the peak of the travel is sqrt(2) U u/w. */
  @Test
  void toneReachesItsShareOfTheTravel() {
    BenchDrive bench = new BenchDrive(WOOFER, AIR);
    for (double hz : new double[] {20, 50, 200}) {
      double volts = bench.toneV(hz, 0.3);
      double peak =
          Math.sqrt(2)
              * volts
              * PlainStacks.velocityPerVolt(WOOFER, AIR_KG, hz)
              / (2 * Math.PI * hz);
      assertThat(peak / WOOFER.travelM()).isCloseTo(0.3, within(1e-12));
    }
    BenchDrive damped = new BenchDrive(lossy(0.005), AIR);
    assertThat(damped.sweptV(0.3)).isCloseTo(damped.toneV(20, 0.3), within(1e-9));
  }

  /** The travel that lets a sweep of so many volts just stay within a tenth of it, or just not. */
  @ParameterizedTest
  @CsvSource({
    "2.01, 2",
    "1.99, 1",
    "1.01, 1",
    "0.99, 0.5",
    "0.51, 0.5",
    "0.49, 0.2",
    "0.21, 0.2",
    "0.19, 0.1",
    "0.11, 0.1",
    "0.09, 0.05",
    "0.051, 0.05",
    "0.049, 0.02",
    "0.019, 0.02"
  })
  void sweepTakesTheHighestStepThatFits(double bearsV, double takesV) {
    double peakPerVolt =
        Math.sqrt(2) * PlainStacks.velocityPerVolt(lossy(1), AIR_KG, 20) / (2 * Math.PI * 20);
    Woofer woofer = lossy(10 * bearsV * peakPerVolt);
    assertThat(new BenchDrive(woofer, AIR).sweepV()).isEqualTo(takesV);
  }
}
