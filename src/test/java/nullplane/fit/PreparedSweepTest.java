package nullplane.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Optional;
import nullplane.driver.Mounting;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class PreparedSweepTest {
  private static final Air AIR = Air.standard();
  private static final double AREA = 0.05;
  private static final double RADIUS = Math.sqrt(AREA / Math.PI);

  private static PreparedSweep sweep(double[] moduli, AirLoad load, double addedKg) {
    return PreparedSweep.of(
        new ImpedanceSweep(
            Curve.logSpaced(10, 1000, moduli.length), Curve.of(moduli), Optional.empty()),
        load,
        addedKg,
        Optional.empty(),
        new ArrayList<>());
  }

  private static PreparedSweep flat(int points) {
    double[] moduli = new double[points];
    Arrays.fill(moduli, 8);
    return sweep(moduli, AirLoad.freeAir(), 0);
  }

  /** Every second of 65, none of 64 left out. */
  @Test
  void thinningKeepsNoMoreThanAsked() {
    assertThat(flat(64).thinned(64).size()).isEqualTo(64);
    PreparedSweep thinned = flat(65).thinned(64);
    assertThat(thinned.size()).isEqualTo(33);
    assertThat(thinned.frequencyHz(1)).isEqualTo(flat(65).frequencyHz(2));
    assertThat(flat(129).thinned(64).size()).isEqualTo(43);
  }

  /** The running median takes off a spike of two points of five, and of one of three. */
  @Test
  void smoothingTakesSpikesOff() {
    double[] moduli = new double[60];
    Arrays.fill(moduli, 1);
    moduli[20] = 4;
    moduli[21] = 0.2;
    moduli[22] = 4;
    assertThat(sweep(moduli, AirLoad.freeAir(), 0).smoothed()[30]).isZero();
    assertThat(sweep(moduli, AirLoad.freeAir(), 0).smoothed()[19]).isZero();
    // of 1 1 4 0.2 4 the middle one is 1, of 1 4 0.2 4 1 too
    assertThat(sweep(moduli, AirLoad.freeAir(), 0).smoothed()[20]).isZero();
    assertThat(sweep(moduli, AirLoad.freeAir(), 0).smoothed()[21]).isZero();
    // of fewer points three are looked at: of 4 0.2 4 the middle one is 4
    double[] fewer = Arrays.copyOf(moduli, 59);
    assertThat(sweep(fewer, AirLoad.freeAir(), 0).smoothed()[21])
        .isCloseTo(Math.log(4), within(1e-15));
    assertThat(sweep(fewer, AirLoad.freeAir(), 0).smoothed()[20]).isZero();
    // of 19 points none
    double[] few = Arrays.copyOf(moduli, 19);
    few[8] = 3;
    assertThat(sweep(few, AirLoad.freeAir(), 0).smoothed()[8])
        .isCloseTo(Math.log(3), within(1e-15));
    // the last of 20 has no neighbours on both sides
    double[] some = new double[20];
    Arrays.fill(some, 1);
    some[19] = 5;
    some[8] = 3;
    assertThat(sweep(some, AirLoad.freeAir(), 0).smoothed()[19])
        .isCloseTo(Math.log(5), within(1e-15));
    assertThat(sweep(some, AirLoad.freeAir(), 0).smoothed()[8]).isZero();
  }

  /** Beyond the cone's own parts and a free disc's air: what is stuck on, and the baffle's more. */
  @Test
  void whatIsMovedBesidesIsMassTimesFrequency() {
    double free = Mounting.FREE_AIR.airMassKg(RADIUS, AIR);
    double baffle = Mounting.INFINITE_BAFFLE.airMassKg(RADIUS, AIR);
    double[] moduli = {8, 8, 8};
    PreparedSweep heavy = sweep(moduli, new AirLoad.OfMounting(Mounting.INFINITE_BAFFLE), 0.03);
    double[][] extra = heavy.extraLoad(AREA, AIR, 1.1);
    for (int i = 0; i < 3; i++) {
      assertThat(extra[0][i]).isZero();
      assertThat(extra[1][i]).isCloseTo(heavy.omega(i) * (0.033 + baffle - free), within(1e-12));
    }
    assertThat(heavy.isLoadedOtherwise()).isTrue();
    assertThat(sweep(moduli, AirLoad.freeAir(), 0).extraLoad(AREA, AIR, 1)[1][1])
        .isCloseTo(0, within(1e-15));
  }
}
