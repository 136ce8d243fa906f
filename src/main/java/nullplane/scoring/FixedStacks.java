package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import nullplane.driver.Woofer;
import nullplane.network.LoadRows;
import nullplane.network.MainDriverRows;
import nullplane.network.NetworkRows;
import nullplane.network.StackNetwork;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Levels;

/**
 * The stacks of a spec with wiring and network as they were chosen for one woofer, for trying other
 * woofers in them: the units of a production run, a sample, a change. Nothing is chosen anew.
 *
 * <p>The formulas are those that woofers are scored by. A woofer whose piston is not quite the
 * panel's is taken in by an exchange of units: with Sd' = a Sd, radiation impedance goes as a
 * squared and pressure per velocity as a, so a woofer of M, Kms, Rms and Bl acts as one of the
 * panel's own piston with M/a^2, Kms/a^2, Rms/a^2, Bl/a and a times the travel.
 *
 * <p>Source: derived; the ideal transformer of acoustical circuits, L. Beranek and T. Mellow,
 * Acoustics (2012), ch. 3. Valid for areas within some 5 % of the panel's pistons, which must be
 * small against the wavelength.
 *
 * <p>Immutable and shared between threads; each thread brings a {@link Workspace}. No arrays are
 * made per woofer.
 */
public final class FixedStacks {
  private final DesignSpec spec;
  private final Air air;
  private final ScoringAxis axis;
  private final double areaM2;
  private final List<StackEvaluator> evaluators;
  private final List<StackModel> models;
  private final List<NetworkRows> networks;
  private final List<Optional<MainDriverRows>> mains;
  private final Curve bandHz;
  private final double referenceDb;
  private final double amplifierDb;

  private FixedStacks(
      SystemScorer scorer, Woofer woofer, List<Wiring> wirings, List<StackNetwork> parts) {
    spec = scorer.spec();
    air = scorer.air();
    axis = scorer.axis();
    areaM2 = woofer.effectiveAreaM2();
    evaluators = scorer.evaluators();
    if (wirings.size() != evaluators.size() || parts.size() != evaluators.size()) {
      throw new IllegalArgumentException(
          evaluators.size() + " stacks with wirings and networks of " + wirings.size());
    }
    networks = parts.stream().map(network -> network.rows(axis.frequencyHz())).toList();
    models =
        IntStream.range(0, evaluators.size())
            .mapToObj(s -> evaluators.get(s).model(wirings.get(s)))
            .toList();
    bandHz = axis.bandHz();
    mains = evaluators.stream().map(e -> e.brief().main().map(main -> main.rows(bandHz))).toList();
    referenceDb = Levels.ofAmplitudeRatio(spec.target().voltageV());
    amplifierDb = Levels.ofAmplitudeRatio(spec.amplifier().voltageV());
  }

  /**
   * Returns a scorer's stacks as an assessment wired them.
   *
   * @param scorer the scorer
   * @param assessment an assessment that this scorer made
   * @throws IllegalArgumentException if the stacks do not match
   */
  public static FixedStacks of(SystemScorer scorer, Assessment assessment) {
    return new FixedStacks(
        scorer,
        assessment.woofer(),
        assessment.stacks().stream().map(StackAssessment::wiring).toList(),
        assessment.stacks().stream().map(StackAssessment::network).toList());
  }

  /**
   * Returns a scorer's stacks with wirings and networks that are known.
   *
   * @param scorer the scorer
   * @param woofer the woofer they were chosen for; others are taken in by its area
   * @param wirings one per stack, in the spec's order, among those the spec allows
   * @param networks one per stack
   * @throws IllegalArgumentException if the stacks do not match
   */
  public static FixedStacks of(
      SystemScorer scorer, Woofer woofer, List<Wiring> wirings, List<StackNetwork> networks) {
    return new FixedStacks(scorer, woofer, wirings, networks);
  }

  /** What the woofer last tried does in the stack last tried. For one thread. */
  public static final class Workspace {
    private final StackEvaluator.Workspace stack;
    private final LoadRows load;
    private final LoadRows scratch;
    private final double[] passed;
    private final double[] transferRe;
    private final double[] transferIm;
    private final double[] woofersRe;
    private final double[] woofersIm;
    private final double[] squared;
    private final double[] levelDb;
    private double leastLoadOhm;

    private Workspace(int points, int bandPoints, int woofers) {
      stack = new StackEvaluator.Workspace(points, woofers);
      load = new LoadRows(points);
      scratch = new LoadRows(points);
      passed = new double[points];
      transferRe = new double[points];
      transferIm = new double[points];
      woofersRe = new double[bandPoints];
      woofersIm = new double[bandPoints];
      squared = new double[bandPoints];
      levelDb = new double[bandPoints];
    }

    /**
     * Returns the level at the listening point at the target's voltage, with the main driver if the
     * stack has one to sum with (dB re 20 uPa).
     *
     * @param bandPoint index on {@link FixedStacks#bandHz}
     */
    public double levelDb(int bandPoint) {
      return levelDb[bandPoint];
    }

    /** Returns the least modulus of the load from 20 Hz to 1 kHz or beyond (ohm). */
    public double leastLoadOhm() {
      return leastLoadOhm;
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

  /** Returns the number of stacks. */
  public int count() {
    return evaluators.size();
  }

  /**
   * Returns a stack's brief.
   *
   * @param stack index in the spec's order
   */
  public StackBrief brief(int stack) {
    return evaluators.get(stack).brief();
  }

  /** Returns the frequencies of the band, both ends included (Hz). */
  public Curve bandHz() {
    return bandHz;
  }

  /**
   * Returns whether a point of the band is one where a stack's woofers work: up to its upper
   * corner.
   *
   * @param stack index in the spec's order
   * @param bandPoint index on {@link #bandHz}
   */
  public boolean isWorkingBand(int stack, int bandPoint) {
    return axis.firstInBand() + bandPoint <= evaluators.get(stack).lastOutput();
  }

  /** Returns work space for one thread. */
  public Workspace newWorkspace() {
    int woofers = models.stream().mapToInt(model -> model.wiring().woofers()).max().orElse(1);
    return new Workspace(axis.frequencyHz().size(), axis.pointsInBand(), woofers);
  }

  /**
   * Computes level and load of a stack built with a woofer.
   *
   * @param stack index in the spec's order
   * @param woofer the woofer, in every place of the stack
   * @param space receives the result
   */
  public void respond(int stack, Woofer woofer, Workspace space) {
    respondOnPistons(stack, onPistons(woofer), space);
  }

  private void respondOnPistons(int stack, Woofer woofer, Workspace space) {
    StackModel.PerVolt perVolt = space.stack.perVolt;
    models.get(stack).respond(woofer, perVolt);
    space.load.setImpedance(perVolt.loadRe, perVolt.loadIm);
    NetworkRows network = networks.get(stack);
    space.leastLoadOhm = Math.sqrt(network.pass(space.load, space.scratch, space.passed));
    Optional<MainDriverRows> main = mains.get(stack);
    if (main.isPresent()) {
      addMain(network, main.orElseThrow(), space);
      return;
    }
    for (int b = 0; b < space.levelDb.length; b++) {
      int f = axis.firstInBand() + b;
      space.levelDb[b] =
          StackEvaluator.levelOfSquared(perVolt.pressureSquared[f] * space.passed[f]) + referenceDb;
    }
  }

  private void addMain(NetworkRows network, MainDriverRows main, Workspace space) {
    network.transfer(space.load, space.scratch, space.transferRe, space.transferIm);
    StackModel.PerVolt perVolt = space.stack.perVolt;
    for (int b = 0; b < space.levelDb.length; b++) {
      int f = axis.firstInBand() + b;
      space.woofersRe[b] =
          perVolt.pressureRe[f] * space.transferRe[f] - perVolt.pressureIm[f] * space.transferIm[f];
      space.woofersIm[b] =
          perVolt.pressureRe[f] * space.transferIm[f] + perVolt.pressureIm[f] * space.transferRe[f];
    }
    main.sumSquared(space.woofersRe, space.woofersIm, space.squared);
    for (int b = 0; b < space.levelDb.length; b++) {
      space.levelDb[b] = StackEvaluator.levelOfSquared(space.squared[b]) + referenceDb;
    }
  }

  /**
   * Returns the level wanted of a stack (dB re 20 uPa).
   *
   * @param stack index in the spec's order
   * @param bandPoint index on {@link #bandHz}
   */
  public double wantedDb(int stack, int bandPoint) {
    return evaluators.get(stack).wantedDb(axis.firstInBand() + bandPoint);
  }

  /**
   * Computes what {@link #respond} does and the output in hand: by how much the loudest level of
   * the stack exceeds the one asked for, where it does so least in the band.
   *
   * @param stack index in the spec's order
   * @param woofer the woofer, in every place of the stack
   * @param space receives level and load
   * @return least margin (dB); below 0 where output lacks
   */
  public double respondWithOutputMargin(int stack, Woofer woofer, Workspace space) {
    Woofer acting = onPistons(woofer);
    respondOnPistons(stack, acting, space);
    evaluators.get(stack).prepare(acting, space.stack);
    double least = Double.POSITIVE_INFINITY;
    boolean behind = networks.get(stack).amplifierBehind();
    for (int f = axis.firstInBand(); f <= evaluators.get(stack).lastOutput(); f++) {
      double fullDb =
          space.stack.levelPerVolt[f]
              + (behind ? 0 : Levels.ofPowerRatio(space.passed[f]))
              + amplifierDb;
      least = Math.min(least, Math.min(space.stack.heldLevel[f], fullDb));
    }
    return least - brief(stack).loudestDb();
  }

  /** The woofer of the panel's own piston that acts as this one does. */
  private Woofer onPistons(Woofer woofer) {
    double ratio = woofer.effectiveAreaM2() / areaM2;
    if (ratio == 1) {
      return woofer;
    }
    double perSquare = 1 / (ratio * ratio);
    return new Woofer(
        woofer.name(),
        woofer.nominalM(),
        areaM2,
        woofer.resistanceOhm(),
        woofer.inductanceH(),
        woofer.bareMassKg() * perSquare,
        woofer.stiffnessNPerM() * perSquare,
        woofer.lossNsPerM() * perSquare,
        woofer.forceFactorTm() / ratio,
        woofer.travelM() * ratio,
        woofer.powerW());
  }
}
