package nullplane.acoustics;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * A panel's acoustics for pistons of any radius in a range, all alike, from its acoustics at a few
 * radii.
 *
 * <p>At low frequency a piston's own impedance grows as the cube of its radius, and the pressure it
 * makes as the square. What is left after these powers are taken out is smooth, and a polynomial
 * through Chebyshev points of the radius carries it; a test holds its error against solutions in
 * between.
 *
 * <p>Source: J.-P. Berrut and L. N. Trefethen, SIAM Review 46 (2004) 501, eqs. 4.2 and 5.4, for the
 * barycentric form and its weights. Valid between the smallest and the largest radius.
 */
public final class PistonSizes {
  private final double[] radiusM;
  private final List<PanelResponse> responses;

  /**
   * @param radiusM radii as {@link #radii} returns them (m)
   * @param responses the panel's acoustics, one per radius, all on one frequency axis
   * @throws IllegalArgumentException if the lists do not match
   */
  public PistonSizes(List<Double> radiusM, List<PanelResponse> responses) {
    if (radiusM.isEmpty() || radiusM.size() != responses.size()) {
      throw new IllegalArgumentException(
          radiusM.size() + " radii with " + responses.size() + " responses");
    }
    for (PanelResponse response : responses) {
      if (!response.frequencyHz().equals(responses.get(0).frequencyHz())) {
        throw new IllegalArgumentException("the responses are on different frequency axes");
      }
    }
    this.radiusM = radiusM.stream().mapToDouble(Double::doubleValue).toArray();
    this.responses = List.copyOf(responses);
  }

  /**
   * Returns the radii at which a panel has to be solved (m): Chebyshev points of the second kind,
   * rising, or one radius if the ends are equal.
   *
   * @param smallestM smallest radius (m)
   * @param largestM largest radius (m)
   * @param count number of radii, 2 or more
   */
  public static List<Double> radii(double smallestM, double largestM, int count) {
    Checks.positive(smallestM, "smallest radius", "m");
    if (!(largestM >= smallestM) || count < 2) {
      throw new IllegalArgumentException(
          "radii from " + smallestM + " to " + largestM + " m in " + count + " steps");
    }
    if (largestM == smallestM) {
      return List.of(smallestM);
    }
    List<Double> radii = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double cosine = Math.cos(Math.PI * i / (count - 1));
      radii.add(0.5 * (smallestM + largestM) - 0.5 * (largestM - smallestM) * cosine);
    }
    radii.set(0, smallestM);
    radii.set(count - 1, largestM);
    return List.copyOf(radii);
  }

  /**
   * Returns the panel's acoustics for pistons of a radius.
   *
   * @param radius the radius (m), within the range up to rounding
   * @throws IllegalArgumentException if it is outside
   */
  public PanelResponse at(double radius) {
    int last = radiusM.length - 1;
    double slack = 1e-9 * radiusM[last];
    if (!(radius >= radiusM[0] - slack && radius <= radiusM[last] + slack)) {
      throw new IllegalArgumentException(
          "radius is " + radius + " m; allowed: " + radiusM[0] + " to " + radiusM[last] + " m");
    }
    for (int i = 0; i <= last; i++) {
      if (Math.abs(radius - radiusM[i]) <= slack) {
        return responses.get(i);
      }
    }
    double[] weights = weightsAt(radius);
    Curve axis = responses.get(0).frequencyHz();
    List<PanelSolution> solutions = new ArrayList<>();
    for (int f = 0; f < axis.size(); f++) {
      solutions.add(solutionAt(f, radius, weights));
    }
    return new PanelResponse(axis, solutions);
  }

  /** Shares of the known radii in the value at another; they sum to 1. */
  private double[] weightsAt(double radius) {
    int last = radiusM.length - 1;
    double[] weights = new double[last + 1];
    double sum = 0;
    for (int i = 0; i <= last; i++) {
      double own = (i % 2 == 0 ? 1 : -1) * (i == 0 || i == last ? 0.5 : 1); // eq. 5.4
      weights[i] = own / (radius - radiusM[i]);
      sum += weights[i];
    }
    for (int i = 0; i <= last; i++) {
      weights[i] /= sum; // eq. 4.2
    }
    return weights;
  }

  private PanelSolution solutionAt(int f, double radius, double[] weights) {
    List<PanelSolution> known = new ArrayList<>();
    double[] cubes = new double[weights.length];
    double[] squares = new double[weights.length];
    double error = 0;
    for (int i = 0; i < weights.length; i++) {
      PanelSolution solution = responses.get(i).solutions().get(f);
      double ratio = radius / radiusM[i];
      known.add(solution);
      squares[i] = weights[i] * ratio * ratio;
      cubes[i] = squares[i] * ratio;
      error = Math.max(error, solution.estimatedError());
    }
    return new PanelSolution(
        known.get(0).frequencyHz(),
        ComplexMatrix.sum(known.stream().map(PanelSolution::impedance).toList(), cubes),
        ComplexMatrix.sum(known.stream().map(PanelSolution::pressure).toList(), squares),
        ComplexMatrix.sum(known.stream().map(PanelSolution::farField).toList(), squares),
        error);
  }
}
