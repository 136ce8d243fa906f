package nullplane.tolerance;

import nullplane.units.Checks;

/**
 * How a tolerance study runs and what is asked of it.
 *
 * @param seed seed of all chance
 * @param units units of each simulated run, 500 to 200,000
 * @param wantedYield share of units inside the windows that must be good in every stack (1), 0.5 to
 *     0.999
 * @param allowanceDb how far from the nominal woofer's own level a unit may be where that woofer
 *     lies near the corridor's edge or outside (dB)
 * @param sensitivitySamples samples of the sensitivity analysis, a power of two from 16 to 65536
 * @param lotSize units of an order, 2 or more
 * @param inspectionLevel general inspection level
 * @param acceptanceQuality acceptance quality limit of the sampling plan
 */
public record ToleranceConduct(
    long seed,
    int units,
    double wantedYield,
    double allowanceDb,
    int sensitivitySamples,
    int lotSize,
    InspectionLevel inspectionLevel,
    AcceptanceQuality acceptanceQuality) {
  private static final int USUAL_UNITS = 10_000;
  private static final double USUAL_YIELD = 0.95;
  private static final double USUAL_ALLOWANCE_DB = 1;
  private static final int USUAL_SAMPLES = 1024;
  private static final int USUAL_LOT = 200;

  /** Checks the values. */
  public ToleranceConduct {
    if (units < 500 || units > 200_000) {
      throw new IllegalArgumentException(units + " units; allowed: 500 to 200000");
    }
    if (!(wantedYield >= 0.5 && wantedYield <= 0.999)) {
      throw new IllegalArgumentException(
          "wanted yield of " + wantedYield + "; allowed: 0.5 to 0.999");
    }
    Checks.positive(allowanceDb, "allowance", "dB");
    if (Integer.bitCount(sensitivitySamples) != 1
        || sensitivitySamples < 16
        || sensitivitySamples > 65_536) {
      throw new IllegalArgumentException(
          sensitivitySamples + " sensitivity samples; allowed: a power of two, 16 to 65536");
    }
    if (lotSize < 2) {
      throw new IllegalArgumentException("lot of " + lotSize + "; allowed: 2 or more");
    }
  }

  /**
   * Returns the usual conduct: 10,000 units, 95 % yield, an allowance of 1 dB (the usual tolerance
   * of the level; common practice), 1024 samples, an order of 200 woofers inspected at general
   * level II and an acceptance quality limit of 1 % (common practice for woofers made to a brief).
   *
   * @param seed seed of all chance
   */
  public static ToleranceConduct usual(long seed) {
    return new ToleranceConduct(
        seed,
        USUAL_UNITS,
        USUAL_YIELD,
        USUAL_ALLOWANCE_DB,
        USUAL_SAMPLES,
        USUAL_LOT,
        InspectionLevel.II,
        AcceptanceQuality.AQL_1_0);
  }

  /**
   * Returns this conduct with other numbers of units and samples.
   *
   * @param otherUnits units of each simulated run
   * @param otherSamples samples of the sensitivity analysis
   */
  public ToleranceConduct withUnits(int otherUnits, int otherSamples) {
    return new ToleranceConduct(
        seed,
        otherUnits,
        wantedYield,
        allowanceDb,
        otherSamples,
        lotSize,
        inspectionLevel,
        acceptanceQuality);
  }
}
