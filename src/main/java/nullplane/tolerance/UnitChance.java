package nullplane.tolerance;

import org.apache.commons.math3.special.Erf;

/**
 * Chance that is counted, not drawn in turn: the deviate of a unit and a quantity follows from the
 * seed and the two numbers alone, so a run is the same in any order, batch size or thread count.
 *
 * <p>Source: G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators,
 * OOPSLA 2014, doi 10.1145/2714064.2660195: the n-th output of SplitMix64 is a mix of seed + n
 * gamma.
 */
final class UnitChance {
  private static final long GAMMA = 0x9E3779B97F4A7C15L;
  private static final double TO_UNIT = 0x1p-53;

  /** Deviates beyond this many standard deviations are not built, or are scrapped by the maker. */
  static final double NORMAL_LIMIT = 3;

  private static final double TAIL = 0.5 * Erf.erfc(NORMAL_LIMIT / Math.sqrt(2));

  /** What chance is for; each purpose has chance of its own. */
  enum Purpose {
    /** Units of the production run. */
    PRODUCTION(1),
    /** Units that windows are found with. */
    WINDOWS(2),
    /** Units that windows are checked with. */
    CHECK(3);

    private final int number;

    Purpose(int number) {
      this.number = number;
    }
  }

  private final long key;
  private final int perUnit;

  /**
   * @param seed the run's seed
   * @param purpose what the chance is for
   * @param perUnit quantities of a unit
   */
  UnitChance(long seed, Purpose purpose, int perUnit) {
    this.key = mixed(seed + purpose.number * GAMMA);
    this.perUnit = perUnit;
  }

  /** Returns the n-th output of SplitMix64, n from 1. */
  static long output(long seed, long n) {
    return mixed(seed + n * GAMMA);
  }

  private static long mixed(long value) {
    long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  /** Returns a deviate spread evenly over the open interval from 0 to 1. */
  double even(long unit, int quantity) {
    long n = unit * perUnit + quantity + 1;
    return ((output(key, n) >>> 11) + 0.5) * TO_UNIT;
  }

  /** Returns a standard normal deviate, none beyond {@link #NORMAL_LIMIT}. */
  double normal(long unit, int quantity) {
    return normalAt(even(unit, quantity));
  }

  /**
   * Returns the standard normal deviate, cut off at {@link #NORMAL_LIMIT}, at a share of its
   * distribution.
   *
   * <p>Source: inversion, z = sqrt 2 erfinv(2 p - 1).
   *
   * @param share share of the cut-off distribution that lies below (1), 0 to 1
   */
  static double normalAt(double share) {
    double p = TAIL + share * (1 - 2 * TAIL);
    return Math.sqrt(2) * Erf.erfInv(2 * p - 1);
  }
}
