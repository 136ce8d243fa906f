package nullplane.report;

/**
 * What keeps a standing panel from tipping, as geometry: how far its foot has to reach to the front
 * and to the rear of the centre of gravity.
 *
 * <p>Source: stability clause of IEC 62368-1, which tilts equipment by 10 degrees, or pushes it
 * with 13 % of its weight at a height of at most 1.5 m; the two are not the same. Which of them, or
 * another rule, applies is for local codes. Valid for a rigid stand on a level floor.
 */
final class PanelStability {
  private static final double TILT_RAD = Math.toRadians(10);
  private static final double PUSH_SHARE = 0.13;

  private PanelStability() {}

  /**
   * Returns half the depth of base that stands a tilt by 10 degrees, h tan 10 degrees (m).
   *
   * @param centreOfGravityM height of the centre of gravity (m)
   */
  static double halfBaseForTiltM(double centreOfGravityM) {
    return centreOfGravityM * Math.tan(TILT_RAD);
  }

  /**
   * Returns half the depth of base that stands a push by 13 % of the weight, 0.13 h (m).
   *
   * @param pushHeightM height of the push (m)
   */
  static double halfBaseForPushM(double pushHeightM) {
    return PUSH_SHARE * pushHeightM;
  }
}
