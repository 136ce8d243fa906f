package nullplane.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import nullplane.sample.BriefTest;
import nullplane.sample.BriefWindow;
import nullplane.tolerance.AcceptanceWindow;
import nullplane.tolerance.Influence;
import nullplane.tolerance.MeasuredQuantity;
import nullplane.tolerance.QuantitySpread;
import nullplane.tolerance.SamplingPlan;
import nullplane.tolerance.ToleranceStudy;
import nullplane.units.FiniteText;

/** What a tolerance study adds to a factory sheet: windows, a sampling plan, and the reasons. */
final class ToleranceParts {
  private ToleranceParts() {}

  /**
   * Returns the parts. Where no windows hold the wanted yield, the usual ones stay, and the notes
   * say why.
   */
  static FactoryParts of(ToleranceStudy study) {
    Map<String, BriefWindow> windows = new LinkedHashMap<>();
    if (study.windows().hold()) {
      for (AcceptanceWindow window : study.windows().windows()) {
        windows.put(
            key(window.quantity()),
            BriefWindow.between(window.lower(), window.upper(), basis(window)));
      }
      for (QuantitySpread spread : study.windows().implied()) {
        windows.put(key(spread.quantity()), implied(spread));
      }
    }
    return new FactoryParts(
        Optional.empty(), windows, List.of(), List.of(sampling(study)), List.of(), notes(study));
  }

  private static String basis(AcceptanceWindow window) {
    String usual = percent(window.quantity(), window.quantity().practice().lower());
    return window.tighterThanUsual()
        ? "response; tighter than the usual \u00b1" + usual
        : "response; usual \u00b1" + usual;
  }

  private static BriefWindow implied(QuantitySpread spread) {
    return BriefWindow.between(spread.lower(), spread.upper(), "follows from the inspected ones");
  }

  private static String percent(MeasuredQuantity quantity, double halfWidth) {
    return quantity.inDecibels()
        ? Charts.plain(halfWidth) + "\u00a0dB"
        : Charts.plain(100 * halfWidth) + "\u00a0%";
  }

  /** The value's key on the sheet, which is that of a woofer file. */
  private static String key(MeasuredQuantity quantity) {
    return switch (quantity) {
      case RESONANCE -> "fs";
      case TOTAL_Q -> "qts";
      case BARE_MASS -> "moving-mass";
      case RESISTANCE -> "re";
      case INDUCTANCE -> "le";
      case ELECTRICAL_Q -> "qes";
      case MOVING_MASS -> "mms";
      case FORCE_FACTOR -> "bl";
      case LEVEL -> "level";
      case EQUIVALENT_VOLUME -> "vas";
    };
  }

  private static BriefTest sampling(ToleranceStudy study) {
    SamplingPlan plan = study.sampling();
    return new BriefTest(
        "Lots",
        FiniteText.of(
            "ISO 2859-1, level %s, single, normal, AQL %s: for an order of %d, code letter %s, %d"
                + " units.",
            plan.level().name(),
            plan.quality().perCent(),
            plan.lotSize(),
            plan.planLetter(),
            plan.sampleSize()),
        FiniteText.of(
            "Taken with up to %d bad, refused from %d on. A lot that is %.0f %% bad passes in %.0f %%"
                + " of cases.",
            plan.acceptanceNumber(),
            plan.rejectionNumber(),
            100 * (1 - study.conduct().wantedYield()),
            100 * study.lotTakenIfBad()),
        study.everyUnit() ? "better every unit" : plan.sampleSize() + " of a lot");
  }

  private static List<String> notes(ToleranceStudy study) {
    List<String> notes = new ArrayList<>(study.findings());
    StringBuilder ranking = new StringBuilder("What matters, the most first: ");
    List<Influence> influences = study.influences();
    for (int i = 0; i < influences.size(); i++) {
      ranking
          .append(i == 0 ? "" : ", ")
          .append(influences.get(i).variable().words())
          .append(' ')
          .append(Figures.decibels(influences.get(i).largestDeviationDb()));
    }
    notes.add(
        ranking
            + " (standard deviation that each brings to the largest deviation, alone and with the"
            + " others; variance-based, Saltelli 2010).");
    return notes;
  }
}
