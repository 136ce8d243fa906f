package nullplane.io;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.driver.Cause;
import nullplane.driver.CoilInductance;
import nullplane.driver.CompletedSet;
import nullplane.driver.Completion;
import nullplane.driver.Contradiction;
import nullplane.driver.Datasheet;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.StatedSet;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Reads the keys of one woofer. Any figures will do from which the others follow; see {@link
 * Completion}. Figures that contradict the rest are told with the data and are no faults, unless
 * what is left does not settle the woofer.
 */
final class WooferSheet {
  static final String EXAMPLE =
      "name: Sample 12A, effective-diameter: 260 mm, re: 5.6 ohm, fs: 31 Hz, qms: 5.2, qes: 0.85,"
          + " mms: 78 g, travel: 8 mm, one on each line";
  static final List<String> KEYS =
      List.of(
          "name",
          "nominal",
          "effective-diameter",
          "sd",
          "re",
          "fs",
          "qms",
          "qes",
          "qts",
          "bl",
          "mms",
          "moving-mass",
          "mounting",
          "travel",
          "le",
          "power",
          "cms",
          "kms",
          "rms",
          "vas",
          "eta0",
          "level-1w",
          "level-2v83",
          "vd",
          "coil-height",
          "gap-height",
          "l2",
          "r2",
          "semi-inductance",
          "semi-exponent");

  private static final double INDUCTANCE_AT_HZ = 1000;

  private final Section section;
  private final Air air = Air.standard();

  WooferSheet(Section section) {
    this.section = section;
  }

  /**
   * Returns the data as far as they go, or nothing when the mounting is at fault. Adds a fault for
   * each value that cannot be read.
   *
   * @param fallbackName the name of a woofer that states none
   */
  Optional<Datasheet> data(String fallbackName) {
    String name = section.optionalText("name", "Sample 12A").orElse(fallbackName);
    OptionalDouble nominal = section.optional(WooferKeys.NOMINAL);
    Optional<Mounting> mounting = mounting();
    StatedSet stated = StatedSet.in(mounting.orElse(Mounting.FREE_AIR));
    if (nominal.isPresent()) {
      stated = stated.withNominal(nominal.getAsDouble());
    }
    for (Map.Entry<Parameter, QuantityKey> figure : WooferFigures.KEYS.entrySet()) {
      OptionalDouble value = section.optional(figure.getValue());
      if (value.isPresent()) {
        double rounding = rounding(figure.getKey(), figure.getValue(), value.getAsDouble());
        stated = stated.with(figure.getKey(), value.getAsDouble(), rounding);
      }
    }
    OptionalDouble overhang = overhang();
    if (overhang.isPresent()) {
      stated = stated.with(Parameter.GEOMETRIC_TRAVEL, overhang.getAsDouble());
    }
    checkPiston(nominal, stated);
    Optional<CoilInductance> inductance = inductance();
    OptionalDouble power = section.optional(WooferKeys.POWER);
    if (mounting.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Datasheet.of(name, nominal, Completion.of(stated, air), inductance, power, air));
  }

  /** Returns half of the last digit written, as a share of the value; in dB for levels. */
  private double rounding(Parameter parameter, QuantityKey key, double value) {
    double share =
        section
            .node(key.name())
            .map(
                node ->
                    node instanceof YamlNode.Scalar scalar ? Quantity.rounding(scalar.text()) : 0.0)
            .orElse(0.0);
    return parameter.level() ? share * Math.abs(value) : share;
  }

  private void checkPiston(OptionalDouble nominal, StatedSet stated) {
    OptionalDouble area = stated.value(Parameter.AREA);
    if (area.isPresent()) {
      WooferKeys.checkPiston(section, "sd", nominal, diameter(area.getAsDouble()));
    }
    WooferKeys.checkPiston(
        section, "effective-diameter", nominal, stated.value(Parameter.DIAMETER));
  }

  private static OptionalDouble diameter(double areaM2) {
    return OptionalDouble.of(2 * Math.sqrt(areaM2 / Math.PI));
  }

  /** Adds a fault for everything that no key of the sheet, readable or not, settles. */
  void requireAll() {
    Set<Parameter> there = EnumSet.noneOf(Parameter.class);
    WooferFigures.KEYS.forEach(
        (parameter, key) -> {
          if (section.has(key.name())) {
            there.add(parameter);
          }
        });
    Completion.gaps(there).forEach(gap -> WooferFigures.missing(section, gap));
    if (!section.has("travel") && !section.has("vd") && !section.has("coil-height")) {
      section.required(WooferKeys.TRAVEL);
    }
  }

  /** Returns the woofer of the data; nothing, with a fault, if they do not settle one. */
  Optional<Woofer> woofer(Datasheet data) {
    CompletedSet completed = data.completed();
    if (!completed.settled()) {
      completed.contradictions().forEach(this::impossible);
      if (completed.contradictions().isEmpty()) {
        atLimit(completed);
      }
      return Optional.empty();
    }
    OptionalDouble travel = completed.value(Parameter.TRAVEL);
    if (travel.isEmpty()) {
      section.required(WooferKeys.TRAVEL);
      return Optional.empty();
    }
    double areaM2 = completed.value(Parameter.AREA).orElseThrow();
    double nominalM = data.nominalM().orElse(SizeDefaults.nominalForArea(areaM2));
    SizeDefaults usual = SizeDefaults.of(nominalM, diameter(areaM2).getAsDouble());
    return Optional.of(
        completed.woofer(
            data.name(),
            nominalM,
            data.inductance()
                .map(coil -> coil.inductanceAt(INDUCTANCE_AT_HZ))
                .orElse(usual.inductanceH()),
            travel.getAsDouble(),
            data.powerW().orElse(usual.powerW())));
  }

  /** Adds the fault of a figure that leaves the woofer open and cannot be right. */
  private void impossible(Contradiction contradiction) {
    Parameter parameter = contradiction.parameter();
    String key = WooferFigures.name(parameter);
    if (contradiction.cause().kind() != Cause.Kind.IMPOSSIBLE || contradiction.found().isEmpty()) {
      section.fault(
          key,
          "this contradicts the rest: " + contradiction.cause().sentence(),
          "what agrees with the rest",
          "check this value and the others");
      return;
    }
    double limit = contradiction.found().getAsDouble();
    if (parameter == Parameter.TOTAL_Q) {
      totalQ(limit);
      return;
    }
    String grams = Quantity.digits(limit * 1e3) + " g";
    if (parameter == Parameter.MOVING_MASS) {
      section.fault(
          key,
          "the mass with air is not more than the air alone, which is "
              + grams
              + " for this piston and mounting",
          "above " + grams,
          "write a mass without air as moving-mass");
    } else {
      section.fault(
          key,
          "the mass without air is more than that with air, which is " + grams,
          "below " + grams,
          "check both masses");
    }
  }

  private void totalQ(double limit) {
    boolean mechanical = section.has("qms");
    section.fault(
        "qts",
        "Qts must lie below the "
            + (mechanical ? "Qms" : "Qes")
            + " that "
            + (mechanical ? "qms" : section.has("qes") ? "qes" : "the rest")
            + " gives",
        "below " + Quantity.digits(limit),
        "check both values");
  }

  /** Adds the faults of a sheet whose figures suffice but for their rounding. */
  private void atLimit(CompletedSet completed) {
    OptionalDouble q = completed.value(Parameter.ELECTRICAL_Q);
    if (q.isEmpty()) {
      q = completed.value(Parameter.MECHANICAL_Q);
    }
    if (section.has("qts") && q.isPresent()) {
      totalQ(q.getAsDouble());
    } else {
      completed.gaps().forEach(gap -> WooferFigures.missing(section, gap));
    }
  }

  private Optional<Mounting> mounting() {
    Optional<YamlNode> node = section.node("mounting");
    if (node.isEmpty()) {
      return Optional.of(Mounting.FREE_AIR);
    }
    if (node.orElseThrow() instanceof YamlNode.Scalar scalar) {
      switch (scalar.text().strip()) {
        case "free-air" -> {
          return Optional.of(Mounting.FREE_AIR);
        }
        case "infinite-baffle" -> {
          return Optional.of(Mounting.INFINITE_BAFFLE);
        }
        default -> {}
      }
    }
    section.fault(
        "mounting", "unknown mounting", "free-air, infinite-baffle", "write mounting: free-air");
    return Optional.empty();
  }

  /** Returns the travel that the heights of coil and gap give, one way (m). */
  private OptionalDouble overhang() {
    OptionalDouble coil = section.optional(WooferKeys.COIL_HEIGHT);
    OptionalDouble gap = section.optional(WooferKeys.GAP_HEIGHT);
    if (!section.has("coil-height")) {
      return OptionalDouble.empty();
    }
    if (!section.has("gap-height")) {
      section.required(WooferKeys.GAP_HEIGHT);
    }
    if (coil.isEmpty() || gap.isEmpty()) {
      return OptionalDouble.empty();
    }
    double travel = Math.abs(coil.getAsDouble() - gap.getAsDouble()) / 2;
    if (travel > 0) {
      return OptionalDouble.of(travel);
    }
    section.fault(
        "coil-height",
        "coil and gap of one height leave no travel",
        "another height than gap-height",
        WooferKeys.COIL_HEIGHT.write());
    return OptionalDouble.empty();
  }

  private Optional<CoilInductance> inductance() {
    OptionalDouble le = section.optional(WooferKeys.LE);
    OptionalDouble second = section.optional(WooferKeys.SECOND_INDUCTANCE);
    OptionalDouble shunt = section.optional(WooferKeys.SHUNT);
    OptionalDouble semi = section.optional(WooferKeys.SEMI_INDUCTANCE);
    OptionalDouble exponent = section.optional(WooferKeys.SEMI_EXPONENT);
    if (section.has("semi-inductance") || section.has("semi-exponent")) {
      if (section.has("le") || section.has("l2") || section.has("r2")) {
        section.fault(
            "semi-inductance",
            "the coil is described twice",
            "either le, l2, r2 or semi-inductance, semi-exponent",
            "leave one of them out");
      } else if (!section.has("semi-inductance")) {
        section.required(WooferKeys.SEMI_INDUCTANCE);
      } else if (!section.has("semi-exponent")) {
        section.required(WooferKeys.SEMI_EXPONENT);
      } else if (semi.isPresent() && exponent.isPresent()) {
        return Optional.of(
            CoilInductance.SemiInductance.ofModulus(
                semi.getAsDouble(), INDUCTANCE_AT_HZ, exponent.getAsDouble()));
      }
      return Optional.empty();
    }
    if (section.has("l2") != section.has("r2")) {
      section.required(section.has("l2") ? WooferKeys.SHUNT : WooferKeys.SECOND_INDUCTANCE);
      return Optional.empty();
    }
    if (second.isPresent() && shunt.isPresent()) {
      return Optional.of(
          new CoilInductance.WithEddyCurrents(
              le.orElse(0), second.getAsDouble(), shunt.getAsDouble()));
    }
    return le.isPresent()
        ? Optional.of(new CoilInductance.Plain(le.getAsDouble()))
        : Optional.empty();
  }
}
