package nullplane.scoring;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import nullplane.driver.Woofer;
import nullplane.network.LoadRows;
import nullplane.network.OfferRows;
import nullplane.network.StackNetwork;
import nullplane.units.Levels;

/**
 * Judges a woofer in one stack with a wiring and a network, or finds the wiring and the network
 * that suit it best: every wiring meets every network; the least violation wins, then the least
 * cost.
 *
 * <p>Symbols: T is stack voltage over amplifier voltage, p the woofers' pressure per volt at the
 * stack, m the main driver's per volt at the amplifier. The level is that of T p, or of m + T p if
 * the sum is judged. A cone's peak travel is sqrt 2 times its root-mean-square excursion; a coil
 * takes i^2 Re of heat. The shape is judged over the axis's band; output, travel and correction up
 * to the stack's upper corner, where the woofers' work ends.
 *
 * <p>An active network has the gain that brings the mean level to the wanted one, as far as its
 * range goes, in steps of half a decibel.
 *
 * <p>Source: Kirchhoff's laws; superposition; R. H. Small, J. Audio Eng. Soc. 21 (1973) 798, for
 * output limited by displacement. Immutable; work space belongs to the caller.
 */
final class StackEvaluator {
  private static final double GAIN_STEP_DB = 0.5;

  /** Parts of the band between the frequencies that are looked at first. */
  private static final int PROBES = 4;

  /** Rounding that a bound must not hang on (dB). */
  private static final double SLACK = 1e-9;

  private final StackBrief brief;
  private final List<StackModel> models;
  private final OfferRows offer;
  private final Target target;
  private final Amplifier amplifier;
  private final GradeWeights weights;
  private final double[] bandWeights;
  private final double[] outputWeights;
  private final double[] wantedDb;
  private final double[] mainRe;
  private final double[] mainIm;
  private final boolean sums;
  private final int first;
  private final int last;
  private final int lastOutput;
  private final double referenceDb;
  private final double fullDb;
  private final double leastGainDb;
  private final double mostGainDb;
  private final boolean probed;
  private final int[] probes;

  /**
   * @param spec the spec
   * @param stack the stack's acoustics
   * @param axis the frequencies they hold
   * @param offer the networks to choose from, on that axis
   */
  StackEvaluator(DesignSpec spec, StackAcoustics stack, ScoringAxis axis, OfferRows offer) {
    this.brief = stack.brief();
    this.offer = offer;
    this.target = spec.target();
    this.amplifier = spec.amplifier();
    this.weights = spec.weights();
    List<Wiring> wirings =
        brief.wiring().map(List::of).orElseGet(() -> Wiring.allOf(brief.pistons().size()));
    this.models = wirings.stream().map(w -> new StackModel(stack.response(), w)).toList();
    this.bandWeights = axis.bandWeights().toArray();
    this.first = axis.firstInBand();
    this.last = axis.lastInBand();
    this.lastOutput = axis.indexOf(spec.upperCornerHz(brief));
    this.outputWeights = Arrays.copyOf(bandWeights, lastOutput - first + 1);
    if (lastOutput < last) {
      // half of the corner's weight belongs to the cell above it
      outputWeights[lastOutput - first] = 0.5 * bandWeights[Math.max(0, lastOutput - first - 1)];
      double sum = Arrays.stream(outputWeights).sum();
      for (int f = 0; f < outputWeights.length; f++) {
        outputWeights[f] /= sum;
      }
    }
    int points = axis.frequencyHz().size();
    this.wantedDb = new double[points];
    for (int f = 0; f < points; f++) {
      wantedDb[f] = spec.wantedDb(brief, axis.frequencyHz().at(f));
    }
    this.sums = brief.main().isPresent();
    this.mainRe = new double[points];
    this.mainIm = new double[points];
    brief
        .main()
        .map(main -> main.pressurePerVolt(axis.bandHz()))
        .ifPresent(
            pressure -> {
              System.arraycopy(pressure.re().toArray(), 0, mainRe, first, pressure.re().size());
              System.arraycopy(pressure.im().toArray(), 0, mainIm, first, pressure.im().size());
            });
    this.referenceDb = Levels.ofAmplitudeRatio(target.voltageV());
    this.fullDb = Levels.ofAmplitudeRatio(amplifier.voltageV());
    this.leastGainDb = Levels.ofAmplitudeRatio(offer.gain().lower());
    // a sum or a free gain has no level of its own at one frequency
    this.probed = !sums && offer.gain().isPinned();
    this.probes =
        IntStream.rangeClosed(0, PROBES)
            .map(i -> first + i * (lastOutput - first) / PROBES)
            .toArray();
    this.mostGainDb = Levels.ofAmplitudeRatio(offer.gain().upper());
  }

  /** Returns the stack. */
  StackBrief brief() {
    return brief;
  }

  /** Returns the number of wirings to choose from. */
  int wirings() {
    return models.size();
  }

  /** Returns the model of a wiring, by its index in a {@link StackChoice}. */
  StackModel model(int wiring) {
    return models.get(wiring);
  }

  /** Returns the model of one of the stack's wirings. */
  StackModel model(Wiring wiring) {
    return models.get(indexOf(wiring));
  }

  /** Returns the index of one of the stack's wirings. */
  int indexOf(Wiring wiring) {
    for (int w = 0; w < models.size(); w++) {
      if (models.get(w).wiring().equals(wiring)) {
        return w;
      }
    }
    throw new IllegalArgumentException(
        "stack " + brief.name() + " is not wired as " + wiring.inWords());
  }

  /** Returns the network of a choice. */
  StackNetwork network(StackChoice choice) {
    return offer.network(choice.network, Math.pow(10, choice.gainDb / 20));
  }

  /** Returns the index of the last frequency where output, travel and correction are judged. */
  int lastOutput() {
    return lastOutput;
  }

  /** Returns the wanted level at a frequency of the axis (dB re 20 uPa). */
  double wantedDb(int f) {
    return wantedDb[f];
  }

  /** Returns the weight of a point of the output band, counted from the low corner (1). */
  double outputWeight(int point) {
    return outputWeights[point];
  }

  /** Work space for one thread; large enough for every stack of a spec. */
  static final class Workspace {
    final StackModel.PerVolt perVolt;
    final double[] levelPerVolt;
    final double[] heldLevel;
    final double[] travelShare;
    private final LoadRows stack;
    private final LoadRows shunted;
    private final double[] passed;
    private final double[] transferRe;
    private final double[] transferIm;
    private final StackChoice trial = new StackChoice();

    Workspace(int points, int woofers) {
      perVolt = new StackModel.PerVolt(points, woofers);
      levelPerVolt = new double[points];
      heldLevel = new double[points];
      travelShare = new double[points];
      stack = new LoadRows(points);
      shunted = new LoadRows(points);
      passed = new double[points];
      transferRe = new double[points];
      transferIm = new double[points];
    }
  }

  /**
   * Finds the best wiring and network.
   *
   * @param woofer the woofer
   * @param space work space; overwritten
   * @param best receives the result; its old wiring and network are tried first, so that a bound on
   *     the cost is at hand early
   */
  void choose(Woofer woofer, Workspace space, StackChoice best) {
    int likely = best.network;
    int likelyWiring = Math.min(best.wiring, models.size() - 1);
    best.violation = Double.POSITIVE_INFINITY;
    best.cost = Double.POSITIVE_INFINITY;
    tryAll(likelyWiring, likely, woofer, space, best);
    // series before parallel: its load is the lightest, so that it is allowed
    for (int w = models.size() - 1; w >= 0; w--) {
      if (w != likelyWiring) {
        tryAll(w, likely, woofer, space, best);
      }
    }
  }

  private void tryAll(int wiring, int likely, Woofer woofer, Workspace space, StackChoice best) {
    begin(wiring, woofer, space);
    tryOne(likely, offer.load(likely, space.stack, space.shunted), space, best);
    LoadRows load = space.stack;
    int group = -1;
    for (int n = 0; n < offer.count(); n++) {
      if (offer.group(n) != group) {
        group = offer.group(n);
        load = offer.load(n, space.stack, space.shunted);
      }
      tryOne(n, load, space, best);
    }
  }

  private void tryOne(int network, LoadRows load, Workspace space, StackChoice best) {
    double bound = best.violation == 0 ? best.cost : Double.POSITIVE_INFINITY;
    if (judge(network, load, space, best.violation, bound) && space.trial.betterThan(best)) {
      best.copy(space.trial);
    }
  }

  /**
   * Judges one wiring and network.
   *
   * @param woofer the woofer
   * @param wiring index of the wiring
   * @param network number of the network
   * @param space work space; overwritten
   * @param out receives the result
   */
  void evaluate(Woofer woofer, int wiring, int network, Workspace space, StackChoice out) {
    begin(wiring, woofer, space);
    LoadRows load = offer.load(network, space.stack, space.shunted);
    judge(network, load, space, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    out.copy(space.trial);
  }

  /**
   * Writes what every network costs with one wiring.
   *
   * @param woofer the woofer
   * @param wiring index of the wiring
   * @param space work space; overwritten
   * @param costs receives the costs by number (dB); infinite where something is not allowed
   * @param shapes receives the root-mean-square deviations (dB)
   */
  void costs(Woofer woofer, int wiring, Workspace space, double[] costs, double[] shapes) {
    begin(wiring, woofer, space);
    for (int n = 0; n < offer.count(); n++) {
      LoadRows load = offer.load(n, space.stack, space.shunted);
      judge(n, load, space, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
      costs[n] = space.trial.violation == 0 ? space.trial.cost : Double.POSITIVE_INFINITY;
      shapes[n] = space.trial.rmsDeviation;
    }
  }

  private void begin(int wiring, Woofer woofer, Workspace space) {
    space.trial.wiring = wiring;
    models.get(wiring).respond(woofer, space.perVolt);
    prepare(woofer, space);
    space.stack.setImpedance(space.perVolt.loadRe, space.perVolt.loadIm);
  }

  /** What does not depend on the network: level per volt, level held by cone and coil, travel. */
  void prepare(Woofer woofer, Workspace space) {
    StackModel.PerVolt perVolt = space.perVolt;
    double travelSquared = woofer.travelM() * woofer.travelM() / 2;
    double currentSquared = woofer.powerW() / woofer.resistanceOhm();
    for (int f = first; f <= last; f++) {
      space.levelPerVolt[f] = levelOfSquared(perVolt.pressureSquared[f]);
    }
    for (int f = first; f <= lastOutput; f++) {
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
   * Judges a network into the trial. Returns false as soon as it must violate more than is known to
   * be possible, or can no longer beat the bound on the cost; costs only grow along the band.
   */
  private boolean judge(
      int network, LoadRows load, Workspace space, double mostViolation, double bound) {
    double fixed =
        weights.perPart() * offer.parts(network)
            + weights.perKilogramOfCopper() * offer.copperKg(network)
            + weights.perMillifarad() * 1e3 * offer.capacitanceF(network);
    if (fixed > bound
        || (probed
            && bound < Double.POSITIVE_INFINITY
            && isHopeless(network, load, space, bound - fixed))) {
      return false;
    }
    double leastLoad = Math.sqrt(offer.leastInputSquared(network, load));
    if (violationOf(leastLoad, 0) > mostViolation) {
      return false;
    }
    double[] passed = space.passed;
    offer.transferSquared(network, load, first, last, passed);
    double gainDb = mostGainDb > leastGainDb ? gainDb(space) : leastGainDb;
    if (sums) {
      offer.transfer(network, load, first, last, space.transferRe, space.transferIm);
    }
    boolean behind = offer.amplifierBehind();
    double gain = Math.pow(10, gainDb / 20);
    double gainSquared = gain * gain;
    double squares = 0;
    double excess = 0;
    double margin = Double.POSITIVE_INFINITY;
    double loss = 0;
    double leastDb = Double.POSITIVE_INFINITY;
    double mostDb = Double.NEGATIVE_INFINITY;
    double travel = 0;
    for (int f = first; f <= last; f++) {
      double passedDb = Levels.ofPowerRatio(passed[f]);
      double woofersDb = space.levelPerVolt[f] + passedDb + gainDb;
      double levelDb = sums ? sumDb(f, gain, space) : woofersDb;
      double deviation = levelDb + referenceDb - wantedDb[f];
      squares += bandWeights[f - first] * deviation * deviation;
      excess = Math.max(excess, Math.abs(deviation) - target.corridorDb());
      if (f <= lastOutput) {
        double full = behind ? space.levelPerVolt[f] + fullDb : woofersDb + fullDb;
        margin = Math.min(margin, Math.min(space.heldLevel[f], full) - brief.loudestDb());
        loss -= outputWeights[f - first] * passedDb;
        leastDb = Math.min(leastDb, passedDb);
        mostDb = Math.max(mostDb, passedDb);
        travel = Math.max(travel, gainSquared * passed[f] * space.travelShare[f]);
      }
      if (fixed
              + weights.perDbDeviation() * Math.sqrt(squares)
              + weights.perDbOutside() * excess
              + weights.perDbOutputLack() * Math.max(0, -margin)
          > bound) {
        return false;
      }
    }
    StackChoice trial = space.trial;
    trial.network = network;
    trial.gainDb = gainDb;
    trial.rmsDeviation = Math.sqrt(squares);
    trial.worstExcess = excess;
    trial.outputMargin = margin;
    trial.loss = loss;
    trial.bend = mostDb - leastDb;
    trial.leastLoad = leastLoad;
    trial.travelShare = Math.sqrt(travel) * target.voltageV();
    trial.parts = offer.parts(network);
    trial.copperKg = offer.copperKg(network);
    trial.capacitanceF = offer.capacitanceF(network);
    trial.violation = violationOf(trial.leastLoad, trial.travelShare);
    trial.cost =
        fixed
            + weights.perDbDeviation() * trial.rmsDeviation
            + weights.perDbOutside() * trial.worstExcess
            + weights.perDbOutputLack() * trial.outputLack()
            + weights.perDbCorrection() * trial.correctionDb();
    return true;
  }

  /**
   * Returns whether a network leaves the corridor so far at a few frequencies that it cannot cost
   * as little as the bound: a quick look before the whole band is worked out.
   */
  private boolean isHopeless(int network, LoadRows load, Workspace space, double bound) {
    for (int f : probes) {
      double passed = offer.transferSquaredAt(network, load, f);
      double deviation =
          space.levelPerVolt[f] + Levels.ofPowerRatio(passed) + referenceDb - wantedDb[f];
      double excess = Math.max(0, Math.abs(deviation) - target.corridorDb());
      double alone = Math.sqrt(bandWeights[f - first]) * Math.abs(deviation);
      if (weights.perDbDeviation() * alone + weights.perDbOutside() * excess > bound + SLACK) {
        return true;
      }
    }
    return false;
  }

  /** Level of main driver and woofers together per volt at the amplifier (dB re 20 uPa). */
  private double sumDb(int f, double gain, Workspace space) {
    double tRe = gain * space.transferRe[f];
    double tIm = gain * space.transferIm[f];
    double pRe = space.perVolt.pressureRe[f];
    double pIm = space.perVolt.pressureIm[f];
    double re = mainRe[f] + (pRe * tRe - pIm * tIm);
    double im = mainIm[f] + (pRe * tIm + pIm * tRe);
    return levelOfSquared(re * re + im * im);
  }

  /** Gain that brings the woofers' mean level to the wanted one, within the range (dB). */
  private double gainDb(Workspace space) {
    double mean = 0;
    for (int f = first; f <= lastOutput; f++) {
      mean +=
          outputWeights[f - first]
              * (space.levelPerVolt[f]
                  + Levels.ofPowerRatio(space.passed[f])
                  + referenceDb
                  - wantedDb[f]);
    }
    double rounded = -GAIN_STEP_DB * Math.rint(mean / GAIN_STEP_DB);
    return Math.min(mostGainDb, Math.max(leastGainDb, rounded));
  }

  /** Distance to an allowed load and to the travel at the target's voltage (1). */
  private double violationOf(double leastLoadOhm, double travelShare) {
    return Math.max(0, 1 - leastLoadOhm / amplifier.lowestLoadOhm()) + Math.max(0, travelShare - 1);
  }
}
