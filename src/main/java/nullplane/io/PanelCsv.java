package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.Direction;
import nullplane.acoustics.PanelFigures;
import nullplane.acoustics.PanelSolution;
import nullplane.scoring.PanelStudy;
import nullplane.units.Levels;

/**
 * A panel as tables, one row per frequency or per frequency and angle, digit for digit, the unit in
 * each header; a cell is empty where there is no number. Source: RFC 4180.
 */
public final class PanelCsv {
  private static final double ACCELERATION_M_PER_S2 = 1;

  /** Less than this is rounding: the panel's plane, where the pressure is zero. */
  private static final double SILENCE = 1e-10;

  private PanelCsv() {}

  /**
   * Returns the table of a panel's figures, one row per solved frequency.
   *
   * @param study the panel
   */
  public static byte[] figures(PanelStudy study) {
    CsvText text = new CsvText();
    int woofers = study.brief().pistons().size();
    List<String> head = new ArrayList<>();
    head.add("frequency [Hz]");
    for (int i = 1; i <= woofers; i++) {
      head.add("added mass of woofer " + i + " [kg]");
    }
    head.addAll(
        List.of(
            "added mass of stack [kg]",
            "path length [m]",
            "on axis per volume velocity [Pa s/m2]",
            "on axis re free monopole [dB]",
            "radiation resistance of stack [N s/m]",
            "directivity index [dB]",
            "listening level at 1 m/s2 [dB re 20 uPa]",
            "path length in free space [m]",
            "on axis re free monopole in free space [dB]",
            "listening level at 1 m/s2 in free space [dB re 20 uPa]",
            "floor gain at listening point [dB]",
            "estimated relative error [1]"));
    text.row(head);
    for (int f = 0; f < study.response().frequencyHz().size(); f++) {
      PanelFigures figures = study.figures(f);
      PanelFigures free = study.freeFigures(f);
      List<String> row = new ArrayList<>();
      row.add(cell(study.response().frequencyHz().at(f)));
      figures.addedMassKg().stream().forEach(mass -> row.add(cell(mass)));
      row.add(cell(figures.stackMassKg()));
      row.add(cell(figures.pathLengthM()));
      row.add(cell(figures.onAxisPaSPerM2()));
      row.add(cell(Levels.ofAmplitudeRatio(figures.onAxisRatio())));
      row.add(cell(figures.resistanceNsPerM()));
      row.add(cell(Levels.ofPowerRatio(figures.directivityFactor())));
      row.add(cell(level(study.solution(f))));
      row.add(cell(free.pathLengthM()));
      row.add(cell(Levels.ofAmplitudeRatio(free.onAxisRatio())));
      row.add(cell(level(study.freeSolution(f))));
      row.add(cell(Levels.ofAmplitudeRatio(study.floorRatio(f))));
      row.add(cell(study.solution(f).estimatedError()));
      text.row(row);
    }
    return text.bytes();
  }

  /**
   * Returns the table of a panel's radiation impedance, one row per solved frequency and pair of
   * woofers.
   *
   * @param study the panel
   */
  public static byte[] impedance(PanelStudy study) {
    CsvText text = new CsvText();
    text.row(
        List.of(
            "frequency [Hz]",
            "force on woofer",
            "velocity of woofer",
            "real part [N s/m]",
            "imaginary part [N s/m]"));
    for (PanelSolution solution : study.response().solutions()) {
      ComplexMatrix z = solution.impedance();
      for (int i = 0; i < z.rows(); i++) {
        for (int j = 0; j < z.columns(); j++) {
          text.row(
              List.of(
                  cell(solution.frequencyHz()),
                  Integer.toString(i + 1),
                  Integer.toString(j + 1),
                  cell(z.re(i, j)),
                  cell(z.im(i, j))));
        }
      }
    }
    return text.bytes();
  }

  /**
   * Returns the table of a panel's far field on its two arcs, all woofers moving together, one row
   * per solved frequency and direction.
   *
   * @param study the panel
   */
  public static byte[] directivity(PanelStudy study) {
    CsvText text = new CsvText();
    text.row(
        List.of(
            "frequency [Hz]",
            "plane",
            "angle [degrees]",
            "level re free monopole [dB]",
            "level re axis [dB]"));
    double volumeVelocity = PanelFigures.volumeVelocity(study.brief().pistons());
    for (PanelSolution solution : study.response().solutions()) {
      double monopole = PanelFigures.monopole(solution.frequencyHz(), volumeVelocity, study.air());
      double axis = PanelFigures.sumModulus(solution.farField(), study.plan().axisRow());
      for (boolean vertical : new boolean[] {false, true}) {
        List<Direction> arc = vertical ? study.plan().vertical() : study.plan().horizontal();
        for (int i = 0; i < arc.size(); i++) {
          int row = vertical ? study.plan().verticalRow(i) : study.plan().horizontalRow(i);
          double field = PanelFigures.sumModulus(solution.farField(), row);
          double angle = vertical ? arc.get(i).verticalRad() : arc.get(i).horizontalRad();
          text.row(
              List.of(
                  cell(solution.frequencyHz()),
                  vertical ? "vertical" : "horizontal",
                  DecimalText.rounded(Math.toDegrees(angle), 0),
                  level(field / monopole),
                  level(field / axis)));
        }
      }
    }
    return text.bytes();
  }

  /** Returns a level, or nothing for what is silence but for rounding. */
  private static String level(double ratio) {
    return ratio <= SILENCE ? "" : cell(Levels.ofAmplitudeRatio(ratio));
  }

  private static double level(PanelSolution solution) {
    return Levels.soundPressureLevel(PanelFigures.pointRmsPa(solution, 0, ACCELERATION_M_PER_S2));
  }

  private static String cell(double value) {
    return Double.isInfinite(value) ? "" : DecimalText.shifted(value, 0);
  }
}
