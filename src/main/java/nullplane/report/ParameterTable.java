package nullplane.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import nullplane.driver.Mounting;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.WooferBrief;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Range;

/**
 * Every parameter of a woofer with its value, unit, condition and reason.
 *
 * <p>Usual tolerances are common practice of the trade, not results. Conditions use the terms of
 * IEC 60268-5.
 */
final class ParameterTable {
  private static final String FREE_AIR = "free air, small signal, 20 \u00b0C, after break-in";
  private static final String GIVEN = "Given by the spec.";
  private static final String NO_USUAL = "as agreed";

  private final DesignSpec spec;
  private final Assessment assessment;
  private final Woofer woofer;
  private final SmallSignal freeAir;
  private final WooferBrief brief;
  private final Verdict verdict;
  private final List<List<String>> rows = new ArrayList<>();

  ParameterTable(DesignSpec spec, Assessment assessment, Verdict verdict) {
    this.spec = spec;
    this.assessment = assessment;
    this.verdict = verdict;
    woofer = assessment.woofer();
    freeAir = assessment.freeAir();
    brief = spec.woofer();
    resonance();
    motor();
    size();
    derived();
  }

  /** Returns every parameter with value, unit, usual tolerance and condition. */
  Document.Table values() {
    return new Document.Table(
        List.of("Symbol", "Quantity", "Value", "Unit", "Usual tolerance", "Condition"),
        rows.stream().map(row -> row.subList(0, 6)).toList(),
        List.of(false, false, true, false, false, false));
  }

  /** Returns every parameter with the reason for its value. */
  Document.Table reasons() {
    return new Document.Table(
        List.of("Symbol", "Quantity", "Value", "Unit", "Reason"),
        rows.stream()
            .map(row -> List.of(row.get(0), row.get(1), row.get(2), row.get(3), row.get(6)))
            .toList(),
        List.of(false, false, true, false, false));
  }

  /** Returns the reason of the first parameter with a symbol. */
  String reason(String symbol) {
    return rows.stream()
        .filter(row -> row.get(0).equals(symbol))
        .map(row -> row.get(6))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no parameter " + symbol));
  }

  private void resonance() {
    row(
        "fs",
        "resonance frequency",
        freeAir.resonanceHz(),
        "Hz",
        "\u00b110 to 15 %",
        FREE_AIR,
        resonanceReason());
    row(
        "Qts",
        "total Q factor",
        freeAir.totalQ(),
        "1",
        "\u00b115 %",
        FREE_AIR + ", source of 0 ohm",
        totalQReason());
    row(
        "Qes",
        "electrical Q factor",
        freeAir.electricalQ(),
        "1",
        "\u00b115 %",
        FREE_AIR + ", from Re alone",
        "Follows from Qts and Qms: 1/Qes = 1/Qts - 1/Qms.");
    row("Qms", "mechanical Q factor", freeAir.mechanicalQ(), "1", NO_USUAL, FREE_AIR, GIVEN);
    row(
        "Mmd",
        "moving mass, bare",
        woofer.bareMassKg() * 1e3,
        "g",
        "\u00b15 to 8 %",
        "without any air; this is what is built and weighed",
        massReason());
    row(
        "Mms",
        "moving mass with air",
        freeAir.movingMassKg() * 1e3,
        "g",
        "\u00b15 to 8 %",
        FREE_AIR,
        "Bare mass plus the air of a disc in free air, "
            + Figures.grams(freeAir.movingMassKg() - woofer.bareMassKg())
            + ".");
    row(
        "xmax",
        "travel, one way",
        woofer.travelM() * 1e3,
        "mm",
        "coil rest position \u00b10.5 mm",
        "peak, from the rest position, winding overhanging the gap",
        travelReason());
  }

  private void motor() {
    row(
        "Re",
        "coil resistance",
        woofer.resistanceOhm(),
        "ohm",
        "\u00b15 %",
        "direct current, 20 \u00b0C",
        MotorTable.resistanceReason(brief, assessment.motor())
            + " It keeps the least load at "
            + Figures.ohms(verdict.leastLoad().figures().leastLoadOhm())
            + ", in "
            + Verdict.stack(verdict.leastLoad())
            + "; "
            + Figures.ohms(spec.amplifier().lowestLoadOhm())
            + " is allowed.");
    row(
        "Bl",
        "force factor",
        woofer.forceFactorTm(),
        "T m",
        "\u00b15 to 7.5 %",
        "small signal, coil at rest position",
        "Follows from Qes, Mms and Re; its electrical damping Bl\u00b2/Re is "
            + Figures.of(
                woofer.forceFactorTm() * woofer.forceFactorTm() / woofer.resistanceOhm(), "N s/m")
            + ", which the coil of "
            + Figures.grams(assessment.budget().coilMassKg())
            + " gives at "
            + Figures.of(
                assessment.motor().map(MotorDesign::fluxT).orElse(brief.coil().fluxT().upper()),
                "T")
            + ".");
    row(
        "Kms",
        "suspension stiffness",
        woofer.stiffnessNPerM(),
        "N/m",
        NO_USUAL,
        "small signal, at rest position",
        "Follows from fs and Mms.");
    row(
        "Rms",
        "mechanical loss",
        woofer.lossNsPerM(),
        "N s/m",
        NO_USUAL,
        "small signal",
        "Follows from fs, Mms and Qms.");
    row(
        "Le",
        "coil inductance",
        woofer.inductanceH() * 1e3,
        "mH",
        NO_USUAL,
        "small signal, as one inductance in series with Re",
        MotorTable.inductanceReason(brief, woofer, assessment.motor()));
    row(
        "P",
        "rated power",
        woofer.powerW(),
        "W",
        NO_USUAL,
        "long term, as direct heat in the coil",
        powerReason());
  }

  private void size() {
    row("", "nominal size", woofer.nominalM() * 1e3, "mm", NO_USUAL, "frame size class", GIVEN);
    row(
        "Sd",
        "effective area",
        woofer.effectiveAreaM2() * 1e4,
        "cm\u00b2",
        NO_USUAL,
        "diameter "
            + Figures.millimetres(2 * woofer.radiusM())
            + ", between the middles of the surround",
        GIVEN);
  }

  private void derived() {
    row(
        "Vas",
        "equivalent volume of compliance",
        freeAir.equivalentVolumeM3() * 1e3,
        "l",
        "\u00b120 to 25 %",
        FREE_AIR,
        "Follows from Kms and Sd.");
    double halfSpace =
        SmallSignal.levelAtOneWatt(freeAir.referenceEfficiency(), Air.standard())
            + SmallSignal.levelOverOneWatt(spec.target().voltageV(), woofer.resistanceOhm());
    row(
        "L",
        "level at " + Charts.plain(spec.target().voltageV()) + " V",
        halfSpace,
        "dB re 20 \u00b5Pa",
        "\u00b11 dB",
        "half space, 1 m, mass-controlled band; not the level on a panel",
        "Follows from Bl, Sd, Mms and Re; for comparison with data sheets only.");
    SmallSignal baffle = SmallSignal.of(woofer, Mounting.INFINITE_BAFFLE, Air.standard());
    row(
        "fs",
        "resonance frequency, in a baffle",
        baffle.resonanceHz(),
        "Hz",
        NO_USUAL,
        "infinite baffle, small signal",
        "For makers who measure in a baffle: more air moves along, "
            + Figures.grams(baffle.movingMassKg() - woofer.bareMassKg())
            + " instead of "
            + Figures.grams(freeAir.movingMassKg() - woofer.bareMassKg())
            + ".");
    row(
        "Qts",
        "total Q factor, in a baffle",
        baffle.totalQ(),
        "1",
        NO_USUAL,
        "infinite baffle, small signal",
        "As above.");
  }

  private String resonanceReason() {
    StackAssessment lift = most(s -> Math.abs(s.figures().lowCornerLiftDb()));
    double lack = lift.figures().lowCornerLiftDb();
    return "On the panels the solved air load makes it "
        + span(s -> s.figures().panelResonanceHz(), "Hz")
        + ". At "
        + Figures.hertz(spec.target().lowCornerHz())
        + " the bare "
        + Verdict.stack(lift)
        + (lack >= 0 ? " lacks " : " has ")
        + Figures.decibels(Math.abs(lack))
        + (lack >= 0 ? " against" : " more than")
        + " its own mean over the band, the greatest such difference of all stacks."
        + rangeNote(freeAir.resonanceHz(), brief.resonanceHz(), Figures::hertz);
  }

  private String totalQReason() {
    StackAssessment worst = verdict.mostCorrection();
    return "On the panels, parts in series included, it becomes "
        + span(s -> s.figures().panelTotalQ(), "")
        + ". With it "
        + Verdict.stack(worst)
        + " needs "
        + Figures.decibels(worst.figures().correctionDb())
        + " of correction, the most of all stacks."
        + rangeNote(freeAir.totalQ(), brief.totalQ(), Figures::number);
  }

  private String massReason() {
    StackAssessment off = most(s -> Math.abs(s.figures().meanDeviationDb()));
    return "Mass, Bl and Re set the level: "
        + Verdict.stack(off)
        + " is furthest from its target with a mean of "
        + Figures.signedDecibels(off.figures().meanDeviationDb())
        + ". The coil takes "
        + Figures.grams(assessment.budget().coilMassKg())
        + " of it and leaves "
        + Figures.grams(assessment.budget().remainderKg())
        + " for the cone; "
        + Figures.grams(assessment.budget().leastRemainderKg())
        + " are needed."
        + rangeNote(woofer.bareMassKg(), brief.bareMassKg(), Figures::grams);
  }

  private String travelReason() {
    double least = Double.POSITIVE_INFINITY;
    double leastHz = spec.target().lowCornerHz();
    StackAssessment where = verdict.leastMargin();
    for (StackAssessment stack : assessment.stacks()) {
      Curve frequency = stack.curves().frequencyHz();
      for (int i = 0; i < frequency.size(); i++) {
        double margin = stack.curves().excursionLimitDb().at(i) - stack.brief().loudestDb();
        boolean inBand =
            frequency.at(i) >= spec.target().lowCornerHz()
                && frequency.at(i) <= spec.upperCornerHz(stack.brief());
        if (inBand && margin < least) {
          least = margin;
          leastHz = frequency.at(i);
          where = stack;
        }
      }
    }
    String note = rangeNote(woofer.travelM(), brief.travelM(), Figures::millimetres);
    if (!Double.isFinite(least)) {
      return "The travel that the level asked for needs is " + Figures.NOT_DETERMINED + "." + note;
    }
    return "The loudest level asked for needs "
        + Figures.millimetres(woofer.travelM() / Math.pow(10, least / 20))
        + ", in "
        + Verdict.stack(where)
        + " at "
        + Figures.hertz(leastHz)
        + (least >= 0
            ? "; the rest is in hand, paid for in coil mass."
            : "; it is bounded by the coil mass that more travel costs.")
        + note;
  }

  private String powerReason() {
    long heat =
        assessment.stacks().stream()
            .filter(s -> s.figures().outputLimit() == nullplane.scoring.Limit.HEAT)
            .count();
    return GIVEN
        + " Heat sets the least margin in "
        + heat
        + " of "
        + assessment.stacks().size()
        + (assessment.stacks().size() == 1 ? " stack." : " stacks.");
  }

  private StackAssessment most(java.util.function.ToDoubleFunction<StackAssessment> figure) {
    StackAssessment most = assessment.stacks().get(0);
    for (StackAssessment stack : assessment.stacks()) {
      if (figure.applyAsDouble(stack) > figure.applyAsDouble(most)) {
        most = stack;
      }
    }
    return most;
  }

  private String span(java.util.function.ToDoubleFunction<StackAssessment> figure, String unit) {
    double least = assessment.stacks().stream().mapToDouble(figure).min().orElse(Double.NaN);
    double most = assessment.stacks().stream().mapToDouble(figure).max().orElse(Double.NaN);
    String tail = unit.isEmpty() ? "" : " " + unit;
    String low = Figures.number(least);
    String high = Figures.number(most);
    return low.equals(high) ? low + tail : low + " to " + high + tail;
  }

  /** Says when a value stands at an end of what the search may choose: a hint to widen it. */
  private static String rangeNote(double value, Range range, DoubleFunction<String> words) {
    if (range.isPinned()) {
      return " The spec fixes it.";
    }
    double slack = 0.01 * (range.upper() - range.lower());
    if (value <= range.lower() + slack) {
      return " It stands at the lower end of what the search may choose ("
          + words.apply(range.lower())
          + ").";
    }
    if (value >= range.upper() - slack) {
      return " It stands at the upper end of what the search may choose ("
          + words.apply(range.upper())
          + ").";
    }
    return "";
  }

  private void row(
      String symbol,
      String quantity,
      double value,
      String unit,
      String tolerance,
      String condition,
      String reason) {
    rows.add(
        List.of(
            symbol.isEmpty() ? "-" : symbol,
            quantity,
            unit.startsWith("dB") ? Figures.decibelNumber(value) : Figures.number(value),
            unit,
            tolerance,
            condition,
            reason));
  }
}
