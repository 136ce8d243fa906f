package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import nullplane.driver.CoilBudget;
import nullplane.units.FiniteText;

/** Splits a grade's cost into its objectives; the parts add up to the cost. */
final class GradeBreakdown {
  private GradeBreakdown() {}

  static List<GradePart> partsOf(
      List<StackAssessment> stacks, StackChoice[] choices, GradeWeights weights, Realisation coil) {
    CoilBudget budget = coil.budget();
    int worst = 0;
    for (int s = 1; s < choices.length; s++) {
      if (choices[s].cost > choices[worst].cost) {
        worst = s;
      }
    }
    String name = stacks.get(worst).brief().name();
    StackFigures figures = stacks.get(worst).figures();
    Mix mix = new Mix(choices, worst, weights.shareOfWorst());
    List<GradePart> parts = new ArrayList<>();
    parts.add(
        new GradePart(
            "shape",
            figures.rmsDeviationDb(),
            "dB",
            weights.perDbDeviation() * mix.of(c -> c.rmsDeviation),
            text(
                "In the worst stack, %s, the level strays %.2f dB from the wanted one (root mean square over the band), %+.2f dB of it on average.",
                name, figures.rmsDeviationDb(), figures.meanDeviationDb())));
    parts.add(
        new GradePart(
            "corridor",
            figures.worstExcessDb(),
            "dB",
            weights.perDbOutside() * mix.of(c -> c.worstExcess),
            figures.worstExcessDb() > 0
                ? text(
                    "Stack %s leaves the corridor by %.2f dB at %.0f Hz.",
                    name, figures.worstExcessDb(), figures.worstExcessHz())
                : text("Stack %s stays inside the corridor.", name)));
    parts.add(
        new GradePart(
            "output",
            figures.outputMarginDb(),
            "dB",
            weights.perDbOutputLack() * mix.of(StackChoice::outputLack),
            text(
                "Stack %s has %+.1f dB in hand at %.0f Hz, where %s sets the limit.",
                name,
                figures.outputMarginDb(),
                figures.outputMarginHz(),
                figures.outputLimit().word())));
    parts.add(
        new GradePart(
            "correction",
            figures.networkBendDb() + Math.max(0, figures.levelLossDb()),
            "dB",
            weights.perDbCorrection() * mix.of(StackChoice::correctionDb),
            text(
                "The network of stack %s bends the response by %.1f dB over the band and takes %.1f dB of level.",
                name, figures.networkBendDb(), figures.levelLossDb())));
    StackChoice chosen = choices[worst];
    parts.add(
        new GradePart(
            "network parts",
            chosen.parts,
            "1",
            weights.perPart() * mix.of(c -> c.parts),
            text(
                "The network of stack %s has %s.",
                name,
                chosen.parts == 0
                    ? "no part"
                    : chosen.parts == 1 ? "one part" : chosen.parts + " parts")));
    parts.add(
        new GradePart(
            "network copper",
            chosen.copperKg * 1e3,
            "g",
            weights.perKilogramOfCopper() * mix.of(c -> c.copperKg),
            text("The network of stack %s holds %.0f g of copper.", name, chosen.copperKg * 1e3)));
    parts.add(
        new GradePart(
            "network capacitors",
            chosen.capacitanceF * 1e6,
            "uF",
            weights.perMillifarad() * 1e3 * mix.of(c -> c.capacitanceF),
            text(
                "The network of stack %s holds %.0f uF of capacitors.",
                name, chosen.capacitanceF * 1e6)));
    parts.add(
        new GradePart(
            "woofer coil wire",
            budget.coilMassKg() * 1e3,
            "g",
            weights.perGramOfWoofer() * 1e3 * budget.coilMassKg(),
            text(
                coil.motor().isPresent()
                    ? "The coil of the woofer weighs %.1f g."
                    : "Motor strength and travel together need %.1f g of wire in the woofer.",
                budget.coilMassKg() * 1e3)));
    coil.motor()
        .ifPresent(
            motor ->
                parts.add(
                    new GradePart(
                        "magnet",
                        motor.gapEnergyJ(),
                        "J",
                        weights.perJouleOfGap() * motor.gapEnergyJ(),
                        text(
                            "The gap holds %.2f J, which takes %.2f kg of %s.",
                            motor.gapEnergyJ(), motor.magnetMassKg(), motor.magnet().word()))));
    return List.copyOf(parts);
  }

  /** Formats a sentence with its figures, the same in every locale. */
  static String text(String format, Object... values) {
    return FiniteText.of(format, values);
  }

  /** The weighting of the worst stack against the mean over all. */
  private static final class Mix {
    private final StackChoice[] choices;
    private final int worst;
    private final double shareOfWorst;

    Mix(StackChoice[] choices, int worst, double shareOfWorst) {
      this.choices = choices;
      this.worst = worst;
      this.shareOfWorst = shareOfWorst;
    }

    double of(ToDoubleFunction<StackChoice> figure) {
      double sum = 0;
      for (StackChoice choice : choices) {
        sum += figure.applyAsDouble(choice);
      }
      return shareOfWorst * figure.applyAsDouble(choices[worst])
          + (1 - shareOfWorst) * sum / choices.length;
    }
  }
}
