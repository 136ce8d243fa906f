package nullplane.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import nullplane.HandbookRow;
import nullplane.driver.RoundWireCoil;
import nullplane.units.ConductorMaterial;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Windings and motors against handbook rows in reference/handbook_checks.csv and closed forms. */
@Tag("reference")
class MotorReference {
  private static Winding winding() {
    HandbookRow row = HandbookRow.of("VC02");
    return new Winding(
        new Former(0.050, 0.09e-3),
        new RoundWireCoil(
            (int) row.figure("4"),
            row.figure("51.5") * 1e-3,
            row.figure("24") * 1e-3,
            row.figure("0.30") * 1e-3,
            row.figure("0.33") * 1e-3,
            ConductorMaterial.COPPER),
        row.figure("8") * 1e-3);
  }

  /** Printed to five digits, hence 0.005 %. Table: 0.1 %. */
  @Test
  void vc02TheMotorThatGivesTheForceFactorHasTheFlux() {
    HandbookRow row = HandbookRow.of("VC02");
    MotorDesign motor = MotorDesign.of(winding(), row.figure("15.532"), MagnetMaterial.FERRITE);
    row.check("flux that the force factor asks for")
        .expected(row.figure("1.0"), "T")
        .computed(motor.fluxT())
        .withinPercent(0.005);
    row.check("resistance of the winding")
        .expected(row.figure("11.365"), "ohm")
        .computed(motor.winding().resistanceOhm())
        .withinPercent(0.005);
    row.check("wire length in the field, a third of all")
        .expected(row.figure("46.596") / 3, "m")
        .computed(motor.winding().lengthInFieldM())
        .withinPercent(0.005);
    assertThat(motor.winding().travelM()).isCloseTo(0.008, within(1e-15));
    // the enamel comes on top of the metal: 1400 kg/m3 on 0.33^2 - 0.30^2
    double enamelG = 1400 * Math.PI / 4 * (0.33 * 0.33 - 0.30 * 0.30) * 1e-6 * 46.596 * 1e3;
    row.check("mass of the coil, enamel included")
        .expected(row.figure("29.28") + enamelG, "g")
        .computed(motor.winding().coilMassKg() * 1e3)
        .withinPercent(0.02);
  }

  /** Beranek and Mellow 2012, ch. 6; printed to five digits. The identity itself holds to 1e-12. */
  @Test
  void vc03MotorStrengthFromTheWiresVolume() {
    HandbookRow row = HandbookRow.of("VC03");
    Winding winding = winding();
    RoundWireCoil coil = winding.coil();
    double volume = coil.wireLengthM() * coil.wireSectionM2();
    double whole = volume / ConductorMaterial.COPPER.resistivityOhmM();
    row.check("V/r of the whole coil")
        .expected(row.figure("191.04"), "N s/m/T2")
        .computed(whole)
        .withinPercent(0.005);
    row.check("motor strength of the winding")
        .expected(row.figure("21.226"), "N s/m/T2")
        .computed(winding.strengthPerSquaredTesla())
        .withinPercent(0.005);
    Winding inside =
        new Winding(winding.former(), coil, 0.024); // as tall as the coil: all of it in the field
    row.check("strength over V/r (hg/hc)^2, overhung and wholly in the field")
        .add(1, winding.strengthPerSquaredTesla() / (whole / 9))
        .add(1, inside.strengthPerSquaredTesla() / whole)
        .within(1e-12);
  }

  /** H. A. Wheeler, Proc. IRE 16 (1928) 1398, by the row's inches; printed to four digits. */
  @Test
  void bc03WheelersCoil() {
    HandbookRow row = HandbookRow.of("BC03");
    row.check("inductance by Wheeler's formula")
        .expected(row.figure("0.9921"), "mH")
        .computed(InductanceEstimate.wheelerH(0.030, 0.020, 0.020, 140) * 1e3)
        .withinPercent(0.01);
  }

  /** ISO 3, series R40: 10^(n/40), rounded to at most 1.26 % from the exact value. */
  @Test
  void stockWiresAreTheR40Series() {
    List<StockWire> wires = StockWire.all();
    Check series =
        Validation.check("diameters of stock wire", "ISO 3, series R40: 10^(n/40).").in("mm");
    for (int n = 0; n < wires.size(); n++) {
      series.add(0.1 * Math.pow(10, n / 40.0), wires.get(n).bareM() * 1e3);
    }
    series.withinPercent(1.27);
    assertThat(wires.get(wires.size() - 1).bareM()).isEqualTo(0.6e-3);
  }

  /** Field energy of 1 T in air: 1/(2 mu0) = 397.9 kJ/m3; printed to four digits. */
  @Test
  void energyOfATesla() {
    MotorDesign motor = new MotorDesign(winding(), 1, MagnetMaterial.FERRITE);
    Validation.check("energy of 1 T in air", "Closed form: B^2/(2 mu0).")
        .expected(397.9, "kJ/m3")
        .computed(motor.gapEnergyJ() / winding().gapVolumeM3() / 1e3)
        .withinPercent(0.01);
    // from 49.50 to 53.52 mm: 0.25 mm inside the former, 0.35 mm outside the coil
    Validation.check("volume of the gap round the coil", "Geometry of a ring.")
        .expected(Math.PI * 51.51 * 2.01 * 8, "mm3")
        .computed(winding().gapVolumeM3() * 1e9)
        .withinPercent(1e-9);
  }
}
