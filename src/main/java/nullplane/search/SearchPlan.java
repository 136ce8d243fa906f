package nullplane.search;

import nullplane.driver.Woofer;
import nullplane.scoring.WooferBrief;
import nullplane.units.Air;

/**
 * What is evolved: fs, Qts, bare moving mass and travel, each as a share of its range. Everything
 * else in a woofer follows from these and the brief.
 *
 * @param brief what the search may choose, and what is fixed
 * @param air the air the figures hold in
 */
public record SearchPlan(WooferBrief brief, Air air) {
  /** Number of genes. */
  static final int GENES = 4;

  /**
   * Returns the woofer of a set of genes.
   *
   * @param genes shares of the ranges (1), 0 to 1, in the order fs, Qts, bare moving mass, travel
   */
  Woofer woofer(double[] genes) {
    return brief.woofer(
        "candidate",
        brief.resonanceHz().at(genes[0]),
        brief.totalQ().at(genes[1]),
        brief.bareMassKg().at(genes[2]),
        brief.travelM().at(genes[3]),
        air);
  }

  /** Returns whether a gene has any say. */
  boolean isFree(int gene) {
    return switch (gene) {
      case 0 -> !brief.resonanceHz().isPinned();
      case 1 -> !brief.totalQ().isPinned();
      case 2 -> !brief.bareMassKg().isPinned();
      case 3 -> !brief.travelM().isPinned();
      default -> throw new IllegalArgumentException("gene " + gene);
    };
  }
}
