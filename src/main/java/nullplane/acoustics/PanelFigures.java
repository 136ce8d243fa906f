package nullplane.acoustics;

import java.util.List;
import nullplane.units.Air;
import nullplane.units.Checks;
import nullplane.units.Curve;

/**
 * What a panel's solution means for whoever builds it, while all its pistons move together with one
 * velocity.
 *
 * <p>Symbols: Z radiation impedance, both faces (N s/m); w = 2 pi f; k = w/c; V sum of the pistons'
 * areas times their velocity (m3/s); r p far-field pressure on the axis times distance, an image in
 * a floor included (Pa m). The reference everywhere is the free monopole of the same volume
 * velocity, |r p| = rho w V/(4 pi).
 *
 * @param frequencyHz frequency (Hz)
 * @param addedMassKg air that moves with each piston, Im sum_j Z_ij / w (kg), one value per piston;
 *     exact at any frequency as a reactance over w, a mass in the usual sense below the panel's
 *     first resonance, roughly f = c/(2 width)
 * @param stackMassKg the same for all pistons together (kg)
 * @param pathLengthM effective dipole path length D = |r p|/(k rho w V/(4 pi)) (m); a length that
 *     does not depend on frequency while k D is well below 1. Over a floor the image counts: a
 *     small source near the floor then has twice the D of its own
 * @param onAxisPaSPerM2 on-axis response per volume velocity, |r p|/V (Pa s/m2)
 * @param onAxisRatio on-axis response per volume acceleration as a share of the free monopole's, k
 *     D (1)
 * @param resistanceNsPerM radiation resistance of the stack, Re sum_ij Z_ij (N s/m): the radiated
 *     power is this times the square of the root-mean-square velocity
 * @param directivityFactor on-axis intensity over the mean of the same power over the full sphere,
 *     4 pi |r p|^2/(rho c R) for unit velocity (1); 3 for a small dipole in free space, 6 on a
 *     floor
 */
public record PanelFigures(
    double frequencyHz,
    Curve addedMassKg,
    double stackMassKg,
    double pathLengthM,
    double onAxisPaSPerM2,
    double onAxisRatio,
    double resistanceNsPerM,
    double directivityFactor) {

  /**
   * Returns the figures of a solution.
   *
   * <p>Source: radiation impedance, power and directivity factor by definition, L. Beranek and T.
   * Mellow, Acoustics (2012), ch. 4 and 13; path length by comparison with two opposite point
   * sources, H. Lamb, Hydrodynamics (1932), art. 102, for a disc. Valid wherever the solution is.
   *
   * @param solution the solution
   * @param axisRow the axis in the solution's far field, counted from 0
   * @param pistons the pistons it was solved for
   * @param air the air it was solved for
   * @throws IllegalArgumentException if solution and pistons differ in number
   */
  public static PanelFigures of(
      PanelSolution solution, int axisRow, List<Piston> pistons, Air air) {
    ComplexMatrix z = solution.impedance();
    if (z.rows() != pistons.size()) {
      throw new IllegalArgumentException(
          pistons.size() + " pistons with a solution for " + z.rows());
    }
    double omega = 2 * Math.PI * solution.frequencyHz();
    double resistance = 0;
    double reactance = 0;
    double[] mass = new double[z.rows()];
    for (int i = 0; i < z.rows(); i++) {
      double rowSum = 0;
      for (int j = 0; j < z.columns(); j++) {
        resistance += z.re(i, j);
        rowSum += z.im(i, j);
      }
      mass[i] = rowSum / omega;
      reactance += rowSum;
    }
    double volumeVelocity = volumeVelocity(pistons);
    double field = sumModulus(solution.farField(), axisRow);
    double ratio = field / monopole(solution.frequencyHz(), volumeVelocity, air);
    return new PanelFigures(
        solution.frequencyHz(),
        Curve.of(mass),
        reactance / omega,
        ratio / air.waveNumber(solution.frequencyHz()),
        field / volumeVelocity,
        ratio,
        resistance,
        4
            * Math.PI
            * field
            * field
            / (air.densityKgPerM3() * air.speedOfSoundMPerS() * resistance));
  }

  /**
   * Returns the pressure at a point as a share of the free monopole's at the same distance from the
   * panel's centre (1), all pistons moving together.
   *
   * @param solution the solution
   * @param row the point among those of the solution, counted from 0
   * @param point the same point
   * @param pistons the pistons it was solved for
   * @param air the air it was solved for
   */
  public static double pointRatio(
      PanelSolution solution, int row, FieldPoint point, List<Piston> pistons, Air air) {
    double distance =
        Math.sqrt(point.xM() * point.xM() + point.yM() * point.yM() + point.zM() * point.zM());
    return sumModulus(solution.pressure(), row)
        * distance
        / monopole(solution.frequencyHz(), volumeVelocity(pistons), air);
  }

  /**
   * Returns the pressure at a point while all pistons move with a root-mean-square acceleration
   * (Pa, root mean square): |sum_j h_j| a/w.
   *
   * @param solution the solution
   * @param row the point among those of the solution, counted from 0
   * @param accelerationMPerS2 acceleration of every piston (m/s2, root mean square)
   */
  public static double pointRmsPa(PanelSolution solution, int row, double accelerationMPerS2) {
    return sumModulus(solution.pressure(), row)
        * accelerationMPerS2
        / (2 * Math.PI * solution.frequencyHz());
  }

  /**
   * Returns the modulus of a row's sum: all pistons moving together with unit velocity (unit of the
   * matrix).
   *
   * @param rows a quantity per piston
   * @param row the row, counted from 0
   */
  public static double sumModulus(ComplexMatrix rows, int row) {
    double re = 0;
    double im = 0;
    for (int j = 0; j < rows.columns(); j++) {
      re += rows.re(row, j);
      im += rows.im(row, j);
    }
    return Math.hypot(re, im);
  }

  /**
   * Returns the far-field pressure times distance of a free monopole, rho w V/(4 pi) (Pa m).
   *
   * <p>Source: definition of the point source, L. Beranek and T. Mellow, Acoustics (2012), ch. 4.
   *
   * @param frequencyHz frequency (Hz)
   * @param volumeVelocityM3PerS volume velocity (m3/s)
   * @param air the air
   */
  public static double monopole(double frequencyHz, double volumeVelocityM3PerS, Air air) {
    Checks.positive(frequencyHz, "frequency", "Hz");
    return air.densityKgPerM3() * frequencyHz * volumeVelocityM3PerS / 2;
  }

  /** Returns the volume velocity of pistons that move with unit velocity (m3/s). */
  public static double volumeVelocity(List<Piston> pistons) {
    return pistons.stream().mapToDouble(Piston::areaM2).sum();
  }

  /**
   * Returns the air mass of a piston in an endless rigid wall, both faces together, (16/3) rho a^3
   * (kg).
   *
   * <p>Source: L. E. Kinsler and A. R. Frey, Fundamentals of Acoustics, piston functions, limit of
   * small ka, (8/3) rho a^3 per face. Low-frequency limit: within 1 % up to ka = 0.2.
   *
   * @param radiusM radius (m)
   * @param air the air
   */
  public static double infiniteBaffleMassKg(double radiusM, Air air) {
    Checks.positive(radiusM, "piston radius", "m");
    return 16.0 / 3 * air.densityKgPerM3() * radiusM * radiusM * radiusM;
  }
}
