package nullplane.motor;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Range;

/**
 * A motor that can be built: winding, flux density and magnet.
 *
 * <p>Leakage, magnet efficiency, vent and reserve of travel are common practice, without a source.
 * The field is taken as B within the gap's height and none beyond, as in {@link
 * nullplane.driver.OverhungCoil}.
 *
 * @param winding the winding
 * @param fluxT flux density in the gap (T)
 * @param magnet the magnet's material
 */
public record MotorDesign(Winding winding, double fluxT, MagnetMaterial magnet) {
  /** Magnetic constant (H/m). Source: CODATA 2018, 1.256 637 062 12e-6. */
  public static final double MAGNETIC_CONSTANT_H_PER_M = 1.25663706212e-6;

  /**
   * Share of the magnet's greatest energy that reaches the gap (1); 0.3 to 0.5 in built motors.
   * Common practice.
   */
  public static final double MAGNET_EFFICIENCY = 0.4;

  /** Flux through the pole over flux in the gap (1). Common practice. */
  public static final double POLE_LEAKAGE = 1.4;

  /** Share of the pole's section that its vent takes (1). Common practice. */
  public static final double VENT_SHARE = 0.1;

  /** Flux density at which low-carbon steel begins to saturate in earnest (T). Common practice. */
  public static final double STEEL_LIMIT_T = 1.7;

  /** Mechanical travel over geometric travel that is kept free of contact (1). Common practice. */
  public static final double TRAVEL_RESERVE = 1.4;

  /** Former below the winding (m). Common practice. */
  public static final double TAIL_M = 1.5e-3;

  /** Checks that the flux density is positive. */
  public MotorDesign {
    Checks.positive(fluxT, "flux density", "T");
  }

  /**
   * Returns the motor that gives a force factor, B = Bl/(l hg/hc).
   *
   * @param winding the winding
   * @param forceFactorTm Bl at rest (T m)
   * @param magnet the magnet's material
   */
  public static MotorDesign of(Winding winding, double forceFactorTm, MagnetMaterial magnet) {
    return new MotorDesign(winding, forceFactorTm / winding.lengthInFieldM(), magnet);
  }

  /** Returns Bl at rest (T m). */
  public double forceFactorTm() {
    return fluxT * winding.lengthInFieldM();
  }

  /** Returns the magnetic energy in the gap, B^2 V/(2 mu0) (J). Source: definition. */
  public double gapEnergyJ() {
    return fluxT * fluxT * winding.gapVolumeM3() / (2 * MAGNETIC_CONSTANT_H_PER_M);
  }

  /**
   * Returns the volume of magnet needed (m3).
   *
   * <p>Source: gap energy = efficiency times (BH)max V/2; {@link #MAGNET_EFFICIENCY}.
   */
  public double magnetVolumeM3() {
    return 2 * gapEnergyJ() / (MAGNET_EFFICIENCY * magnet.energyProductJPerM3());
  }

  /** Returns the mass of magnet needed (kg). */
  public double magnetMassKg() {
    return magnet.densityKgPerM3() * magnetVolumeM3();
  }

  /**
   * Returns the flux density in the pole (T).
   *
   * <p>Source: continuity of flux; gap flux B pi D hg with D the mean gap diameter, times {@link
   * #POLE_LEAKAGE}, over the pole's section less its vent.
   */
  public double poleFluxT() {
    double d = winding.poleDiameterM();
    return poleFluxWb() / (Math.PI / 4 * d * d * (1 - VENT_SHARE));
  }

  /**
   * Returns the thickness of back plate that carries the pole's flux at {@link #STEEL_LIMIT_T} (m).
   */
  public double backPlateM() {
    return poleFluxWb() / (Math.PI * winding.poleDiameterM() * STEEL_LIMIT_T);
  }

  private double poleFluxWb() {
    double meanDiameter = (winding.plateOpeningM() + winding.poleDiameterM()) / 2;
    return POLE_LEAKAGE * fluxT * Math.PI * meanDiameter * winding.gapHeightM();
  }

  /**
   * Returns the room that the coil needs between the top plate's rear face and the back plate (m):
   * what stands out of the gap at rest, the former's tail, and the mechanical travel.
   */
  public double rearRoomM() {
    double standing = (winding.coil().windingHeightM() - winding.gapHeightM()) / 2;
    return standing + TAIL_M + TRAVEL_RESERVE * winding.travelM();
  }

  /**
   * Returns by how much the flux density misses what is allowed, as a share of the limit missed
   * (1); 0 inside.
   *
   * @param allowedT flux densities allowed (T)
   */
  public double fluxShortfall(Range allowedT) {
    double least = allowedT.lower();
    double most = allowedT.upper();
    return Math.max(0, Math.max((least - fluxT) / least, (fluxT - most) / most));
  }

  /** Returns by how much the pole's flux density passes {@link #STEEL_LIMIT_T}, as a share (1). */
  public double steelShortfall() {
    return Math.max(0, poleFluxT() / STEEL_LIMIT_T - 1);
  }

  /** Returns what a maker should be asked about, in sentences; often empty. */
  public List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    int layers = winding.coil().layers();
    if (layers % 2 != 0) {
      remarks.add("An odd number of layers brings the leads out at both ends of the coil.");
    } else if (layers > 4) {
      remarks.add("More than four layers are seldom wound; the gap becomes wide.");
    }
    if (fluxT > magnet.greatestFluxT()) {
      remarks.add("The flux density is above what " + magnet.word() + " motors usually reach.");
    }
    if (!winding.overhung()) {
      remarks.add("The coil is shorter than the gap: a tall plate, a large magnet.");
    }
    if (steelShortfall() > 0) {
      remarks.add("The steel of the pole would saturate; a larger coil or a lower plate helps.");
    }
    return List.copyOf(remarks);
  }
}
