package nullplane.network;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Self-inductance of a ring coil of square section with even current, from Maxwell's formula for
 * two coaxial rings: M = mu0 sqrt(r1 r2) ((2/k - k) K(k) - (2/k) E(k)), k^2 = 4 r1 r2/((r1 + r2)^2
 * + z^2). J. C. Maxwell, A Treatise on Electricity and Magnetism (1873), art. 701.
 */
final class SquareCoilInductance {
  private static final double MU0 = 4e-7 * Math.PI;

  private SquareCoilInductance() {}

  /** Returns L/(c N^2) for a coil of mean radius {@code meanRadiusPerSide} c (H/m). */
  static double perSideAndTurnSquared(double meanRadiusPerSide, int points) {
    GaussIntegratorFactory factory = new GaussIntegratorFactory();
    GaussIntegrator outer = factory.legendre(points, 0, 1);
    // Separations u (radial) and z (axial) of two filaments; u = s^4 and z = t^4 draw the points to
    // the logarithm at u = z = 0. The weights 2 (1 - z) and 2 count the pairs of a separation.
    return outer.integrate(
        s -> {
          double u = s * s * s * s;
          double weightU = 2 * 4 * s * s * s;
          UnivariateFunction overZ =
              t -> {
                double z = t * t * t * t;
                double weightZ = 2 * (1 - z) * 4 * t * t * t;
                GaussIntegrator middle =
                    factory.legendre(
                        points, meanRadiusPerSide - (1 - u) / 2, meanRadiusPerSide + (1 - u) / 2);
                return weightZ * middle.integrate(r -> mutual(r - u / 2, r + u / 2, z));
              };
          return weightU * outer.integrate(overZ);
        });
  }

  private static double mutual(double r1, double r2, double z) {
    double across = (r1 + r2) * (r1 + r2) + z * z;
    double k2 = 4 * r1 * r2 / across;
    // 1 - k^2 without cancellation
    double complement = ((r1 - r2) * (r1 - r2) + z * z) / across;
    double[] ke = ellipticKandE(k2, complement);
    double k = Math.sqrt(k2);
    return MU0 * Math.sqrt(r1 * r2) * ((2 / k - k) * ke[0] - 2 / k * ke[1]);
  }

  /** Arithmetic-geometric mean; Abramowitz and Stegun (1964), 17.6. */
  private static double[] ellipticKandE(double k2, double complement) {
    double a = 1;
    double b = Math.sqrt(complement);
    double sum = k2 / 2;
    double power = 0.5;
    for (int i = 0; i < 60 && Math.abs(a - b) > 1e-15 * a; i++) {
      double c = (a - b) / 2;
      double mean = (a + b) / 2;
      b = Math.sqrt(a * b);
      a = mean;
      power *= 2;
      sum += power * c * c;
    }
    double first = Math.PI / (2 * a);
    return new double[] {first, first * (1 - sum)};
  }
}
