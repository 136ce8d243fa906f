package nullplane.sample;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.units.Air;

/**
 * Finds the smallest change that brings a woofer into a brief's windows: every combination of steps
 * that a maker can take is tried, and the cheapest wins. Mass goes in round steps of about half a
 * percent, stiffness and flux in percent, the winding over neighbouring wires, layers and turns. A
 * lever costs what it is moved, in usual steps of {@link Lever}; being outside a window costs far
 * more than any lever, so that where the levers cannot reach, the nearest is found.
 *
 * <p>What flux does not touch is priced first, and a combination that is already too dear is left.
 * The loss has no price: no lever changes it.
 */
final class ChangeSearch {
  private static final double MOST_MASS = 0.3;
  private static final int LEAST_STIFFNESS = -50;
  private static final int MOST_STIFFNESS = 100;
  private static final int LEAST_FLUX = -35;
  private static final int MOST_FLUX = 50;

  /** What it costs to touch a lever at all, beside its steps: few changes are easier to follow. */
  private static final double PER_LEVER = 0.5;

  private static final double MASS_STEP = 0.005;
  private static final double[] ROUND_STEPS_KG = {
    0.01e-3, 0.02e-3, 0.05e-3, 0.1e-3, 0.2e-3, 0.5e-3, 1e-3, 2e-3, 5e-3
  };

  private final Woofer woofer;
  private final Set<Lever> locked;
  private final MakerResponse response;
  private final Air air;
  private final double voltageV;
  private final double airMassKg;
  private final double volumeTimesStiffness;
  private final List<Integer> stiffnesses;
  private final List<Integer> fluxes;

  private final Map<BenchFigure, WindowAim> aims = new EnumMap<>(BenchFigure.class);

  private double bestCost = Double.POSITIVE_INFINITY;
  private Change best = Change.NONE;

  private ChangeSearch(
      Woofer woofer,
      List<WindowAim> aims,
      Set<Lever> locked,
      MakerResponse response,
      Air air,
      double voltageV) {
    this.woofer = woofer;
    this.locked = locked;
    this.response = response;
    this.air = air;
    this.voltageV = voltageV;
    aims.forEach(aim -> this.aims.put(aim.figure(), aim));
    airMassKg = Mounting.FREE_AIR.airMassKg(woofer.radiusM(), air);
    volumeTimesStiffness = BenchFigure.VAS.of(woofer, air, voltageV) * woofer.stiffnessNPerM();
    boolean stiff = locked.contains(Lever.STIFFNESS);
    stiffnesses = stiff ? List.of(0) : outwards(LEAST_STIFFNESS, MOST_STIFFNESS);
    fluxes = locked.contains(Lever.FLUX) ? List.of(0) : outwards(LEAST_FLUX, MOST_FLUX);
  }

  /**
   * Returns the cheapest change.
   *
   * @param woofer the woofer as it is
   * @param aims what to bring it into
   * @param winding the winding on its drawing, if that is known
   * @param locked levers that must not be moved
   * @param response how far the maker goes when a lever is to be moved
   * @param air the air
   * @param voltageV voltage of the level (V)
   */
  static Change of(
      Woofer woofer,
      List<WindowAim> aims,
      Optional<Winding> winding,
      Set<Lever> locked,
      MakerResponse response,
      Air air,
      double voltageV) {
    ChangeSearch search = new ChangeSearch(woofer, aims, locked, response, air, voltageV);
    search.run(Optional.empty(), 0);
    if (winding.isPresent() && !locked.contains(Lever.WINDING)) {
      for (Windings.Candidate candidate : Windings.near(winding.orElseThrow())) {
        search.run(Optional.of(candidate.rewound()), candidate.cost());
      }
    }
    return search.best;
  }

  private void run(Optional<Change.Rewound> winding, double windingCost) {
    Change wound = response.expected(new Change(0, 0, 0, winding, 0, 0));
    double gainedM = wound.winding().map(Change.Rewound::travelM).orElse(0.0);
    if (!(woofer.travelM() + gainedM > 0)) {
      return; // a coil at rest beyond its travel has none to lose
    }
    Woofer rewound = wound.applyTo(woofer);
    double fixed =
        windingCost
            + price(BenchFigure.RE, rewound.resistanceOhm())
            + price(BenchFigure.LE, rewound.inductanceH());
    double step = massStepKg(woofer.bareMassKg());
    int most = locked.contains(Lever.MASS) ? 0 : (int) (MOST_MASS * woofer.bareMassKg() / step);
    for (int m : outwards(-most, most)) {
      double massKg = m * step;
      double bare = rewound.bareMassKg() + response.used(Lever.MASS) * massKg;
      double leverCost = fixed + leverCost(1 + massKg / woofer.bareMassKg(), Lever.MASS);
      if (bare > 0 && leverCost < bestCost) {
        double withMass =
            leverCost
                + price(BenchFigure.MOVING_MASS, bare)
                + price(BenchFigure.MMS, bare + airMassKg);
        if (withMass < bestCost) {
          stiffen(new Change(massKg, 0, 0, winding, 0, 0), rewound, bare + airMassKg, withMass);
        }
      }
    }
  }

  private void stiffen(Change change, Woofer rewound, double mass, double price) {
    for (int k : stiffnesses) {
      double leverCost = price + leverCost(1 + k / 100.0, Lever.STIFFNESS);
      if (!(leverCost < bestCost)) {
        continue;
      }
      double stiffness = rewound.stiffnessNPerM() * response.ratio(Lever.STIFFNESS, 1 + k / 100.0);
      double root = Math.sqrt(stiffness * mass);
      double withStiffness =
          leverCost
              + price(BenchFigure.FS, root / mass / (2 * Math.PI))
              + price(BenchFigure.QMS, root / rewound.lossNsPerM())
              + price(BenchFigure.KMS, stiffness)
              + price(BenchFigure.VAS, volumeTimesStiffness / stiffness);
      if (withStiffness < bestCost) {
        Change stiffened = new Change(change.massKg(), k / 100.0, 0, change.winding(), 0, 0);
        magnetise(stiffened, rewound, mass, root, withStiffness);
      }
    }
  }

  private void magnetise(Change change, Woofer rewound, double mass, double root, double price) {
    double qms = root / rewound.lossNsPerM();
    for (int b : fluxes) {
      double leverCost = price + leverCost(1 + b / 100.0, Lever.FLUX);
      if (!(leverCost < bestCost)) {
        continue;
      }
      double force = rewound.forceFactorTm() * response.ratio(Lever.FLUX, 1 + b / 100.0);
      double qes = root * rewound.resistanceOhm() / (force * force);
      double cost =
          leverCost
              + price(BenchFigure.QES, qes)
              + price(BenchFigure.QTS, qms * qes / (qms + qes))
              + price(BenchFigure.BL, force);
      if (cost < bestCost) {
        double drive = force / mass / rewound.resistanceOhm();
        double level = BenchFigure.levelDb(drive, woofer.effectiveAreaM2(), air, voltageV);
        cost += price(BenchFigure.LEVEL, level);
        if (cost < bestCost) {
          bestCost = cost;
          best =
              new Change(
                  change.massKg(), change.stiffnessShare(), b / 100.0, change.winding(), 0, 0);
        }
      }
    }
  }

  private static double leverCost(double ratio, Lever lever) {
    return ratio == 1 ? 0 : PER_LEVER + Math.abs(Math.log(ratio)) / lever.step();
  }

  private double price(BenchFigure figure, double value) {
    WindowAim aim = aims.get(figure);
    return aim == null ? 0 : aim.cost(value);
  }

  /** Whole numbers of a range, 0 first and then ever further out, so that little is tried first. */
  private static List<Integer> outwards(int least, int most) {
    List<Integer> order = new ArrayList<>();
    order.add(0);
    for (int i = 1; i <= Math.max(-least, most); i++) {
      if (i <= most) {
        order.add(i);
      }
      if (-i >= least) {
        order.add(-i);
      }
    }
    return order;
  }

  /** Returns the round step of mass nearest to half a percent (kg). */
  static double massStepKg(double bareMassKg) {
    double wanted = MASS_STEP * bareMassKg;
    double nearest = ROUND_STEPS_KG[0];
    for (double step : ROUND_STEPS_KG) {
      if (Math.abs(Math.log(step / wanted)) < Math.abs(Math.log(nearest / wanted))) {
        nearest = step;
      }
    }
    return nearest;
  }
}
