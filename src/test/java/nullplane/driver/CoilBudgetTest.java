package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import nullplane.units.Air;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoilBudgetTest {
  private static final ConductorMaterial COPPER = ConductorMaterial.COPPER;

  @Test
  void addsUpToTheBareMovingMass() {
    Woofer woofer = Woofers.tuned(0.3, 0.0531, 0.06, 30, 0.8, 0.008);
    CoilBudget budget = CoilBudget.of(woofer, 1.0, 0.008, COPPER);
    assertThat(budget.windingHeightM()).isEqualTo(0.024, offset(1e-15));
    assertThat(budget.coilMassKg() + budget.remainderKg()).isEqualTo(0.06, offset(1e-15));
    // Bl^2/Re 1.7241e-8 x 8890 x 9, worked by hand from the definition
    assertThat(budget.coilMassKg())
        .isEqualTo(
            woofer.forceFactorTm() * woofer.forceFactorTm() / 5.6 * 1.53272e-4 * 9, offset(1e-6));
    assertThat(budget.leastRemainderKg()).isEqualTo(0.45 * 0.0531, offset(1e-15));
    assertThat(budget.shortfall()).isZero();
  }

  /**
   * Common practice, no source: the lightest total moving mass of each size (with the air of a free
   * disc) is buildable with a modest coil, 3 mm of travel in a 6 mm gap of 1.1 T, Qts 0.6; and not
   * with 12 mm of travel, nor at two thirds of the mass.
   */
  @ParameterizedTest
  @CsvSource({
    "0.200, 0.0215, 0.018, 40",
    "0.250, 0.0338, 0.025, 35",
    "0.300, 0.0505, 0.040, 30",
    "0.380, 0.0840, 0.070, 28",
    "0.460, 0.1190, 0.100, 25"
  })
  void lightestWooferOfEachSizeIsJustBuildable(
      double nominalM, double areaM2, double totalKg, double resonanceHz) {
    double bareKg =
        totalKg - Mounting.FREE_AIR.airMassKg(Math.sqrt(areaM2 / Math.PI), Air.standard());
    CoilBudget modest = budgetOf(Woofers.tuned(nominalM, areaM2, bareKg, resonanceHz, 0.6, 0.003));
    assertThat(modest.shortfall()).isZero();
    // Just: what is left over after wire and least remainder is under a quarter of the whole.
    assertThat(modest.remainderKg() - modest.leastRemainderKg()).isLessThan(bareKg / 4);
    CoilBudget longTravel =
        budgetOf(Woofers.tuned(nominalM, areaM2, bareKg, resonanceHz, 0.6, 0.012));
    assertThat(longTravel.shortfall()).isPositive();
    CoilBudget tooLight =
        budgetOf(Woofers.tuned(nominalM, areaM2, bareKg * 2 / 3, resonanceHz, 0.6, 0.003));
    assertThat(tooLight.shortfall()).isPositive();
  }

  /** No cliff anywhere: once the mass is spent, each bit of wire more counts by its own weight. */
  @Test
  void shortfallGrowsByTheWireThatTravelAsks() {
    CoilBudget before = budgetOf(Woofers.tuned(0.3, 0.0531, 0.05, 28, 0.5, 0.004));
    assertThat(before.shortfall()).isZero();
    for (double travelM = 0.0045; travelM < 0.03; travelM += 0.0005) {
      CoilBudget next = budgetOf(Woofers.tuned(0.3, 0.0531, 0.05, 28, 0.5, travelM));
      double rise = next.shortfall() - before.shortfall();
      double wireShare = (next.coilMassKg() - before.coilMassKg()) / next.leastRemainderKg();
      if (before.shortfall() > 0) {
        assertThat(rise).isEqualTo(wireShare, offset(1e-12));
      } else {
        assertThat(rise).isBetween(0.0, wireShare);
      }
      before = next;
    }
    // Far out the remainder is below zero and the distance goes on beyond 1.
    assertThat(before.remainderKg()).isNegative();
    assertThat(before.shortfall()).isGreaterThan(1);
  }

  @Test
  void rejectsBudgetsThatAreNone() {
    assertThatThrownBy(() -> new CoilBudget(0.02, 0.01, 0.02, 0))
        .hasMessageContaining("least remainder");
    assertThatThrownBy(() -> new CoilBudget(0.02, 0.01, Double.NaN, 0.02))
        .hasMessageContaining("remainder");
  }

  /** Common practice: 250 to 380 mm not below about 300 to 600 N/m. */
  @ParameterizedTest
  @CsvSource({"0.250, 300", "0.300, 400", "0.380, 600", "0.150, 300", "0.600, 800"})
  void suspensionFloorBySize(double nominalM, double floor) {
    SuspensionLimits limits = SuspensionLimits.forNominal(nominalM);
    assertThat(limits.stiffnessNPerM().lower()).isEqualTo(floor, offset(1e-9));
    assertThat(limits.shortfall(floor)).isZero();
    assertThat(limits.shortfall(floor * 0.9)).isEqualTo(0.1, offset(1e-12));
  }

  /** Beyond the sizes in the table its ends hold, the ceilings as well. */
  @Test
  void suspensionCeilingBeyondTheSizes() {
    assertThat(SuspensionLimits.forNominal(0.15).stiffnessNPerM().upper()).isEqualTo(5_000);
    assertThat(SuspensionLimits.forNominal(0.6).stiffnessNPerM().upper()).isEqualTo(19_000);
  }

  @Test
  void suspensionLimitsRunBetweenSizesAndKeepADistance() {
    SuspensionLimits limits = SuspensionLimits.forNominal(0.34);
    assertThat(limits.stiffnessNPerM().lower()).isEqualTo(500, offset(1e-9));
    assertThat(limits.stiffnessNPerM().upper()).isEqualTo(13_200, offset(1e-9));
    assertThat(limits.shortfall(5_000)).isZero();
    assertThat(limits.shortfall(13_200 * 1.25)).isEqualTo(0.25, offset(1e-12));
    assertThatThrownBy(() -> SuspensionLimits.forNominal(Double.NaN))
        .hasMessageContaining("nominal size");
  }

  /** The heaviest woofer of each size at its highest resonance stays within the ceiling. */
  @ParameterizedTest
  @CsvSource({
    "0.200, 0.035, 59",
    "0.250, 0.060, 54",
    "0.300, 0.120, 49",
    "0.380, 0.180, 44",
    "0.460, 0.300, 39"
  })
  void suspensionCeilingIsGenerous(double nominalM, double massKg, double resonanceHz) {
    double kms = Math.pow(2 * Math.PI * resonanceHz, 2) * massKg;
    assertThat(SuspensionLimits.forNominal(nominalM).shortfall(kms)).isZero();
  }

  private static CoilBudget budgetOf(Woofer woofer) {
    return CoilBudget.of(woofer, 1.1, 0.006, COPPER);
  }
}
