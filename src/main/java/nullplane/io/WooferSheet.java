package nullplane.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.units.Air;

/**
 * Reads the keys of one woofer. Sufficient: fs, Re, travel, one of sd and effective-diameter, one
 * of mms and moving-mass, and any two of qms, qes, qts, bl that settle both losses. Whatever is
 * given beyond that must agree with the rest.
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
          "power");

  /** How far two statements of one thing may lie apart (1): rounding on a printed sheet. */
  private static final double AREA_AGREES = 0.02;

  private static final double Q_AGREES = 0.10;
  private static final double MASS_AGREES = 0.05;

  private final Section section;
  private final Air air = Air.standard();

  WooferSheet(Section section) {
    this.section = section;
  }

  /**
   * Returns the woofer, or nothing when a value it needs is at fault.
   *
   * @param fallbackName the name of a woofer that states none
   */
  Optional<Woofer> read(String fallbackName) {
    String name = section.optionalText("name", "Sample 12A").orElse(fallbackName);
    OptionalDouble nominal = section.optional(WooferKeys.NOMINAL);
    OptionalDouble area = area(nominal);
    OptionalDouble resistance = section.required(WooferKeys.RE);
    OptionalDouble resonance = section.required(WooferKeys.FS);
    Optional<Mounting> mounting = mounting();
    OptionalDouble travel = section.required(WooferKeys.TRAVEL);
    OptionalDouble inductance = section.optional(WooferKeys.LE);
    OptionalDouble power = section.optional(WooferKeys.POWER);
    OptionalDouble bare = bareMass(area, mounting);
    Optional<Losses> losses = losses(bare, area, resistance, resonance, mounting);
    if (area.isEmpty()
        || resistance.isEmpty()
        || resonance.isEmpty()
        || mounting.isEmpty()
        || travel.isEmpty()
        || bare.isEmpty()
        || losses.isEmpty()) {
      return Optional.empty();
    }
    double areaM2 = area.getAsDouble();
    double nominalM = nominal.orElse(SizeDefaults.nominalForArea(areaM2));
    SizeDefaults usual = SizeDefaults.of(nominalM, diameter(areaM2));
    double unset = 1;
    Woofer shell =
        new Woofer(
            name,
            nominalM,
            areaM2,
            resistance.getAsDouble(),
            inductance.orElse(usual.inductanceH()),
            bare.getAsDouble(),
            unset,
            unset,
            unset,
            travel.getAsDouble(),
            power.orElse(usual.powerW()));
    return Optional.of(
        Woofer.withResonance(
            shell,
            resonance.getAsDouble(),
            losses.orElseThrow().mechanicalQ(),
            losses.orElseThrow().totalQ(),
            mounting.orElseThrow(),
            air));
  }

  private OptionalDouble area(OptionalDouble nominal) {
    boolean byDiameter = section.has("effective-diameter");
    boolean byArea = section.has("sd");
    OptionalDouble effective = section.optional(WooferKeys.EFFECTIVE_DIAMETER);
    OptionalDouble area = section.optional(WooferKeys.AREA);
    if (!byDiameter && !byArea) {
      section.fault(
          "effective-diameter",
          "the size of the piston is missing",
          "effective-diameter or sd",
          "write effective-diameter: 260 mm");
      return OptionalDouble.empty();
    }
    if (effective.isPresent() && area.isPresent()) {
      agree(
          "sd",
          area.getAsDouble() * 1e4,
          Math.PI / 4 * effective.getAsDouble() * effective.getAsDouble() * 1e4,
          AREA_AGREES,
          "cm2",
          "effective-diameter");
    }
    if (area.isEmpty() && effective.isPresent()) {
      double d = effective.getAsDouble();
      area = OptionalDouble.of(Math.PI * (d / 2) * (d / 2));
    }
    if (area.isPresent()) {
      WooferKeys.checkPiston(
          section,
          byArea ? "sd" : "effective-diameter",
          nominal,
          OptionalDouble.of(diameter(area.getAsDouble())));
    }
    return area;
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

  /** Returns the mass without air: stated, or Mms less the air of the mounting (kg). */
  private OptionalDouble bareMass(OptionalDouble area, Optional<Mounting> mounting) {
    OptionalDouble bare = section.optional(WooferKeys.MOVING_MASS);
    OptionalDouble total = section.optional(WooferKeys.MMS);
    if (!section.has("mms") && !section.has("moving-mass")) {
      section.fault(
          "mms",
          "the moving mass is missing",
          "mms (with air) or moving-mass (without)",
          "write mms: 78 g");
      return OptionalDouble.empty();
    }
    if (total.isEmpty() || area.isEmpty() || mounting.isEmpty()) {
      return bare;
    }
    double airKg = mounting.orElseThrow().airMassKg(diameter(area.getAsDouble()) / 2, air);
    double without = total.getAsDouble() - airKg;
    if (!(without > 0)) {
      section.fault(
          "mms",
          "the mass with air is not more than the air alone, which is "
              + Quantity.digits(airKg * 1e3)
              + " g for this piston and mounting",
          "above " + Quantity.digits(airKg * 1e3) + " g",
          "write a mass without air as moving-mass");
      return bare;
    }
    if (bare.isEmpty()) {
      return OptionalDouble.of(without);
    }
    agree(
        "mms",
        total.getAsDouble() * 1e3,
        (bare.getAsDouble() + airKg) * 1e3,
        MASS_AGREES,
        "g",
        "moving-mass and the air of the mounting");
    return bare;
  }

  /**
   * Returns Qms and Qts from what is given of qms, qes, qts and bl.
   *
   * <p>Source: Small 1972 (J. Audio Eng. Soc. 20(5) 383): 1/Qts = 1/Qms + 1/Qes, Qes = 2 pi fs Mms
   * Re/Bl^2.
   */
  private Optional<Losses> losses(
      OptionalDouble bare,
      OptionalDouble area,
      OptionalDouble resistance,
      OptionalDouble resonance,
      Optional<Mounting> mounting) {
    OptionalDouble qms = section.optional(WooferKeys.QMS);
    OptionalDouble qes = section.optional(WooferKeys.QES);
    OptionalDouble qts = section.optional(WooferKeys.QTS);
    OptionalDouble bl = section.optional(WooferKeys.BL);
    boolean electrical = section.has("qes") || section.has("bl");
    if (!electrical && !(section.has("qts") && section.has("qms"))) {
      section.fault(
          "qes",
          "the electrical losses are missing",
          "qes, or bl, or qts together with qms",
          "write qes: 0.85");
      return Optional.empty();
    }
    if (!section.has("qms") && !section.has("qts")) {
      section.fault("qms", "the mechanical losses are missing", "qms, or qts", "write qms: 5.2");
      return Optional.empty();
    }
    if (bl.isPresent()
        && bare.isPresent()
        && area.isPresent()
        && resistance.isPresent()
        && resonance.isPresent()
        && mounting.isPresent()) {
      double mass =
          bare.getAsDouble()
              + mounting.orElseThrow().airMassKg(diameter(area.getAsDouble()) / 2, air);
      double fromMotor =
          2
              * Math.PI
              * resonance.getAsDouble()
              * mass
              * resistance.getAsDouble()
              / (bl.getAsDouble() * bl.getAsDouble());
      if (qes.isPresent()) {
        agree("qes", qes.getAsDouble(), fromMotor, Q_AGREES, "", "bl, fs, re and the moving mass");
      } else {
        qes = OptionalDouble.of(fromMotor);
      }
    }
    return inOrder(qms, qes, qts);
  }

  private Optional<Losses> inOrder(OptionalDouble qms, OptionalDouble qes, OptionalDouble qts) {
    if (qms.isPresent() && qes.isPresent()) {
      double m = qms.getAsDouble();
      double e = qes.getAsDouble();
      double total = m * e / (m + e);
      if (qts.isPresent()) {
        agree("qts", qts.getAsDouble(), total, Q_AGREES, "", "qms and qes");
      }
      return Optional.of(new Losses(m, total));
    }
    if (qts.isEmpty()) {
      return Optional.empty();
    }
    double total = qts.getAsDouble();
    OptionalDouble other = qms.isPresent() ? qms : qes;
    String name = qms.isPresent() ? "qms" : section.has("qes") ? "qes" : "bl";
    if (other.isEmpty()) {
      return Optional.empty();
    }
    double part = other.getAsDouble();
    if (!(total < part)) {
      section.fault(
          "qts",
          "Qts must lie below the "
              + (qms.isPresent() ? "Qms" : "Qes")
              + " that "
              + name
              + " gives",
          "below " + Quantity.digits(part),
          "check both values");
      return Optional.empty();
    }
    double mechanical = qms.isPresent() ? part : part * total / (part - total);
    return Optional.of(new Losses(mechanical, total));
  }

  private void agree(
      String key, double stated, double found, double share, String unit, String route) {
    if (Math.abs(stated - found) > share * found) {
      section.fault(
          key,
          "this contradicts "
              + route
              + ", which give "
              + (Quantity.digits(found) + " " + unit).strip(),
          "within " + Quantity.digits(share * 100) + " %",
          "correct one of them, or leave one out");
    }
  }

  private static double diameter(double areaM2) {
    return 2 * Math.sqrt(areaM2 / Math.PI);
  }

  /** The quality factors that settle a woofer's losses. */
  private record Losses(double mechanicalQ, double totalQ) {}
}
