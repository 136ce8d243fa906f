package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import nullplane.acoustics.PointSources;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;

class MountingTest {
  /** Lamb, Hydrodynamics (1932), art. 102: 5.549 g for a = 0.12 m; a baffle doubles it. */
  @Test
  void airMassOfTheTwoMountings() {
    Air air = Air.standard();
    double free = Mounting.FREE_AIR.airMassKg(0.12, air);
    assertThat(free).isEqualTo(5.549e-3, offset(0.001e-3));
    assertThat(free).isEqualTo(PointSources.freeDiscMassKg(0.12, air), offset(1e-15));
    assertThat(Mounting.INFINITE_BAFFLE.airMassKg(0.12, air)).isEqualTo(2 * free, offset(1e-15));
  }
}
