package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import nullplane.driver.RoundWireCoil;
import nullplane.driver.Woofer;
import nullplane.fit.Finding;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.Change;
import nullplane.sample.ChangeRequest;
import nullplane.sample.Decision;
import nullplane.sample.Lever;
import nullplane.sample.RequestRow;
import nullplane.sample.SampleBrief;
import nullplane.sample.SampleOutcome;
import nullplane.sample.SampleResult;
import nullplane.sample.ValueCheck;
import nullplane.scoring.Grade;
import nullplane.units.FiniteText;

/** Sentences on samples and on what a maker should change, for terminal and pages alike. */
final class SampleTexts {
  /** Changes of level and travel below these are not worth a word (dB, m). */
  private static final double UNSEEN_DB = 0.005;

  private static final double UNSEEN_M = 5e-6;
  private static final int MOST_NAMED = 4;

  private final SampleBrief brief;

  SampleTexts(SampleBrief brief) {
    this.brief = brief;
  }

  /** Returns the verdict on all samples: one to three sentences. */
  String verdict(SampleOutcome outcome) {
    List<SampleResult> judged = outcome.judged();
    if (judged.size() == 1) {
      return verdict(judged.get(0));
    }
    int all = judged.size();
    List<String> counts = new ArrayList<>();
    for (Decision decision : List.of(Decision.FAIL, Decision.CANNOT_TELL, Decision.PASS)) {
      int count = outcome.count(decision);
      if (count > 0) {
        counts.add(
            count
                + switch (decision) {
                  case FAIL -> count == 1 ? " fails" : " fail";
                  case PASS -> count == 1 ? " passes" : " pass";
                  case CANNOT_TELL -> " cannot be told";
                });
      }
    }
    String each =
        judged.stream()
            .filter(sample -> sample.decision() == Decision.FAIL)
            .limit(MOST_NAMED)
            .map(this::verdict)
            .collect(Collectors.joining(" "));
    return "Of " + all + " samples " + String.join(", ", counts) + ". " + each;
  }

  /** Returns a sample's name and its decision. */
  static String heading(SampleResult sample) {
    return "Sample "
        + Lettering.clean(sample.name())
        + (sample.golden() ? ", golden" : "")
        + ": "
        + sample.decision().words();
  }

  /** Returns the verdict on one sample. */
  String verdict(SampleResult sample) {
    String name = "Sample " + Lettering.clean(sample.name());
    long held = sample.checks().stream().filter(c -> c.value().window().limits()).count();
    return switch (sample.decision()) {
      case PASS ->
          name
              + " passes: all "
              + held
              + " values that were measured lie inside their windows with their whole 95 %"
              + " interval.";
      case FAIL -> name + " fails: " + misses(sample, Decision.FAIL) + ".";
      case CANNOT_TELL ->
          name
              + " cannot be told yet: "
              + misses(sample, Decision.CANNOT_TELL)
              + ". A better measurement decides, not another sample.";
    };
  }

  private static String misses(SampleResult sample, Decision decision) {
    List<ValueCheck> missed = sample.with(decision);
    String told =
        missed.stream().limit(MOST_NAMED).map(SampleTexts::miss).collect(Collectors.joining("; "));
    int more = missed.size() - MOST_NAMED;
    return more > 0 ? told + "; and " + more + " more" : told;
  }

  private static String miss(ValueCheck check) {
    BriefValue value = check.value();
    if (!(check.finding() instanceof Finding.Estimate estimate)) {
      return label(value) + " is not determined";
    }
    String is = label(value) + " is " + shown(estimate.value(), value.unit());
    BriefWindow window = value.window();
    boolean high = window.upper().isPresent() && estimate.upper95() > window.upper().getAsDouble();
    String limit =
        high
            ? shown(window.upper().getAsDouble(), value.unit()) + " at most"
            : shown(window.lower().orElse(0), value.unit()) + " at least";
    return is
        + (check.decision() == Decision.FAIL
            ? ", allowed " + limit
            : ", its interval crosses the limit, " + limit);
  }

  /** Returns a value's symbol, or its name if it has none. */
  static String label(BriefValue value) {
    return Lettering.clean(value.symbol().isBlank() ? value.name() : value.symbol());
  }

  /** Returns the symbol of a key, or the key itself if the brief does not know it. */
  String label(String key) {
    return brief.value(key).map(SampleTexts::label).orElse(key);
  }

  /** Returns a number (SI) as people read it, with its unit. */
  static String shown(double value, BriefUnit unit) {
    String number = number(value, unit);
    return unit == BriefUnit.ONE ? number : number + " " + unit.shown();
  }

  /** Returns a number (SI) as people read it, without its unit. */
  static String number(double value, BriefUnit unit) {
    return unit == BriefUnit.DECIBEL
        ? Figures.decibelNumber(value)
        : Figures.number(unit.toShown(value));
  }

  /** Returns a number (SI) of a key, with its unit. */
  String shown(String key, double value) {
    return shown(value, brief.value(key).map(BriefValue::unit).orElse(BriefUnit.ONE));
  }

  /** Returns a window as text, without unit. */
  static String window(BriefValue value) {
    OptionalDouble lower = value.window().lower();
    OptionalDouble upper = value.window().upper();
    if (lower.isEmpty() && upper.isEmpty()) {
      return "for information";
    }
    if (lower.isEmpty()) {
      return "to " + number(upper.getAsDouble(), value.unit());
    }
    return upper.isEmpty()
        ? "from " + number(lower.getAsDouble(), value.unit())
        : number(lower.getAsDouble(), value.unit())
            + " .. "
            + number(upper.getAsDouble(), value.unit());
  }

  /** Returns the interval of a finding as text, without unit. */
  static String interval(ValueCheck check) {
    BriefUnit unit = check.value().unit();
    return check.finding() instanceof Finding.Estimate estimate
        ? number(estimate.lower95(), unit) + " .. " + number(estimate.upper95(), unit)
        : "";
  }

  /** Returns the decision on a value in words. */
  static String decision(ValueCheck check) {
    return check.value().window().limits() ? check.decision().words() : "-";
  }

  /** Returns what a maker is asked for, in one sentence. */
  String inShort(ChangeRequest request) {
    if (!request.asksForSomething()) {
      return request.stillOutside().isEmpty()
          ? "No lever helps: the samples scatter round the target; ask for less scatter."
          : "No lever that is free helps.";
    }
    return "Ask for: "
        + request.rows().stream()
            .map(row -> amount(row.lever(), request))
            .collect(Collectors.joining("; "))
        + ".";
  }

  /** Returns what is left outside after the change, and what it does to the grade. */
  String promise(ChangeRequest request) {
    String rest =
        request.stillOutside().isEmpty()
            ? "Then every window that the bench can tell is met"
            : "Still outside after that: "
                + request.stillOutside().stream()
                    .map(this::label)
                    .collect(Collectors.joining(", "));
    return rest
        + "; the grade goes from "
        + grade(request.gradeBefore())
        + " to "
        + grade(request.gradeAfter())
        + " (less is better).";
  }

  private static String grade(Grade grade) {
    return Figures.decibels(grade.costDb())
        + (grade.feasible()
            ? ""
            : " with constraints broken by " + Figures.number(grade.violation()));
  }

  /** Returns by how much a lever is to be moved. */
  String amount(Lever lever, ChangeRequest request) {
    Change change = request.change();
    return switch (lever) {
      case MASS ->
          (change.massKg() > 0 ? "add " : "take away ")
              + Figures.grams(Math.abs(change.massKg()))
              + " of moving mass beside the coil";
      case STIFFNESS ->
          percent(change.stiffnessShare())
              + (change.stiffnessShare() > 0 ? " stiffer" : " softer")
              + " suspension";
      case FLUX ->
          percent(change.fluxShare())
              + (change.fluxShare() > 0 ? " more" : " less")
              + " flux in the gap";
      case WINDING -> winding(change.winding().orElseThrow());
      case REST_POSITION ->
          "move the coil's rest position "
              + Figures.millimetres(Math.abs(change.restMoveM()))
              + (change.restMoveM() > 0 ? " outwards" : " inwards");
    };
  }

  /** Returns from what to what a lever moves; empty where the request says so already. */
  String fromTo(Lever lever, ChangeRequest request) {
    return switch (lever) {
      case MASS -> ", " + fromTo("moving-mass", request, lever);
      case STIFFNESS -> ", " + fromTo("kms", request, lever);
      case FLUX -> ", " + fromTo("bl", request, lever);
      case WINDING -> ", " + fromTo("re", request, lever);
      case REST_POSITION -> "";
    };
  }

  private String fromTo(String key, ChangeRequest request, Lever lever) {
    Woofer alone = request.expected().only(lever).applyTo(request.woofer());
    double after =
        switch (lever) {
          case MASS -> alone.bareMassKg();
          case STIFFNESS -> alone.stiffnessNPerM();
          case FLUX -> alone.forceFactorTm();
          default -> alone.resistanceOhm();
        };
    double before = request.before().getOrDefault(key, Double.NaN);
    return (request.response().knows(lever) ? "which should bring " : "")
        + label(key)
        + " from "
        + shown(key, before)
        + " to "
        + shown(key, after);
  }

  private static String percent(double share) {
    return Math.round(100 * Math.abs(share)) + " %";
  }

  private static String winding(Change.Rewound rewound) {
    return "wind "
        + coil(rewound.to().coil())
        + " instead of "
        + coil(rewound.from().coil())
        + " (height "
        + Figures.millimetres(rewound.to().coil().windingHeightM())
        + ")";
  }

  private static String coil(RoundWireCoil coil) {
    return FiniteText.of(
        "%d layers of %d turns, %.3f mm wire",
        coil.layers(), coil.turns() / coil.layers(), 1e3 * coil.bareDiameterM());
  }

  /** Returns why a lever is moved. */
  String why(RequestRow row, ChangeRequest request) {
    String learned =
        request.response().knows(row.lever())
            ? " Of what was asked before, "
                + Math.round(100 * request.response().used(row.lever()))
                + " % came; the amount allows for that."
            : "";
    if (row.why().isEmpty()) {
      return "Makes up for what the other changes do." + learned;
    }
    List<String> parts = new ArrayList<>();
    for (String key : row.why()) {
      double was = request.before().getOrDefault(key, Double.NaN);
      double target =
          brief.value(key).map(BriefValue::target).orElse(OptionalDouble.empty()).orElse(was);
      String side = was > target ? "high" : "low";
      parts.add(
          label(key)
              + (brief.window(key).accepts(was)
                  ? " is near its " + ("high".equals(side) ? "upper" : "lower") + " limit"
                  : " is too " + side));
    }
    return String.join(", ", parts) + "." + learned;
  }

  /** Returns what a lever does by itself. */
  static String effect(RequestRow row) {
    List<String> parts = new ArrayList<>();
    parts.add("fs " + Figures.hertz(row.resonanceHz()));
    parts.add("Qts " + Figures.number(row.totalQ()));
    parts.add(
        Math.abs(row.levelDb()) < UNSEEN_DB
            ? "level as before"
            : "level " + Figures.signedDecibels(row.levelDb()));
    parts.add(
        Math.abs(row.travelM()) < UNSEEN_M
            ? "travel as before"
            : "travel " + (row.travelM() > 0 ? "+" : "") + Figures.millimetres(row.travelM()));
    return String.join(", ", parts);
  }

  /** Returns what has a window but was not measured here. */
  String notMeasured(SampleResult sample) {
    return sample.notMeasured().isEmpty()
        ? ""
        : "Not told by a sweep, and not judged here: "
            + sample.notMeasured().stream().map(this::named).collect(Collectors.joining("; "))
            + ".";
  }

  private String named(String key) {
    return brief.value(key).map(value -> Lettering.clean(value.name())).orElse(key);
  }
}
