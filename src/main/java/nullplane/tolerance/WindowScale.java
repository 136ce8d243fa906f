package nullplane.tolerance;

import java.util.Arrays;
import nullplane.driver.Woofer;
import nullplane.scoring.FixedStacks;

/**
 * Finds how wide windows of a given shape may be, by bisection on simulated units that fill them
 * evenly. The same deviates serve every scale, so the yield moves with the scale alone.
 *
 * <p>A unit that is good at a scale is taken to be good at every lesser one, and the other way
 * round: the permitted range holds the nominal level, and a unit's level moves away from that
 * almost in proportion to the scale. So few units must be tried at each step; a pilot search on
 * some of them finds where to start. For one search only.
 */
final class WindowScale {
  private static final double LEAST = 0.05;
  private static final int PILOT_UNITS = 500;
  private static final double PILOT_GROWTH = 1.5;
  private static final double GROWTH = 1.05;
  private static final double CLOSE = 1.001;

  private final FixedStacks stacks;
  private final PermittedResponse permitted;
  private final WindowFill fill;
  private final UnitChance chance;
  private final Batches batches;
  private final double[] goodUpTo;
  private final double[] badFrom;

  WindowScale(
      FixedStacks stacks,
      PermittedResponse permitted,
      WindowFill fill,
      UnitChance chance,
      int units,
      Batches batches) {
    this.stacks = stacks;
    this.permitted = permitted;
    this.fill = fill;
    this.chance = chance;
    this.batches = batches;
    goodUpTo = new double[units];
    badFrom = new double[units];
  }

  /**
   * Returns the largest scale at which a share of the units is good in every stack, the least scale
   * there is (0.05) if none keeps it, or the scale at which every window has reached its cap.
   *
   * @param shape half of each window at scale 1
   * @param caps half of each window at its widest
   * @param yield wanted share (1)
   */
  double widest(double[] shape, double[] caps, double yield) {
    double most = LEAST;
    for (int q = 0; q < shape.length; q++) {
      most = Math.max(most, caps[q] / shape[q]);
    }
    Arrays.fill(badFrom, Double.POSITIVE_INFINITY);
    int pilotUnits = Math.min(PILOT_UNITS, goodUpTo.length);
    Search pilot = new Search(shape, caps, yield, pilotUnits, most);
    Search full = new Search(shape, caps, yield, goodUpTo.length, most);
    // a little too wide at first: then only units that are bad there need be tried again
    return full.from(GROWTH * pilot.from(1, PILOT_GROWTH), GROWTH);
  }

  /** A search on the first units. */
  private final class Search {
    private final double[] shape;
    private final double[] caps;
    private final int mayFail;
    private final int units;
    private final double most;

    Search(double[] shape, double[] caps, double yield, int units, double most) {
      this.shape = shape;
      this.caps = caps;
      this.mayFail = (int) Math.floor(units * (1 - yield));
      this.units = units;
      this.most = most;
    }

    double from(double start, double growth) {
      double low = Math.min(most, start);
      double high = low;
      if (holds(low)) {
        do {
          low = high;
          high = Math.min(most, low * growth);
        } while (high > low && holds(high));
      } else {
        do {
          high = low;
          low = high / growth;
        } while (low > LEAST && !holds(low));
      }
      while (high > CLOSE * low) {
        double middle = Math.sqrt(low * high);
        if (holds(middle)) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return Math.max(LEAST, low);
    }

    private boolean holds(double scale) {
      return failures(scaled(shape, caps, scale), scale, units) <= mayFail;
    }
  }

  /** Returns half of each window at a scale. */
  static double[] scaled(double[] shape, double[] caps, double scale) {
    double[] halfWidths = new double[shape.length];
    for (int q = 0; q < shape.length; q++) {
      halfWidths[q] = Math.min(caps[q], scale * shape[q]);
    }
    return halfWidths;
  }

  /** Counts units that fail at a scale; tries those of which it is not known. */
  private int failures(double[] halfWidths, double scale, int units) {
    batches.over(
        units,
        (from, to) -> {
          FixedStacks.Workspace space = stacks.newWorkspace();
          for (int u = from; u < to; u++) {
            if (scale > goodUpTo[u] && scale < badFrom[u]) {
              if (good(fill.drawn(halfWidths, chance, u), space)) {
                goodUpTo[u] = scale;
              } else {
                badFrom[u] = scale;
              }
            }
          }
        });
    int failures = 0;
    for (int u = 0; u < units; u++) {
      failures += badFrom[u] <= scale ? 1 : 0;
    }
    return failures;
  }

  private boolean good(Woofer woofer, FixedStacks.Workspace space) {
    for (int s = 0; s < permitted.stacks(); s++) {
      stacks.respond(s, woofer, space);
      if (!permitted.permits(s, space)) {
        return false;
      }
    }
    return true;
  }
}
