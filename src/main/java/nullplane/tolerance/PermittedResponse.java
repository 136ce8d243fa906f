package nullplane.tolerance;

import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;
import nullplane.units.Curve;

/**
 * What a unit is permitted in every stack. At each frequency of the band its level lies inside the
 * corridor; where the nominal woofer itself lies near the corridor's edge or outside, the permitted
 * range is widened to the nominal level and the allowance beyond it. The load stays at or above the
 * amplifier's lowest; if the nominal woofer's own does not, load is not judged.
 *
 * <p>Immutable.
 */
final class PermittedResponse {
  /** What the load is when it is not judged. */
  private static final double NOT_JUDGED = Double.NEGATIVE_INFINITY;

  private final double[][] nominalDb;
  private final double[][] lowerDb;
  private final double[][] upperDb;
  private final double[] nominalLoadOhm;
  private final double[] leastLoadOhm;

  /**
   * @param stacks the stacks
   * @param nominal the woofer as designed
   * @param allowanceDb allowance beyond the nominal level (dB)
   */
  PermittedResponse(FixedStacks stacks, Woofer nominal, double allowanceDb) {
    int count = stacks.count();
    int points = stacks.bandHz().size();
    double corridorDb = stacks.spec().target().corridorDb();
    double lowestLoadOhm = stacks.spec().amplifier().lowestLoadOhm();
    nominalDb = new double[count][points];
    lowerDb = new double[count][points];
    upperDb = new double[count][points];
    nominalLoadOhm = new double[count];
    leastLoadOhm = new double[count];
    FixedStacks.Workspace space = stacks.newWorkspace();
    for (int s = 0; s < count; s++) {
      stacks.respond(s, nominal, space);
      for (int b = 0; b < points; b++) {
        double own = space.levelDb(b);
        nominalDb[s][b] = own;
        double wantedDb = stacks.wantedDb(s, b);
        lowerDb[s][b] = Math.min(wantedDb - corridorDb, own - allowanceDb);
        upperDb[s][b] = Math.max(wantedDb + corridorDb, own + allowanceDb);
      }
      nominalLoadOhm[s] = space.leastLoadOhm();
      leastLoadOhm[s] = nominalLoadOhm[s] >= lowestLoadOhm ? lowestLoadOhm : NOT_JUDGED;
    }
  }

  int stacks() {
    return nominalDb.length;
  }

  int points() {
    return nominalDb[0].length;
  }

  double nominalDb(int stack, int bandPoint) {
    return nominalDb[stack][bandPoint];
  }

  Curve nominal(int stack) {
    return Curve.of(nominalDb[stack]);
  }

  Curve lower(int stack) {
    return Curve.of(lowerDb[stack]);
  }

  Curve upper(int stack) {
    return Curve.of(upperDb[stack]);
  }

  /** Returns the lesser of the two distances from the nominal level to what is permitted (dB). */
  double roomDb(int stack, int bandPoint) {
    return Math.min(
        nominalDb[stack][bandPoint] - lowerDb[stack][bandPoint],
        upperDb[stack][bandPoint] - nominalDb[stack][bandPoint]);
  }

  boolean judgesLoad(int stack) {
    return leastLoadOhm[stack] != NOT_JUDGED;
  }

  double nominalLoadOhm(int stack) {
    return nominalLoadOhm[stack];
  }

  double leastLoadOhm(int stack) {
    return leastLoadOhm[stack];
  }

  /** Returns how far a level is outside the permitted range (dB); below 0 inside. */
  double excessDb(int stack, int bandPoint, double levelDb) {
    return Math.max(lowerDb[stack][bandPoint] - levelDb, levelDb - upperDb[stack][bandPoint]);
  }

  boolean permitsLoad(int stack, FixedStacks.Workspace space) {
    return space.leastLoadOhm() >= leastLoadOhm[stack];
  }

  /** Returns whether a stack's level and load are permitted. */
  boolean permits(int stack, FixedStacks.Workspace space) {
    for (int b = 0; b < points(); b++) {
      double level = space.levelDb(b);
      if (!(level >= lowerDb[stack][b] && level <= upperDb[stack][b])) {
        return false;
      }
    }
    return permitsLoad(stack, space);
  }
}
