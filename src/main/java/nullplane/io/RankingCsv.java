package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.MotorDesign;
import nullplane.scoring.Assessment;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.StackFigures;
import nullplane.search.SearchOutcome;

/**
 * A ranking as a table: one row per woofer, values to six significant digits, the unit in each
 * header. The columns of a woofer carry the names of a woofer file's keys. Source: RFC 4180.
 */
public final class RankingCsv {
  private final List<String> header = new ArrayList<>();
  private final List<String> cells = new ArrayList<>();

  private RankingCsv() {}

  /**
   * Returns the bytes of the table.
   *
   * @param outcome what the search found
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(SearchOutcome outcome) {
    return of(outcome.ranked());
  }

  /**
   * Returns the bytes of the table.
   *
   * @param ranked the woofers, best first, all scored on the same spec
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(List<Assessment> ranked) {
    return of(ranked, List.of(), ranked.stream().map(woofer -> List.<String>of()).toList());
  }

  /**
   * Returns the bytes of the table with further columns at its end.
   *
   * @param ranked the woofers, best first, all scored on the same spec
   * @param moreHeads heads of the further columns
   * @param moreCells their cells, one list per woofer
   */
  static byte[] of(List<Assessment> ranked, List<String> moreHeads, List<List<String>> moreCells) {
    CsvText text = new CsvText();
    for (int i = 0; i < ranked.size(); i++) {
      RankingCsv row = new RankingCsv();
      row.fill(i + 1, ranked.get(i));
      row.header.addAll(moreHeads);
      row.cells.addAll(moreCells.get(i));
      if (i == 0) {
        text.row(row.header);
      }
      text.row(row.cells);
    }
    if (ranked.isEmpty()) {
      text.row(List.of("rank", "name"));
    }
    return text.bytes();
  }

  private void fill(int rank, Assessment assessment) {
    Woofer woofer = assessment.woofer();
    SmallSignal set = assessment.freeAir();
    cell("rank", Integer.toString(rank));
    cell("name", CsvText.name(woofer.name()));
    cell("feasible", assessment.grade().feasible() ? "yes" : "no");
    number("cost [dB]", assessment.grade().costDb(), 0);
    number("violation", assessment.grade().violation(), 0);
    number("nominal [mm]", woofer.nominalM(), 3);
    number("sd [cm2]", woofer.effectiveAreaM2(), 4);
    number("re [ohm]", woofer.resistanceOhm(), 0);
    number("fs [Hz]", set.resonanceHz(), 0);
    number("qms", set.mechanicalQ(), 0);
    number("qes", set.electricalQ(), 0);
    number("qts", set.totalQ(), 0);
    number("bl [Tm]", woofer.forceFactorTm(), 0);
    number("mms [g]", set.movingMassKg(), 3);
    number("moving-mass [g]", woofer.bareMassKg(), 3);
    cell("mounting", "free-air");
    number("travel [mm]", woofer.travelM(), 3);
    number("le [mH]", woofer.inductanceH(), 3);
    number("power [W]", woofer.powerW(), 0);
    number("kms [N/m]", woofer.stiffnessNPerM(), 0);
    number("rms [N s/m]", woofer.lossNsPerM(), 0);
    number("vas [l]", set.equivalentVolumeM3(), 3);
    number("coil mass [g]", assessment.budget().coilMassKg(), 3);
    coil(assessment);
    assessment.stacks().forEach(this::stack);
    cell("violations", CsvText.name(String.join("; ", assessment.violations())));
  }

  /** The coil and motor; empty cells where they are not known, so that rows keep their columns. */
  private void coil(Assessment assessment) {
    Optional<MotorDesign> motor = assessment.motor();
    known("former [mm]", motor, m -> m.winding().former().insideDiameterM(), 3);
    cell("wire", motor.map(m -> m.winding().coil().material().word()).orElse(""));
    known("bare wire [mm]", motor, m -> m.winding().coil().bareDiameterM(), 3);
    known("insulated wire [mm]", motor, m -> m.winding().coil().insulatedDiameterM(), 3);
    known("layers", motor, m -> m.winding().coil().layers(), 0);
    known("turns per layer", motor, m -> m.winding().coil().turnsPerLayer(), 0);
    known("coil height [mm]", motor, m -> m.winding().coil().windingHeightM(), 3);
    known("gap height [mm]", motor, m -> m.winding().gapHeightM(), 3);
    known("flux [T]", motor, MotorDesign::fluxT, 0);
    known("pole flux [T]", motor, MotorDesign::poleFluxT, 0);
    cell("magnet", motor.map(m -> m.magnet().word()).orElse(""));
    known("magnet mass [g]", motor, MotorDesign::magnetMassKg, 3);
    cell(
        "cone mass [g]",
        assessment.masses().map(m -> DecimalText.rounded(m.coneKg(), 3)).orElse(""));
  }

  private void known(
      String head, Optional<MotorDesign> motor, ToDoubleFunction<MotorDesign> value, int decimals) {
    if (motor.isPresent()) {
      number(head, value.applyAsDouble(motor.orElseThrow()), decimals);
    } else {
      cell(head, "");
    }
  }

  private void stack(StackAssessment stack) {
    String name = stack.brief().name();
    StackFigures f = stack.figures();
    cell(head(name, "wiring"), stack.wiring().inWords());
    cell(head(name, "network"), NetworkText.of(stack.network()));
    number(head(name, "coil [mH]"), stack.coil().inductanceH(), 3);
    number(head(name, "coil resistance [ohm]"), stack.coil().resistanceOhm(), 0);
    number(head(name, "rms deviation [dB]"), f.rmsDeviationDb(), 0);
    number(head(name, "mean deviation [dB]"), f.meanDeviationDb(), 0);
    number(head(name, "outside corridor [dB]"), f.worstExcessDb(), 0);
    number(head(name, "outside corridor at [Hz]"), f.worstExcessHz(), 0);
    number(head(name, "output margin [dB]"), f.outputMarginDb(), 0);
    number(head(name, "output margin at [Hz]"), f.outputMarginHz(), 0);
    cell(head(name, "limit"), f.outputLimit().word());
    number(head(name, "least load [ohm]"), f.leastLoadOhm(), 0);
    number(head(name, "correction [dB]"), f.correctionDb(), 0);
    number(head(name, "network bend [dB]"), f.networkBendDb(), 0);
    number(head(name, "level lost [dB]"), f.levelLossDb(), 0);
    cell(head(name, "network parts"), Integer.toString(stack.network().partCount()));
    number(head(name, "network copper [g]"), stack.network().copperKg(), 3);
    number(head(name, "network capacitors [uF]"), stack.network().capacitanceF(), 6);
    number(head(name, "fs on panel [Hz]"), f.panelResonanceHz(), 0);
    number(head(name, "qts on panel"), f.panelTotalQ(), 0);
  }

  private static String head(String stack, String column) {
    return CsvText.name(stack + ": " + column);
  }

  private void number(String head, double value, int decimals) {
    if (!Double.isFinite(value)) {
      throw new IllegalStateException(head + " is " + value);
    }
    cell(head, DecimalText.rounded(value, decimals));
  }

  private void cell(String head, String value) {
    header.add(head);
    cells.add(value);
  }
}
