package nullplane.driver;

import nullplane.units.Checks;

/**
 * How far a coil may travel, by the criteria that can be computed from winding and gap.
 *
 * <p>Symbols: hc winding height, hg gap height. In a gap of uniform field without any fringe the
 * coil loses none of its force factor over |hc - hg|/2; from there Bl falls in a straight line and
 * has lost a share s after a further s min(hc, hg).
 *
 * <p>Source: geometry. The criterion of Bl falling to 82 % of its value at rest belongs to IEC
 * 62458, large-signal parameters (recalled from memory, not read again), as do the compliance
 * falling to 75 % and 10 % of distortion, which need a measured suspension and are not computed
 * here. A real gap has a fringe field, in which Bl falls earlier but more gently, so the figure for
 * 82 % is an estimate; the geometric one is exact by its definition.
 *
 * @param geometricM |hc - hg|/2, one way (m)
 * @param forceFactorM travel at which Bl has fallen to 82 %, one way, uniform gap without fringe
 *     (m)
 */
public record TravelCriteria(double geometricM, double forceFactorM) {
  /** What is left of Bl at the limit (1). IEC 62458, recalled from memory. */
  public static final double FORCE_FACTOR_SHARE = 0.82;

  /** What is left of the compliance at the limit (1). IEC 62458, recalled from memory. */
  public static final double COMPLIANCE_SHARE = 0.75;

  /**
   * Returns the criteria of a winding in a gap.
   *
   * @param windingHeightM height of the winding (m)
   * @param gapHeightM height of the gap (m)
   * @throws IllegalArgumentException if a height is not positive
   */
  public static TravelCriteria of(double windingHeightM, double gapHeightM) {
    Checks.positive(windingHeightM, "winding height", "m");
    Checks.positive(gapHeightM, "gap height", "m");
    double geometric = OverhungCoil.travelM(windingHeightM, gapHeightM);
    return new TravelCriteria(
        geometric, geometric + (1 - FORCE_FACTOR_SHARE) * Math.min(windingHeightM, gapHeightM));
  }
}
