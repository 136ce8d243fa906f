package nullplane.io;

import java.io.IOException;
import java.util.Map;
import java.util.OptionalDouble;
import nullplane.fit.Finding;
import nullplane.sample.AskedChange;
import nullplane.sample.BenchFigure;
import nullplane.sample.BriefValue;
import nullplane.sample.LedgerEntry;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.Lever;

/** Records of a ledger as JSON objects: full precision, SI; levels in dB re 20 uPa. */
final class LedgerJson {
  /** Version of the form of a record. */
  static final int FORMAT = 1;

  static final String BRIEF = "brief";
  static final String SAMPLE = "sample";
  static final String REQUEST = "request";

  private final JsonText json;

  private LedgerJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of a record in one line, without its checksum.
   *
   * @param sequence number of the record, from 1
   * @param entry the record
   */
  static byte[] of(long sequence, LedgerEntry entry) {
    return JsonText.inOneLine(
        json -> {
          json.whole("seq", sequence);
          json.whole("format", FORMAT);
          LedgerJson writer = new LedgerJson(json);
          if (entry instanceof BriefEntry brief) {
            writer.brief(brief);
          } else if (entry instanceof SampleEntry sample) {
            writer.sample(sample);
          } else if (entry instanceof RequestEntry request) {
            writer.request(request);
          }
        });
  }

  private void brief(BriefEntry brief) throws IOException {
    json.text("kind", BRIEF);
    json.text("sha256", brief.digest());
    json.text("title", brief.title());
    json.text("name", brief.name());
    json.objects("values", brief.values(), this::value);
  }

  private void value(BriefValue value) throws IOException {
    json.text("section", value.section().words());
    json.text("key", value.key());
    json.text("symbol", value.symbol());
    json.text("name", value.name());
    json.text("unit", value.unit().si());
    optional("target", value.target());
    optional("lower", value.window().lower());
    optional("upper", value.window().upper());
  }

  private void stamp(RoundStamp stamp) throws IOException {
    json.whole("round", stamp.round());
    json.text("time", stamp.time().toString());
    json.text("briefSha256", stamp.briefDigest());
    json.text("measurementsSha256", stamp.measurementsDigest());
    json.text("version", stamp.version());
  }

  private void sample(SampleEntry sample) throws IOException {
    json.text("kind", SAMPLE);
    stamp(sample.stamp());
    json.text("name", sample.name());
    json.flag("golden", sample.golden());
    json.text("mounting", sample.mounting());
    json.text("decision", sample.decision().words());
    optional("restPositionM", sample.restPositionM());
    json.object(
        "values",
        () -> {
          for (Map.Entry<BenchFigure, Finding.Estimate> value : sample.values().entrySet()) {
            Finding.Estimate estimate = value.getValue();
            json.object(
                value.getKey().key(),
                () -> {
                  json.number("value", estimate.value());
                  json.number("standardError", estimate.standardError());
                  json.number("lower95", estimate.lower95());
                  json.number("upper95", estimate.upper95());
                });
          }
        });
  }

  private void request(RequestEntry request) throws IOException {
    json.text("kind", REQUEST);
    stamp(request.stamp());
    json.text("decision", request.decision().words());
    json.text("basis", request.basis());
    json.object("asked", () -> asked(json, request.asked()));
    json.object(
        "gains",
        () -> {
          for (Map.Entry<Lever, Double> gain : request.gains().entrySet()) {
            json.number(gain.getKey().word(), gain.getValue());
          }
        });
    expected(json, request);
  }

  /** Writes what a request was expected to do, and what it had to leave. */
  static void expected(JsonText json, RequestEntry request) throws IOException {
    json.object(
        "predicted",
        () -> {
          for (Map.Entry<String, Double> figure : request.predicted().entrySet()) {
            json.number(figure.getKey(), figure.getValue());
          }
        });
    json.texts("stillOutside", request.stillOutside());
    json.texts("locked", request.locked().stream().map(Lever::word).toList());
  }

  /** Writes the amounts of what was asked for. */
  static void asked(JsonText json, AskedChange asked) throws IOException {
    json.number("massKg", asked.massKg());
    json.number("stiffnessShare", asked.stiffnessShare());
    json.number("fluxShare", asked.fluxShare());
    json.number("restMoveM", asked.restMoveM());
    if (asked.winding().isPresent()) {
      AskedChange.WindingStep step = asked.winding().orElseThrow();
      json.object(
          "winding",
          () -> {
            json.number("massKg", step.massKg());
            json.number("resistanceRatio", step.resistanceRatio());
            json.number("forceRatio", step.forceRatio());
          });
    } else {
      json.none("winding");
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
