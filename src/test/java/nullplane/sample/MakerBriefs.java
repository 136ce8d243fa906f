package nullplane.sample;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import nullplane.driver.Mounting;
import nullplane.driver.Woofer;
import nullplane.motor.Former;
import nullplane.motor.Insulation;
import nullplane.motor.StockWire;
import nullplane.motor.Winding;
import nullplane.units.Air;
import nullplane.units.ConductorMaterial;

/** Briefs of an invented 300 mm woofer with the windows that makers usually accept, for tests. */
final class MakerBriefs {
  static final Air AIR = Air.standard();
  static final double VOLTAGE_V = 2.83;

  /** Two layers of 0.28 mm wire on a 38 mm former, 70 turns each, in a gap of 8 mm. */
  static final Winding WINDING =
      Winding.of(
          Former.ofNominal(0.038),
          StockWire.all().stream().filter(w -> w.bareM() == 280 / 1e6).findFirst().orElseThrow(),
          Insulation.GRADE_1,
          ConductorMaterial.COPPER,
          2,
          70,
          0.008);

  static final Woofer WOOFER =
      Woofer.withResonance(
          new Woofer(
              "hall 300",
              0.3,
              0.0531,
              WINDING.resistanceOhm(),
              0.9e-3,
              0.060,
              1,
              1,
              1,
              WINDING.travelM(),
              150),
          32,
          5,
          0.8,
          Mounting.FREE_AIR,
          AIR);

  private MakerBriefs() {}

  /** A brief with the usual windows, with or without its winding. */
  static SampleBrief brief(boolean wound) {
    List<BriefValue> values = new ArrayList<>();
    for (BenchFigure figure : BenchFigure.values()) {
      double target = figure.of(WOOFER, AIR, VOLTAGE_V);
      values.add(
          value(
              figure.key(),
              target,
              CommonPractice.window(figure.key(), target).orElse(BriefWindow.NONE),
              "free air"));
    }
    values.add(value("rest-position", 0, BriefWindow.between(-0.5e-3, 0.5e-3, "usual"), "rest"));
    if (wound) {
      values.add(value("layers", WINDING.coil().layers(), BriefWindow.NONE, "whole"));
      values.add(value("turns", WINDING.coil().turns(), BriefWindow.NONE, "whole"));
      values.add(
          value(
              "wire-diameter",
              WINDING.coil().bareDiameterM(),
              BriefWindow.NONE,
              ConductorMaterial.COPPER.word()));
      values.add(
          value("winding-height", WINDING.coil().windingHeightM(), BriefWindow.NONE, "geometric"));
      values.add(value("gap-height", WINDING.gapHeightM(), BriefWindow.NONE, "top plate"));
      values.add(
          value("former-diameter", WINDING.former().insideDiameterM(), BriefWindow.NONE, "former"));
    }
    return new SampleBrief(
        "Village hall", "hall 300", 1, "0123456789abcdef", WOOFER, values, List.of());
  }

  /** A brief that asks for nothing but these windows. */
  static SampleBrief only(Map<String, BriefWindow> windows) {
    List<BriefValue> values = new ArrayList<>();
    windows.forEach((key, window) -> values.add(value(key, 0, window, "free air")));
    return new SampleBrief(
        "Village hall", "hall 300", 1, "0123456789abcdef", WOOFER, values, List.of());
  }

  /** A brief like another, of other values and stacks. */
  static SampleBrief with(
      SampleBrief brief, List<BriefValue> values, List<SampleBrief.StackParts> stacks) {
    return new SampleBrief(
        brief.title(),
        brief.name(),
        brief.rank(),
        brief.specDigest(),
        brief.woofer(),
        values,
        stacks);
  }

  /** A maker who goes one part of every way, learned in two rounds. */
  static MakerResponse going(double gain) {
    Map<Lever, LearnedGain> gains = new EnumMap<>(Lever.class);
    for (Lever lever : Lever.values()) {
      gains.put(lever, new LearnedGain(gain, 0.1, 2));
    }
    return new MakerResponse(gains);
  }

  private static BriefValue value(String key, double target, BriefWindow window, String condition) {
    return new BriefValue(
        BriefValue.Section.TARGET,
        key,
        "",
        key,
        BriefUnit.ONE,
        OptionalDouble.of(target),
        "",
        window,
        condition,
        "");
  }

  /** The brief's woofer with its parts off by ratios. */
  static Woofer off(double mass, double stiffness, double force, double resistance) {
    return new Woofer(
        "sample",
        WOOFER.nominalM(),
        WOOFER.effectiveAreaM2(),
        WOOFER.resistanceOhm() * resistance,
        WOOFER.inductanceH(),
        WOOFER.bareMassKg() * mass,
        WOOFER.stiffnessNPerM() * stiffness,
        WOOFER.lossNsPerM(),
        WOOFER.forceFactorTm() * force,
        WOOFER.travelM(),
        WOOFER.powerW());
  }
}
