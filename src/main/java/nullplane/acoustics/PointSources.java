package nullplane.acoustics;

import nullplane.units.Air;
import nullplane.units.Checks;

/**
 * Closed forms of small sources: what a cone of given volume displacement can do at most, and what
 * a bare disc meets at low frequency. Meant for limits and checks; a panel's own field is solved,
 * not estimated with these.
 *
 * <p>Symbols: rho density, c speed of sound, w = 2 pi f, k = w/c, D distance between the two point
 * sources of a dipole, a radius.
 */
public final class PointSources {
  private PointSources() {}

  /**
   * Returns the sound pressure of a small source in full space, rho w^2 Sd x/(4 sqrt2 pi r) (Pa,
   * root mean square).
   *
   * <p>Source: R. H. Small, J. Audio Eng. Soc. 21 (1973) 798, displacement-limited output, written
   * for full space. Valid for ka well below 1.
   *
   * @param volumePeakM3 peak volume displacement, Sd times peak travel (m3)
   * @param frequencyHz frequency (Hz)
   * @param distanceM distance (m)
   * @param air the air
   */
  public static double fullSpaceRmsPa(
      double volumePeakM3, double frequencyHz, double distanceM, Air air) {
    Checks.notNegative(volumePeakM3, "volume displacement", "m3");
    Checks.positive(frequencyHz, "frequency", "Hz");
    Checks.positive(distanceM, "distance", "m");
    double omega = 2 * Math.PI * frequencyHz;
    return air.densityKgPerM3()
        * (omega * omega)
        * volumePeakM3
        / (4 * Math.sqrt(2) * Math.PI * distanceM);
  }

  /**
   * Returns the sound pressure of a small source in half space, flush in a rigid plane or on a
   * rigid floor: twice that in full space (Pa, root mean square).
   *
   * @param volumePeakM3 peak volume displacement, Sd times peak travel (m3)
   * @param frequencyHz frequency (Hz)
   * @param distanceM distance (m)
   * @param air the air
   */
  public static double halfSpaceRmsPa(
      double volumePeakM3, double frequencyHz, double distanceM, Air air) {
    return 2 * fullSpaceRmsPa(volumePeakM3, frequencyHz, distanceM, air);
  }

  /**
   * Returns the far-field pressure of a pair of opposite point sources as a share of that of one of
   * them, 2 sin(k D cos(angle)/2) in modulus (1).
   *
   * <p>Source: sum of two spherical waves of path difference D cos(angle). Valid for distances far
   * above D.
   *
   * @param lengthM distance between the two sources D (m)
   * @param angleRad angle off the axis (rad)
   * @param frequencyHz frequency (Hz)
   * @param air the air
   */
  public static double dipoleFactor(double lengthM, double angleRad, double frequencyHz, Air air) {
    Checks.positive(lengthM, "dipole length", "m");
    return Math.abs(2 * Math.sin(air.waveNumber(frequencyHz) * lengthM * Math.cos(angleRad) / 2));
  }

  /**
   * Returns what a rigid floor makes of a small source's pressure, |1 + (r/r') e^{-jk(r' - r)}|
   * with r' the path by way of the floor (1); 2 for a source on the floor.
   *
   * <p>Source: image source in a rigid plane.
   *
   * @param sourceHeightM height of the source (m)
   * @param listenerHeightM height of the listener (m)
   * @param alongM distance between the two along the floor (m)
   * @param frequencyHz frequency (Hz)
   * @param air the air
   */
  public static double floorFactor(
      double sourceHeightM, double listenerHeightM, double alongM, double frequencyHz, Air air) {
    Checks.notNegative(sourceHeightM, "source height", "m");
    Checks.notNegative(listenerHeightM, "listener height", "m");
    Checks.positive(alongM, "distance along the floor", "m");
    double straightM = Math.hypot(alongM, sourceHeightM - listenerHeightM);
    double reflectedM = Math.hypot(alongM, sourceHeightM + listenerHeightM);
    double phase = air.waveNumber(frequencyHz) * (reflectedM - straightM);
    double share = straightM / reflectedM;
    return Math.hypot(1 + share * Math.cos(phase), share * Math.sin(phase));
  }

  /**
   * Returns the air mass of a free rigid disc, both faces together, (8/3) rho a^3 (kg).
   *
   * <p>Source: H. Lamb, Hydrodynamics (1932), art. 102. Low-frequency limit: within 1 % up to ka of
   * about 0.2.
   *
   * @param radiusM radius (m)
   * @param air the air
   */
  public static double freeDiscMassKg(double radiusM, Air air) {
    Checks.positive(radiusM, "disc radius", "m");
    return 8.0 / 3 * air.densityKgPerM3() * radiusM * radiusM * radiusM;
  }

  /**
   * Returns the radiation resistance of a free rigid disc, both faces together, (16/27) rho w^4
   * a^6/(pi c^3) (N s/m).
   *
   * <p>Source: power of the dipole that the disc's air mass makes; L. Beranek and T. Mellow,
   * Acoustics (2012), ch. 4. Low-frequency limit.
   *
   * @param radiusM radius (m)
   * @param frequencyHz frequency (Hz)
   * @param air the air
   */
  public static double freeDiscResistance(double radiusM, double frequencyHz, Air air) {
    Checks.positive(radiusM, "disc radius", "m");
    double omega = 2 * Math.PI * frequencyHz;
    double wave = omega * radiusM / air.speedOfSoundMPerS();
    return 16.0
        / 27
        * air.densityKgPerM3()
        * (wave * wave * wave)
        * omega
        * (radiusM * radiusM * radiusM)
        / Math.PI;
  }

  /**
   * Returns the length of the dipole that a free rigid disc amounts to at low frequency, 8 a/(3 pi)
   * (m): on the axis p = j k D times the pressure of one face alone.
   *
   * <p>Source: H. Lamb, Hydrodynamics (1932), art. 102, flow past a disc.
   *
   * @param radiusM radius (m)
   */
  public static double freeDiscDipoleLengthM(double radiusM) {
    return 8 * Checks.positive(radiusM, "disc radius", "m") / (3 * Math.PI);
  }
}
