package nullplane.motor;

import nullplane.driver.RoundWireCoil;

/**
 * What inductance a coil will show in its motor.
 *
 * <p>Source: H. A. Wheeler, Proc. IRE 16 (1928) 1398, for the coil in air: L = 0.8 a^2 N^2/(6 a + 9
 * b + 10 c) microhenry with inches; within about 1 % where the three terms are alike and within a
 * few per cent for long thin windings. The steel's part is common practice without a source: near 1
 * kHz, where Le is read, eddy currents in solid steel undo most of what the iron adds, and a closed
 * ring or cap of copper takes more than half. The estimate is good to about a third either way.
 */
public final class InductanceEstimate {
  /** What solid steel without a ring makes of the coil in air, near 1 kHz (1). Common practice. */
  public static final double PLAIN_FACTOR = 1.2;

  /** What steel with a shorting ring makes of it, near 1 kHz (1). Common practice. */
  public static final double RING_FACTOR = 0.5;

  /** How far the truth may lie from the estimate, as a share (1). Common practice. */
  public static final double UNCERTAINTY = 1.0 / 3;

  private static final double INCH_M = 0.0254;

  private InductanceEstimate() {}

  /**
   * Returns the inductance of the coil in air (H).
   *
   * @param coil the coil
   */
  public static double inAirH(RoundWireCoil coil) {
    return wheelerH(
        coil.meanDiameterM() / 2,
        coil.windingHeightM(),
        coil.layers() * coil.insulatedDiameterM(),
        coil.turns());
  }

  /**
   * Returns the inductance of a winding of rectangular section in air (H).
   *
   * @param meanRadiusM mean radius a (m)
   * @param heightM height b (m)
   * @param depthM radial depth c (m)
   * @param turns number of turns N (1)
   */
  public static double wheelerH(double meanRadiusM, double heightM, double depthM, int turns) {
    double perMetre = 0.8e-6 / INCH_M; // Wheeler's constant, in henry and metres
    return perMetre
        * meanRadiusM
        * meanRadiusM
        * turns
        * turns
        / (6 * meanRadiusM + 9 * heightM + 10 * depthM);
  }

  /**
   * Returns the estimate in a motor without a shorting ring (H).
   *
   * @param coil the coil
   */
  public static double plainH(RoundWireCoil coil) {
    return PLAIN_FACTOR * inAirH(coil);
  }

  /**
   * Returns the estimate in a motor with a shorting ring (H).
   *
   * @param coil the coil
   */
  public static double withRingH(RoundWireCoil coil) {
    return RING_FACTOR * inAirH(coil);
  }
}
