package nullplane.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import nullplane.driver.CoilBudget;
import nullplane.driver.Contradiction;
import nullplane.driver.Parameter;
import nullplane.driver.SmallSignal;
import nullplane.driver.SuspensionLimits;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.scoring.SystemScorer;
import nullplane.units.FiniteText;
import nullplane.units.Levels;

/**
 * Says what a given woofer lacks on a spec: where, in which stack, by how much, and what would mend
 * it. Every figure is one that the score is made of.
 *
 * <p>A finding is made where a figure misses what the spec asks for. Three of them judge the bare
 * stack, without its network, since a network can hide them: too little bass, a hump, and the
 * inductance.
 */
public final class WooferJudge {
  /**
   * What the low corner may lack against the band's mean before it counts as a fault (dB). A bare
   * panel's level rises by 6 dB an octave; one octave of that is what every woofer here has, and
   * what a series coil takes off above for little. Judgement, without a source.
   */
  private static final double EASILY_LIFTED_DB = 6;

  /** A miss too small to print, which no finding should turn on (dB). */
  private static final double UNSEEN_DB = 0.05;

  private final DesignSpec spec;
  private final OptionalDouble bestCostDb;

  /**
   * @param spec the spec
   * @param bestCostDb cost of the best buildable woofer, if one was searched for (dB)
   */
  public WooferJudge(DesignSpec spec, OptionalDouble bestCostDb) {
    this.spec = spec;
    this.bestCostDb = bestCostDb;
  }

  /**
   * Judges a woofer.
   *
   * @param woofer the woofer
   * @param contradictions where its sheet contradicts itself
   * @param scorer the scorer for its size
   */
  public Judgement judge(Woofer woofer, List<Contradiction> contradictions, SystemScorer scorer) {
    Assessment assessment = scorer.assessInShort(woofer);
    OptionalDouble behind =
        bestCostDb.isPresent()
            ? OptionalDouble.of(assessment.grade().costDb() - bestCostDb.getAsDouble())
            : OptionalDouble.empty();
    return new Judgement(assessment, findingsOf(assessment, contradictions), behind);
  }

  private List<Finding> findingsOf(Assessment assessment, List<Contradiction> contradictions) {
    List<Finding> findings = new ArrayList<>();
    contradictions.forEach(contradiction -> addContradiction(contradiction, findings));
    addBuildability(assessment, findings);
    addLoad(assessment, findings);
    addBalance(assessment, findings);
    addInductance(assessment, findings);
    addLevel(assessment, findings);
    addOutput(assessment, findings);
    return findings;
  }

  private static void addContradiction(Contradiction contradiction, List<Finding> findings) {
    Parameter parameter = contradiction.parameter();
    double deviation = contradiction.deviation().orElse(0);
    findings.add(
        new Finding(
            Finding.Kind.CONTRADICTION,
            "",
            parameter.level() ? deviation : 100 * deviation,
            0,
            contradiction.deviation().isEmpty()
                ? text("Its %s contradicts the rest of the sheet.", parameter.symbol())
                : parameter.level()
                    ? text(
                        "Its %s is %+.1f dB off what the rest of the sheet gives.",
                        parameter.symbol(), deviation)
                    : text(
                        "Its %s is %+.0f %% off what the rest of the sheet gives.",
                        parameter.symbol(), 100 * deviation),
            contradiction.cause().sentence()));
  }

  private void addBuildability(Assessment assessment, List<Finding> findings) {
    Woofer woofer = assessment.woofer();
    CoilBudget budget = assessment.budget();
    if (budget.shortfall() > 0) {
      findings.add(
          new Finding(
              Finding.Kind.NO_COIL,
              "",
              (budget.leastRemainderKg() - budget.remainderKg()) * 1e3,
              0,
              text(
                  "The coil for this motor and travel would weigh %.1f g and leave %.1f g for the cone, which needs %.1f g: the sheet describes no woofer that can be built with %.2f T.",
                  budget.coilMassKg() * 1e3,
                  budget.remainderKg() * 1e3,
                  budget.leastRemainderKg() * 1e3,
                  spec.woofer().coil().fluxT().upper()),
              "Ask the maker how Bl, mass and travel were measured."));
    }
    SuspensionLimits limits = SuspensionLimits.forNominal(spec.woofer().nominalM());
    double kms = woofer.stiffnessNPerM();
    if (limits.shortfall(kms) > 0) {
      findings.add(
          new Finding(
              Finding.Kind.SUSPENSION,
              "",
              kms,
              0,
              text(
                  "Its suspension would have %.0f N/m; a woofer of this size can be given %.0f to %.0f N/m.",
                  kms, limits.stiffnessNPerM().lower(), limits.stiffnessNPerM().upper()),
              "Ask the maker for the measured compliance after break-in."));
    }
  }

  private void addLoad(Assessment assessment, List<Finding> findings) {
    double allowed = spec.amplifier().lowestLoadOhm();
    StackAssessment worst = worst(assessment, figures -> -figures.leastLoadOhm());
    if (worst.figures().leastLoadOhm() < allowed) {
      findings.add(
          new Finding(
              Finding.Kind.LOW_LOAD,
              worst.brief().name(),
              worst.figures().leastLoadOhm(),
              worst.figures().leastLoadHz(),
              text(
                  "Stack %s loads the amplifier with %.2f ohm at %.0f Hz; it is rated for %.2f ohm or more.",
                  worst.brief().name(),
                  worst.figures().leastLoadOhm(),
                  worst.figures().leastLoadHz(),
                  allowed),
              "Put more woofers in series, or take another amplifier."));
    }
    StackAssessment far = worst(assessment, StackFigures::travelShare);
    if (far.figures().travelShare() > 1) {
      findings.add(
          new Finding(
              Finding.Kind.TRAVEL_AT_TARGET,
              far.brief().name(),
              far.figures().travelShare(),
              0,
              text(
                  "In stack %s the cone would need %.2f times its travel of %.1f mm at %.2f V.",
                  far.brief().name(),
                  far.figures().travelShare(),
                  assessment.woofer().travelM() * 1e3,
                  spec.target().voltageV()),
              "Take a woofer with more travel, or more woofers."));
    }
  }

  private void addBalance(Assessment assessment, List<Finding> findings) {
    SmallSignal set = assessment.freeAir();
    double corner = spec.target().lowCornerHz();
    StackAssessment lean = worst(assessment, StackFigures::lowCornerLiftDb);
    double lift = lean.figures().lowCornerLiftDb();
    if (lift > EASILY_LIFTED_DB) {
      boolean stiff = lean.figures().panelResonanceHz() > 1.25 * corner;
      findings.add(
          new Finding(
              Finding.Kind.LACKS_BASS,
              lean.brief().name(),
              lift,
              corner,
              text(
                  "A Qts of %.2f with %.0f Hz in free air (%.2f with %.0f Hz on the panel) leaves %.1f dB to lift at %.0f Hz in stack %s.",
                  set.totalQ(),
                  set.resonanceHz(),
                  lean.figures().panelTotalQ(),
                  lean.figures().panelResonanceHz(),
                  lift,
                  corner,
                  lean.brief().name()),
              stiff
                  ? "A softer suspension would bring the resonance down to the low corner."
                  : "A weaker motor or a heavier cone would raise Qts; a coil in front does the same at the cost of level."));
    }
    StackAssessment humped = worst(assessment, figures -> -figures.lowCornerLiftDb());
    double hump = -humped.figures().lowCornerLiftDb();
    if (hump > spec.target().corridorDb()) {
      findings.add(
          new Finding(
              Finding.Kind.HUMP,
              humped.brief().name(),
              hump,
              corner,
              text(
                  "A Qts of %.2f leaves a hump of %.1f dB at %.0f Hz in stack %s.",
                  set.totalQ(), hump, corner, humped.brief().name()),
              "A stronger motor would lower Qts."));
    }
  }

  /**
   * Level that the inductance takes at the upper corner with the cone held: 10 lg(1 + (w Le/Re)^2).
   * Source: circuit theory. Above resonance a held cone is a fair picture, since the motional part
   * of the impedance has died away.
   */
  private void addInductance(Assessment assessment, List<Finding> findings) {
    Woofer woofer = assessment.woofer();
    double corner = spec.highestCornerHz();
    double ratio = 2 * Math.PI * corner * woofer.inductanceH() / woofer.resistanceOhm();
    double loss = Levels.ofPowerRatio(1 + ratio * ratio);
    // the level rises by 6 dB an octave on a bare panel, so some inductance is welcome
    if (loss > 3 + spec.target().corridorDb()) {
      findings.add(
          new Finding(
              Finding.Kind.INDUCTANCE,
              "",
              loss,
              corner,
              text(
                  "An inductance of %.2f mH on %.1f ohm takes %.1f dB at %.0f Hz.",
                  woofer.inductanceH() * 1e3, woofer.resistanceOhm(), loss, corner),
              "A shorting ring or a coil of fewer layers would lower it."));
    }
  }

  private void addLevel(Assessment assessment, List<Finding> findings) {
    double corridor = spec.target().corridorDb();
    StackAssessment quiet = worst(assessment, figures -> -figures.meanDeviationDb());
    if (quiet.figures().meanDeviationDb() < -corridor) {
      findings.add(
          new Finding(
              Finding.Kind.TOO_QUIET,
              quiet.brief().name(),
              -quiet.figures().meanDeviationDb(),
              0,
              text(
                  "With the best network stack %s plays %.1f dB below the %.1f dB asked for at %.2f V.",
                  quiet.brief().name(),
                  -quiet.figures().meanDeviationDb(),
                  quiet.brief().levelDb(),
                  spec.target().voltageV()),
              "Raise the gain of that stack by as much, or ask for less."));
    }
    StackAssessment loud = worst(assessment, StackFigures::meanDeviationDb);
    if (loud.figures().meanDeviationDb() > corridor) {
      findings.add(
          new Finding(
              Finding.Kind.TOO_LOUD,
              loud.brief().name(),
              loud.figures().meanDeviationDb(),
              0,
              text(
                  "With the best network stack %s plays %.1f dB above the %.1f dB asked for at %.2f V.",
                  loud.brief().name(),
                  loud.figures().meanDeviationDb(),
                  loud.brief().levelDb(),
                  spec.target().voltageV()),
              "Lower the gain of that stack by as much."));
    }
    StackAssessment outside = worst(assessment, StackFigures::worstExcessDb);
    if (outside.figures().worstExcessDb() >= UNSEEN_DB) {
      findings.add(
          new Finding(
              Finding.Kind.OUTSIDE_CORRIDOR,
              outside.brief().name(),
              outside.figures().worstExcessDb(),
              outside.figures().worstExcessHz(),
              text(
                  "With the best network stack %s leaves the corridor by %.1f dB at %.0f Hz.",
                  outside.brief().name(),
                  outside.figures().worstExcessDb(),
                  outside.figures().worstExcessHz()),
              text(
                  "It would pass a corridor of %.1f dB.",
                  corridor + outside.figures().worstExcessDb())));
    }
  }

  private void addOutput(Assessment assessment, List<Finding> findings) {
    StackAssessment least = worst(assessment, figures -> -figures.outputMarginDb());
    StackFigures figures = least.figures();
    double lack = -figures.outputMarginDb();
    if (lack < UNSEEN_DB) {
      return;
    }
    Woofer woofer = assessment.woofer();
    double ratio = Levels.amplitudeRatio(lack);
    String name = least.brief().name();
    String start =
        text(
            "Stack %s stops %.1f dB short of the %.1f dB asked for, at %.0f Hz, where ",
            name, lack, least.brief().loudestDb(), figures.outputMarginHz());
    findings.add(
        switch (figures.outputLimit()) {
          case EXCURSION ->
              new Finding(
                  Finding.Kind.SHORT_TRAVEL,
                  name,
                  lack,
                  figures.outputMarginHz(),
                  start + text("its travel of %.1f mm ends.", woofer.travelM() * 1e3),
                  text("It would take %.1f mm.", woofer.travelM() * ratio * 1e3));
          case HEAT ->
              new Finding(
                  Finding.Kind.LITTLE_POWER,
                  name,
                  lack,
                  figures.outputMarginHz(),
                  start + text("its coil reaches the rated %.0f W.", woofer.powerW()),
                  text("It would take %.0f W.", woofer.powerW() * ratio * ratio));
          case AMPLIFIER ->
              new Finding(
                  Finding.Kind.AMPLIFIER_ENDS,
                  name,
                  lack,
                  figures.outputMarginHz(),
                  start + text("the amplifier's %.0f V end.", spec.amplifier().voltageV()),
                  text("It would take %.0f V.", spec.amplifier().voltageV() * ratio));
        });
  }

  private static StackAssessment worst(
      Assessment assessment, ToDoubleFunction<StackFigures> badness) {
    return assessment.stacks().stream()
        .max(Comparator.comparingDouble(stack -> badness.applyAsDouble(stack.figures())))
        .orElseThrow();
  }

  private static String text(String format, Object... values) {
    return FiniteText.of(format, values);
  }
}
