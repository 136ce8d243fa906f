package nullplane.driver;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.units.Air;
import nullplane.units.Levels;

/**
 * Every figure of a data sheet as a function of the seven that make a woofer, in logarithms: Sd,
 * Re, bare moving mass, Cms, Rms, Bl and travel. In logarithms all are straight but two: Mms is a
 * sum of masses, 1/Qts a sum of losses. So a set of stated figures is solved by a few of Newton's
 * steps, whichever figures it has.
 *
 * <p>Source: R. H. Small, J. Audio Eng. Soc. 20(5) (1972) 383; formulas as {@link Relation} states
 * them; air of the mounting as {@link Mounting} states it. Newton's steps, shortest ones where the
 * set leaves something open, halved until they improve: J. Nocedal and S. Wright, Numerical
 * Optimization (2006), ch. 11.
 */
final class SetEquations {
  /** The figures that make a woofer and its travel, in the order of the unknowns. */
  static final List<Parameter> UNKNOWNS =
      List.of(
          Parameter.AREA,
          Parameter.RESISTANCE,
          Parameter.BARE_MASS,
          Parameter.COMPLIANCE,
          Parameter.LOSS,
          Parameter.FORCE_FACTOR,
          Parameter.TRAVEL);

  private static final int COUNT = UNKNOWNS.size();
  private static final int SD = 0;
  private static final int RE = 1;
  private static final int MMD = 2;
  private static final int CMS = 3;
  private static final int RMS = 4;
  private static final int BL = 5;
  private static final int X = 6;

  /** A woofer without any special relation between its figures: where structure is looked at. */
  private static final double[] TYPICAL = {
    Math.log(0.0517),
    Math.log(5.7),
    Math.log(0.0613),
    Math.log(3.9e-4),
    Math.log(1.93),
    Math.log(9.7),
    Math.log(0.0083)
  };

  /** Further places to start from, as differences from the typical woofer. */
  private static final double[][] STARTS = {
    {0, 0, 0, 0, 0, 0, 0},
    {0, 0, 0, 0, -2, 0, 0},
    {0, 0, 2, 0, 0, 0, 0},
    {0, 0, 0, 0, 0, 1.5, 0},
    {-1.5, 0, 0, 0, 0, 0, 0},
    {0, 0, 2, 2, -3, 1, 0},
    {0, 0, -1.5, 0, 0, 0, 0},
    {1, 0, 0, -2, 0, 0, 0},
  };

  private static final double STRUCTURE = 1e-9;

  /** Shares of a figure's row that others must leave for it to count as new (1). */
  private static final double[] OWN_SHARES = {0.3, 0.03, STRUCTURE};

  private static final double SOLVED = 1e-12;
  private static final int STEPS = 80;
  private static final double LONGEST_STEP = 2;
  private static final double TEST_VOLTAGE = 2.83;

  private final double logAirPerArea;
  private final double logVolume;
  private final double logEfficiency;
  private final double logLevel;

  SetEquations(Mounting mounting, Air air) {
    double rho = air.densityKgPerM3();
    double c = air.speedOfSoundMPerS();
    logAirPerArea = Math.log(mounting.airMassKg(1, air)) - 1.5 * Math.log(Math.PI);
    logVolume = Math.log(rho * c * c);
    logEfficiency = Math.log(rho / (2 * Math.PI * c));
    logLevel = Math.log(rho * c / (2 * Math.PI)) - 2 * Math.log(Levels.REFERENCE_PRESSURE_PA);
  }

  /** Returns the logarithm of a figure for given unknowns. */
  double log(Parameter parameter, double[] x) {
    return switch (parameter) {
      case AREA -> x[SD];
      case DIAMETER -> (x[SD] + Math.log(4 / Math.PI)) / 2;
      case RESISTANCE -> x[RE];
      case RESONANCE -> -(movingMass(x) + x[CMS]) / 2 - Math.log(2 * Math.PI);
      case BARE_MASS -> x[MMD];
      case MOVING_MASS -> movingMass(x);
      case MECHANICAL_Q -> mechanicalQ(x);
      case ELECTRICAL_Q -> electricalQ(x);
      case FORCE_FACTOR -> x[BL];
      case LOSS -> x[RMS];
      case STIFFNESS -> -x[CMS];
      case COMPLIANCE -> x[CMS];
      case TOTAL_Q -> -logOfSum(-mechanicalQ(x), -electricalQ(x));
      case VOLUME -> logVolume + 2 * x[SD] + x[CMS];
      case EFFICIENCY -> efficiency(x);
      case LEVEL_ONE_WATT -> efficiency(x) + logLevel;
      case LEVEL_VOLTAGE -> efficiency(x) + logLevel + 2 * Math.log(TEST_VOLTAGE) - x[RE];
      case TRAVEL, GEOMETRIC_TRAVEL -> x[X];
      case DISPLACEMENT -> x[SD] + x[X];
    };
  }

  private double movingMass(double[] x) {
    return logOfSum(x[MMD], logAirMass(x));
  }

  private double mechanicalQ(double[] x) {
    return (movingMass(x) - x[CMS]) / 2 - x[RMS];
  }

  private double electricalQ(double[] x) {
    return (movingMass(x) - x[CMS]) / 2 + x[RE] - 2 * x[BL];
  }

  private double efficiency(double[] x) {
    return logEfficiency + 2 * x[BL] + 2 * x[SD] - 2 * movingMass(x) - x[RE];
  }

  /** Returns the logarithm of the air's mass on the cone for given unknowns. */
  double logAirMass(double[] x) {
    return logAirPerArea + 1.5 * x[SD];
  }

  private static double logOfSum(double a, double b) {
    double more = Math.max(a, b);
    return more + Math.log1p(Math.exp(Math.min(a, b) - more));
  }

  /** Returns what each unknown's logarithm does to a figure's. */
  double[] gradient(Parameter parameter, double[] x) {
    double bareShare = Math.exp(x[MMD] - movingMass(x));
    double[] g = new double[COUNT];
    switch (parameter) {
      case AREA -> g[SD] = 1;
      case DIAMETER -> g[SD] = 0.5;
      case RESISTANCE -> g[RE] = 1;
      case RESONANCE -> {
        addMass(g, -0.5, bareShare);
        g[CMS] = -0.5;
      }
      case BARE_MASS -> g[MMD] = 1;
      case MOVING_MASS -> addMass(g, 1, bareShare);
      case MECHANICAL_Q -> addQ(g, 1, 0, bareShare);
      case ELECTRICAL_Q -> addQ(g, 0, 1, bareShare);
      case FORCE_FACTOR -> g[BL] = 1;
      case LOSS -> g[RMS] = 1;
      case STIFFNESS -> g[CMS] = -1;
      case COMPLIANCE -> g[CMS] = 1;
      case TOTAL_Q -> {
        double mechanicalShare = Math.exp(log(Parameter.TOTAL_Q, x) - mechanicalQ(x));
        addQ(g, mechanicalShare, 1 - mechanicalShare, bareShare);
      }
      case VOLUME -> {
        g[SD] = 2;
        g[CMS] = 1;
      }
      case EFFICIENCY, LEVEL_ONE_WATT, LEVEL_VOLTAGE -> {
        g[BL] = 2;
        g[SD] = 2;
        addMass(g, -2, bareShare);
        g[RE] = parameter == Parameter.LEVEL_VOLTAGE ? -2 : -1;
      }
      case TRAVEL, GEOMETRIC_TRAVEL -> g[X] = 1;
      case DISPLACEMENT -> {
        g[SD] = 1;
        g[X] = 1;
      }
    }
    return g;
  }

  private static void addMass(double[] g, double power, double bareShare) {
    g[MMD] += power * bareShare;
    g[SD] += power * 1.5 * (1 - bareShare);
  }

  private static void addQ(double[] g, double mechanical, double electrical, double bareShare) {
    addMass(g, (mechanical + electrical) / 2, bareShare);
    g[CMS] -= (mechanical + electrical) / 2;
    g[RMS] -= mechanical;
    g[RE] += electrical;
    g[BL] -= 2 * electrical;
  }

  /** Returns an empty space to look at structure in. */
  static RowSpace structure() {
    return new RowSpace(COUNT, STRUCTURE);
  }

  /** Returns a figure's row where structure is looked at. */
  double[] structureOf(Parameter parameter) {
    return gradient(parameter, TYPICAL);
  }

  /**
   * Returns independent ones among figures: first those that add something of their own, in the
   * order given, then those that say nearly the same as others, as far as they are needed. So no
   * figure is taken from a small difference of two others while there is another way.
   */
  List<Parameter> independent(List<Parameter> figures) {
    List<Parameter> basis = new ArrayList<>();
    for (double own : OWN_SHARES) {
      RowSpace space = new RowSpace(COUNT, own);
      basis.forEach(known -> space.add(structureOf(known)));
      for (Parameter parameter : figures) {
        if (!basis.contains(parameter) && space.add(structureOf(parameter))) {
          basis.add(parameter);
        }
      }
    }
    return basis;
  }

  /** Returns the space that figures span at a solution; they must be independent. */
  RowSpace spaceAt(List<Parameter> basis, double[] x) {
    RowSpace space = new RowSpace(COUNT, 1e-6);
    for (Parameter parameter : basis) {
      space.add(gradient(parameter, x));
    }
    return space;
  }

  /**
   * Returns unknowns that fit independent figures, or nothing where no woofer has them. Where two
   * woofers have them, it is the one whose coil damps more than its suspension and whose air weighs
   * less than twice its moving parts, if one of them is like that.
   *
   * @param basis independent figures
   * @param logs their logarithms
   */
  Optional<double[]> solve(List<Parameter> basis, double[] logs) {
    Optional<double[]> first = Optional.empty();
    for (double[] start : STARTS) {
      double[] x = TYPICAL.clone();
      for (int i = 0; i < COUNT; i++) {
        x[i] += start[i];
      }
      Optional<double[]> found = newton(basis, logs, x);
      if (found.isPresent() && usual(found.orElseThrow())) {
        return found;
      }
      if (first.isEmpty()) {
        first = found;
      }
    }
    return first;
  }

  private boolean usual(double[] x) {
    return mechanicalQ(x) >= electricalQ(x) && logAirMass(x) <= x[MMD] + Math.log(2);
  }

  private Optional<double[]> newton(List<Parameter> basis, double[] logs, double[] start) {
    double[] x = start;
    double[] misses = misses(basis, logs, x);
    for (int step = 0; step < STEPS; step++) {
      RowSpace space = new RowSpace(COUNT, 1e-14);
      for (Parameter parameter : basis) {
        if (!space.add(gradient(parameter, x))) {
          return Optional.empty();
        }
      }
      double[] way = space.shortest(misses);
      double longest = largest(way);
      double share = Math.min(1, LONGEST_STEP / Math.max(longest, LONGEST_STEP));
      double[] next = moved(x, way, share);
      double[] nextMisses = misses(basis, logs, next);
      while (largest(nextMisses) > largest(misses) && share > 1e-3 && largest(misses) > SOLVED) {
        share /= 2;
        next = moved(x, way, share);
        nextMisses = misses(basis, logs, next);
      }
      x = next;
      misses = nextMisses;
      if (longest < 1e-13) {
        break;
      }
    }
    return largest(misses) < SOLVED ? Optional.of(x) : Optional.empty();
  }

  private double[] misses(List<Parameter> basis, double[] logs, double[] x) {
    double[] misses = new double[logs.length];
    for (int i = 0; i < logs.length; i++) {
      misses[i] = logs[i] - log(basis.get(i), x);
    }
    return misses;
  }

  private static double[] moved(double[] x, double[] way, double share) {
    double[] next = x.clone();
    for (int i = 0; i < next.length; i++) {
      next[i] += share * way[i];
    }
    return next;
  }

  private static double largest(double[] values) {
    double largest = 0;
    for (double value : values) {
      largest = Math.max(largest, Math.abs(value));
    }
    return largest;
  }

  /** Returns the shares that members of a relation have in its balance; see {@link Relation}. */
  double weight(Relation relation, Parameter member, double[] x) {
    OptionalDouble power = relation.power(member);
    if (power.isPresent()) {
      return power.getAsDouble();
    }
    return switch (member) {
      case MECHANICAL_Q -> Math.exp(log(Parameter.TOTAL_Q, x) - mechanicalQ(x));
      case ELECTRICAL_Q -> Math.exp(log(Parameter.TOTAL_Q, x) - electricalQ(x));
      case BARE_MASS -> Math.exp(x[MMD] - movingMass(x));
      case AREA -> 1.5 * (1 - Math.exp(x[MMD] - movingMass(x)));
      default -> throw new IllegalStateException(relation + " does not hold " + member);
    };
  }
}
