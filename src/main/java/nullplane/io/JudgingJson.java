package nullplane.io;

import java.io.IOException;
import java.util.List;
import nullplane.faults.InputFault;
import nullplane.judging.Finding;
import nullplane.judging.Judgement;
import nullplane.judging.JudgingOutcome;

/**
 * Judged woofers as JSON: the ranking with every figure and finding, in SI at full precision. The
 * curves are left out of all but the first few, since thousands may be judged. Source: RFC 8259.
 */
public final class JudgingJson {
  /** How many woofers keep their curves. */
  public static final int WITH_CURVES = 20;

  private final JsonText json;

  private JudgingJson(JsonText json) {
    this.json = json;
  }

  /**
   * Returns the bytes of the document.
   *
   * @param spec the spec
   * @param outcome the ranking
   * @param refused what was wrong with rows and files that could not be judged
   * @param seed seed of the search for the best buildable woofer
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite; the message names it
   */
  public static byte[] of(
      ReadSpec spec, JudgingOutcome outcome, List<InputFault> refused, long seed, String version) {
    return JsonText.of(
        json -> new JudgingJson(json).document(spec, outcome, refused, seed, version));
  }

  private void document(
      ReadSpec spec, JudgingOutcome outcome, List<InputFault> refused, long seed, String version)
      throws IOException {
    json.text("title", spec.spec().title());
    json.text("specSha256", spec.digest());
    json.text("version", version);
    json.whole("seed", seed);
    RankingJson assessments = new RankingJson(json);
    if (outcome.best().isPresent()) {
      json.object("bestBuildable", () -> assessments.figures(outcome.best().orElseThrow()));
    } else {
      json.none("bestBuildable");
    }
    int[] rank = {0};
    json.objects(
        "ranked",
        outcome.ranked(),
        judgement -> {
          rank[0]++;
          json.whole("rank", rank[0]);
          judgement(judgement, rank[0] <= WITH_CURVES, assessments);
        });
    json.objects(
        "misfits",
        outcome.misfits(),
        misfit -> {
          json.text("name", misfit.name());
          json.text("reason", misfit.reason());
        });
    json.objects(
        "refused",
        refused,
        fault -> {
          json.text("file", fault.file());
          json.whole("line", fault.line());
          json.text("key", fault.key());
          json.text("value", fault.value());
          json.text("problem", fault.problem());
          json.text("allowed", fault.allowed());
          json.text("hint", fault.hint());
        });
  }

  private void judgement(Judgement judgement, boolean curves, RankingJson assessments)
      throws IOException {
    if (judgement.behindBestDb().isPresent()) {
      json.number("behindBestDb", judgement.behindBestDb().getAsDouble());
    } else {
      json.none("behindBestDb");
    }
    json.objects("findings", judgement.findings(), this::finding);
    if (curves) {
      assessments.assessment(judgement.assessment());
    } else {
      assessments.figures(judgement.assessment());
    }
  }

  private void finding(Finding finding) throws IOException {
    json.text("kind", finding.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
    json.text("stack", finding.stack());
    json.number("amount", finding.amount());
    json.number("frequencyHz", finding.frequencyHz());
    json.text("sentence", finding.sentence());
    json.text("remedy", finding.remedy());
  }
}
