package nullplane.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import nullplane.units.Air;

/**
 * Recomputes a ranked woofer of ranking.json from wire, gap and masses by formulas written down
 * here anew, and lists everything that disagrees or breaks a limit. It uses nothing of the program
 * but the air's density.
 *
 * <p>Sources: IEC 60028 (copper), geometry, L. Beranek and T. Mellow, Acoustics (2012), ch. 6, and
 * R. H. Small, J. Audio Eng. Soc. 20 (1972) 383; shares and clearances as the sheets state them.
 */
final class FeasibilityAudit {
  private static final double AGREEMENT = 1e-9;

  /** ISO 3, series R40, in micrometres. */
  private static final Set<Long> STOCK_UM =
      Set.of(
          100L, 106L, 112L, 118L, 125L, 132L, 140L, 150L, 160L, 170L, 180L, 190L, 200L, 212L, 224L,
          236L, 250L, 265L, 280L, 300L, 315L, 335L, 355L, 375L, 400L, 425L, 450L, 475L, 500L, 530L,
          560L, 600L);

  /** What a spec allows, lower end first; SI. */
  record Limits(
      double[] re,
      double[] fs,
      double[] qts,
      double[] bareMass,
      double[] travel,
      double[] flux,
      double[] stiffness,
      Set<Double> gaps,
      Set<Double> formers,
      double lowestLoad) {}

  private final List<String> faults = new ArrayList<>();
  private final String name;

  private FeasibilityAudit(String name) {
    this.name = name;
  }

  /** Returns what is wrong with a ranked woofer, in lines; empty if nothing is. */
  static List<String> faultsOf(JsonNode ranked, Limits limits) {
    FeasibilityAudit audit = new FeasibilityAudit(ranked.get("name").asText());
    audit.check(ranked, limits);
    return audit.faults;
  }

  private void check(JsonNode ranked, Limits limits) {
    JsonNode woofer = ranked.get("woofer");
    JsonNode motor = ranked.get("motor");
    JsonNode masses = ranked.get("masses");
    double wire = number(motor, "bareWireM");
    double pitch = number(motor, "insulatedWireM");
    int layers = motor.get("layers").asInt();
    int turns = motor.get("turnsPerLayer").asInt();
    double gap = number(motor, "gapHeightM");
    double former = number(motor, "formerDiameterM");
    double wall = number(motor, "formerWallM");
    double flux = number(motor, "fluxT");
    double area = number(woofer, "effectiveAreaM2");

    // wire and winding
    holds("stock wire", STOCK_UM.contains(Math.round(wire * 1e6)));
    holds("enamel", pitch > 1.05 * wire && pitch < 1.2 * wire);
    holds("wire is copper", motor.get("wire").asText().equals("copper"));
    holds("even layers", layers == 2 || layers == 4);
    holds("gap on offer", limits.gaps().contains(gap));
    holds("former on offer", limits.formers().contains(former));
    double mean = former + 2 * wall + layers * pitch;
    double height = turns * pitch;
    double length = Math.PI * mean * layers * turns;
    double section = Math.PI / 4 * wire * wire;
    double re = 1.7241e-8 * length / section;
    double travel = Math.abs(height - gap) / 2;
    double bl = flux * length * Math.min(1, gap / height);
    same("mean diameter", mean, number(motor, "meanDiameterM"));
    same("winding height", height, number(motor, "windingHeightM"));
    same("wire length", length, number(motor, "wireLengthM"));
    same("Re", re, number(woofer, "reOhm"));
    same("travel", travel, number(woofer, "travelM"));
    same("Bl", bl, number(woofer, "blTm"));

    // masses
    double coil = 8890 * section * length + 1400 * (Math.PI / 4 * pitch * pitch - section) * length;
    double formerMass = 1800 * Math.PI * (former + wall) * wall * (height + travel + 0.015);
    same("coil mass", coil, number(masses, "coilKg"));
    same("former mass", formerMass, number(masses, "formerKg"));
    same("surround share", 0.07 * area, number(masses, "surroundShareKg"));
    same("spider share", 0.03 * area, number(masses, "spiderShareKg"));
    same("glue", 0.02 * area, number(masses, "glueKg"));
    double bare = number(woofer, "movingMassKg");
    double cone = bare - coil - formerMass - 0.12 * area;
    same("cone mass", cone, number(masses, "coneKg"));
    holds("cone can be made", cone >= 0.27 * area);

    // small signal set in free air
    double radius = Math.sqrt(area / Math.PI);
    double mms = bare + 8.0 / 3 * Air.standard().densityKgPerM3() * radius * radius * radius;
    double kms = number(woofer, "kmsNPerM");
    double omega = Math.sqrt(kms / mms);
    double qms = omega * mms / number(woofer, "rmsNsPerM");
    double qes = omega * mms * re / (bl * bl);
    double qts = qms * qes / (qms + qes);
    JsonNode set = ranked.get("freeAir");
    same("fs", omega / (2 * Math.PI), number(set, "fsHz"));
    same("Qms", qms, number(set, "qms"));
    same("Qts", qts, number(set, "qts"));
    same("Mms", mms, number(set, "mmsKg"));

    // magnet and steel
    double pole = former - 2 * 0.25e-3;
    double opening = mean + layers * pitch + 2 * 0.35e-3;
    double gapVolume = Math.PI / 4 * (opening * opening - pole * pole) * gap;
    double energy = flux * flux * gapVolume / (2 * 1.25663706212e-6);
    double magnet = 2 * energy / (0.4 * 28e3);
    double gapFlux = flux * Math.PI * (opening + pole) / 2 * gap;
    double poleFlux = 1.4 * gapFlux / (0.9 * Math.PI / 4 * pole * pole);
    same("gap volume", gapVolume, number(motor, "gapVolumeM3"));
    same("gap energy", energy, number(motor, "gapEnergyJ"));
    same("magnet volume", magnet, number(motor, "magnetVolumeM3"));
    same("magnet mass", 4900 * magnet, number(motor, "magnetMassKg"));
    same("pole flux", poleFlux, number(motor, "poleFluxT"));
    same(
        "room behind the plate",
        (height - gap) / 2 + 1.5e-3 + 1.4 * travel,
        number(motor, "rearRoomM"));
    holds("steel", poleFlux <= 1.7);

    // what the spec allows
    within("Re", re, limits.re());
    within("travel", travel, limits.travel());
    within("flux", flux, limits.flux());
    within("fs", omega / (2 * Math.PI), limits.fs());
    within("Qts", qts, limits.qts());
    within("bare mass", bare, limits.bareMass());
    within("Kms", kms, limits.stiffness());
    holds("feasible", ranked.get("feasible").asBoolean() && ranked.get("violations").isEmpty());
    for (JsonNode stack : ranked.get("stacks")) {
      JsonNode figures = stack.get("figures");
      holds("load", number(figures, "leastLoadOhm") >= limits.lowestLoad());
      holds("travel at the target's voltage", number(figures, "travelShare") <= 1);
    }
  }

  private static double number(JsonNode node, String key) {
    return node.get(key).doubleValue();
  }

  private void same(String what, double recomputed, double stated) {
    if (!(Math.abs(recomputed / stated - 1) <= AGREEMENT)) {
      faults.add(name + ": " + what + " is " + recomputed + ", stated as " + stated);
    }
  }

  private void within(String what, double value, double[] limits) {
    double slack = AGREEMENT * value;
    if (!(value >= limits[0] - slack && value <= limits[1] + slack)) {
      faults.add(
          name + ": " + what + " is " + value + ", allowed " + List.of(limits[0], limits[1]));
    }
  }

  private void holds(String what, boolean truth) {
    if (!truth) {
      faults.add(name + ": " + what + " does not hold");
    }
  }
}
