package nullplane.report;

import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import nullplane.acoustics.PanelFigures;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PointSources;
import nullplane.scoring.PanelStudy;
import nullplane.scoring.StudyAxis;
import nullplane.units.Curve;
import nullplane.units.Levels;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/** A studied panel over the frequencies of the pictures, in the units of the pictures. */
final class StudyCurves {
  /** What every cone does in the picture of the listening point (m/s2, root mean square). */
  static final double ACCELERATION_M_PER_S2 = 100;

  private static final double DIP_DB = 3;
  private static final int FINE_POINTS = 400;

  private final PanelStudy study;
  private final Curve frequencyHz = StudyAxis.pictures();
  private final List<Integer> indices;

  /**
   * A point of a curve.
   *
   * @param frequencyHz where (Hz)
   * @param value what (unit of the curve)
   */
  record Point(double frequencyHz, double value) {}

  StudyCurves(PanelStudy study) {
    this.study = study;
    indices = frequencyHz.stream().mapToObj(study::indexOf).toList();
  }

  PanelStudy study() {
    return study;
  }

  /** Returns the frequencies (Hz). */
  Curve frequencyHz() {
    return frequencyHz;
  }

  /** Returns the indices of the frequencies in the study. */
  List<Integer> indices() {
    return indices;
  }

  /** Returns the index in the study of the picture's frequency nearest to one (Hz). */
  int near(double hertz) {
    return indices.stream()
        .min(
            (a, b) ->
                Double.compare(
                    Math.abs(study.solution(a).frequencyHz() - hertz),
                    Math.abs(study.solution(b).frequencyHz() - hertz)))
        .orElseThrow();
  }

  private Curve curve(IntToDoubleFunction value) {
    return Curve.of(indices.stream().mapToDouble(value::applyAsDouble).toArray());
  }

  /** Returns the air that moves with a woofer, counted from 0 (g). */
  Curve addedMassG(int woofer) {
    return curve(i -> study.figures(i).addedMassKg().at(woofer) * 1e3);
  }

  /** Returns the mean of the woofers' air (g). */
  Curve meanMassG() {
    return curve(i -> study.figures(i).stackMassKg() * 1e3 / study.brief().pistons().size());
  }

  /** Returns the air mass of a bare disc of the woofers' size (g). */
  double freeDiscG() {
    return PointSources.freeDiscMassKg(radiusM(), study.air()) * 1e3;
  }

  /** Returns the air mass of such a piston in an endless wall, both faces (g). */
  double endlessWallG() {
    return PanelFigures.infiniteBaffleMassKg(radiusM(), study.air()) * 1e3;
  }

  private double radiusM() {
    return study.brief().pistons().get(0).radiusM();
  }

  /** Returns the effective path length (m). */
  Curve pathM(boolean free) {
    return curve(i -> figures(i, free).pathLengthM());
  }

  /** Returns the on-axis response (dB re the free monopole). */
  Curve onAxisDb(boolean free) {
    return curve(i -> Levels.ofAmplitudeRatio(figures(i, free).onAxisRatio()));
  }

  /** Returns the level at the listening point at the pictures' acceleration (dB re 20 uPa). */
  Curve listeningDb(boolean free) {
    return curve(
        i -> {
          PanelSolution solution = free ? study.freeSolution(i) : study.solution(i);
          return Levels.soundPressureLevel(
              PanelFigures.pointRmsPa(solution, 0, ACCELERATION_M_PER_S2));
        });
  }

  /** Returns what the floor adds at the listening point (dB). */
  Curve floorGainDb() {
    return curve(i -> Levels.ofAmplitudeRatio(study.floorRatio(i)));
  }

  private PanelFigures figures(int index, boolean free) {
    return free ? study.freeFigures(index) : study.figures(index);
  }

  /**
   * Returns the first dip of the on-axis response: its depth below the peak before it (dB), 3 dB or
   * more; nothing if there is none in the pictures' range.
   */
  Optional<Point> firstDip() {
    Curve fine = fineHz();
    double[][] moduli = new ArcField(study, false).moduli(fine.toArray(), new double[] {0});
    double[] level =
        IntStream.range(0, FINE_POINTS)
            .mapToDouble(i -> Levels.ofAmplitudeRatio(moduli[i][0]))
            .toArray();
    double peak = level[0];
    for (int i = 1; i + 1 < level.length; i++) {
      peak = Math.max(peak, level[i]);
      if (level[i] <= level[i - 1] && level[i] < level[i + 1] && peak - level[i] >= DIP_DB) {
        return Optional.of(new Point(fine.at(i), peak - level[i]));
      }
    }
    return Optional.empty();
  }

  /** Returns where the on-axis response first reaches the free monopole's, if it does (Hz). */
  Optional<Double> reachesMonopoleHz() {
    Curve level = onAxisDb(false);
    for (int i = 1; i < level.size(); i++) {
      if (level.at(i - 1) < 0 && level.at(i) >= 0) {
        double share = level.at(i - 1) / (level.at(i - 1) - level.at(i));
        return Optional.of(
            frequencyHz.at(i - 1) * Math.pow(frequencyHz.at(i) / frequencyHz.at(i - 1), share));
      }
    }
    return Optional.empty();
  }

  /** Returns a curve of this class through more points, by a cubic spline over log frequency. */
  Curve smooth(Curve curve) {
    PolynomialSplineFunction spline =
        new SplineInterpolator()
            .interpolate(frequencyHz.stream().map(Math::log).toArray(), curve.toArray());
    double lowest = spline.getKnots()[0];
    double highest = spline.getKnots()[spline.getN()];
    return Curve.of(
        fineHz().stream()
            .map(hertz -> spline.value(Math.max(lowest, Math.min(highest, Math.log(hertz)))))
            .toArray());
  }

  /** Returns the frequencies of {@link #smooth} (Hz). */
  Curve fineHz() {
    return Curve.logSpaced(frequencyHz.at(0), last(), FINE_POINTS);
  }

  /** Returns the highest point of a curve of this class. */
  Point highest(Curve curve) {
    int best = 0;
    for (int i = 1; i < curve.size(); i++) {
      best = curve.at(i) > curve.at(best) ? i : best;
    }
    return new Point(frequencyHz.at(best), curve.at(best));
  }

  /** Returns the lowest point of a curve of this class. */
  Point lowest(Curve curve) {
    int best = 0;
    for (int i = 1; i < curve.size(); i++) {
      best = curve.at(i) < curve.at(best) ? i : best;
    }
    return new Point(frequencyHz.at(best), curve.at(best));
  }

  private double last() {
    return frequencyHz.at(frequencyHz.size() - 1);
  }
}
