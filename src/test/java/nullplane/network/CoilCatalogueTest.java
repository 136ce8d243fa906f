package nullplane.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoilCatalogueTest {
  private static final ConductorMaterial COPPER = ConductorMaterial.COPPER;

  @Test
  void valuesAreTheDecimalFiguresThemselves() {
    assertThat(PreferredValues.E6.between(0.1e-3, 1e-3))
        .containsExactly(1e-4, 1.5e-4, 2.2e-4, 3.3e-4, 4.7e-4, 6.8e-4, 1e-3);
    assertThat(PreferredValues.E12.between(1e-4, 33e-3))
        .hasSize(2 * 12 + 7)
        .startsWith(1e-4, 1.2e-4)
        .contains(4.7e-3, 8.2e-3)
        .endsWith(2.7e-2, 3.3e-2)
        .isSorted();
    assertThat(PreferredValues.E24.between(47, 51)).containsExactly(47.0, 51.0);
    assertThat(PreferredValues.E6.between(11, 14)).isEmpty();
    assertThat(PreferredValues.E6.between(1, 100)).hasSize(13).endsWith(68.0, 100.0);
  }

  @Test
  void limitsThatCarryARoundingStillCount() {
    // 0.1 x 3 is a hair above 0.3; 3.3 x 0.01 is a hair beside 0.033
    assertThat(PreferredValues.E24.between(0.1 * 3, 0.33)).containsExactly(0.3, 0.33);
    assertThat(PreferredValues.E12.between(0.033, 3.3 * 0.01)).containsExactly(0.033);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
  void limitsMustBeNumbersAboveZero(double limit) {
    assertThatThrownBy(() -> PreferredValues.E12.between(limit, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> PreferredValues.E12.between(1, limit))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("lower one first");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-4, 4.7e-4, 2.2e-3, 12e-3, 33e-3})
  void coilOfAnInductanceHasItAndFitsItsSection(double inductanceH) {
    for (double wireM : new double[] {0.8e-3, 1.4e-3, 2e-3}) {
      BrooksCoil coil = BrooksCoil.forInductance(inductanceH, wireM, 0.62, COPPER);
      assertThat(coil.inductanceH() / inductanceH).isEqualTo(1, offset(1e-12));
      assertThat(coil.fillFactor()).isLessThanOrEqualTo(0.62 * (1 + 1e-9));
      // one turn more would overfill: k goes with N^5 at a fixed inductance
      double oneMore = Math.pow((coil.turns() + 1.0) / coil.turns(), 5);
      assertThat(coil.fillFactor() * oneMore).isGreaterThan(0.62);
      assertThat(coil.outerDiameterM()).isEqualTo(4 * coil.sideM(), offset(1e-15));
      assertThat(coil.asSeriesCoil().resistanceOhm()).isEqualTo(coil.resistanceOhm());
    }
  }

  /** c^5 goes with L A^2: resistance with L^(3/5), checked over a range where turns are many. */
  @Test
  void resistanceGoesWithThePowerThreeFifths() {
    double small = BrooksCoil.forInductance(1e-3, 0.5e-3, 0.62, COPPER).resistanceOhm();
    double large = BrooksCoil.forInductance(32e-3, 0.5e-3, 0.62, COPPER).resistanceOhm();
    assertThat(large / small).isEqualTo(8, offset(0.05));
  }

  @Test
  void nearestValuesHaveARange() {
    for (double wanted : new double[] {5e-18, 2e17, 0, Double.NaN}) {
      assertThatThrownBy(() -> PreferredValues.E6.nearest(wanted))
          .hasMessageContaining("1e-17 .. 1e17");
    }
    assertThat(PreferredValues.E6.between(99 + 1 - 1e-9, 100 - 1e-9)).containsExactly(100.0);
  }

  @Test
  void coilsThatCannotBeWoundAreRejected() {
    assertThatThrownBy(() -> new BrooksCoil(0.02, 0, 1.5e-3, COPPER)).hasMessageContaining("turns");
    assertThatThrownBy(() -> new BrooksCoil(0.02, 400, 1.5e-3, COPPER))
        .hasMessageContaining("do not fit");
    for (double fill : new double[] {0, 0.9, Double.NaN}) {
      assertThatThrownBy(() -> BrooksCoil.forInductance(1e-3, 1.4e-3, fill, COPPER))
          .hasMessageContaining("fill factor");
    }
    // squares hold pi/4 of a circle, and no coil more
    assertThat(BrooksCoil.forInductance(1e-3, 1.4e-3, Math.PI / 4, COPPER).fillFactor())
        .isBetween(0.75, Math.PI / 4);
    assertThatThrownBy(() -> BrooksCoil.forInductance(1e-12, 1.4e-3, 0.62, COPPER))
        .hasMessageContaining("one turn");
    assertThatThrownBy(() -> BrooksCoil.forInductance(Double.NaN, 1.4e-3, 0.62, COPPER))
        .hasMessageContaining("inductance");
  }

  @Test
  void standardCatalogueStartsWithNoneAndRises() {
    CoilCatalogue catalogue = CoilCatalogue.standard();
    List<SeriesCoil> options = catalogue.options();
    assertThat(options).hasSize(32).first().isEqualTo(SeriesCoil.NONE);
    assertThat(options.get(0).present()).isFalse();
    assertThat(options.get(31).inductanceH()).isEqualTo(33e-3);
    for (int i = 2; i < options.size(); i++) {
      assertThat(options.get(i).resistanceOhm()).isGreaterThan(options.get(i - 1).resistanceOhm());
      assertThat(options.get(i).copperKg()).isGreaterThan(options.get(i - 1).copperKg());
      assertThat(options.get(i).present()).isTrue();
    }
  }

  @Test
  void catalogueRejectsOtherOrders() {
    SeriesCoil coil = new SeriesCoil(1e-3, 0.3, 0.4);
    assertThatThrownBy(() -> new CoilCatalogue(List.of(coil), 1.4e-3, COPPER))
        .hasMessageContaining("starts with no coil");
    assertThatThrownBy(
            () -> new CoilCatalogue(List.of(SeriesCoil.NONE, coil, coil), 1.4e-3, COPPER))
        .hasMessageContaining("rises");
    assertThatThrownBy(() -> new SeriesCoil(-1e-3, 0, 0)).hasMessageContaining("coil inductance");
  }
}
