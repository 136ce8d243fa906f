package nullplane.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import nullplane.HandbookRow;
import nullplane.driver.RoundWireCoil;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;
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
    assertThat(motor.forceFactorTm()).isCloseTo(row.figure("15.532"), withinPercentage(1e-9));
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
    assertThat(inside.overhung()).isFalse();
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

  /**
   * The row's motor at 1 T by hand. Twice the field energy of 2.602 cm3 is 2.0708 J, of which each
   * cubic metre of magnet gives 0.4 (BH)max: 184.9 cm3 of ferrite at 28 kJ/m3 and 4.9 g/cm3, 17.26
   * cm3 of neodymium at 300 kJ/m3 and 7.5 g/cm3.
   */
  @Test
  void magnetByHand() {
    MotorDesign ferrite = new MotorDesign(winding(), 1, MagnetMaterial.FERRITE);
    assertThat(ferrite.magnetVolumeM3() * 1e6).isCloseTo(184.9, withinPercentage(0.05));
    assertThat(ferrite.magnetMassKg()).isCloseTo(0.906, withinPercentage(0.05));
    MotorDesign neodymium = new MotorDesign(winding(), 1, MagnetMaterial.NEODYMIUM);
    assertThat(neodymium.magnetVolumeM3() * 1e6).isCloseTo(17.26, withinPercentage(0.05));
    assertThat(neodymium.magnetMassKg()).isCloseTo(0.1294, withinPercentage(0.05));
    for (MagnetMaterial magnet : MagnetMaterial.values()) {
      // no gap of a loudspeaker passes the 2.2 T at which iron is full
      assertThat(magnet.usualFluxT()).isBetween(0.5, magnet.greatestFluxT());
      assertThat(magnet.greatestFluxT()).isLessThan(2.2);
    }
    MotorDesign half = new MotorDesign(winding(), 0.5, MagnetMaterial.FERRITE);
    assertThat(half.forceFactorTm() / ferrite.forceFactorTm()).isCloseTo(0.5, within(1e-12));
    assertThat(half.magnetMassKg() / ferrite.magnetMassKg()).isCloseTo(0.25, within(1e-12));
  }

  /**
   * Flux is kept: B pi D hg in the gap, 1.4 times that in the pole, a tenth of it vent; by hand.
   */
  @Test
  void fluxOfThePoleByHand() {
    MotorDesign motor = new MotorDesign(winding(), 1, MagnetMaterial.FERRITE);
    double gapWb = Math.PI * 51.51e-3 * 8e-3; // 1.2946 mWb at 1 T
    double soundPoleT = 1.4 * gapWb / (Math.PI * 24.75e-3 * 24.75e-3);
    assertThat(motor.poleFluxT()).isCloseTo(soundPoleT / 0.9, withinPercentage(1e-9));
    // a disc of radius r meets a plate of thickness r/2 in equal sections
    MotorDesign full = new MotorDesign(winding(), 1.7 / soundPoleT, MagnetMaterial.FERRITE);
    assertThat(full.backPlateM()).isCloseTo(24.75e-3 / 2, withinPercentage(1e-9));
  }

  /** A coil of 24 mm in 8 mm of gap stands out 8 mm and travels 8 mm, 11.2 mm with the reserve. */
  @Test
  void roomBehindTheGap() {
    MotorDesign motor = new MotorDesign(winding(), 1, MagnetMaterial.FERRITE);
    assertThat(motor.rearRoomM()).isCloseTo(8e-3 + 1.5e-3 + 11.2e-3, within(1e-15));
  }

  /** Ring between two circles, 24 mm of winding, 8 mm of travel and 15 mm of neck. */
  @Test
  void formerByItsCircles() {
    double ring = Math.PI / 4 * (50.18 * 50.18 - 50 * 50) * 1e-6;
    assertThat(winding().formerMassKg()).isCloseTo(ring * 0.047 * 1800, withinPercentage(1e-9));
    assertThat(Former.ofNominal(0.038)).isEqualTo(new Former(0.038, 0.15e-3));
  }

  /** The row's coil by ten layers of ten turns: (100/140)^2 of its inductance. */
  @Test
  void bc03InductanceOfTheCoilAndItsMotors() {
    double airH = HandbookRow.of("BC03").figure("0.9921") * 1e-3 * 100 * 100 / (140 * 140);
    RoundWireCoil coil =
        new RoundWireCoil(10, 0.060, 0.020, 1.9e-3, 2e-3, ConductorMaterial.COPPER);
    assertThat(InductanceEstimate.inAirH(coil)).isCloseTo(airH, withinPercentage(0.01));
    assertThat(InductanceEstimate.plainH(coil)).isCloseTo(1.2 * airH, withinPercentage(0.01));
    assertThat(InductanceEstimate.withRingH(coil)).isCloseTo(0.5 * airH, withinPercentage(0.01));
  }

  /**
   * The same conductance from aluminium weighs about half of copper's: (2.8264 x 2703)/(1.7241 x
   * 8890).
   */
  @Test
  void lightestWireIsTheOneOfHalfTheWeight() {
    for (List<ConductorMaterial> wires :
        List.of(
            List.of(ConductorMaterial.COPPER, ConductorMaterial.ALUMINIUM),
            List.of(ConductorMaterial.ALUMINIUM, ConductorMaterial.COPPER),
            List.of(
                ConductorMaterial.COPPER_CLAD_ALUMINIUM,
                ConductorMaterial.ALUMINIUM,
                ConductorMaterial.COPPER))) {
      CoilBrief brief =
          new CoilBrief(
              Range.pinned(6),
              CoilBrief.fluxUpTo(1),
              List.of(0.006, 0.010, 0.008),
              List.of(0.05),
              wires,
              CoilBrief.USUAL_LAYERS,
              MagnetMaterial.FERRITE);
      assertThat(brief.lightestWire()).isEqualTo(ConductorMaterial.ALUMINIUM);
      assertThat(brief.tallestGapM()).isEqualTo(0.010);
    }
  }

  /** Flux upwards of 0.4 T, or of half the greatest one where that is less; ranges stay. */
  @Test
  void whatABriefMakesOfItsRanges() {
    assertThat(CoilBrief.windowOf(new Range(5, 6))).isEqualTo(new Range(5, 6));
    assertThat(CoilBrief.windowOf(Range.pinned(100))).isEqualTo(new Range(97, 103));
    assertThat(CoilBrief.fluxUpTo(1.2)).isEqualTo(new Range(0.4, 1.2));
    assertThat(CoilBrief.fluxUpTo(0.6)).isEqualTo(new Range(0.3, 0.6));
  }
}
