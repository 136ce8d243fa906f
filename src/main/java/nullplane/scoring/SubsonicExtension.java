package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelResponse;
import nullplane.acoustics.PanelSolution;
import nullplane.units.Curve;

/**
 * A panel's acoustics continued below the lowest frequency that was solved.
 *
 * <p>Source: low-frequency limit of a panel open at the back, which is a dipole: the reactance is
 * that of a mass, X as f; the radiation resistance goes as f^4 (H. Lamb, Hydrodynamics (1932), for
 * the disc); the pressure per velocity as f^2. Valid where the panel is small against the wave,
 * which holds below 20 Hz for panels of up to some 3 m; the pressure is for weighing only, since
 * nearer than a sixth of a wave it falls less.
 */
final class SubsonicExtension {
  private static final double POINTS_PER_DECADE = 60;

  private SubsonicExtension() {}

  /**
   * Returns the response with points down to a frequency; the response itself if it goes that far.
   *
   * @param solved the response
   * @param lowestHz where to begin (Hz)
   */
  static PanelResponse below(PanelResponse solved, double lowestHz) {
    double firstHz = solved.frequencyHz().at(0);
    if (firstHz <= lowestHz) {
      return solved;
    }
    int points = 1 + (int) Math.ceil(POINTS_PER_DECADE * Math.log10(firstHz / lowestHz));
    Curve below = Curve.logSpaced(lowestHz, firstHz, points + 1);
    double[] axis = new double[points + solved.frequencyHz().size()];
    List<PanelSolution> solutions = new ArrayList<>();
    PanelSolution first = solved.solutions().get(0);
    for (int i = 0; i < points; i++) {
      axis[i] = below.at(i);
      double ratio = below.at(i) / firstHz;
      double square = ratio * ratio;
      solutions.add(
          new PanelSolution(
              below.at(i),
              scaled(first.impedance(), square * square, ratio),
              scaled(first.pressure(), square, square),
              scaled(first.farField(), square, square),
              first.estimatedError()));
    }
    for (int i = 0; i < solved.frequencyHz().size(); i++) {
      axis[points + i] = solved.frequencyHz().at(i);
    }
    solutions.addAll(solved.solutions());
    return new PanelResponse(Curve.of(axis), solutions);
  }

  private static ComplexMatrix scaled(ComplexMatrix matrix, double reBy, double imBy) {
    int size = matrix.rows() * matrix.columns();
    double[] re = new double[size];
    double[] im = new double[size];
    for (int i = 0; i < size; i++) {
      re[i] = reBy * matrix.re(i / matrix.columns(), i % matrix.columns());
      im[i] = imBy * matrix.im(i / matrix.columns(), i % matrix.columns());
    }
    return new ComplexMatrix(matrix.rows(), matrix.columns(), re, im);
  }
}
