package nullplane.acoustics;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Gauss-Legendre points and weights on 0 to 1. */
final class GaussRule {
  private final double[] points;
  private final double[] weights;

  private GaussRule(double[] points, double[] weights) {
    this.points = points;
    this.weights = weights;
  }

  /** Returns the rule with the given number of points, exact to degree 2 x points - 1. */
  static GaussRule of(int size) {
    GaussIntegrator integrator = new GaussIntegratorFactory().legendre(size, 0, 1);
    double[] points = new double[size];
    double[] weights = new double[size];
    for (int i = 0; i < size; i++) {
      points[i] = integrator.getPoint(i);
      weights[i] = integrator.getWeight(i);
    }
    return new GaussRule(points, weights);
  }

  /** Returns the number of points. */
  int size() {
    return points.length;
  }

  /** Returns a point (1), ascending with the index. */
  double point(int index) {
    return points[index];
  }

  /** Returns a weight (1). */
  double weight(int index) {
    return weights[index];
  }
}
