package nullplane.io;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelFigures;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PointSources;
import nullplane.scoring.PanelStudy;
import nullplane.units.Air;
import nullplane.units.Curve;
import nullplane.units.Levels;

/**
 * Panels as JSON, full precision, SI. Impedance: force on woofer i, both faces, per velocity of
 * woofer j (N s/m). Far field: r p e^{+jkr} per velocity of woofer j (Pa s), phase reference the
 * panel's centre, a floor's image included. Listening: pressure at the listening point per velocity
 * of woofer j (Pa s/m). Time convention e^{+jwt}. Source: RFC 8259.
 */
public final class PanelJson {
  private final JsonText json;
  private final List<AnglePair> angles;

  private PanelJson(JsonText json, List<AnglePair> angles) {
    this.json = json;
    this.angles = angles;
  }

  /**
   * Returns the bytes of the document.
   *
   * @param read the spec
   * @param studies its stacks, solved with the angles as the directions asked for
   * @param frequenciesHz which of the solved frequencies to write, in this order (Hz)
   * @param angles the directions asked for
   * @param version the program's version
   * @throws IllegalStateException if a number to be written is not finite
   */
  public static byte[] of(
      ReadSpec read,
      List<PanelStudy> studies,
      List<Double> frequenciesHz,
      List<AnglePair> angles,
      String version) {
    return JsonText.of(
        json -> {
          PanelJson panel = new PanelJson(json, angles);
          Air air = studies.get(0).air();
          json.number("airDensity", air.densityKgPerM3());
          json.number("speedOfSound", air.speedOfSoundMPerS());
          json.objects("stacks", studies, study -> panel.stack(study, frequenciesHz));
          json.text("title", read.spec().title());
          json.text("specSha256", read.digest());
          json.text("version", version);
        });
  }

  private void stack(PanelStudy study, List<Double> frequenciesHz) throws IOException {
    double radius = study.brief().pistons().get(0).radiusM();
    json.text("name", study.brief().name());
    json.whole("woofers", study.brief().pistons().size());
    json.flag("overFloor", study.overFloor());
    json.object(
        "listeningPoint",
        () -> {
          json.number("xM", study.ear().xM());
          json.number("yM", study.ear().yM());
          json.number("zM", study.ear().zM());
        });
    json.number("freeDiscMassKg", PointSources.freeDiscMassKg(radius, study.air()));
    json.number("infiniteBaffleMassKg", PanelFigures.infiniteBaffleMassKg(radius, study.air()));
    json.objects(
        "frequencies", frequenciesHz, hertz -> frequency(study, hertz, study.indexOf(hertz)));
  }

  private void frequency(PanelStudy study, double hertz, int index) throws IOException {
    PanelSolution solution = study.solution(index);
    json.number("frequencyHz", hertz);
    json.rows("impedanceRe", rows(solution.impedance(), true));
    json.rows("impedanceIm", rows(solution.impedance(), false));
    json.number("estimatedError", solution.estimatedError());
    List<Integer> asked = new ArrayList<>();
    for (int i = 0; i < angles.size(); i++) {
      asked.add(i);
    }
    json.objects(
        "farField",
        asked,
        i -> {
          int row = study.plan().askedRow(i);
          json.number("horizontalDeg", angles.get(i).horizontalDeg());
          json.number("verticalDeg", angles.get(i).verticalDeg());
          json.curve("re", row(solution.farField(), row, true));
          json.curve("im", row(solution.farField(), row, false));
        });
    json.object(
        "listening",
        () -> {
          json.curve("re", row(solution.pressure(), 0, true));
          json.curve("im", row(solution.pressure(), 0, false));
        });
    json.object("figures", () -> figures(study, index));
  }

  private void figures(PanelStudy study, int index) throws IOException {
    PanelFigures figures = study.figures(index);
    json.curve("addedMassKg", figures.addedMassKg());
    json.number("stackAddedMassKg", figures.stackMassKg());
    json.number("pathLengthM", figures.pathLengthM());
    json.number("onAxisPaSPerM2", figures.onAxisPaSPerM2());
    json.levelOrNone("onAxisReMonopoleDb", Levels.ofAmplitudeRatio(figures.onAxisRatio()));
    json.number("radiationResistanceNsPerM", figures.resistanceNsPerM());
    json.levelOrNone("directivityIndexDb", Levels.ofPowerRatio(figures.directivityFactor()));
    json.levelOrNone("listeningReMonopoleDb", listening(study, study.solution(index)));
    if (study.overFloor()) {
      json.object(
          "freeSpace",
          () -> {
            PanelFigures free = study.freeFigures(index);
            json.number("pathLengthM", free.pathLengthM());
            json.levelOrNone("onAxisReMonopoleDb", Levels.ofAmplitudeRatio(free.onAxisRatio()));
            json.number("stackAddedMassKg", free.stackMassKg());
            json.levelOrNone("listeningReMonopoleDb", listening(study, study.freeSolution(index)));
          });
      json.levelOrNone("floorGainDb", Levels.ofAmplitudeRatio(study.floorRatio(index)));
    }
  }

  private static double listening(PanelStudy study, PanelSolution solution) {
    return Levels.ofAmplitudeRatio(
        PanelFigures.pointRatio(solution, 0, study.ear(), study.brief().pistons(), study.air()));
  }

  private static List<Curve> rows(ComplexMatrix matrix, boolean real) {
    List<Curve> rows = new ArrayList<>();
    for (int i = 0; i < matrix.rows(); i++) {
      rows.add(row(matrix, i, real));
    }
    return rows;
  }

  private static Curve row(ComplexMatrix matrix, int row, boolean real) {
    double[] values = new double[matrix.columns()];
    for (int j = 0; j < values.length; j++) {
      values[j] = real ? matrix.re(row, j) : matrix.im(row, j);
    }
    return Curve.of(values);
  }
}
