package nullplane.network;

/** Which way round a driver is connected. */
public enum Polarity {
  /** As the woofers are. */
  NORMAL(1),
  /** Against the woofers. */
  INVERTED(-1);

  private final int sign;

  Polarity(int sign) {
    this.sign = sign;
  }

  /** Returns 1 or -1. */
  public int sign() {
    return sign;
  }
}
