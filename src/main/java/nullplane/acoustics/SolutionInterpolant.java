package nullplane.acoustics;

import java.util.List;
import java.util.function.Function;

/**
 * Panel solutions between frequencies, by the polynomial in the logarithm of frequency through the
 * six nearest.
 *
 * <p>Interpolated are quantities that hardly change at low frequency: Z/w, the far field over w^2,
 * and the pressure at a point over w^2 with the phase of the way from the panel's centre taken out.
 *
 * <p>Source: Lagrange's formula. Exact at the given frequencies; valid between the lowest and the
 * highest, as far as {@link AdaptiveSweep} has checked.
 */
final class SolutionInterpolant {
  private static final int POINTS = 6;
  private static final double SAME = 1e-12;

  private final List<PanelSolution> solutions;
  private final double[] abscissae;
  private final double[] distances;
  private final double speedOfSound;

  /**
   * @param solutions by rising frequency, two or more
   * @param points the points of the pressures
   * @param speedOfSound speed of sound (m/s)
   */
  SolutionInterpolant(List<PanelSolution> solutions, List<FieldPoint> points, double speedOfSound) {
    this.solutions = List.copyOf(solutions);
    this.speedOfSound = speedOfSound;
    this.abscissae = solutions.stream().mapToDouble(s -> Math.log(s.frequencyHz())).toArray();
    this.distances =
        points.stream()
            .mapToDouble(p -> Math.sqrt(p.xM() * p.xM() + p.yM() * p.yM() + p.zM() * p.zM()))
            .toArray();
  }

  /**
   * Returns the solution at a frequency (Hz); the error estimate is that of the worse neighbour.
   */
  PanelSolution at(double frequencyHz) {
    double t = Math.log(frequencyHz);
    int above = 0;
    while (above < abscissae.length - 1 && abscissae[above] < t) {
      above++;
    }
    if (Math.abs(t - abscissae[above]) < SAME) {
      return solutions.get(above);
    }
    int count = Math.min(POINTS, abscissae.length);
    int first = Math.max(0, Math.min(above - count / 2, abscissae.length - count));
    List<PanelSolution> near = solutions.subList(first, first + count);
    double[] shares = shares(t, first, count);
    double omega = 2 * Math.PI * frequencyHz;
    double error =
        Math.max(
            solutions.get(above).estimatedError(),
            solutions.get(Math.max(0, above - 1)).estimatedError());
    return new PanelSolution(
        frequencyHz,
        blend(near, PanelSolution::impedance, shares, omega, 1, new double[0]),
        blend(near, PanelSolution::pressure, shares, omega, 2, distances),
        blend(near, PanelSolution::farField, shares, omega, 2, new double[0]),
        error);
  }

  /** Lagrange's weights of neighbouring abscissae at t. */
  private double[] shares(double t, int first, int count) {
    double[] shares = new double[count];
    for (int k = 0; k < count; k++) {
      double product = 1;
      for (int j = 0; j < count; j++) {
        if (j != k) {
          product *= (t - abscissae[first + j]) / (abscissae[first + k] - abscissae[first + j]);
        }
      }
      shares[k] = product;
    }
    return shares;
  }

  /** Sums share_k (w/w_k)^power M_k; rows with a way to go (m) also turn by its phase. */
  private ComplexMatrix blend(
      List<PanelSolution> near,
      Function<PanelSolution, ComplexMatrix> quantity,
      double[] shares,
      double omega,
      int power,
      double[] ways) {
    int rows = quantity.apply(near.get(0)).rows();
    int columns = quantity.apply(near.get(0)).columns();
    double[] re = new double[rows * columns];
    double[] im = new double[rows * columns];
    for (int k = 0; k < shares.length; k++) {
      double omegaK = 2 * Math.PI * near.get(k).frequencyHz();
      double factor = shares[k] * Math.pow(omega / omegaK, power);
      ComplexMatrix matrix = quantity.apply(near.get(k));
      for (int row = 0; row < rows; row++) {
        double phase = row < ways.length ? (omegaK - omega) / speedOfSound * ways[row] : 0;
        double cos = factor * Math.cos(phase);
        double sin = factor * Math.sin(phase);
        for (int column = 0; column < columns; column++) {
          double entryRe = matrix.re(row, column);
          double entryIm = matrix.im(row, column);
          re[row * columns + column] += cos * entryRe - sin * entryIm;
          im[row * columns + column] += cos * entryIm + sin * entryRe;
        }
      }
    }
    return new ComplexMatrix(rows, columns, re, im);
  }
}
