package nullplane.fit;

import org.apache.commons.math3.exception.ConvergenceException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresFactory;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * The parameters that bring a circuit nearest to its sweeps, by least squares.
 *
 * <p>Source: D. W. Marquardt, J. Soc. Indust. Appl. Math. 11(2) (1963) 431; J. J. More, Lecture
 * Notes in Mathematics 630 (1978) 105, as in Commons Math.
 */
final class LeastSquares {

  /** Below this, a direction of the normal matrix, columns scaled to 1, is open. */
  private static final double OPEN = 1e-13;

  private LeastSquares() {}

  /** How far a search is driven. */
  enum Effort {
    /** To find the way among many starts. */
    ROUGH(30, 1e-3),
    /** To compare forms. */
    FAIR(60, 1e-7),
    /** To the end. */
    FULL(200, 1e-12);

    private final int mostSteps;
    private final double tolerance;

    Effort(int mostSteps, double tolerance) {
      this.mostSteps = mostSteps;
      this.tolerance = tolerance;
    }
  }

  /** Where a search ended: the parameters and the weighted sum of squared distances (1). */
  static final class Solution {
    private final double[] theta;
    private final double sumOfSquares;

    Solution(double[] theta, double sumOfSquares) {
      this.theta = theta.clone();
      this.sumOfSquares = sumOfSquares;
    }

    double[] theta() {
      return theta.clone();
    }

    double sumOfSquares() {
      return sumOfSquares;
    }
  }

  /** Remembers the best point seen, so that a search that stalls still has a result. */
  private static final class Watched implements MultivariateJacobianFunction {
    private final Circuit circuit;
    private double[] best;
    private double least = Double.POSITIVE_INFINITY;

    Watched(Circuit circuit, double[] start) {
      this.circuit = circuit;
      this.best = start;
    }

    @Override
    public Pair<RealVector, RealMatrix> value(RealVector point) {
      double[] theta = circuit.clamped(point.toArray());
      double[] residual = new double[circuit.rows()];
      double[][] jacobian = new double[circuit.rows()][circuit.parameters()];
      circuit.evaluate(theta, residual, jacobian);
      double sum = sumOfSquares(residual);
      if (sum < least) {
        least = sum;
        best = theta;
      }
      return new Pair<>(
          new ArrayRealVector(residual, false), new Array2DRowRealMatrix(jacobian, false));
    }
  }

  /**
   * Searches from a start.
   *
   * @param circuit the circuit
   * @param start the parameters to start from
   * @param effort how far to go
   */
  static Solution search(Circuit circuit, double[] start, Effort effort) {
    Watched watched = new Watched(circuit, circuit.clamped(start));
    RealVector zero = new ArrayRealVector(circuit.rows());
    LeastSquaresProblem problem =
        LeastSquaresFactory.create(
            watched,
            zero,
            new ArrayRealVector(circuit.clamped(start)),
            (iteration, previous, current) -> false,
            effort.mostSteps,
            effort.mostSteps);
    try {
      new LevenbergMarquardtOptimizer()
          .withCostRelativeTolerance(effort.tolerance)
          .withParameterRelativeTolerance(effort.tolerance)
          .withOrthoTolerance(effort.tolerance)
          .optimize(problem);
    } catch (ConvergenceException
        | TooManyEvaluationsException
        | TooManyIterationsException expected) {
      // the best point seen stands; what it is worth, its covariance tells
    }
    return new Solution(watched.best, watched.least);
  }

  static double sumOfSquares(double[] residual) {
    double sum = 0;
    for (double r : residual) {
      sum += r * r;
    }
    return sum;
  }

  /**
   * The spread of the parameters around a solution for a noise of one per row.
   *
   * <p>Source: linear propagation, (J^T J)^{-1}, J at the solution; G. A. F. Seber and C. J. Wild,
   * Nonlinear Regression (1989), sec. 2.1.
   */
  static final class Spread {
    private final double[][] covariance;
    private final boolean[] open;
    private final double[][] jacobian;

    Spread(Circuit circuit, double[] theta) {
      int n = circuit.parameters();
      double[] residual = new double[circuit.rows()];
      jacobian = new double[circuit.rows()][n];
      circuit.evaluate(theta, residual, jacobian);
      double[][] normal = new double[n][n];
      for (double[] row : jacobian) {
        for (int a = 0; a < n; a++) {
          for (int b = 0; b <= a; b++) {
            normal[a][b] += row[a] * row[b];
          }
        }
      }
      double[] scale = new double[n];
      for (int a = 0; a < n; a++) {
        scale[a] = normal[a][a] > 0 ? Math.sqrt(normal[a][a]) : 1e-30;
      }
      for (int a = 0; a < n; a++) {
        for (int b = 0; b <= a; b++) {
          normal[a][b] = normal[a][b] / scale[a] / scale[b];
          normal[b][a] = normal[a][b];
        }
      }
      EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(normal, false));
      covariance = new double[n][n];
      open = new boolean[n];
      for (int k = 0; k < n; k++) {
        double value = eigen.getRealEigenvalue(k);
        RealVector vector = eigen.getEigenvector(k);
        boolean openDirection = !(value > OPEN);
        double safe = Math.max(value, OPEN);
        for (int a = 0; a < n; a++) {
          open[a] |= openDirection && Math.abs(vector.getEntry(a)) > 0.1;
          for (int b = 0; b < n; b++) {
            covariance[a][b] +=
                vector.getEntry(a) * vector.getEntry(b) / (safe * scale[a] * scale[b]);
          }
        }
      }
    }

    /** Returns the covariance of two parameters for unit noise. */
    double covariance(int a, int b) {
      return covariance[a][b];
    }

    /** Returns whether a parameter lies in a direction that the data leave open. */
    boolean isOpen(int parameter) {
      return open[parameter];
    }

    /**
     * Returns how the solution moves with a quantity that the residuals depend on: -(J^T J)^{-1}
     * J^T dr.
     *
     * @param change derivative of the residuals by that quantity
     */
    double[] response(double[] change) {
      int n = covariance.length;
      double[] gradient = new double[n];
      for (int row = 0; row < jacobian.length; row++) {
        for (int a = 0; a < n; a++) {
          gradient[a] += jacobian[row][a] * change[row];
        }
      }
      double[] moved = new double[n];
      for (int a = 0; a < n; a++) {
        for (int b = 0; b < n; b++) {
          moved[a] -= covariance[a][b] * gradient[b];
        }
      }
      return moved;
    }
  }
}
