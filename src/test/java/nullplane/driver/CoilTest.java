package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;

class CoilTest {
  private static final ConductorMaterial COPPER = ConductorMaterial.COPPER;

  @Test
  void travelIsPaidForByTheSquareOfTheOverhang() {
    double short4 =
        OverhungCoil.massKg(12, OverhungCoil.windingHeightM(0.008, 0.004), 0.008, 1, COPPER);
    double long12 =
        OverhungCoil.massKg(12, OverhungCoil.windingHeightM(0.008, 0.012), 0.008, 1, COPPER);
    // heights 16 and 32 mm
    assertThat(long12 / short4).isEqualTo(4, offset(1e-12));
  }

  /** A winding as tall as its gap: Bl^2/Re r d/B^2, 12 x 1.7241e-8 x 8890 = 1.8393 g. */
  @Test
  void windingAsTallAsItsGap() {
    assertThat(OverhungCoil.massKg(12, 0.008, 0.008, 1, COPPER)).isEqualTo(1.8393e-3, offset(1e-7));
  }

  @Test
  void twiceTheFluxAsksAQuarterOfTheWire() {
    double one = OverhungCoil.massKg(12, 0.02, 0.008, 0.7, COPPER);
    double two = OverhungCoil.massKg(12, 0.02, 0.008, 1.4, COPPER);
    assertThat(one / two).isEqualTo(4, offset(1e-12));
  }

  /** Conductance per mass: aluminium gives about twice copper's, IEC 60028 and IEC 60889. */
  @Test
  void aluminiumIsHalfTheWeightOfCopperForTheSameMotor() {
    double copper = OverhungCoil.massKg(12, 0.02, 0.008, 1, COPPER);
    double aluminium = OverhungCoil.massKg(12, 0.02, 0.008, 1, ConductorMaterial.ALUMINIUM);
    double clad = OverhungCoil.massKg(12, 0.02, 0.008, 1, ConductorMaterial.COPPER_CLAD_ALUMINIUM);
    assertThat(aluminium / copper).isBetween(0.49, 0.51);
    assertThat(clad).isBetween(aluminium, copper);
  }

  @Test
  void heightAndTravelAreInverse() {
    assertThat(OverhungCoil.travelM(OverhungCoil.windingHeightM(0.008, 0.0065), 0.008))
        .isEqualTo(0.0065, offset(1e-15));
    assertThat(OverhungCoil.travelM(0.006, 0.010)).isEqualTo(0.002, offset(1e-15));
  }

  @Test
  void windingShorterThanTheGapLiesWhollyInTheField() {
    assertThat(OverhungCoil.forceFactorTm(10, 0.006, 0.010, 1.2)).isEqualTo(12);
    assertThatThrownBy(() -> OverhungCoil.massKg(12, 0.006, 0.010, 1, COPPER))
        .hasMessageContaining("winding height is 0.006");
  }

  @Test
  void rejectsWireAndLayersThatCannotBeWound() {
    assertThatThrownBy(() -> new RoundWireCoil(0, 0.05, 0.02, 3e-4, 3.3e-4, COPPER))
        .hasMessageContaining("layers");
    assertThatThrownBy(() -> new RoundWireCoil(2, 0.05, 0.02, 3.3e-4, 3e-4, COPPER))
        .hasMessageContaining("insulated");
    assertThatThrownBy(() -> new RoundWireCoil(2, 0.05, 2e-4, 3e-4, 3.3e-4, COPPER))
        .hasMessageContaining("one turn");
    assertThatThrownBy(() -> new RoundWireCoil(4, 0.001, 0.02, 3e-4, 3.3e-4, COPPER))
        .hasMessageContaining("do not fit");
    assertThatThrownBy(() -> OverhungCoil.massKg(Double.NaN, 0.02, 0.008, 1, COPPER))
        .hasMessageContaining("Bl^2/Re");
  }

  @Test
  void aLayerOfAWholeNumberOfPitchesLosesNoTurnToRounding() {
    // 10 x 0.3 mm: 0.003/0.0003 is 9.999... in doubles
    assertThat(new RoundWireCoil(1, 0.05, 0.003, 2.8e-4, 3e-4, COPPER).turnsPerLayer())
        .isEqualTo(10);
  }

  @Test
  void heatingRejectsWhatCannotBe() {
    assertThatThrownBy(() -> CoilHeating.resistanceOhm(6, -1, COPPER)).hasMessageContaining("rise");
    assertThatThrownBy(() -> CoilHeating.steadyRiseK(50, 0, COPPER))
        .hasMessageContaining("thermal resistance");
    assertThat(CoilHeating.steadyRiseK(0, 2, COPPER)).isZero();
    assertThatThrownBy(() -> RatedImpedance.leastModulusOhm(0)).hasMessageContaining("rated");
  }
}
