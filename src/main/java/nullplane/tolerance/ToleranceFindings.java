package nullplane.tolerance;

import java.util.ArrayList;
import java.util.List;
import nullplane.scoring.FixedStacks;
import nullplane.units.FiniteText;

/** Says in sentences what a tolerance study found, with its figures. */
final class ToleranceFindings {
  private final FixedStacks stacks;
  private final PermittedResponse permitted;
  private final ToleranceConduct conduct;
  private final List<String> sentences = new ArrayList<>();

  private ToleranceFindings(
      FixedStacks stacks, PermittedResponse permitted, ToleranceConduct conduct) {
    this.stacks = stacks;
    this.permitted = permitted;
    this.conduct = conduct;
  }

  static List<String> of(
      FixedStacks stacks,
      PermittedResponse permitted,
      ToleranceConduct conduct,
      ProductionYield production,
      AcceptanceWindows windows,
      List<Influence> influences,
      SamplingPlan sampling) {
    ToleranceFindings findings = new ToleranceFindings(stacks, permitted, conduct);
    findings.nominal(production);
    findings.production(production);
    findings.windows(windows);
    findings.influences(influences);
    findings.sampling(sampling);
    return List.copyOf(findings.sentences);
  }

  private void nominal(ProductionYield production) {
    for (StackYield stack : production.stacks()) {
      if (!stack.nominalInside()) {
        say(
            "In stack %s the woofer as designed itself leaves the corridor, by %.2f dB at %.0f Hz; where it does, units are held to within %.1f dB of its own level.",
            stack.stack(), stack.nominalExcessDb(), stack.nominalExcessHz(), conduct.allowanceDb());
      }
    }
    for (int s = 0; s < permitted.stacks(); s++) {
      if (!permitted.judgesLoad(s)) {
        say(
            "In stack %s the woofer as designed itself loads the amplifier with %.2f ohm, below the %.2f ohm allowed; the load of units is not judged there.",
            stacks.brief(s).name(),
            permitted.nominalLoadOhm(s),
            stacks.spec().amplifier().lowestLoadOhm());
      }
    }
  }

  private void production(ProductionYield production) {
    StackYield binding = production.binding();
    say(
        "With the usual production spread %.1f %% of %d units are good in every stack; stack %s is the hardest with %.1f %%%s.",
        100 * production.share(),
        production.units(),
        binding.stack(),
        100 * binding.share(),
        binding.share() == 1
            ? ""
            : binding.loadBinds()
                ? ", most of what is lost by its load"
                : format(", most of what is lost at %.0f Hz", binding.bindingHz()));
    if (production.share() < conduct.wantedYield()) {
      say(
          "That is less than the %.0f %% wanted: the maker must hold the windows, sort, or charge for it.",
          100 * conduct.wantedYield());
    }
  }

  private void windows(AcceptanceWindows windows) {
    if (!windows.hold()) {
      say(
          "No windows hold %.0f %%: units within the tightest ones tried are good in every stack in %.1f %% of cases. The woofer as designed has too little room; change it, or allow more.",
          100 * windows.wantedYield(), 100 * windows.within().share());
      return;
    }
    for (AcceptanceWindow window : windows.windows()) {
      if (window.tighterThanUsual()) {
        say(
            "The window of %s, %s, is tighter than the usual %s; expect to pay for it or to sort.",
            window.quantity().symbol(),
            width(window.quantity(), window.halfWidth()),
            width(window.quantity(), window.quantity().practice().lower()));
      }
    }
    say(
        "The windows take %.0f %% of a usual run; the rest is sorted out or made again.",
        100 * windows.acceptedShare());
    if (windows.wider().leastStackShare() >= windows.wantedYield()) {
      say(
          "Windows half as wide again would still hold %.0f %%: the windows are usual ones, not set by the response.",
          100 * windows.wantedYield());
    }
  }

  private void influences(List<Influence> influences) {
    Influence first = influences.get(0);
    Influence second = influences.get(1);
    say(
        "Most of what varies in the largest deviation comes from %s (%.2f dB) and %s (%.2f dB, standard deviations in the stack where each matters most).",
        first.variable().words(),
        first.largestDeviationDb(),
        second.variable().words(),
        second.largestDeviationDb());
  }

  private void sampling(SamplingPlan plan) {
    double bad = 1 - conduct.wantedYield();
    double taken = plan.acceptanceProbability(bad);
    String what =
        plan.testsEveryUnit()
            ? format("An order of %d is tested unit by unit.", plan.lotSize())
            : format(
                "The plan for an order of %d tests %d and takes it with up to %d bad; it takes an order that is %.0f %% bad in %.0f %% of cases.",
                plan.lotSize(), plan.sampleSize(), plan.acceptanceNumber(), 100 * bad, 100 * taken);
    sentences.add(
        !plan.testsEveryUnit() && plan.everyUnitBetter(bad)
            ? what + " Test every unit instead."
            : what);
  }

  private static String width(MeasuredQuantity quantity, double halfWidth) {
    return quantity.inDecibels()
        ? format("\u00b1%.2f dB", halfWidth)
        : format("\u00b1%.1f %%", 100 * halfWidth);
  }

  private void say(String format, Object... values) {
    sentences.add(format(format, values));
  }

  private static String format(String format, Object... values) {
    return FiniteText.of(format, values);
  }
}
