package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.fit.Finding;
import nullplane.sample.BenchFigure;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.ChangeRequest;
import nullplane.sample.Decision;
import nullplane.sample.GoldenDrift;
import nullplane.sample.LearnedGain;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.Lever;
import nullplane.sample.MakerMove;
import nullplane.sample.ProjectRound;
import nullplane.sample.ProjectStory;
import nullplane.sample.RoundHistory;

/** Rows and sentences on the rounds of a project, for terminal and pages alike. */
final class RoundTexts {
  static final List<String> MOVES_HEAD =
      List.of("Asked in", "Lever", "asked", "predicted", "achieved");
  static final List<String> GAINS_HEAD = List.of("Lever", "gain", "95 % interval", "rounds");
  static final List<String> DRIFT_HEAD =
      List.of("Sample", "value", "earlier", "now", "unit", "drift", "limit", "");

  static final String GAINS_SAID =
      "Gain is what comes over what is asked; 1 is exactly what is asked. It is learned by least"
          + " squares over all rounds and stays near 1 while little is known.";
  static final String DRIFT_SAID =
      "The limit is what a golden sample that has not moved keeps to in 19 of 20 cases. Beyond it"
          + " the bench, the room or the sample itself is no longer what it was.";

  private static final String REST = "rest-position";

  /** A drift below this is rounding (in the unit shown). */
  private static final double LEAST_SHOWN = 1e-6;

  private final ProjectStory story;

  RoundTexts(ProjectStory story) {
    this.story = story;
  }

  /** Returns the values of the last brief that have a window and that some round shows. */
  static List<BriefValue> shownValues(RoundHistory history) {
    List<BriefValue> all = history.brief().map(BriefEntry::values).orElse(List.of());
    List<BriefValue> shown = new ArrayList<>();
    for (BriefValue value : all) {
      boolean seen =
          history.rounds().stream()
              .flatMap(round -> round.samples().stream())
              .anyMatch(sample -> estimate(sample, value.key()).isPresent());
      if (seen && value.window().limits()) {
        shown.add(value);
      }
    }
    return shown;
  }

  /** Returns what a sample shows of a key, if it does. */
  static Optional<Finding.Estimate> estimate(SampleEntry sample, String key) {
    if (key.equals(REST)) {
      OptionalDouble rest = sample.restPositionM();
      return rest.isPresent()
          ? Optional.of(
              new Finding.Estimate(rest.getAsDouble(), 0, rest.getAsDouble(), rest.getAsDouble()))
          : Optional.empty();
    }
    return BenchFigure.ofKey(key).map(sample.values()::get);
  }

  /** Returns how the last round stands, in one to three sentences. */
  String verdict() {
    List<ProjectRound> rounds = story.history().rounds();
    if (rounds.isEmpty()) {
      return "No round is on record yet.";
    }
    ProjectRound last = rounds.get(rounds.size() - 1);
    String decision =
        last.end().map(end -> end.decision().words()).orElse("it did not come to its end");
    String count =
        rounds.size() == 1 ? "One round is on record" : rounds.size() + " rounds are on record";
    String drift =
        story.drifts().isEmpty()
            ? ""
            : ofBrief(story.significantDrifts()).isEmpty()
                ? " The golden samples have not moved."
                : " Golden samples have moved: " + moved() + ".";
    return count + "; the last, round " + last.number() + ": " + decision + "." + drift;
  }

  private String moved() {
    List<String> parts = new ArrayList<>();
    for (GoldenDrift drift : ofBrief(story.significantDrifts())) {
      parts.add(Lettering.clean(drift.sample()) + " in " + label(drift.figure().key()));
    }
    return String.join(", ", parts);
  }

  /** The drifts of figures that the brief has: others follow from these. */
  private List<GoldenDrift> ofBrief(List<GoldenDrift> drifts) {
    return drifts.stream().filter(drift -> value(drift.figure().key()).isPresent()).toList();
  }

  private Optional<BriefValue> value(String key) {
    return story
        .history()
        .brief()
        .flatMap(brief -> brief.values().stream().filter(v -> v.key().equals(key)).findFirst());
  }

  private String label(String key) {
    return value(key).map(SampleTexts::label).orElse(key);
  }

  /** Returns the rounds that are shown side by side, the last ones. */
  List<ProjectRound> lastRounds(int most) {
    List<ProjectRound> rounds = story.history().rounds();
    return rounds.subList(Math.max(0, rounds.size() - most), rounds.size());
  }

  /** Returns one row for each value: label, unit, window, and the mean of each round. */
  List<List<String>> history(List<ProjectRound> rounds) {
    List<List<String>> rows = new ArrayList<>();
    for (BriefValue value : shownValues(story.history())) {
      List<String> row = new ArrayList<>();
      row.add(SampleTexts.label(value));
      row.add(
          value.unit() == BriefUnit.ONE
              ? "-"
              : value.unit().shown().replace(" re 20 \u00b5Pa", ""));
      row.add(SampleTexts.window(value));
      for (ProjectRound round : rounds) {
        row.add(cell(round, value));
      }
      rows.add(row);
    }
    List<String> decisions = new ArrayList<>(List.of("decision", "-", "-"));
    for (ProjectRound round : rounds) {
      decisions.add(round.end().map(end -> end.decision().words()).orElse("unfinished"));
    }
    rows.add(decisions);
    return rows;
  }

  /** The mean of the samples, with a mark: x where one fails, ? where one cannot be told. */
  private String cell(ProjectRound round, BriefValue value) {
    BriefWindow window =
        story
            .history()
            .briefOf(round)
            .flatMap(
                brief ->
                    brief.values().stream().filter(v -> v.key().equals(value.key())).findFirst())
            .map(BriefValue::window)
            .orElse(value.window());
    double sum = 0;
    int count = 0;
    Decision decision = Decision.PASS;
    for (SampleEntry sample : round.judged()) {
      Optional<Finding.Estimate> estimate = estimate(sample, value.key());
      if (estimate.isPresent()) {
        sum += estimate.orElseThrow().value();
        count++;
        decision = decision.and(Decision.of(window, estimate.orElseThrow()));
      }
    }
    if (count == 0) {
      return "-";
    }
    return SampleTexts.number(sum / count, value.unit())
        + switch (decision) {
          case PASS -> "";
          case FAIL -> " x";
          case CANNOT_TELL -> " ?";
        };
  }

  /** Returns one row for each lever of each request: asked, predicted, achieved. */
  List<List<String>> moves() {
    List<List<String>> rows = new ArrayList<>();
    double winding = story.response().used(Lever.WINDING);
    for (MakerMove move : story.moves()) {
      for (Lever lever : move.asked().levers()) {
        OptionalDouble achieved = move.achieved(lever, winding);
        rows.add(
            List.of(
                "round " + move.round(),
                lever.inWords(),
                amount(lever, move.asked().amount(lever)),
                amount(lever, move.predicted(lever)),
                achieved.isPresent() ? amount(lever, achieved.getAsDouble()) : "not measured"));
      }
    }
    return rows;
  }

  /** Returns one row for each lever that something was learned about. */
  List<List<String>> gains() {
    List<List<String>> rows = new ArrayList<>();
    for (Lever lever : Lever.values()) {
      LearnedGain gain = story.response().of(lever);
      if (gain.rounds() > 0) {
        rows.add(
            List.of(
                lever.inWords(),
                Figures.number(gain.gain()),
                Figures.number(gain.lower95()) + " .. " + Figures.number(gain.upper95()),
                Integer.toString(gain.rounds())));
      }
    }
    return rows;
  }

  /** Returns one row for each figure of each golden sample. */
  List<List<String>> drifts() {
    List<List<String>> rows = new ArrayList<>();
    for (GoldenDrift drift : ofBrief(story.drifts())) {
      BriefUnit unit = value(drift.figure().key()).map(BriefValue::unit).orElse(BriefUnit.ONE);
      rows.add(
          List.of(
              Lettering.clean(drift.sample()),
              label(drift.figure().key()),
              SampleTexts.number(drift.earlier(), unit),
              SampleTexts.number(drift.now(), unit),
              unit == BriefUnit.ONE ? "-" : unit.shown().replace(" re 20 \u00b5Pa", ""),
              change(drift.drift(), unit),
              change(drift.limit95(), unit).replace("+", ""),
              drift.significant() ? "moved" : "as before"));
    }
    return rows;
  }

  private static String change(double value, BriefUnit unit) {
    double shown = unit.toShown(value);
    return Math.abs(shown) < LEAST_SHOWN ? "0" : (shown > 0 ? "+" : "") + Figures.number(shown);
  }

  private static String amount(Lever lever, double amount) {
    return switch (lever) {
      case MASS -> String.format(Locale.ROOT, "%+.2f g", 1e3 * amount);
      case REST_POSITION -> String.format(Locale.ROOT, "%+.2f mm", 1e3 * amount);
      case WINDING -> String.format(Locale.ROOT, "%+.1f %% Re", 100 * amount);
      case STIFFNESS, FLUX -> String.format(Locale.ROOT, "%+.1f %%", 100 * amount);
    };
  }

  /** Returns what a request reckons with, in one sentence; empty if nothing is known. */
  static String reckoning(ChangeRequest request) {
    List<String> parts = new ArrayList<>();
    for (Lever lever : request.change().levers()) {
      if (request.response().knows(lever)) {
        parts.add(lever.inWords() + " " + Math.round(100 * request.response().used(lever)) + " %");
      }
    }
    return parts.isEmpty()
        ? ""
        : "The amounts allow for what came of earlier requests, as a share of what was asked: "
            + String.join(", ", parts)
            + ".";
  }
}
