package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.units.ConductorMaterial;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Coils, heat and ratings against handbook rows in reference/handbook_checks.csv. */
@Tag("reference")
class CoilReference {
  private static final ConductorMaterial COPPER = ConductorMaterial.COPPER;
  private static final double GAP_M = 0.008;

  private static RoundWireCoil coil() {
    HandbookRow row = HandbookRow.of("VC02");
    return new RoundWireCoil(
        (int) row.figure("4"),
        row.figure("51.5") * 1e-3,
        row.figure("24") * 1e-3,
        row.figure("0.30") * 1e-3,
        row.figure("0.33") * 1e-3,
        COPPER);
  }

  /** Geometry and IEC 60028 copper; printed to five digits, hence 0.005 %. Table: 0.1 %. */
  @Test
  void vc02CoilFromWire() {
    HandbookRow row = HandbookRow.of("VC02");
    RoundWireCoil coil = coil();
    assertThat(coil.turns()).isEqualTo((int) row.figure("288"));
    row.check("wire length")
        .expected(row.figure("46.596"), "m")
        .computed(coil.wireLengthM())
        .withinPercent(0.005);
    row.check("resistance")
        .expected(row.figure("11.365"), "ohm")
        .computed(coil.resistanceOhm())
        .withinPercent(0.005);
    row.check("copper mass")
        .expected(row.figure("29.28"), "g")
        .computed(coil.massKg() * 1e3)
        .withinPercent(0.02);
    row.check("force factor at 1 T")
        .expected(row.figure("15.532"), "T m")
        .computed(coil.forceFactorTm(1, GAP_M))
        .withinPercent(0.005);
    row.check("motor strength Bl^2/Re at 1 T")
        .expected(row.figure("21.226"), "N s/m")
        .computed(coil.motorStrengthNsPerM(1, GAP_M))
        .withinPercent(0.005);
  }

  /** L. Beranek and T. Mellow, Acoustics (2012), ch. 6: Bl^2/Re = B^2 V/r. Table: 1e-6. */
  @Test
  void vc03MotorIdentity() {
    HandbookRow row = HandbookRow.of("VC03");
    RoundWireCoil coil = coil();
    double volume = coil.wireLengthM() * coil.wireSectionM2();
    double wholeInField = volume / COPPER.resistivityOhmM();
    row.check("B^2 V/r of the whole coil in the field")
        .expected(row.figure("191.04"), "N s/m")
        .computed(wholeInField)
        .withinPercent(0.005);
    row.check("Bl^2/Re over B^2 V/r, whole coil in the field")
        .expected(1, "")
        .computed(coil.motorStrengthNsPerM(1, 0.024) / wholeInField)
        .within(1e-12);
    double inGap = volume * GAP_M / 0.024;
    double fromGap = inGap / COPPER.resistivityOhmM() * (GAP_M / 0.024);
    row.check("Bl^2/Re over B^2 V/r hg/hc of the part in the gap")
        .expected(1, "")
        .computed(coil.motorStrengthNsPerM(1, GAP_M) / fromGap)
        .within(1e-6);
  }

  /** The mass that the relation asks for is the mass that was wound, whatever wire and flux. */
  @Test
  void requiredMassIsTheWoundMass() {
    Check ratio =
        Validation.check(
            "coil mass asked for over coil mass wound, three metals and wires",
            "Closed form: Bl^2/Re = (B^2 V/r)(hg/hc)^2 solved for the mass.");
    for (ConductorMaterial material : ConductorMaterial.values()) {
      for (double bare : new double[] {0.2e-3, 0.3e-3, 0.4e-3}) {
        RoundWireCoil coil = new RoundWireCoil(2, 0.0385, 0.019, bare, 1.08 * bare, material);
        double strength = coil.motorStrengthNsPerM(1.1, 0.006);
        double asked = OverhungCoil.massKg(strength, 0.019, 0.006, 1.1, material);
        ratio.add(1, asked / coil.massKg());
      }
    }
    ratio.within(1e-12);
  }

  /** IEC 60028 temperature coefficient. Printed to 0.01 dB and five digits. */
  @Test
  void th01ResistanceRises() {
    HandbookRow row = HandbookRow.of("TH01");
    double rise = row.figure("180");
    assertThat(COPPER.temperatureCoefficientPerK()).isEqualTo(row.figure("0.00393"));
    row.check("resistance of copper, 180 K warmer, as a ratio")
        .expected(row.figure("1.7074"), "")
        .computed(CoilHeating.resistanceOhm(6, rise, COPPER) / 6)
        .within(1e-9);
    row.check("level lost at constant voltage, 180 K warmer")
        .expected(row.figure("4.65"), "dB")
        .computed(CoilHeating.levelLossDb(rise, COPPER))
        .within(0.005);
  }

  /** Only Re is another: the row's rise of 180 K on the woofer of a coil of 6 ohm. */
  @Test
  void th01WarmWoofer() {
    double factor = HandbookRow.of("TH01").figure("1.7074");
    Woofer cold = Woofers.plain(0.05, 1_900, 2, 10.4, 6, 0.053);
    assertThat(CoilHeating.warm(cold, 180, COPPER))
        .isEqualTo(Woofers.plain(0.05, 1_900, 2, 10.4, 6 * factor, 0.053));
  }

  /** A coil rated at 50 W for a rise of 200 K: 4 K/W; 50 W in the warm coil bring it there. */
  @Test
  void ratedPowerBringsTheCoilToItsLimit() {
    double rth = CoilHeating.thermalResistanceKPerW(50, 200);
    assertThat(rth).isEqualTo(4);
    double coldPower = 50 * CoilHeating.resistanceOhm(1, 200, COPPER);
    assertThat(CoilHeating.steadyRiseK(coldPower, rth, COPPER)).isEqualTo(200, offset(1e-9));
  }

  /** Steady heat balance. Printed to 0.01 K and 0.01 dB. */
  @Test
  void th02Equilibrium() {
    HandbookRow row = HandbookRow.of("TH02");
    double power = row.figure("50");
    double rth = row.figure("2");
    double rise = CoilHeating.steadyRiseK(power, rth, COPPER);
    row.check("steady rise at 50 W cold, 2 K/W")
        .expected(row.figure("76.81"), "K")
        .computed(rise)
        .within(0.005);
    row.check("level lost in that state")
        .expected(row.figure("2.29"), "dB")
        .computed(CoilHeating.levelLossDb(rise, COPPER))
        .within(0.005);
    // It balances: the heat of the warm coil makes just this rise.
    assertThat(power / CoilHeating.resistanceOhm(1, rise, COPPER) * rth)
        .isEqualTo(rise, offset(1e-11));
  }

  /** IEC 60268-5, rated impedance. */
  @Test
  void zr01RatedImpedance() {
    HandbookRow row = HandbookRow.of("ZR01");
    row.check("least modulus for a rating of 8 and 4 ohm")
        .in("ohm")
        .add(row.figure("6.4"), RatedImpedance.leastModulusOhm(row.figure("8")))
        .add(row.figure("3.2"), RatedImpedance.leastModulusOhm(row.figure("4")))
        .exactly();
    assertThat(RatedImpedance.highestRatedOhm(3.2)).isEqualTo(4);
  }
}
