package nullplane.search;

import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Tells woofers apart as a factory would: the usual tolerance windows of the two must not overlap
 * in at least one quantity. The windows are common practice, either way: fs 10 %, Qts 15 %, moving
 * mass 8 %, travel 10 %.
 */
final class Distinctness {
  private static final double RESONANCE = 0.10;
  private static final double TOTAL_Q = 0.15;
  private static final double MASS = 0.08;
  private static final double TRAVEL_RATIO = 2;

  private Distinctness() {}

  /** Returns whether two woofers are entries of their own. */
  static boolean distinct(Woofer a, Woofer b, Air air) {
    SmallSignal first = SmallSignal.of(a, Mounting.FREE_AIR, air);
    SmallSignal second = SmallSignal.of(b, Mounting.FREE_AIR, air);
    return apart(first.resonanceHz(), second.resonanceHz()) > RESONANCE
        || apart(first.totalQ(), second.totalQ()) > TOTAL_Q
        || apart(a.bareMassKg(), b.bareMassKg()) > MASS
        || Math.max(a.travelM(), b.travelM()) >= TRAVEL_RATIO * Math.min(a.travelM(), b.travelM());
  }

  /** Distance as a share of the sum, which windows of half that share on each side just bridge. */
  private static double apart(double a, double b) {
    return Math.abs(a - b) / (a + b);
  }
}
