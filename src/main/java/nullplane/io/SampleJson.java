package nullplane.io;

import java.io.IOException;
import java.util.Map;
import java.util.OptionalDouble;
import nullplane.driver.Woofer;
import nullplane.fit.Finding;
import nullplane.sample.BatchSpread;
import nullplane.sample.Change;
import nullplane.sample.ChangeRequest;
import nullplane.sample.Lever;
import nullplane.sample.PanelPlace;
import nullplane.sample.PartsFigures;
import nullplane.sample.ProjectRound;
import nullplane.sample.ProjectStory;
import nullplane.sample.RequestRow;
import nullplane.sample.SampleOutcome;
import nullplane.sample.SampleResult;
import nullplane.sample.ValueCheck;
import nullplane.scoring.Grade;

/**
 * Samples against a brief, and the change asked for, as JSON: full precision, SI; levels in dB re
 * 20 uPa. Source: RFC 8259.
 */
public final class SampleJson {
  private final JsonText json;

  private SampleJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of the document.
   *
   * @param outcome the samples
   * @param specDigest digest of the spec, hexadecimal
   * @param briefDigest digest of the brief, hexadecimal
   * @param measurementsDigest digest of the measurements, hexadecimal
   * @param version the program's version
   */
  public static byte[] of(
      SampleOutcome outcome,
      String specDigest,
      String briefDigest,
      String measurementsDigest,
      String version) {
    return JsonText.of(
        json -> {
          json.text("kind", "nullplane sample");
          json.whole("format", 1);
          new SampleJson(json).document(outcome);
          json.text("specSha256", specDigest);
          json.text("briefSha256", briefDigest);
          json.text("measurementsSha256", measurementsDigest);
          json.text("version", version);
        });
  }

  private void document(SampleOutcome outcome) throws IOException {
    json.text("title", outcome.brief().title());
    json.text("brief", outcome.brief().name());
    json.text("decision", outcome.decision().words());
    json.objects("samples", outcome.samples(), this::sample);
    json.objects("nominalStacks", outcome.nominal(), this::stack);
    json.objects("spread", outcome.spreads(), this::spread);
    if (outcome.request().isPresent()) {
      json.object("request", () -> request(outcome.request().orElseThrow()));
    } else {
      json.none("request");
    }
    if (outcome.story().isPresent()) {
      json.object(
          "ledger",
          () -> {
            ProjectStory story = outcome.story().orElseThrow();
            json.whole("round", story.history().last().map(ProjectRound::number).orElse(0));
            StoryJson.fields(json, story);
          });
    } else {
      json.none("ledger");
    }
    json.texts("notes", outcome.notes());
  }

  private void sample(SampleResult sample) throws IOException {
    json.text("name", sample.name());
    json.text("decision", sample.decision().words());
    json.flag("golden", sample.golden());
    json.text("mounting", sample.measured().place().map(PanelPlace::words).orElse("free air"));
    json.objects("values", sample.checks(), this::check);
    json.texts("notMeasured", sample.notMeasured());
    json.text("inductanceForm", sample.fit().form());
    json.number("fitNoise", sample.fit().noise());
    json.flag("massAssumed", sample.massAssumed());
    if (sample.woofer().isPresent()) {
      json.object("woofer", () -> woofer(sample.woofer().orElseThrow()));
    } else {
      json.none("woofer");
    }
    if (sample.grade().isPresent()) {
      json.object("grade", () -> grade(sample.grade().orElseThrow()));
    } else {
      json.none("grade");
    }
    json.objects("stacksWithBriefParts", sample.briefParts(), this::stack);
    json.objects("stacksWithBestParts", sample.bestParts(), this::stack);
    json.texts("notes", sample.notes());
  }

  private void check(ValueCheck check) throws IOException {
    json.text("key", check.value().key());
    json.text("unit", check.value().unit().si());
    optional("target", check.value().target());
    optional("windowLower", check.value().window().lower());
    optional("windowUpper", check.value().window().upper());
    if (check.finding() instanceof Finding.Estimate estimate) {
      json.number("value", estimate.value());
      json.number("standardError", estimate.standardError());
      json.number("lower95", estimate.lower95());
      json.number("upper95", estimate.upper95());
    } else if (check.finding() instanceof Finding.NotDetermined none) {
      json.none("value");
      json.text("reason", none.reason());
    }
    json.text(
        "decision", check.value().window().limits() ? check.decision().words() : "for information");
  }

  private void woofer(Woofer woofer) throws IOException {
    json.number("effectiveAreaM2", woofer.effectiveAreaM2());
    WooferJson.parts(json, woofer);
  }

  private void grade(Grade grade) throws IOException {
    json.number("violation", grade.violation());
    json.number("costDb", grade.costDb());
  }

  private void stack(PartsFigures stack) throws IOException {
    json.text("name", stack.stack());
    json.whole("strings", stack.wiring().strings());
    json.whole("inSeries", stack.wiring().inSeries());
    json.number("coilInductanceH", stack.network().seriesCoil().inductanceH());
    json.number("coilResistanceOhm", stack.network().seriesCoil().resistanceOhm());
    json.object("network", () -> NetworkJson.write(json, stack.network()));
    json.number("rmsDeviationDb", stack.rmsDeviationDb());
    json.number("meanDeviationDb", stack.meanDeviationDb());
    json.number("worstExcessDb", stack.worstExcessDb());
    json.number("outputMarginDb", stack.outputMarginDb());
    json.number("correctionDb", stack.correctionDb());
    json.number("leastLoadOhm", stack.leastLoadOhm());
  }

  private void spread(BatchSpread spread) throws IOException {
    json.text("key", spread.value().key());
    json.text("unit", spread.value().unit().si());
    json.whole("count", spread.count());
    json.number("mean", spread.mean());
    json.number("standardDeviation", spread.deviation());
    json.number("least", spread.least());
    json.number("greatest", spread.greatest());
    optional("cpk", spread.capability());
    optional("cpkLower95", spread.capabilityLower());
    if (spread.outlier().isPresent()) {
      json.text("outlier", spread.outlier().orElseThrow());
    } else {
      json.none("outlier");
    }
  }

  private void request(ChangeRequest request) throws IOException {
    json.text("basis", request.basis());
    json.texts("locked", request.locked().stream().map(Lever::word).toList());
    Change change = request.change();
    json.object(
        "change",
        () -> {
          json.number("massKg", change.massKg());
          json.number("stiffnessShare", change.stiffnessShare());
          json.number("fluxShare", change.fluxShare());
          json.number("restMoveM", change.restMoveM());
          if (change.winding().isPresent()) {
            json.object("winding", () -> winding(change.winding().orElseThrow()));
          } else {
            json.none("winding");
          }
        });
    json.object(
        "reckonedGains",
        () -> {
          for (Lever lever : change.levers()) {
            json.number(lever.word(), request.response().used(lever));
          }
        });
    json.objects("rows", request.rows(), this::row);
    json.object("before", () -> figures(request.before()));
    json.object("after", () -> figures(request.after()));
    json.texts("stillOutside", request.stillOutside());
    json.object("wooferBefore", () -> woofer(request.woofer()));
    json.object("wooferAfter", () -> woofer(request.changed()));
    json.object("gradeBefore", () -> grade(request.gradeBefore()));
    json.object("gradeAfter", () -> grade(request.gradeAfter()));
    json.objects("stacksBefore", request.stacksBefore(), this::stack);
    json.objects("stacksAfter", request.stacksAfter(), this::stack);
    json.objects("bestPartsBefore", request.bestBefore(), this::stack);
    json.objects("bestPartsAfter", request.bestAfter(), this::stack);
  }

  private void winding(Change.Rewound rewound) throws IOException {
    json.number("wireM", rewound.to().coil().bareDiameterM());
    json.whole("layers", rewound.to().coil().layers());
    json.whole("turns", rewound.to().coil().turns());
    json.number("heightM", rewound.to().coil().windingHeightM());
    json.number("massKg", rewound.massKg());
    json.number("resistanceRatio", rewound.resistanceRatio());
    json.number("forceRatio", rewound.forceRatio());
  }

  private void row(RequestRow row) throws IOException {
    json.text("lever", row.lever().word());
    json.texts("why", row.why());
    json.number("fsHz", row.resonanceHz());
    json.number("qts", row.totalQ());
    json.number("levelDb", row.levelDb());
    json.number("travelM", row.travelM());
  }

  private void figures(Map<String, Double> figures) throws IOException {
    for (Map.Entry<String, Double> figure : figures.entrySet()) {
      json.number(figure.getKey(), figure.getValue());
    }
  }

  private void optional(String field, OptionalDouble value) throws IOException {
    if (value.isPresent()) {
      json.number(field, value.getAsDouble());
    } else {
      json.none(field);
    }
  }
}
