package nullplane.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.driver.Agreement;
import nullplane.driver.Cause;
import nullplane.driver.CoilInductance;
import nullplane.driver.CompletedSet;
import nullplane.driver.CompletedValue;
import nullplane.driver.Contradiction;
import nullplane.driver.Datasheet;
import nullplane.driver.Gap;
import nullplane.driver.LoadedResonance;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.Route;

/** What a data sheet's page and its terminal text both say: sentences and cells. */
final class DatasheetTexts {
  /** How figures follow the order people read them in. */
  private static final List<Parameter> READING_ORDER =
      List.of(
          Parameter.RESONANCE,
          Parameter.MECHANICAL_Q,
          Parameter.ELECTRICAL_Q,
          Parameter.TOTAL_Q,
          Parameter.BARE_MASS,
          Parameter.MOVING_MASS,
          Parameter.COMPLIANCE,
          Parameter.STIFFNESS,
          Parameter.LOSS,
          Parameter.FORCE_FACTOR,
          Parameter.RESISTANCE,
          Parameter.DIAMETER,
          Parameter.AREA,
          Parameter.VOLUME,
          Parameter.EFFICIENCY,
          Parameter.LEVEL_ONE_WATT,
          Parameter.LEVEL_VOLTAGE,
          Parameter.TRAVEL,
          Parameter.DISPLACEMENT);

  private static final int MOST_NAMED = 4;

  private final Datasheet sheet;
  private final CompletedSet set;

  DatasheetTexts(Datasheet sheet) {
    this.sheet = sheet;
    this.set = sheet.completed();
  }

  /** Returns the verdict in one or two sentences. */
  String verdict() {
    int wrong = set.contradictions().size();
    String open =
        set.settled() ? "" : " It does not settle the woofer: " + set.gaps().size() + " missing.";
    if (wrong > 0) {
      return "The sheet contradicts itself in "
          + wrong
          + (wrong == 1 ? " figure: " : " figures: ")
          + Route.symbols(set.contradictions().stream().map(Contradiction::parameter).toList())
          + "."
          + open;
    }
    if (set.agreements().isEmpty()) {
      return "Nothing in the sheet contradicts anything: no figure is stated twice over." + open;
    }
    Agreement worst =
        set.agreements().stream()
            .max(
                Comparator.comparingDouble(
                    found -> Math.abs(found.deviation() / found.tolerance())))
            .orElseThrow();
    int count = set.agreements().size();
    return "The sheet agrees with itself: "
        + count
        + (count == 1 ? " figure is" : " figures are")
        + " stated twice over, farthest apart is "
        + worst.parameter().symbol()
        + " by "
        + deviation(worst.parameter(), worst.deviation())
        + "."
        + open;
  }

  /** Returns each contradiction: what is stated, what the rest gives and how, what went wrong. */
  List<String> contradictions() {
    return set.contradictions().stream().map(this::sentence).toList();
  }

  private String sentence(Contradiction found) {
    Parameter parameter = found.parameter();
    String start = parameter.symbol() + " is stated as " + value(parameter, found.stated());
    if (found.found().isEmpty()) {
      return start + "; " + found.cause().sentence() + ". Check it and the others.";
    }
    String given = value(parameter, found.found().getAsDouble());
    if (found.cause().kind() == Cause.Kind.IMPOSSIBLE) {
      return start + ", the limit is " + given + "; " + found.cause().sentence() + ".";
    }
    return start
        + ", the rest gives "
        + given
        + ": "
        + deviation(parameter, found.deviation().orElse(0))
        + ", allowed "
        + allowed(parameter, found.tolerance())
        + ". Likely cause: "
        + found.cause().sentence()
        + ". The rest: "
        + found.route().words()
        + ". If the cause is another, look at "
        + Route.symbols(found.against())
        + " too.";
  }

  /** Returns what is missing, the easiest way out first. */
  List<String> gaps() {
    return set.gaps().stream().map(DatasheetTexts::sentence).toList();
  }

  private static String sentence(Gap gap) {
    List<String> instead = gap.instead().stream().limit(MOST_NAMED).map(Parameter::symbol).toList();
    return gap.cheapest().symbol()
        + ", "
        + gap.cheapest().words()
        + ": "
        + measured(gap.cheapest())
        + (instead.isEmpty() ? "." : ". Instead: " + String.join(" or ", instead) + ".");
  }

  private static String measured(Parameter parameter) {
    return switch (parameter) {
      case DIAMETER, AREA -> "measure from mid-surround to mid-surround with a ruler";
      case RESISTANCE -> "measure the cold coil with an ohmmeter";
      case RESONANCE, MECHANICAL_Q, ELECTRICAL_Q, TOTAL_Q ->
          "take it from an impedance sweep in free air";
      case MOVING_MASS, BARE_MASS -> "repeat the sweep with a known mass on the cone";
      default -> "ask the maker";
    };
  }

  /** Returns a row for each figure: symbol and words, value, unit, where it comes from. */
  List<List<String>> figures() {
    List<List<String>> rows = new ArrayList<>();
    for (Parameter parameter : READING_ORDER) {
      CompletedValue value = set.values().get(parameter);
      rows.add(
          List.of(
              parameter.symbol(),
              parameter.words(),
              value == null ? Figures.NOT_DETERMINED : number(parameter, value.value()),
              value == null ? "" : unit(parameter),
              value == null ? "" : origin(value)));
    }
    rows.add(inductance());
    rows.add(
        List.of(
            "P",
            "rated power",
            sheet.powerW().isPresent()
                ? Figures.number(sheet.powerW().getAsDouble())
                : Figures.NOT_DETERMINED,
            sheet.powerW().isPresent() ? "W" : "",
            sheet.powerW().isPresent() ? "stated" : ""));
    return rows;
  }

  private List<String> inductance() {
    if (sheet.inductance().isEmpty()) {
      return List.of("Le", "inductance at 1 kHz", Figures.NOT_DETERMINED, "", "");
    }
    CoilInductance coil = sheet.inductance().orElseThrow();
    String from =
        coil instanceof CoilInductance.Plain
            ? "stated"
            : coil instanceof CoilInductance.WithEddyCurrents ? "Le, L2 and R2" : "semi-inductance";
    return List.of(
        "Le", "inductance at 1 kHz", Figures.number(coil.inductanceAt(1000) * 1e3), "mH", from);
  }

  private String origin(CompletedValue value) {
    return switch (value.origin()) {
      case STATED -> "stated";
      case DERIVED -> "from " + from(value);
      case CORRECTED ->
          "not "
              + number(value.parameter(), set.stated().value(value.parameter()).orElseThrow())
              + "; from "
              + from(value);
    };
  }

  private static String from(CompletedValue value) {
    List<Route.Step> steps = value.route().steps();
    return Route.symbols(steps.get(steps.size() - 1).inputs());
  }

  /** Returns the formula of each derived figure. */
  List<String> formulas() {
    List<String> formulas = new ArrayList<>();
    for (Parameter parameter : READING_ORDER) {
      CompletedValue value = set.values().get(parameter);
      if (value != null && value.origin() != CompletedValue.Origin.STATED) {
        List<Route.Step> steps = value.route().steps();
        formulas.add(steps.get(steps.size() - 1).words() + ".");
      }
    }
    return formulas;
  }

  /** Returns a row for each mounting: its name, air, Mms, fs, Qms, Qes, Qts. */
  List<List<String>> mountings() {
    List<List<String>> rows = new ArrayList<>();
    for (Datasheet.InMounting mounting : sheet.mountings()) {
      LoadedResonance figures = mounting.figures();
      rows.add(
          List.of(
              mounting.mounting(),
              Figures.number(figures.airMassKg() * 1e3),
              Figures.number(figures.movingMassKg() * 1e3),
              Figures.number(figures.resonanceHz()),
              Figures.number(figures.mechanicalQ()),
              Figures.number(figures.electricalQ()),
              Figures.number(figures.totalQ())));
    }
    return rows;
  }

  /** Returns what the stated fs, quality factors and Mms hold for. */
  String heldFor() {
    return "Figures for "
        + (set.stated().mounting() == Mounting.FREE_AIR ? "free air" : "an infinite baffle")
        + "; levels for half space.";
  }

  private static String value(Parameter parameter, double si) {
    return parameter.level()
        ? Figures.decibels(si)
        : (number(parameter, si) + " " + unit(parameter)).strip();
  }

  private static String deviation(Parameter parameter, double deviation) {
    if (parameter.level()) {
      return Figures.signedDecibels(deviation);
    }
    if (Math.abs(deviation) >= 1) {
      return "a factor of " + Figures.number(1 + deviation);
    }
    String percent = Figures.percent(deviation);
    return deviation > 0 ? "+" + percent : percent;
  }

  private static String allowed(Parameter parameter, double tolerance) {
    return parameter.level() ? Figures.decibels(tolerance) : Figures.percent(tolerance);
  }

  private static String number(Parameter parameter, double si) {
    return parameter.level() ? Figures.decibelNumber(si) : Figures.number(si * scale(parameter));
  }

  private static double scale(Parameter parameter) {
    return switch (parameter) {
      case AREA -> 1e4;
      case DIAMETER, BARE_MASS, MOVING_MASS, COMPLIANCE, VOLUME, TRAVEL, GEOMETRIC_TRAVEL -> 1e3;
      case EFFICIENCY -> 100;
      case DISPLACEMENT -> 1e6;
      default -> 1;
    };
  }

  private static String unit(Parameter parameter) {
    return switch (parameter) {
      case AREA -> "cm2";
      case DIAMETER, TRAVEL, GEOMETRIC_TRAVEL -> "mm";
      case BARE_MASS, MOVING_MASS -> "g";
      case COMPLIANCE -> "mm/N";
      case VOLUME -> "l";
      case EFFICIENCY -> "%";
      case DISPLACEMENT -> "cm3";
      case MECHANICAL_Q, ELECTRICAL_Q, TOTAL_Q -> "";
      default -> parameter.unit();
    };
  }
}
