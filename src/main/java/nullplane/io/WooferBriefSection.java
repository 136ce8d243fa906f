package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.motor.CoilBrief;
import nullplane.scoring.WooferBrief;
import nullplane.units.Range;

/** Reads the woofer of a spec: what is fixed and what the search may choose. */
final class WooferBriefSection {
  static final String EXAMPLE = "{nominal: 300 mm, effective-diameter: 260 mm}";
  static final List<String> KEYS =
      List.of(
          "nominal",
          "effective-diameter",
          "range",
          "re",
          "le",
          "qms",
          "power",
          "flux",
          "gap-height",
          "magnet",
          "wire",
          "former");

  private static final List<String> RANGE_KEYS = List.of("fs", "qts", "moving-mass", "travel");
  private static final String RANGE_EXAMPLE = "{fs: 20 Hz .. 45 Hz, qts: 0.3 .. 1.5}";
  private static final QuantityKey FS = ranged(WooferKeys.FS, "20 Hz .. 45 Hz");
  private static final QuantityKey QTS = ranged(WooferKeys.QTS, "0.3 .. 1.5");
  private static final QuantityKey MASS = ranged(WooferKeys.MOVING_MASS, "40 g .. 110 g");
  private static final QuantityKey TRAVEL = ranged(WooferKeys.TRAVEL, "4 mm .. 14 mm");

  private WooferBriefSection() {}

  /** Returns the brief, or nothing when a value it needs is at fault. */
  static Optional<WooferBrief> read(Section section) {
    OptionalDouble nominal = section.required(WooferKeys.NOMINAL);
    OptionalDouble diameter = section.required(WooferKeys.EFFECTIVE_DIAMETER);
    WooferKeys.checkPiston(section, "effective-diameter", nominal, diameter);
    OptionalDouble inductance = section.optional(WooferKeys.LE);
    OptionalDouble mechanicalQ = section.optional(WooferKeys.QMS);
    OptionalDouble power = section.optional(WooferKeys.POWER);
    Optional<Section> range = section.optionalSection("range", RANGE_EXAMPLE, RANGE_KEYS);
    Optional<Range> fs = range.flatMap(r -> r.optionalRange(FS));
    Optional<Range> qts = range.flatMap(r -> r.optionalRange(QTS));
    Optional<Range> mass = range.flatMap(r -> r.optionalRange(MASS));
    Optional<Range> travel = range.flatMap(r -> r.optionalRange(TRAVEL));

    CoilBriefSection coil = new CoilBriefSection(section, range);
    Range totalQ = qts.orElse(SizeDefaults.TOTAL_Q);
    double qms = mechanicalQ.orElse(SizeDefaults.MECHANICAL_Q);
    boolean inOrder = checkQ(section, range, totalQ, qms);
    if (nominal.isEmpty() || diameter.isEmpty() || !inOrder) {
      return Optional.empty();
    }
    SizeDefaults usual = SizeDefaults.of(nominal.getAsDouble(), diameter.getAsDouble());
    Range oneWay = travel.orElse(usual.travelM());
    Optional<CoilBrief> brief = coil.brief(usual, oneWay);
    if (brief.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new WooferBrief(
            nominal.getAsDouble(),
            diameter.getAsDouble(),
            fs.orElse(usual.resonanceHz()),
            totalQ,
            mass.orElse(usual.bareMassKg()),
            oneWay,
            qms,
            inductance,
            power.orElse(usual.powerW()),
            brief.orElseThrow()));
  }

  private static boolean checkQ(
      Section section, Optional<Section> range, Range totalQ, double mechanicalQ) {
    if (totalQ.upper() < mechanicalQ) {
      return true;
    }
    String problem =
        "Qts may reach "
            + Quantity.digits(totalQ.upper())
            + " here, which no woofer can with Qms "
            + Quantity.digits(mechanicalQ);
    String allowed = "below Qms";
    String hint = "lower the upper end of range.qts, or raise qms";
    if (range.isPresent() && range.orElseThrow().has("qts")) {
      range.orElseThrow().fault("qts", problem, allowed, hint);
    } else {
      section.fault("qms", problem, "above the upper end of range.qts", hint);
    }
    return false;
  }

  private static QuantityKey ranged(QuantityKey key, String example) {
    return new QuantityKey(key.name(), key.dimension(), key.limits(), example);
  }
}
