package nullplane.io;

import java.io.IOException;
import java.util.Map;
import java.util.Objects;
import nullplane.judging.Comparison;
import nullplane.judging.ConeDecay;
import nullplane.judging.ParameterGroup;
import nullplane.judging.StackDifference;

/** Two woofers side by side as JSON, in SI at full precision. Source: RFC 8259. */
public final class ComparisonJson {
  private final JsonText json;

  private ComparisonJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of the document.
   *
   * @param spec the spec
   * @param comparison the two woofers
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(ReadSpec spec, Comparison comparison, String version) {
    return JsonText.of(json -> new ComparisonJson(json).document(spec, comparison, version));
  }

  private void document(ReadSpec spec, Comparison comparison, String version) throws IOException {
    json.text("title", spec.spec().title());
    json.text("specSha256", spec.digest());
    json.text("version", version);
    RankingJson assessments = new RankingJson(json);
    json.object("first", () -> assessments.assessment(comparison.first()));
    json.object("second", () -> assessments.assessment(comparison.second()));
    json.object("costSharesDb", () -> shares(comparison.difference().costSharesDb()));
    json.object("violationShares", () -> shares(comparison.difference().violationShares()));
    json.objects("stacks", comparison.difference().stacks(), this::stack);
    json.objects("firstDecays", comparison.firstDecays(), this::decay);
    json.objects("secondDecays", comparison.secondDecays(), this::decay);
  }

  private void shares(Map<ParameterGroup, Double> shares) throws IOException {
    for (ParameterGroup group : ParameterGroup.values()) {
      json.number(key(group), Objects.requireNonNull(shares.get(group)));
    }
  }

  private void stack(StackDifference stack) throws IOException {
    json.text("name", stack.stack());
    json.curve("frequencyHz", stack.frequencyHz());
    json.curve("firstBareLevelDb", stack.firstLevelDb());
    json.curve("secondBareLevelDb", stack.secondLevelDb());
    json.object(
        "levelSharesDb",
        () -> {
          for (ParameterGroup group : ParameterGroup.values()) {
            json.curve(key(group), stack.shareDb(group));
          }
        });
  }

  private void decay(ConeDecay decay) throws IOException {
    json.number("panelFsHz", decay.resonanceHz());
    json.number("panelQts", decay.totalQ());
    json.number("timeToFall20DbS", decay.timeToFallS(20));
  }

  private static String key(ParameterGroup group) {
    return switch (group) {
      case RESONANCE -> "fs";
      case ELECTRICAL_Q -> "qes";
      case MECHANICAL_Q -> "qms";
      case MOVING_MASS -> "movingMass";
      case AREA -> "sd";
      case TRAVEL -> "travel";
      case INDUCTANCE -> "le";
      case RESISTANCE -> "re";
      case POWER -> "power";
    };
  }
}
