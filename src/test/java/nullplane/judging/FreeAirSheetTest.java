package nullplane.judging;

import static org.assertj.core.api.Assertions.assertThat;

import nullplane.driver.Woofer;
import nullplane.scoring.WorkshopSpecs;
import org.junit.jupiter.api.Test;

class FreeAirSheetTest {
  private static final int TRAVEL_BIT = 1 << ParameterGroup.TRAVEL.ordinal();
  private static final int MASS_BIT = 1 << ParameterGroup.MOVING_MASS.ordinal();

  private static FreeAirSheet sheet(double massKg, double travelM) {
    return FreeAirSheet.of(
        new Woofer("w", 0.3, 0.053, 6, 0, massKg, 1500, 2, 10, travelM, 100), WorkshopSpecs.AIR);
  }

  private static double taken(
      FreeAirSheet from, FreeAirSheet other, int bits, ParameterGroup group) {
    return from.with(other, bits).quantity(group);
  }

  /** A number and its neighbour are one figure, the same from either side and with either bit. */
  @Test
  void neighbouringNumbersAreOneFigure() {
    FreeAirSheet one = sheet(0.06, 0.009);
    FreeAirSheet other = sheet(0.06, Math.nextUp(Math.nextUp(0.009)));
    double figure = taken(one, other, 0, ParameterGroup.TRAVEL);
    assertThat(figure).isEqualTo(0.009);
    assertThat(taken(one, other, TRAVEL_BIT, ParameterGroup.TRAVEL)).isEqualTo(figure);
    assertThat(taken(other, one, 0, ParameterGroup.TRAVEL)).isEqualTo(figure);
    assertThat(taken(other, one, TRAVEL_BIT, ParameterGroup.TRAVEL)).isEqualTo(figure);
  }

  /** One part in a thousand million is more than rounding of 1e-16 can do. */
  @Test
  void aSmallDifferenceIsADifference() {
    FreeAirSheet one = sheet(0.06, 0.009);
    FreeAirSheet other = sheet(0.06, 0.009 * (1 + 1e-9));
    assertThat(taken(one, other, 0, ParameterGroup.TRAVEL)).isEqualTo(0.009);
    assertThat(taken(one, other, TRAVEL_BIT, ParameterGroup.TRAVEL)).isEqualTo(0.009 * (1 + 1e-9));
  }

  /** Bits choose by parameter: the mass of the other, the travel of this one. */
  @Test
  void eachBitTakesItsOwnParameter() {
    FreeAirSheet one = sheet(0.06, 0.009);
    FreeAirSheet other = sheet(0.08, 0.012);
    FreeAirSheet mixed = one.with(other, MASS_BIT);
    assertThat(mixed.quantity(ParameterGroup.MOVING_MASS)).isEqualTo(0.08);
    assertThat(mixed.quantity(ParameterGroup.TRAVEL)).isEqualTo(0.009);
    assertThat(mixed.quantity(ParameterGroup.RESONANCE))
        .isEqualTo(one.quantity(ParameterGroup.RESONANCE));
  }
}
