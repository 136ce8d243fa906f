package nullplane.motor;

import nullplane.driver.OverhungCoil;
import nullplane.driver.RoundWireCoil;
import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;

/**
 * A coil on its former in a gap of a given height: everything of a motor but its flux.
 *
 * <p>Clearances are common practice, without a source.
 *
 * @param former the tube
 * @param coil the wire on it, layer over layer by one insulated diameter each
 * @param gapHeightM height of the gap (m)
 */
public record Winding(Former former, RoundWireCoil coil, double gapHeightM) {
  /** Between pole and former (m). Common practice. */
  public static final double INNER_CLEARANCE_M = 0.25e-3;

  /** Between winding and top plate (m). Common practice. */
  public static final double OUTER_CLEARANCE_M = 0.35e-3;

  /** Density of the enamel (kg/m3). Common practice. */
  public static final double ENAMEL_KG_PER_M3 = 1400;

  private static final double SLACK_M = 1e-9;

  /** Checks that the coil fits on the former. */
  public Winding {
    Checks.positive(gapHeightM, "gap height", "m");
    double inside = coil.meanDiameterM() - coil.layers() * coil.insulatedDiameterM();
    if (!(inside >= former.outsideDiameterM() - SLACK_M)) {
      throw new IllegalArgumentException(
          "the winding's inside is "
              + inside
              + " m; allowed: at least the former's outside, "
              + former.outsideDiameterM()
              + " m");
    }
  }

  /**
   * Returns a winding of whole turns, the first layer lying on the former.
   *
   * @param former the tube
   * @param wire the wire
   * @param insulation its insulation
   * @param material its metal
   * @param layers number of layers (1)
   * @param turnsPerLayer turns in each layer (1)
   * @param gapHeightM height of the gap (m)
   */
  public static Winding of(
      Former former,
      StockWire wire,
      Insulation insulation,
      ConductorMaterial material,
      int layers,
      int turnsPerLayer,
      double gapHeightM) {
    double pitch = wire.insulatedM(insulation);
    return new Winding(
        former,
        new RoundWireCoil(
            layers,
            former.outsideDiameterM() + layers * pitch,
            turnsPerLayer * pitch,
            wire.bareM(),
            pitch,
            material),
        gapHeightM);
  }

  /** Returns whether the winding is taller than the gap. */
  public boolean overhung() {
    return coil.windingHeightM() > gapHeightM;
  }

  /** Returns Re at 20 degrees C (ohm). */
  public double resistanceOhm() {
    return coil.resistanceOhm();
  }

  /** Returns the geometric travel, one way (m). */
  public double travelM() {
    return OverhungCoil.travelM(coil.windingHeightM(), gapHeightM);
  }

  /** Returns the length of wire in the field at rest (m): Bl per tesla. */
  public double lengthInFieldM() {
    return coil.forceFactorTm(1, gapHeightM);
  }

  /** Returns the strength of the motor per squared flux density, Bl^2/Re/B^2 (N s/m per T^2). */
  public double strengthPerSquaredTesla() {
    return coil.motorStrengthNsPerM(1, gapHeightM);
  }

  /**
   * Returns the mass of the coil with its enamel (kg).
   *
   * <p>Source: geometry; {@link #ENAMEL_KG_PER_M3}. Leads are left out.
   */
  public double coilMassKg() {
    double overall = coil.insulatedDiameterM();
    double enamelM2 = Math.PI / 4 * overall * overall - coil.wireSectionM2();
    return coil.massKg() + enamelM2 * coil.wireLengthM() * ENAMEL_KG_PER_M3;
  }

  /** Returns the mass of the former (kg). */
  public double formerMassKg() {
    return former.massKg(Former.lengthM(coil.windingHeightM(), travelM()));
  }

  /** Returns the diameter of the pole in the gap (m). */
  public double poleDiameterM() {
    return former.insideDiameterM() - 2 * INNER_CLEARANCE_M;
  }

  /** Returns the diameter of the top plate's opening (m). */
  public double plateOpeningM() {
    return coil.meanDiameterM() + coil.layers() * coil.insulatedDiameterM() + 2 * OUTER_CLEARANCE_M;
  }

  /** Returns the radial width of the gap (m). */
  public double gapWidthM() {
    return (plateOpeningM() - poleDiameterM()) / 2;
  }

  /** Returns the volume of the gap (m3). */
  public double gapVolumeM3() {
    return Math.PI / 2 * (plateOpeningM() + poleDiameterM()) * gapWidthM() * gapHeightM;
  }
}
