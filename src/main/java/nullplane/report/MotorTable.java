package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.driver.CoilBudget;
import nullplane.driver.RoundWireCoil;
import nullplane.driver.Woofer;
import nullplane.motor.CoilBrief;
import nullplane.motor.InductanceEstimate;
import nullplane.motor.MassBudget;
import nullplane.motor.MotorDesign;
import nullplane.motor.Ring;
import nullplane.motor.Winding;
import nullplane.scoring.Assessment;
import nullplane.scoring.WooferBrief;
import nullplane.units.Range;

/** The coil, the motor and the moving masses of a woofer, as tables of a sheet. */
final class MotorTable {
  private final Assessment assessment;
  private final WooferBrief brief;

  MotorTable(Assessment assessment, WooferBrief brief) {
    this.assessment = assessment;
    this.brief = brief;
  }

  /** Returns the tables, and what to ask the maker about. */
  List<Document.Block> blocks() {
    List<Document.Block> blocks = new ArrayList<>();
    if (assessment.motor().isEmpty()) {
      blocks.add(table("Item", needed(assessment.budget())));
      return blocks;
    }
    MotorDesign motor = assessment.motor().orElseThrow();
    blocks.add(table("Coil", coil(motor.winding())));
    blocks.add(table("Motor", motor(motor)));
    blocks.add(table("Moving mass", masses(assessment.masses().orElseThrow())));
    if (!motor.remarks().isEmpty()) {
      blocks.add(new Document.Bullets(motor.remarks()));
    }
    blocks.add(
        new Document.Paragraph(
            "The winding is one of stock wire that gives Re, Bl and travel together; another that"
                + " does is welcome. Clearances, leakage, magnet efficiency and the masses of parts"
                + " are common practice. Magnet and steel are first estimates; drawings are the"
                + " maker's."));
    return blocks;
  }

  private List<List<String>> needed(CoilBudget budget) {
    return List.of(
        List.of("Winding height, overhung", Figures.millimetres(budget.windingHeightM())),
        List.of("Tallest gap, given", Figures.millimetres(brief.coil().tallestGapM())),
        List.of("Wire mass needed", Figures.grams(budget.coilMassKg())),
        List.of("Left for cone, surround share and former", Figures.grams(budget.remainderKg())),
        List.of("Least needed for them", Figures.grams(budget.leastRemainderKg())),
        List.of("Short by", Figures.percent(budget.shortfall())));
  }

  private static List<List<String>> coil(Winding winding) {
    RoundWireCoil coil = winding.coil();
    return List.of(
        List.of("Former, inside diameter", Figures.millimetres(winding.former().insideDiameterM())),
        List.of(
            "Wire",
            coil.material().word()
                + ", "
                + micrometres(coil.bareDiameterM())
                + " bare, at most "
                + micrometres(coil.insulatedDiameterM())
                + " over enamel"),
        List.of("Layers", Integer.toString(coil.layers())),
        List.of("Turns per layer", Integer.toString(coil.turnsPerLayer())),
        List.of("Winding height", Figures.millimetres(coil.windingHeightM())),
        List.of("Wire length", Figures.metres(coil.wireLengthM())),
        List.of("Re", Figures.ohms(coil.resistanceOhm())),
        List.of(
            "Le expected without a ring", Figures.millihenries(InductanceEstimate.plainH(coil))),
        List.of(
            "Le expected with a ring", Figures.millihenries(InductanceEstimate.withRingH(coil))));
  }

  private static List<List<String>> motor(MotorDesign motor) {
    Winding winding = motor.winding();
    return List.of(
        List.of("Gap height", Figures.millimetres(winding.gapHeightM())),
        List.of("Gap width", Figures.millimetres(winding.gapWidthM())),
        List.of("Flux density in the gap", Figures.of(motor.fluxT(), "T")),
        List.of(
            "Travel, geometric, one way",
            Figures.millimetres(winding.travelM())
                + (winding.overhung() ? ", overhung" : ", underhung")),
        List.of("Room behind the top plate, at least", Figures.millimetres(motor.rearRoomM())),
        List.of("Energy in the gap", Figures.of(motor.gapEnergyJ(), "J")),
        List.of(
            "Magnet, about",
            Figures.of(motor.magnetVolumeM3() * 1e6, "cm\u00b3")
                + " or "
                + Figures.of(motor.magnetMassKg(), "kg")
                + " of "
                + motor.magnet().word()),
        List.of(
            "Flux density in the pole",
            Figures.of(motor.poleFluxT(), "T")
                + "; at most "
                + Figures.of(MotorDesign.STEEL_LIMIT_T, "T")),
        List.of("Back plate, at least", Figures.millimetres(motor.backPlateM())));
  }

  private static List<List<String>> masses(MassBudget masses) {
    return List.of(
        List.of(
            "Cone and dust cap: what is left",
            Figures.grams(masses.coneKg()) + "; at least " + Figures.grams(masses.leastConeKg())),
        List.of("Surround, moving half", Figures.grams(masses.surroundKg())),
        List.of("Spider, moving half", Figures.grams(masses.spiderKg())),
        List.of("Former", Figures.grams(masses.formerKg())),
        List.of("Glue and leads", Figures.grams(masses.glueKg())),
        List.of("Coil with enamel", Figures.grams(masses.coilKg())));
  }

  private static Document.Table table(String head, List<List<String>> rows) {
    return new Document.Table(List.of(head, "Value"), rows, List.of(false, true));
  }

  private static String micrometres(double lengthM) {
    return Math.round(lengthM * 1e6) / 1000.0 + " mm";
  }

  /** Returns a range in words, or its one value. */
  static String span(Range range, String unit) {
    return range.isPinned()
        ? Figures.of(range.lower(), unit)
        : Figures.number(range.lower()) + " to " + Figures.of(range.upper(), unit);
  }

  /** Says where Re comes from. */
  static String resistanceReason(WooferBrief brief, Optional<MotorDesign> motor) {
    if (motor.isEmpty()) {
      return "Given with the woofer.";
    }
    return "The winding's own; "
        + span(CoilBrief.windowOf(brief.coil().resistanceOhm()), "ohm")
        + " was allowed.";
  }

  /** Says where Le comes from and what the motor needs to show it. */
  static String inductanceReason(WooferBrief brief, Woofer woofer, Optional<MotorDesign> motor) {
    if (motor.isEmpty()) {
      return "Given with the woofer.";
    }
    RoundWireCoil coil = motor.orElseThrow().winding().coil();
    String estimate =
        " Expected of this coil: "
            + Figures.millihenries(InductanceEstimate.plainH(coil))
            + " in a plain motor, "
            + Figures.millihenries(InductanceEstimate.withRingH(coil))
            + " with a shorting ring, good to a third either way.";
    return brief.statedInductanceH().isPresent()
        ? "Given by the spec. It takes "
            + Ring.neededFor(woofer.inductanceH(), coil).words()
            + "."
            + estimate
        : "Estimated for a motor without a shorting ring." + estimate;
  }
}
