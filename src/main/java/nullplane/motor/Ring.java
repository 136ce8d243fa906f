package nullplane.motor;

import nullplane.driver.RoundWireCoil;

/** What a stated inductance asks of the motor. */
public enum Ring {
  /** The coil shows about that much, or less, without any ring. */
  NONE("no shorting ring"),
  /** A copper cap or a partial ring brings the coil there. */
  PARTIAL("a copper cap or a partial shorting ring"),
  /** A whole shorting ring is needed. */
  WHOLE("a whole shorting ring"),
  /** Less than a ring leaves: doubtful with this coil. */
  DOUBTFUL("less than a shorting ring is expected to leave; ask the maker");

  private final String words;

  Ring(String words) {
    this.words = words;
  }

  /** Returns what it is in plain words. */
  public String words() {
    return words;
  }

  /**
   * Returns what an inductance asks of a coil's motor, the estimates taken with a fifth in hand.
   *
   * <p>Source: {@link InductanceEstimate}; the fifth is common practice.
   *
   * @param inductanceH the inductance wanted, near 1 kHz (H)
   * @param coil the coil
   */
  public static Ring neededFor(double inductanceH, RoundWireCoil coil) {
    double inAir = InductanceEstimate.inAirH(coil);
    if (inductanceH >= 0.8 * InductanceEstimate.PLAIN_FACTOR * inAir) {
      return NONE;
    }
    if (inductanceH >= 1.2 * InductanceEstimate.RING_FACTOR * inAir) {
      return PARTIAL;
    }
    return inductanceH >= 0.8 * InductanceEstimate.RING_FACTOR * inAir ? WHOLE : DOUBTFUL;
  }
}
