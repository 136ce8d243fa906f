package nullplane.fit;

import java.util.Optional;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Range;

/**
 * What a fit is made from.
 *
 * @param sweep the sweep without added mass
 * @param load the air during that sweep
 * @param anchor what fixes the moving mass
 * @param effectiveAreaM2 effective piston area Sd (m2)
 * @param areaStandardErrorM2 its standard uncertainty (m2); 0 if exact
 * @param air the air of the bench
 * @param bandHz frequencies to fit (Hz); empty for all
 */
public record FitInput(
    ImpedanceSweep sweep,
    AirLoad load,
    MassAnchor anchor,
    double effectiveAreaM2,
    double areaStandardErrorM2,
    Air air,
    Optional<Range> bandHz) {

  /** Checks the area. */
  public FitInput {
    Checks.positive(effectiveAreaM2, "effective area", "m2");
    Checks.notNegative(areaStandardErrorM2, "standard error of the effective area", "m2");
  }

  /**
   * Returns the input of a sweep in free air with an exactly known area, all frequencies.
   *
   * @param sweep the sweep
   * @param anchor what fixes the moving mass
   * @param effectiveAreaM2 effective piston area Sd (m2)
   * @param air the air
   */
  public static FitInput inFreeAir(
      ImpedanceSweep sweep, MassAnchor anchor, double effectiveAreaM2, Air air) {
    return new FitInput(
        sweep, AirLoad.freeAir(), anchor, effectiveAreaM2, 0, air, Optional.empty());
  }
}
