package nullplane.scoring;

import java.util.List;
import nullplane.driver.Woofer;
import nullplane.network.SeriesCoil;
import nullplane.units.Levels;

/**
 * Finds, for a woofer in one stack, the wiring and the series coil that suit it best, and what they
 * cost. Every wiring meets every coil; the least violation wins, then the least cost.
 *
 * <p>Symbols: with V at the amplifier, Zc the coil and Zs the stack, the stack sees V Zs/(Zs + Zc).
 * A cone's peak travel is sqrt 2 times its root-mean-square excursion; a coil takes i^2 Re of heat.
 *
 * <p>Source: Kirchhoff's laws; R. H. Small, J. Audio Eng. Soc. 21 (1973) 798, for output limited by
 * displacement. Immutable; work space belongs to the caller.
 */
final class StackEvaluator {
  private final StackBrief brief;
  private final List<StackModel> models;
  private final SeriesCoil[] coils;
  private final Target target;
  private final Amplifier amplifier;
  private final ScoringAxis axis;
  private final GradeWeights weights;
  private final double[] omega;
  private final double[] bandWeights;

  StackEvaluator(
      StackAcoustics stack,
      Target target,
      Amplifier amplifier,
      ScoringAxis axis,
      List<SeriesCoil> coils,
      GradeWeights weights) {
    this.brief = stack.brief();
    this.coils = coils.toArray(new SeriesCoil[0]);
    this.target = target;
    this.amplifier = amplifier;
    this.axis = axis;
    this.weights = weights;
    List<Wiring> wirings =
        brief.wiring().map(List::of).orElseGet(() -> Wiring.allOf(brief.pistons().size()));
    this.models = wirings.stream().map(w -> new StackModel(stack.response(), w)).toList();
    this.omega = axis.frequencyHz().stream().map(f -> 2 * Math.PI * f).toArray();
    this.bandWeights = axis.bandWeights().toArray();
  }

  /** Returns the stack. */
  StackBrief brief() {
    return brief;
  }

  /** Returns the model of a wiring, by its index in a {@link Choice}. */
  StackModel model(int wiring) {
    return models.get(wiring);
  }

  /**
   * Returns the model of a wiring.
   *
   * @throws IllegalArgumentException if the stack is not to be wired so
   */
  StackModel model(Wiring wiring) {
    for (StackModel model : models) {
      if (model.wiring().equals(wiring)) {
        return model;
      }
    }
    throw new IllegalArgumentException("stack " + brief.name() + " may not be wired " + wiring);
  }

  /** Returns a coil, by its index in a {@link Choice}. */
  SeriesCoil coil(int index) {
    return coils[index];
  }

  /** The best wiring and coil found, with the figures that decided. */
  static final class Choice {
    int wiring;
    int coil;
    double violation;
    double cost;
    double rmsDeviation;
    double worstExcess;
    double outputLack;
    double bend;
    double loss;
    double leastLoad;
    double travelShare;

    private void copy(Choice other) {
      wiring = other.wiring;
      coil = other.coil;
      violation = other.violation;
      cost = other.cost;
      rmsDeviation = other.rmsDeviation;
      worstExcess = other.worstExcess;
      outputLack = other.outputLack;
      bend = other.bend;
      loss = other.loss;
      leastLoad = other.leastLoad;
      travelShare = other.travelShare;
    }

    /**
     * Less violation, then less cost, then the earlier wiring and coil: never a matter of order.
     */
    private boolean betterThan(Choice other) {
      if (violation != other.violation) {
        return violation < other.violation;
      }
      if (cost != other.cost) {
        return cost < other.cost;
      }
      return wiring != other.wiring ? wiring < other.wiring : coil < other.coil;
    }
  }

  /** Work space for one thread; large enough for every stack of a spec. */
  static final class Workspace {
    final StackModel.PerVolt perVolt;
    final double[] levelPerVolt;
    final double[] heldLevel;
    final double[] travelShare;
    private final Choice trial = new Choice();

    Workspace(int points, int woofers) {
      perVolt = new StackModel.PerVolt(points, woofers);
      levelPerVolt = new double[points];
      heldLevel = new double[points];
      travelShare = new double[points];
    }
  }

  /**
   * Finds the best wiring and coil.
   *
   * @param woofer the woofer
   * @param space work space; overwritten
   * @param best receives the result; its old coil is the first one tried
   */
  void choose(Woofer woofer, Workspace space, Choice best) {
    int likelyCoil = best.coil;
    best.violation = Double.POSITIVE_INFINITY;
    best.cost = Double.POSITIVE_INFINITY;
    // series first: its load is the lightest, so that a bound on the cost is at hand early
    for (int w = models.size() - 1; w >= 0; w--) {
      space.trial.wiring = w;
      models.get(w).respond(woofer, space.perVolt);
      prepare(woofer, space);
      for (int step = 0; step < coils.length; step++) {
        // the coil that was best last time first, for the same reason
        int c = step == 0 ? likelyCoil : step <= likelyCoil ? step - 1 : step;
        if (tryCoil(c, space, best) && space.trial.betterThan(best)) {
          best.copy(space.trial);
        }
      }
    }
  }

  /** What does not depend on the coil: level per volt, level held by cone and coil, travel. */
  private void prepare(Woofer woofer, Workspace space) {
    StackModel.PerVolt perVolt = space.perVolt;
    double travelSquared = woofer.travelM() * woofer.travelM() / 2;
    double currentSquared = woofer.powerW() / woofer.resistanceOhm();
    for (int f = axis.firstInBand(); f <= axis.lastInBand(); f++) {
      space.levelPerVolt[f] = levelOfSquared(perVolt.pressureSquared[f]);
      double voltSquared =
          Math.min(
              travelSquared / perVolt.excursionSquared[f],
              currentSquared / perVolt.currentSquared[f]);
      space.heldLevel[f] = space.levelPerVolt[f] + Levels.ofPowerRatio(voltSquared);
      space.travelShare[f] = perVolt.excursionSquared[f] / travelSquared;
    }
  }

  /** Level of a squared pressure (Pa^2), in dB re 20 uPa. */
  static double levelOfSquared(double pressureSquared) {
    return Levels.ofPowerRatio(
        pressureSquared / (Levels.REFERENCE_PRESSURE_PA * Levels.REFERENCE_PRESSURE_PA));
  }

  /**
   * Tries a coil. Returns false as soon as it can no longer beat the best, which then has no
   * violation; costs only grow along the band.
   */
  private boolean tryCoil(int index, Workspace space, Choice best) {
    SeriesCoil coil = coils[index];
    double bound = best.violation == 0 ? best.cost : Double.POSITIVE_INFINITY;
    StackModel.PerVolt perVolt = space.perVolt;
    double referenceDb = Levels.ofAmplitudeRatio(target.voltageV());
    double fullDb = Levels.ofAmplitudeRatio(amplifier.voltageV());
    double squares = 0;
    double excess = 0;
    double lack = 0;
    double loss = 0;
    double leastDb = Double.POSITIVE_INFINITY;
    double mostDb = Double.NEGATIVE_INFINITY;
    double travel = 0;
    for (int f = axis.firstInBand(); f <= axis.lastInBand(); f++) {
      double passed = dividerSquared(omega[f], f, coil, perVolt);
      double passedDb = Levels.ofPowerRatio(passed);
      double atUnit = space.levelPerVolt[f] + passedDb;
      double deviation = atUnit + referenceDb - brief.levelDb();
      double weight = bandWeights[f - axis.firstInBand()];
      squares += weight * deviation * deviation;
      excess = Math.max(excess, Math.abs(deviation) - target.corridorDb());
      double loudest = Math.min(space.heldLevel[f], atUnit + fullDb);
      lack = Math.max(lack, brief.loudestDb() - loudest);
      if (weights.perDbDeviation() * Math.sqrt(squares)
              + weights.perDbOutside() * excess
              + weights.perDbOutputLack() * lack
          > bound) {
        return false;
      }
      loss -= weight * passedDb;
      leastDb = Math.min(leastDb, passedDb);
      mostDb = Math.max(mostDb, passedDb);
      travel = Math.max(travel, passed * space.travelShare[f]);
    }
    double leastLoadSquared = Double.POSITIVE_INFINITY;
    for (int f = 0; f < omega.length; f++) {
      leastLoadSquared = Math.min(leastLoadSquared, loadSquared(f, coil, perVolt));
    }
    Choice trial = space.trial;
    trial.coil = index;
    trial.rmsDeviation = Math.sqrt(squares);
    trial.worstExcess = excess;
    trial.outputLack = lack;
    trial.loss = loss;
    trial.bend = mostDb - leastDb;
    trial.leastLoad = Math.sqrt(leastLoadSquared);
    trial.travelShare = Math.sqrt(travel) * target.voltageV();
    trial.violation = violationOf(trial.leastLoad, trial.travelShare);
    trial.cost =
        weights.perDbDeviation() * trial.rmsDeviation
            + weights.perDbOutside() * trial.worstExcess
            + weights.perDbOutputLack() * trial.outputLack
            + weights.perDbCorrection() * (trial.bend + Math.max(0, trial.loss))
            + weights.perKilogramOfCoil() * coil.copperKg();
    return true;
  }

  /** Distance to an allowed load and to the travel at the target's voltage (1). */
  double violationOf(double leastLoadOhm, double travelShare) {
    return Math.max(0, 1 - leastLoadOhm / amplifier.lowestLoadOhm()) + Math.max(0, travelShare - 1);
  }

  /** Squared modulus of stack and coil in series (ohm^2). */
  private double loadSquared(int f, SeriesCoil coil, StackModel.PerVolt perVolt) {
    return loadSquared(omega[f], f, coil, perVolt);
  }

  private static double loadSquared(
      double omega, int f, SeriesCoil coil, StackModel.PerVolt perVolt) {
    double re = perVolt.loadRe[f] + coil.resistanceOhm();
    double im = perVolt.loadIm[f] + omega * coil.inductanceH();
    return re * re + im * im;
  }

  /** Squared modulus of the share of the voltage that reaches the stack (1). */
  static double dividerSquared(double omega, int f, SeriesCoil coil, StackModel.PerVolt perVolt) {
    double own = perVolt.loadRe[f] * perVolt.loadRe[f] + perVolt.loadIm[f] * perVolt.loadIm[f];
    return own / loadSquared(omega, f, coil, perVolt);
  }
}
