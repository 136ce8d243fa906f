package nullplane.report;

import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.Direction;
import nullplane.acoustics.PanelFigures;
import nullplane.acoustics.PanelSolution;
import nullplane.scoring.PanelStudy;
import nullplane.scoring.StudyAxis;
import nullplane.units.Curve;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * A panel's far field over frequency and angle on one of its arcs, all woofers moving together,
 * between the solved points by cubic splines of the complex field. Over a floor the field is first
 * referred to the point of the floor under the panel's centre, from which panel and image turn by
 * equal angles; that keeps it smooth.
 */
final class ArcField {
  private final PanelStudy study;
  private final boolean vertical;
  private final double[] angleDeg;
  private final double[] logHz;
  private final double[][] re;
  private final double[][] im;

  /**
   * @param study the panel, solved at the frequencies of the pictures
   * @param vertical whether the arc is the vertical one
   */
  ArcField(PanelStudy study, boolean vertical) {
    this.study = study;
    this.vertical = vertical;
    List<Direction> arc = vertical ? study.plan().vertical() : study.plan().horizontal();
    angleDeg =
        arc.stream()
            .mapToDouble(d -> Math.toDegrees(vertical ? d.verticalRad() : d.horizontalRad()))
            .toArray();
    Curve frequencies = StudyAxis.pictures();
    logHz = frequencies.stream().map(Math::log).toArray();
    re = new double[logHz.length][];
    im = new double[logHz.length][];
    double volumeVelocity = PanelFigures.volumeVelocity(study.brief().pistons());
    for (int f = 0; f < logHz.length; f++) {
      PanelSolution solution = study.solution(study.indexOf(frequencies.at(f)));
      fill(f, solution, PanelFigures.monopole(solution.frequencyHz(), volumeVelocity, study.air()));
    }
  }

  private void fill(int f, PanelSolution solution, double monopole) {
    re[f] = new double[angleDeg.length];
    im[f] = new double[angleDeg.length];
    ComplexMatrix field = solution.farField();
    double turn =
        vertical && study.overFloor()
            ? study.air().waveNumber(solution.frequencyHz()) * study.brief().panel().centreHeightM()
            : 0;
    for (int a = 0; a < angleDeg.length; a++) {
      int row = vertical ? study.plan().verticalRow(a) : study.plan().horizontalRow(a);
      double sumRe = 0;
      double sumIm = 0;
      for (int j = 0; j < field.columns(); j++) {
        sumRe += field.re(row, j);
        sumIm += field.im(row, j);
      }
      double phase = turn * Math.sin(Math.toRadians(angleDeg[a]));
      re[f][a] = (sumRe * Math.cos(phase) - sumIm * Math.sin(phase)) / monopole;
      im[f][a] = (sumRe * Math.sin(phase) + sumIm * Math.cos(phase)) / monopole;
    }
  }

  /** Returns the least angle of the arc (degrees). */
  double lowestDeg() {
    return angleDeg[0];
  }

  /**
   * Returns the field as a share of the free monopole's (1), frequencies x angles.
   *
   * @param frequenciesHz where, within the pictures' range (Hz)
   * @param anglesDeg where, within the arc (degrees)
   */
  double[][] moduli(double[] frequenciesHz, double[] anglesDeg) {
    double[][] result = new double[frequenciesHz.length][anglesDeg.length];
    double[][] fineRe = alongAngle(re, anglesDeg);
    double[][] fineIm = alongAngle(im, anglesDeg);
    for (int a = 0; a < anglesDeg.length; a++) {
      PolynomialSplineFunction real = overFrequency(fineRe, a);
      PolynomialSplineFunction imaginary = overFrequency(fineIm, a);
      for (int f = 0; f < frequenciesHz.length; f++) {
        double at = within(Math.log(frequenciesHz[f]), logHz);
        result[f][a] = Math.hypot(real.value(at), imaginary.value(at));
      }
    }
    return result;
  }

  private PolynomialSplineFunction overFrequency(double[][] values, int angle) {
    double[] column = new double[logHz.length];
    for (int f = 0; f < column.length; f++) {
      column[f] = values[f][angle];
    }
    return new SplineInterpolator().interpolate(logHz, column);
  }

  private double[][] alongAngle(double[][] values, double[] anglesDeg) {
    double[][] fine = new double[values.length][anglesDeg.length];
    for (int f = 0; f < values.length; f++) {
      PolynomialSplineFunction spline = new SplineInterpolator().interpolate(angleDeg, values[f]);
      for (int a = 0; a < anglesDeg.length; a++) {
        fine[f][a] = spline.value(within(anglesDeg[a], angleDeg));
      }
    }
    return fine;
  }

  private static double within(double value, double[] axis) {
    return Math.max(axis[0], Math.min(axis[axis.length - 1], value));
  }

  /**
   * Returns the first angle above 0 at which the level falls below that of the axis by a number of
   * decibels (degrees); 90 if it does not before.
   *
   * @param frequencyHz where, within the pictures' range (Hz)
   * @param decibels the fall (dB)
   */
  double widthDeg(double frequencyHz, double decibels) {
    double[] angles = new double[181];
    for (int a = 0; a < angles.length; a++) {
      angles[a] = a * 0.5;
    }
    double[] moduli = moduli(new double[] {frequencyHz}, angles)[0];
    double limit = moduli[0] * Math.pow(10, -decibels / 20);
    for (int a = 0; a + 1 < angles.length; a++) {
      if (moduli[a + 1] < limit) {
        return angles[a] + 0.5 * (moduli[a] - limit) / (moduli[a] - moduli[a + 1]);
      }
    }
    return 90;
  }
}
