package nullplane.io;

import java.io.IOException;
import nullplane.tolerance.AcceptanceWindow;
import nullplane.tolerance.AcceptanceWindows;
import nullplane.tolerance.Influence;
import nullplane.tolerance.ProductionVariable;
import nullplane.tolerance.ProductionYield;
import nullplane.tolerance.QuantitySpread;
import nullplane.tolerance.SamplingPlan;
import nullplane.tolerance.StackYield;
import nullplane.tolerance.ToleranceConduct;
import nullplane.tolerance.ToleranceStudy;
import nullplane.tolerance.WindowCheck;

/**
 * Writes a tolerance study into JSON: everything in SI at full precision. Widths are half of a
 * window, as a share of the value, or in dB where the unit is dB.
 */
final class ToleranceJson {
  private final JsonText json;

  ToleranceJson(JsonText json) {
    this.json = json;
  }

  /** Writes the study's fields. */
  void study(ToleranceStudy study) throws IOException {
    ToleranceConduct conduct = study.conduct();
    json.whole("seed", conduct.seed());
    json.whole("units", conduct.units());
    json.number("wantedYield", conduct.wantedYield());
    json.number("allowanceDb", conduct.allowanceDb());
    json.texts("findings", study.findings());
    json.object(
        "spread",
        () -> {
          for (ProductionVariable variable : ProductionVariable.values()) {
            json.number(variable.key(), study.spread().halfWidth(variable));
          }
        });
    json.object("production", () -> production(study.production()));
    json.object("windows", () -> windows(study.windows()));
    json.objects("influences", study.influences(), this::influence);
    json.object("sampling", () -> sampling(study));
  }

  private void production(ProductionYield production) throws IOException {
    json.number("yield", production.share());
    json.text("bindingStack", production.binding().stack());
    json.curve("frequencyHz", production.bandHz());
    json.objects("stacks", production.stacks(), this::stack);
    json.objects("measured", production.measured(), this::spread);
  }

  private void stack(StackYield stack) throws IOException {
    json.text("name", stack.stack());
    json.number("yield", stack.share());
    json.flag("loadJudged", stack.loadJudged());
    json.number("loadYield", stack.loadShare());
    json.flag("loadBinds", stack.loadBinds());
    json.number("bindingHz", stack.bindingHz());
    json.flag("nominalInside", stack.nominalInside());
    json.number("nominalExcessDb", stack.nominalExcessDb());
    json.number("nominalExcessHz", stack.nominalExcessHz());
    json.number("nominalOutputMarginDb", stack.nominalOutputMarginDb());
    json.number("lowOutputMarginDb", stack.lowOutputMarginDb());
    json.curve("nominalDb", stack.nominalDb());
    json.curve("permittedLowerDb", stack.permittedLowerDb());
    json.curve("permittedUpperDb", stack.permittedUpperDb());
    json.curve("lowDb", stack.lowDb());
    json.curve("highDb", stack.highDb());
  }

  private void spread(QuantitySpread spread) throws IOException {
    json.text("symbol", spread.quantity().symbol());
    json.text("unit", spread.quantity().unit());
    json.number("nominal", spread.nominal());
    json.number("halfWidth", spread.halfWidth());
    json.number("usualFrom", spread.quantity().practice().lower());
    json.number("usualTo", spread.quantity().practice().upper());
  }

  private void windows(AcceptanceWindows windows) throws IOException {
    json.flag("hold", windows.hold());
    json.number("margin", windows.margin());
    json.number("costShare", windows.costShare());
    json.number("acceptedShare", windows.acceptedShare());
    json.objects("windows", windows.windows(), this::window);
    json.object("within", () -> check(windows.within()));
    json.object("wider", () -> check(windows.wider()));
    json.objects("implied", windows.implied(), this::spread);
  }

  private void window(AcceptanceWindow window) throws IOException {
    json.text("symbol", window.quantity().symbol());
    json.text("unit", window.quantity().unit());
    json.number("nominal", window.nominal());
    json.number("halfWidth", window.halfWidth());
    json.number("lower", window.lower());
    json.number("upper", window.upper());
    json.number("usualFrom", window.quantity().practice().lower());
    json.number("usualTo", window.quantity().practice().upper());
    json.flag("tighterThanUsual", window.tighterThanUsual());
    json.text("limitedBy", window.limit().words());
  }

  private void check(WindowCheck check) throws IOException {
    json.number("factor", check.factor());
    json.whole("units", check.units());
    json.number("yield", check.share());
    json.numbers("stackYields", check.stackShares());
  }

  private void influence(Influence influence) throws IOException {
    json.text("variable", influence.variable().words());
    json.number("largestDeviationDb", influence.largestDeviationDb());
    json.objects(
        "stacks",
        influence.stacks(),
        stack -> {
          json.text("name", stack.stack());
          json.number("firstOrder", stack.firstOrder());
          json.number("total", stack.total());
          json.number("deviationDb", stack.deviationDb());
        });
  }

  private void sampling(ToleranceStudy study) throws IOException {
    SamplingPlan plan = study.sampling();
    json.whole("lotSize", plan.lotSize());
    json.text("inspectionLevel", plan.level().name());
    json.text("acceptanceQualityPerCent", plan.quality().perCent());
    json.text("codeLetter", String.valueOf(plan.planLetter()));
    json.whole("sampleSize", plan.sampleSize());
    json.whole("acceptanceNumber", plan.acceptanceNumber());
    json.whole("rejectionNumber", plan.rejectionNumber());
    json.number("lotTakenIfBad", study.lotTakenIfBad());
    json.flag("everyUnit", study.everyUnit());
  }
}
