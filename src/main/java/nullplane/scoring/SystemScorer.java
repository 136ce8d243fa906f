package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.CoilBudget;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.SuspensionLimits;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.MotorDesign;
import nullplane.motor.Winding;
import nullplane.motor.WindingCatalogue;
import nullplane.network.OfferRows;
import nullplane.network.StackNetwork;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Levels;

/**
 * Scores a woofer on a whole spec: the best wiring and network in every stack, the constraints, and
 * one grade in which the worst stack counts most.
 *
 * <p>Constraints, each as a distance: the coil must leave enough mass for the cone ({@link
 * CoilBudget}); flux density and steel must be within their limits ({@link MotorDesign}); the
 * suspension must be one that the size can have ({@link SuspensionLimits}); no stack may load the
 * amplifier below its lowest load; no cone may pass its travel at the target's voltage.
 *
 * <p>A woofer may come with its winding or without. Without, a winding of the brief that agrees
 * with it in Re and travel to five digits is taken to be its own; failing that, it is held to the
 * least coil that any winding could be, and neither flux, steel nor magnet is judged. All that
 * concerns sound is the same either way, bit for bit. Immutable and shared between threads; each
 * thread brings a {@link Workspace}.
 */
public final class SystemScorer {
  private final DesignSpec spec;
  private final List<StackEvaluator> evaluators;
  private final List<StackAcoustics> acoustics;
  private final List<StackAcoustics> drawn;
  private final ScoringAxis axis;
  private final GradeWeights weights;
  private final OfferRows offer;
  private final SuspensionLimits suspension;
  private final WindingCatalogue windings;
  private final Air air;
  private final int mostWoofers;

  /**
   * A scorer whose assessments hold curves on the scoring axis.
   *
   * @param spec the spec
   * @param axis the frequencies the acoustics were solved at
   * @param acoustics one entry per stack, in the spec's order
   * @param air the air
   * @throws IllegalArgumentException if stacks, acoustics and axis do not match
   */
  public SystemScorer(DesignSpec spec, ScoringAxis axis, List<StackAcoustics> acoustics, Air air) {
    this(spec, axis, acoustics, acoustics, air);
  }

  /**
   * A scorer whose assessments hold curves on an axis of their own, finer than the one that woofers
   * are scored on.
   *
   * @param spec the spec
   * @param axis the frequencies woofers are scored at
   * @param acoustics one entry per stack on that axis, in the spec's order
   * @param drawn the same on the axis of the curves
   * @param air the air
   * @throws IllegalArgumentException if stacks, acoustics and axis do not match
   */
  public SystemScorer(
      DesignSpec spec,
      ScoringAxis axis,
      List<StackAcoustics> acoustics,
      List<StackAcoustics> drawn,
      Air air) {
    if (acoustics.size() != spec.stacks().size() || drawn.size() != acoustics.size()) {
      throw new IllegalArgumentException(
          spec.stacks().size() + " stacks with acoustics of " + acoustics.size());
    }
    for (StackAcoustics stack : acoustics) {
      if (!stack.response().frequencyHz().equals(axis.frequencyHz())) {
        throw new IllegalArgumentException(
            "stack " + stack.brief().name() + " was solved on another frequency axis");
      }
    }
    this.spec = spec;
    this.axis = axis;
    this.acoustics = List.copyOf(acoustics);
    this.drawn = List.copyOf(drawn);
    this.weights = spec.weights();
    this.offer = spec.networks().rows(axis.frequencyHz());
    this.air = air;
    this.suspension = SuspensionLimits.forNominal(spec.woofer().nominalM());
    this.windings = WindingCatalogue.of(spec.woofer().coil(), spec.woofer().travelM());
    this.evaluators =
        acoustics.stream().map(stack -> new StackEvaluator(spec, stack, axis, offer)).toList();
    this.mostWoofers = spec.stacks().stream().mapToInt(s -> s.pistons().size()).max().orElse(1);
  }

  /** Work space for one thread. */
  public static final class Workspace {
    private final StackEvaluator.Workspace stack;
    private final StackChoice[] choices;

    private Workspace(int points, int woofers, int stacks) {
      stack = new StackEvaluator.Workspace(points, woofers);
      choices = new StackChoice[stacks];
      for (int s = 0; s < stacks; s++) {
        choices[s] = new StackChoice();
      }
    }
  }

  /** Returns the spec. */
  public DesignSpec spec() {
    return spec;
  }

  /** Returns the air everything is computed for. */
  public Air air() {
    return air;
  }

  /** Returns the stacks' evaluators, in the spec's order. */
  List<StackEvaluator> evaluators() {
    return evaluators;
  }

  /** Returns every winding that the spec admits; it may be none. */
  public WindingCatalogue windings() {
    return windings;
  }

  /** Returns work space for one thread. */
  public Workspace newWorkspace() {
    return new Workspace(axis.frequencyHz().size(), mostWoofers, evaluators.size());
  }

  /**
   * Grades a woofer whose winding is not stated.
   *
   * @param woofer the woofer; its area should be the spec's
   * @param space work space of this scorer; overwritten
   * @return the grade; the same woofer always gets the same bits
   */
  public Grade grade(Woofer woofer, Workspace space) {
    return grade(woofer, realisationOf(woofer), space);
  }

  /**
   * Grades a woofer with its winding.
   *
   * @param woofer the woofer; its area should be the spec's, its Re and travel the winding's
   * @param winding its winding
   * @param space work space of this scorer; overwritten
   * @return the grade; the same woofer and winding always get the same bits
   */
  public Grade grade(Woofer woofer, Winding winding, Workspace space) {
    return grade(woofer, Realisation.of(woofer, winding, spec.woofer().coil()), space);
  }

  private Grade grade(Woofer woofer, Realisation coil, Workspace space) {
    for (int s = 0; s < space.choices.length; s++) {
      evaluators.get(s).choose(woofer, space.stack, space.choices[s]);
    }
    return gradeOf(woofer, coil, space);
  }

  /** The grade of the choices in the work space. */
  private Grade gradeOf(Woofer woofer, Realisation coil, Workspace space) {
    double violation =
        coil.violation(spec.woofer().coil()) + suspension.shortfall(woofer.stiffnessNPerM());
    double worst = 0;
    double sum = 0;
    for (StackChoice choice : space.choices) {
      violation += choice.violation;
      worst = Math.max(worst, choice.cost);
      sum += choice.cost;
    }
    double share = weights.shareOfWorst();
    double cost = share * worst + (1 - share) * sum / space.choices.length + coil.cost(weights);
    return new Grade(violation, cost);
  }

  /**
   * Returns how many values each gene has that names a wiring or a network, all of them shares from
   * 0 to 1: for each stack in the spec's order one for the wiring, if there is a choice, then those
   * of {@link OfferRows#genes}.
   */
  public List<Integer> networkChoices() {
    List<Integer> choices = new ArrayList<>();
    for (StackEvaluator stack : evaluators) {
      if (stack.wirings() > 1) {
        choices.add(stack.wirings());
      }
      for (int gene = 0; gene < offer.genes(); gene++) {
        choices.add(offer.choices(gene));
      }
    }
    return List.copyOf(choices);
  }

  /**
   * Scores a woofer with its winding, and with the wirings and networks that genes name.
   *
   * @param woofer the woofer; its area should be the spec's, its Re and travel the winding's
   * @param winding its winding
   * @param shares genes, 0 to 1
   * @param from index of the first that concerns networks; as many as {@link #networkChoices}
   * @param space work space of this scorer; overwritten
   * @return the score; the same arguments always get the same bits
   */
  public FamilyScore score(
      Woofer woofer, Winding winding, double[] shares, int from, Workspace space) {
    Realisation coil = Realisation.of(woofer, winding, spec.woofer().coil());
    int gene = from;
    for (int s = 0; s < space.choices.length; s++) {
      StackEvaluator stack = evaluators.get(s);
      int wiring = 0;
      if (stack.wirings() > 1) {
        wiring = Math.min(stack.wirings() - 1, (int) (shares[gene++] * stack.wirings()));
      }
      stack.evaluate(woofer, wiring, offer.at(shares, gene), space.stack, space.choices[s]);
      gene += offer.genes();
    }
    return scoreOf(gradeOf(woofer, coil, space), coil, space);
  }

  /**
   * Scores a woofer with its winding, and with the best wiring and network for every stack.
   *
   * @param woofer the woofer; its area should be the spec's, its Re and travel the winding's
   * @param winding its winding
   * @param space work space of this scorer; overwritten
   * @return the score; the same arguments always get the same bits
   */
  public FamilyScore score(Woofer woofer, Winding winding, Workspace space) {
    Realisation coil = Realisation.of(woofer, winding, spec.woofer().coil());
    return scoreOf(grade(woofer, coil, space), coil, space);
  }

  private FamilyScore scoreOf(Grade grade, Realisation coil, Workspace space) {
    double shape = 0;
    double outside = 0;
    double margin = Double.POSITIVE_INFINITY;
    double correction = 0;
    double material = 0;
    for (StackChoice choice : space.choices) {
      shape =
          Math.max(
              shape,
              weights.perDbDeviation() * choice.rmsDeviation
                  + weights.perDbOutside() * choice.worstExcess);
      outside = Math.max(outside, choice.worstExcess);
      margin = Math.min(margin, choice.outputMargin);
      correction =
          Math.max(
              correction,
              weights.perDbCorrection() * choice.correctionDb() + weights.perPart() * choice.parts);
      material =
          Math.max(
              material,
              weights.perKilogramOfCopper() * choice.copperKg
                  + weights.perMillifarad() * 1e3 * choice.capacitanceF);
    }
    return new FamilyScore(
        grade, shape, margin, correction, material + coil.cost(weights), outside);
  }

  /** Returns the wirings that were last chosen in a work space, in the spec's order. */
  public List<Wiring> wirings(Workspace space) {
    List<Wiring> wirings = new ArrayList<>();
    for (int s = 0; s < space.choices.length; s++) {
      wirings.add(evaluators.get(s).model(space.choices[s].wiring).wiring());
    }
    return List.copyOf(wirings);
  }

  /** Returns the networks that were last chosen in a work space, in the spec's order. */
  public List<StackNetwork> networks(Workspace space) {
    List<StackNetwork> networks = new ArrayList<>();
    for (int s = 0; s < space.choices.length; s++) {
      networks.add(evaluators.get(s).network(space.choices[s]));
    }
    return List.copyOf(networks);
  }

  private Realisation realisationOf(Woofer woofer) {
    CoilBrief brief = spec.woofer().coil();
    return windings
        .matching(woofer.resistanceOhm(), woofer.travelM())
        .map(winding -> Realisation.of(woofer, winding, brief))
        .orElseGet(() -> Realisation.kindest(woofer, brief));
  }

  /**
   * Returns the level of every stack at the target's voltage without any network, on the scoring
   * axis (dB re 20 uPa), in the spec's order.
   *
   * @param woofer the woofer; its area should be the spec's
   * @param wirings one per stack, among those the spec allows
   * @param space work space of this scorer; overwritten
   * @throws IllegalArgumentException if the spec does not allow a wiring
   */
  public List<Curve> bareLevels(Woofer woofer, List<Wiring> wirings, Workspace space) {
    List<Curve> levels = new ArrayList<>();
    double voltageDb = Levels.ofAmplitudeRatio(spec.target().voltageV());
    for (int s = 0; s < evaluators.size(); s++) {
      evaluators.get(s).model(wirings.get(s)).respond(woofer, space.stack.perVolt);
      double[] level = new double[axis.frequencyHz().size()];
      for (int f = 0; f < level.length; f++) {
        level[f] =
            StackEvaluator.levelOfSquared(space.stack.perVolt.pressureSquared[f]) + voltageDb;
      }
      levels.add(Curve.of(level));
    }
    return List.copyOf(levels);
  }

  /**
   * Returns what it costs to keep parts from one stack to another, for each pair of stacks; nothing
   * for filters.
   *
   * @param assessment an assessment that this scorer made
   */
  public List<SharedParts> sharedParts(Assessment assessment) {
    return SharedPartsStudy.pairs(evaluators, offer, assessment, newWorkspace().stack);
  }

  /** Returns the frequencies woofers are scored at. */
  public ScoringAxis axis() {
    return axis;
  }

  /**
   * Assesses a woofer in full whose winding is not stated: grade, its parts, and every stack's
   * figures and curves.
   *
   * @param woofer the woofer; its area should be the spec's
   */
  public Assessment assess(Woofer woofer) {
    return assess(woofer, realisationOf(woofer), true);
  }

  /**
   * Assesses a woofer whose winding is not stated, without the study of its limits, which takes
   * longer than all the rest: for many woofers of which few are looked at.
   *
   * @param woofer the woofer; its area should be the spec's
   */
  public Assessment assessInShort(Woofer woofer) {
    return assess(woofer, realisationOf(woofer), false);
  }

  /**
   * Assesses a woofer in full with its winding.
   *
   * @param woofer the woofer; its area should be the spec's, its Re and travel the winding's
   * @param winding its winding
   */
  public Assessment assess(Woofer woofer, Winding winding) {
    return assess(woofer, Realisation.of(woofer, winding, spec.woofer().coil()), true);
  }

  private Assessment assess(Woofer woofer, Realisation coil, boolean withLimits) {
    Workspace space = newWorkspace();
    Grade grade = grade(woofer, coil, space);
    List<StackAssessment> stacks = new ArrayList<>();
    for (int s = 0; s < evaluators.size(); s++) {
      StackAssessment stack =
          new StackDetail(
                  evaluators.get(s),
                  acoustics.get(s).response(),
                  drawn.get(s).response(),
                  spec,
                  axis)
              .assess(woofer, space.choices[s], space.stack);
      stacks.add(withLimits ? stack.withLimits(limitsOf(woofer, coil, stack, s)) : stack);
    }
    return new Assessment(
        woofer,
        SmallSignal.of(woofer, Mounting.FREE_AIR, air),
        coil.budget(),
        coil.motor(),
        stacks,
        grade,
        GradeBreakdown.partsOf(stacks, space.choices, weights, coil),
        violationsOf(woofer, coil, stacks));
  }

  private LimitStudy limitsOf(Woofer woofer, Realisation coil, StackAssessment stack, int index) {
    return new LimitDetail(
            spec,
            stack.brief(),
            stack.wiring(),
            stack.network(),
            woofer,
            coil.wire(spec.woofer().coil()),
            acoustics.get(index).response(),
            drawn.get(index).response())
        .study(
            stack.figures().leastLoadOhm(),
            coil.budget().windingHeightM(),
            coil.gapHeightM(spec.woofer().coil()),
            ProgrammeSpectrum.STANDARD);
  }

  private List<String> violationsOf(Woofer woofer, Realisation coil, List<StackAssessment> stacks) {
    List<String> broken = new ArrayList<>();
    CoilBudget budget = coil.budget();
    if (budget.shortfall() > 0) {
      broken.add(
          GradeBreakdown.text(
              "The coil that this motor and travel need weighs %s, which leaves %s for the cone and its share of the suspension; at least %s is needed.",
              grams(budget.coilMassKg()),
              grams(budget.remainderKg()),
              grams(budget.leastRemainderKg())));
    }
    coil.motor().ifPresent(motor -> addMotorViolations(motor, broken));
    if (suspension.shortfall(woofer.stiffnessNPerM()) > 0) {
      broken.add(
          GradeBreakdown.text(
              "The suspension would have %.0f N/m; a woofer of this size can be given %.0f to %.0f N/m.",
              woofer.stiffnessNPerM(),
              suspension.stiffnessNPerM().lower(),
              suspension.stiffnessNPerM().upper()));
    }
    for (StackAssessment stack : stacks) {
      StackFigures figures = stack.figures();
      if (figures.leastLoadOhm() < spec.amplifier().lowestLoadOhm()) {
        broken.add(
            GradeBreakdown.text(
                "Stack %s loads the amplifier with %.2f ohm at %.0f Hz; it is rated for %.2f ohm or more.",
                stack.brief().name(),
                figures.leastLoadOhm(),
                figures.leastLoadHz(),
                spec.amplifier().lowestLoadOhm()));
      }
      if (figures.travelShare() > 1) {
        broken.add(
            GradeBreakdown.text(
                "In stack %s the cone would need %.2f times its travel at %.2f V.",
                stack.brief().name(), figures.travelShare(), spec.target().voltageV()));
      }
    }
    return broken;
  }

  private void addMotorViolations(MotorDesign motor, List<String> broken) {
    CoilBrief brief = spec.woofer().coil();
    if (motor.fluxShortfall(brief.fluxT()) > 0) {
      broken.add(
          GradeBreakdown.text(
              "The gap would need %.2f T; %.2f to %.2f T are allowed.",
              motor.fluxT(), brief.fluxT().lower(), brief.fluxT().upper()));
    }
    if (motor.steelShortfall() > 0) {
      broken.add(
          GradeBreakdown.text(
              "The steel of the pole would carry %.2f T; it saturates above %.2f T.",
              motor.poleFluxT(), MotorDesign.STEEL_LIMIT_T));
    }
  }

  private static String grams(double massKg) {
    return GradeBreakdown.text("%.1f g", massKg * 1e3);
  }
}
