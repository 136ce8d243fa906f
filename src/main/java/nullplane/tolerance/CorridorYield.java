package nullplane.tolerance;

import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;

/**
 * Share of a production run that stays in the spec's corridor in every stack, without windows: what
 * the usual spread of production does to a woofer with its networks. Much quicker than a {@link
 * ToleranceStudy}, for the comparison of many woofers.
 */
public final class CorridorYield {
  private CorridorYield() {}

  /**
   * Returns the share (1). All woofers that are tried with one seed meet the same deviations, so
   * that differences between them are not chance.
   *
   * @param stacks the stacks as they are built for the woofer
   * @param nominal the woofer as it is meant to be
   * @param units units to build, 1 or more
   * @param seed seed of all chance
   */
  public static double of(FixedStacks stacks, Woofer nominal, int units, long seed) {
    if (units < 1) {
      throw new IllegalArgumentException(units + " units; allowed: 1 or more");
    }
    ProductionSpread spread = ProductionSpread.usual();
    UnitChance chance = ProductionSpread.chance(seed);
    FixedStacks.Workspace space = stacks.newWorkspace();
    int good = 0;
    for (int u = 0; u < units; u++) {
      good += isGood(stacks, spread.unit(nominal, chance, u), space) ? 1 : 0;
    }
    return (double) good / units;
  }

  private static boolean isGood(FixedStacks stacks, Woofer unit, FixedStacks.Workspace space) {
    double corridorDb = stacks.spec().target().corridorDb();
    for (int s = 0; s < stacks.count(); s++) {
      stacks.respond(s, unit, space);
      for (int b = 0; b < stacks.bandHz().size(); b++) {
        if (Math.abs(space.levelDb(b) - stacks.wantedDb(s, b)) > corridorDb) {
          return false;
        }
      }
    }
    return true;
  }
}
