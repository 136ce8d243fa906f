package nullplane.driver;

import nullplane.units.Checks;
import nullplane.units.Range;

/**
 * What spiders and surrounds of a frame size can be made for. Common practice, without a source.
 *
 * <p>Floor: woofers of 250 to 380 mm are not built softer than about 300 to 600 N/m, since a softer
 * spider no longer holds the coil centred and sags under its own load. Ceiling, meant to be
 * generous: the heaviest moving mass seen in a size (35, 60, 120, 180, 300 g) at the highest
 * resonance a woofer of that size is made with (60, 55, 50, 45, 40 Hz), Kms = (2 pi fs)^2 Mms.
 *
 * @param stiffnessNPerM Kms that can be made (N/m)
 */
public record SuspensionLimits(Range stiffnessNPerM) {
  private static final double[] NOMINAL_M = {0.200, 0.250, 0.300, 0.380, 0.460};
  private static final double[] FLOOR_N_PER_M = {300, 300, 400, 600, 800};
  private static final double[] CEILING_N_PER_M = {5_000, 7_200, 12_000, 14_400, 19_000};

  /** Checks that the floor is above 0. */
  public SuspensionLimits {
    Checks.positive(stiffnessNPerM.lower(), "least Kms", "N/m");
  }

  /**
   * Returns the limits of a frame size: by straight lines between 200, 250, 300, 380 and 460 mm,
   * and those of the nearest of these beyond them.
   *
   * @param nominalM frame size class (m)
   */
  public static SuspensionLimits forNominal(double nominalM) {
    Checks.positive(nominalM, "nominal size", "m");
    return new SuspensionLimits(
        new Range(along(FLOOR_N_PER_M, nominalM), along(CEILING_N_PER_M, nominalM)));
  }

  /**
   * Returns by how much a stiffness misses the limits, as a share of the limit missed (1); 0
   * inside. It grows steadily from the limit outwards.
   *
   * @param kmsNPerM stiffness (N/m)
   */
  public double shortfall(double kmsNPerM) {
    double least = stiffnessNPerM.lower();
    double greatest = stiffnessNPerM.upper();
    return Math.max(0, Math.max((least - kmsNPerM) / least, (kmsNPerM - greatest) / greatest));
  }

  private static double along(double[] limits, double nominalM) {
    if (nominalM <= NOMINAL_M[0]) {
      return limits[0];
    }
    for (int i = 1; i < limits.length; i++) {
      if (nominalM <= NOMINAL_M[i]) {
        double share = (nominalM - NOMINAL_M[i - 1]) / (NOMINAL_M[i] - NOMINAL_M[i - 1]);
        return limits[i - 1] + share * (limits[i] - limits[i - 1]);
      }
    }
    return limits[limits.length - 1];
  }
}
