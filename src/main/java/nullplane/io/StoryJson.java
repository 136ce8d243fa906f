package nullplane.io;

import java.io.IOException;
import java.util.Map;
import java.util.OptionalDouble;
import nullplane.fit.Finding;
import nullplane.sample.BenchFigure;
import nullplane.sample.GoldenDrift;
import nullplane.sample.LearnedGain;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.Lever;
import nullplane.sample.MakerMove;
import nullplane.sample.ProjectRound;
import nullplane.sample.ProjectStory;

/**
 * The rounds of a project as JSON: full precision, SI; levels in dB re 20 uPa. Source: RFC 8259.
 */
public final class StoryJson {
  private final JsonText json;

  private StoryJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of a document of its own.
   *
   * @param story the rounds
   * @param version the program's version
   */
  public static byte[] of(ProjectStory story, String version) {
    return JsonText.of(
        json -> {
          json.text("kind", "nullplane rounds");
          json.whole("format", 1);
          fields(json, story);
          json.text("version", version);
        });
  }

  /** Writes the fields of the rounds into a document. */
  static void fields(JsonText json, ProjectStory story) throws IOException {
    StoryJson writer = new StoryJson(json);
    json.objects("rounds", story.history().rounds(), writer::round);
    json.objects("moves", story.moves(), move -> writer.move(story, move));
    json.object("response", () -> writer.response(story));
    json.objects("drift", story.drifts(), writer::drift);
  }

  private void round(ProjectRound round) throws IOException {
    json.whole("round", round.number());
    json.text("time", round.stamp().time().toString());
    json.text("briefSha256", round.stamp().briefDigest());
    json.text("measurementsSha256", round.stamp().measurementsDigest());
    json.objects("samples", round.samples(), this::sample);
    if (round.end().isPresent()) {
      json.text("decision", round.end().orElseThrow().decision().words());
      json.object("request", () -> request(round.end().orElseThrow()));
    } else {
      json.none("decision");
      json.none("request");
    }
  }

  private void sample(SampleEntry sample) throws IOException {
    json.text("name", sample.name());
    json.flag("golden", sample.golden());
    json.text("mounting", sample.mounting());
    json.text("decision", sample.decision().words());
    if (sample.restPositionM().isPresent()) {
      json.number("restPositionM", sample.restPositionM().getAsDouble());
    } else {
      json.none("restPositionM");
    }
    json.object(
        "values",
        () -> {
          for (Map.Entry<BenchFigure, Finding.Estimate> value : sample.values().entrySet()) {
            json.object(
                value.getKey().key(),
                () -> {
                  json.number("value", value.getValue().value());
                  json.number("standardError", value.getValue().standardError());
                });
          }
        });
  }

  private void request(RequestEntry request) throws IOException {
    json.text("basis", request.basis());
    json.object("asked", () -> LedgerJson.asked(json, request.asked()));
    LedgerJson.expected(json, request);
  }

  private void move(ProjectStory story, MakerMove move) throws IOException {
    json.whole("round", move.round());
    json.whole("next", move.next());
    double winding = story.response().used(Lever.WINDING);
    json.object(
        "levers",
        () -> {
          for (Lever lever : move.asked().levers()) {
            json.object(
                lever.word(),
                () -> {
                  json.number("asked", move.asked().amount(lever));
                  json.number("predicted", move.predicted(lever));
                  OptionalDouble achieved = move.achieved(lever, winding);
                  if (achieved.isPresent()) {
                    json.number("achieved", achieved.getAsDouble());
                  } else {
                    json.none("achieved");
                  }
                });
          }
        });
  }

  private void response(ProjectStory story) throws IOException {
    for (Lever lever : Lever.values()) {
      LearnedGain gain = story.response().of(lever);
      json.object(
          lever.word(),
          () -> {
            json.number("gain", gain.gain());
            json.number("standardError", gain.standardError());
            json.whole("rounds", gain.rounds());
          });
    }
  }

  private void drift(GoldenDrift drift) throws IOException {
    json.text("sample", drift.sample());
    json.text("key", drift.figure().key());
    json.whole("earlierFits", drift.rounds());
    json.number("earlier", drift.earlier());
    json.number("now", drift.now());
    json.number("drift", drift.drift());
    json.number("standardError", drift.standardError());
    json.flag("significant", drift.significant());
  }
}
