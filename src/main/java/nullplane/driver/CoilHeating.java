package nullplane.driver;

import nullplane.units.Checks;
import nullplane.units.ConductorMaterial;
import nullplane.units.Levels;

/**
 * A coil that warms up: what its resistance becomes and what level that costs.
 *
 * <p>Source: Re = Re0 (1 + alpha dT), alpha as {@link ConductorMaterial} states it; steady heat
 * balance with one thermal resistance. Valid for rises from 0 to about 250 K over 20 degrees C.
 */
public final class CoilHeating {
  private CoilHeating() {}

  /**
   * Returns the resistance of a warm coil, Re0 (1 + alpha dT) (ohm).
   *
   * @param coldOhm resistance at 20 degrees C (ohm)
   * @param riseK rise over 20 degrees C (K)
   * @param material what the coil is wound from
   */
  public static double resistanceOhm(double coldOhm, double riseK, ConductorMaterial material) {
    Checks.positive(coldOhm, "cold coil resistance", "ohm");
    Checks.notNegative(riseK, "coil temperature rise", "K");
    return coldOhm * (1 + material.temperatureCoefficientPerK() * riseK);
  }

  /**
   * Returns the rise at which the coil settles at constant voltage (K).
   *
   * <p>Source: heat in equals heat out, dT = P0 Rth/(1 + alpha dT), solved for dT: dT = 2 P0 Rth/(1
   * + sqrt(1 + 4 alpha P0 Rth)). The voltage is taken across Re alone, as above the resonance.
   *
   * @param coldPowerW heat that the voltage would make in the cold coil, U^2/Re0 (W)
   * @param thermalResistanceKPerW rise per heat from coil to air (K/W)
   * @param material what the coil is wound from
   */
  public static double steadyRiseK(
      double coldPowerW, double thermalResistanceKPerW, ConductorMaterial material) {
    Checks.notNegative(coldPowerW, "heat in the cold coil", "W");
    Checks.positive(thermalResistanceKPerW, "thermal resistance", "K/W");
    double unhinderedK = coldPowerW * thermalResistanceKPerW;
    double alpha = material.temperatureCoefficientPerK();
    return 2 * unhinderedK / (1 + Math.sqrt(1 + 4 * alpha * unhinderedK));
  }

  /**
   * Returns the level that a warm coil costs at constant voltage in the mass-controlled band, 20
   * lg(Re/Re0) (dB).
   *
   * @param riseK rise over 20 degrees C (K)
   * @param material what the coil is wound from
   */
  public static double levelLossDb(double riseK, ConductorMaterial material) {
    return Levels.ofAmplitudeRatio(resistanceOhm(1, riseK, material));
  }

  /**
   * Returns the thermal resistance from coil to air that a rated power implies, rise/power (K/W).
   *
   * <p>Source: steady heat balance. That the rated power is the heat which brings the coil to the
   * greatest temperature its glue and former stand is common practice.
   *
   * @param ratedPowerW heat in the coil over the long term (W)
   * @param limitRiseK rise over the surrounding air at that heat (K)
   */
  public static double thermalResistanceKPerW(double ratedPowerW, double limitRiseK) {
    Checks.positive(ratedPowerW, "rated power", "W");
    return Checks.positive(limitRiseK, "greatest coil temperature rise", "K") / ratedPowerW;
  }

  /**
   * Returns a woofer with its coil warm: Re higher, all else as it was.
   *
   * <p>Source: Re = Re0 (1 + alpha dT). What warmth does to flux and suspension is left out.
   *
   * @param woofer the woofer, its Re at 20 degrees C
   * @param riseK rise over 20 degrees C (K)
   * @param material what the coil is wound from
   */
  public static Woofer warm(Woofer woofer, double riseK, ConductorMaterial material) {
    return new Woofer(
        woofer.name(),
        woofer.nominalM(),
        woofer.effectiveAreaM2(),
        resistanceOhm(woofer.resistanceOhm(), riseK, material),
        woofer.inductanceH(),
        woofer.bareMassKg(),
        woofer.stiffnessNPerM(),
        woofer.lossNsPerM(),
        woofer.forceFactorTm(),
        woofer.travelM(),
        woofer.powerW());
  }
}
