package nullplane.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Limit;
import nullplane.scoring.StackAssessment;

/** What one woofer comes to on a spec: the worst stacks, and sentences built on their figures. */
final class Verdict {
  /** A miss too small to show in print, which no verdict should turn on (dB). */
  static final double UNSEEN_DB = 0.005;

  private final DesignSpec spec;
  private final Assessment woofer;
  private final String title;

  Verdict(DesignSpec spec, Assessment woofer, String title) {
    this.spec = spec;
    this.woofer = woofer;
    this.title = title;
  }

  /** Returns the stack that leaves its corridor most; any if none does. */
  StackAssessment worstExcess() {
    return worst(Comparator.comparingDouble(s -> s.figures().worstExcessDb()));
  }

  /** Returns the stack with the greatest rms deviation. */
  StackAssessment worstShape() {
    return worst(Comparator.comparingDouble(s -> s.figures().rmsDeviationDb()));
  }

  /** Returns the stack with the least margin of its loudest level. */
  StackAssessment leastMargin() {
    return worst(Comparator.comparingDouble(s -> -s.figures().outputMarginDb()));
  }

  /** Returns the stack that loads the amplifier most. */
  StackAssessment leastLoad() {
    return worst(Comparator.comparingDouble(s -> -s.figures().leastLoadOhm()));
  }

  /** Returns the stack that needs most correction without its network. */
  StackAssessment mostCorrection() {
    return worst(Comparator.comparingDouble(s -> s.figures().correctionDb()));
  }

  private StackAssessment worst(Comparator<StackAssessment> order) {
    StackAssessment worst = woofer.stacks().get(0);
    for (StackAssessment stack : woofer.stacks()) {
      if (order.compare(stack, worst) > 0) {
        worst = stack;
      }
    }
    return worst;
  }

  /** Returns the stacks that leave their corridors. */
  List<StackAssessment> outside() {
    return woofer.stacks().stream().filter(s -> s.figures().worstExcessDb() >= UNSEEN_DB).toList();
  }

  boolean insideEverywhere() {
    return outside().isEmpty();
  }

  boolean loudEverywhere() {
    return woofer.stacks().stream().allMatch(s -> s.figures().outputMarginDb() > -UNSEEN_DB);
  }

  boolean loadAllowed() {
    return leastLoad().figures().leastLoadOhm() >= spec.amplifier().lowestLoadOhm();
  }

  boolean coneMassEnough() {
    return woofer.budget().shortfall() == 0;
  }

  /** Returns the verdict on shape: one sentence. */
  String shape() {
    if (insideEverywhere()) {
      return title
          + " meets the corridor in every stack; the worst rms deviation is "
          + Figures.decibels(worstShape().figures().rmsDeviationDb())
          + ", in "
          + stack(worstShape())
          + ".";
    }
    return title
        + " leaves the corridor in "
        + outside().size()
        + " of "
        + woofer.stacks().size()
        + " stacks: "
        + stack(worstExcess())
        + " misses by "
        + Figures.decibels(worstExcess().figures().worstExcessDb())
        + " at "
        + Figures.hertz(worstExcess().figures().worstExcessHz())
        + ".";
  }

  /** Returns the verdict on loudness: one sentence. */
  String output() {
    StackAssessment least = leastMargin();
    double margin = least.figures().outputMarginDb();
    String where =
        stack(least)
            + " at "
            + Figures.hertz(least.figures().outputMarginHz())
            + ", where "
            + least.figures().outputLimit().word()
            + " binds";
    return margin > -UNSEEN_DB
        ? "Every stack reaches the loudest level asked for; the least margin is "
            + Figures.decibels(Math.max(0, margin))
            + " in "
            + where
            + "."
        : "The loudest level falls short by " + Figures.decibels(-margin) + " in " + where + ".";
  }

  /** Returns the verdict on the constraints: one sentence, empty if all are met. */
  String constraints() {
    int broken = woofer.violations().size();
    return broken == 0
        ? ""
        : " It breaks " + broken + (broken == 1 ? " constraint." : " constraints.");
  }

  /** Returns what can be done, a sentence for each thing that is not met; empty if all is met. */
  List<String> remedies() {
    List<String> remedies = new ArrayList<>();
    if (!insideEverywhere()) {
      remedies.add(
          "To pass as it is, the corridor would have to be "
              + Figures.decibels(
                  spec.target().corridorDb() + worstExcess().figures().worstExcessDb())
              + " instead of "
              + Figures.decibels(spec.target().corridorDb())
              + "; else change the level, the low corner or the panel of "
              + stack(worstExcess())
              + ", or widen what the search may choose.");
    }
    if (!loudEverywhere()) {
      remedies.add(outputRemedy(leastMargin()));
    }
    if (!loadAllowed()) {
      remedies.add(
          "The load of "
              + stack(leastLoad())
              + " falls to "
              + Figures.ohms(leastLoad().figures().leastLoadOhm())
              + " at "
              + Figures.hertz(leastLoad().figures().leastLoadHz())
              + " and the amplifier is rated for "
              + Figures.ohms(spec.amplifier().lowestLoadOhm())
              + ": put more woofers in series, raise Re, or take another amplifier.");
    }
    if (!coneMassEnough()) {
      remedies.add(
          "The coil leaves "
              + Figures.grams(woofer.budget().remainderKg())
              + " for the cone and "
              + Figures.grams(woofer.budget().leastRemainderKg())
              + " are needed: allow more flux, more moving mass or less travel.");
    }
    return remedies;
  }

  private String outputRemedy(StackAssessment stack) {
    double lack = -stack.figures().outputMarginDb();
    double ratio = Math.pow(10, lack / 20);
    Limit limit = stack.figures().outputLimit();
    String way =
        switch (limit) {
          case EXCURSION ->
              "a travel of "
                  + Figures.millimetres(woofer.woofer().travelM() * ratio)
                  + " instead of "
                  + Figures.millimetres(woofer.woofer().travelM());
          case HEAT ->
              "a rated power of "
                  + Figures.of(woofer.woofer().powerW() * ratio * ratio, "W")
                  + " instead of "
                  + Figures.of(woofer.woofer().powerW(), "W");
          case AMPLIFIER ->
              "an amplifier of "
                  + Figures.of(spec.amplifier().voltageV() * ratio, "V")
                  + " instead of "
                  + Figures.of(spec.amplifier().voltageV(), "V");
        };
    return "To reach it, "
        + stack(stack)
        + " would need "
        + way
        + ", or a loudest level of "
        + Figures.decibels(stack.brief().loudestDb() - lack)
        + " instead of "
        + Figures.decibels(stack.brief().loudestDb())
        + ".";
  }

  /** Returns the five figures that decide, each as name, value and where it comes from. */
  List<List<String>> deciding() {
    StackAssessment shape = worstShape();
    StackAssessment excess = worstExcess();
    StackAssessment margin = leastMargin();
    StackAssessment load = leastLoad();
    StackAssessment correction = mostCorrection();
    return List.of(
        List.of(
            "Level deviation, rms",
            Figures.decibels(shape.figures().rmsDeviationDb()),
            "in "
                + name(shape)
                + (!insideEverywhere()
                    ? "; outside by "
                        + Figures.decibels(excess.figures().worstExcessDb())
                        + " at "
                        + Figures.hertz(excess.figures().worstExcessHz())
                        + " in "
                        + name(excess)
                    : "; inside the corridor everywhere")),
        List.of(
            "Loudest-level margin",
            Figures.signedDecibels(margin.figures().outputMarginDb()),
            "in "
                + name(margin)
                + " at "
                + Figures.hertz(margin.figures().outputMarginHz())
                + "; "
                + margin.figures().outputLimit().word()
                + " binds"),
        List.of(
            "Correction needed",
            Figures.decibels(correction.figures().correctionDb()),
            "in " + name(correction) + ", without its network"),
        List.of(
            "Least load",
            Figures.ohms(load.figures().leastLoadOhm()),
            "in "
                + name(load)
                + " at "
                + Figures.hertz(load.figures().leastLoadHz())
                + "; allowed from "
                + Figures.ohms(spec.amplifier().lowestLoadOhm())),
        List.of(
            "Mass left for the cone",
            Figures.grams(woofer.budget().remainderKg()),
            "needed "
                + Figures.grams(woofer.budget().leastRemainderKg())
                + "; the coil takes "
                + Figures.grams(woofer.budget().coilMassKg())));
  }

  /** Returns a stack's name as it stands in a sentence. */
  static String stack(StackAssessment stack) {
    return "stack " + name(stack);
  }

  /** Returns a stack's name as it stands in a table. */
  static String name(StackAssessment stack) {
    return Lettering.clean(stack.brief().name());
  }
}
