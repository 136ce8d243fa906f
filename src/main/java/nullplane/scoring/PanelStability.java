package nullplane.scoring;

/**
 * What keeps a standing panel from tipping, as geometry: how far its foot has to reach to the front
 * and to the rear of the centre of gravity.
 *
 * <p>Source: stability test of IEC 62368-1, clause 8.6 (from memory), which tilts equipment by 10
 * degrees, or pushes it with 13 % of its weight at a height of at most 1.5 m; the two are not the
 * same. Which of them, or another rule, applies is for local codes. Valid for a rigid stand on a
 * level floor.
 */
public final class PanelStability {
  private static final double TILT_RAD = Math.toRadians(10);
  private static final double PUSH_SHARE = 0.13;

  private PanelStability() {}

  /**
   * Returns half the depth of base that stands a tilt by 10 degrees, h tan 10 degrees (m).
   *
   * @param centreOfGravityM height of the centre of gravity (m)
   */
  public static double halfBaseForTiltM(double centreOfGravityM) {
    return centreOfGravityM * Math.tan(TILT_RAD);
  }

  /**
   * Returns the tilt at which the centre of gravity passes over the base's edge, atan(b/h) (rad).
   *
   * @param centreOfGravityM height of the centre of gravity (m)
   * @param halfBaseM half the depth of the base (m)
   */
  public static double tippingRad(double centreOfGravityM, double halfBaseM) {
    return Math.atan2(halfBaseM, centreOfGravityM);
  }

  /** Returns whether a tilt is stood that the test asks for (rad). */
  public static boolean standsTest(double tippingRad) {
    return tippingRad >= TILT_RAD;
  }

  /**
   * Returns half the depth of base that stands a push by 13 % of the weight, 0.13 h (m).
   *
   * @param pushHeightM height of the push (m)
   */
  public static double halfBaseForPushM(double pushHeightM) {
    return PUSH_SHARE * pushHeightM;
  }
}
