package nullplane.tolerance;

/**
 * Acceptance quality limits of ISO 2859-1 from 0.10 to 6.5, as per cent of nonconforming units: the
 * worst process average that is still taken as satisfactory.
 */
public enum AcceptanceQuality {
  /** 0.10 %. */
  AQL_0_10("0.10"),
  /** 0.15 %. */
  AQL_0_15("0.15"),
  /** 0.25 %. */
  AQL_0_25("0.25"),
  /** 0.40 %. */
  AQL_0_40("0.40"),
  /** 0.65 %. */
  AQL_0_65("0.65"),
  /** 1.0 %. */
  AQL_1_0("1.0"),
  /** 1.5 %. */
  AQL_1_5("1.5"),
  /** 2.5 %. */
  AQL_2_5("2.5"),
  /** 4.0 %. */
  AQL_4_0("4.0"),
  /** 6.5 %. */
  AQL_6_5("6.5");

  private final String perCent;

  AcceptanceQuality(String perCent) {
    this.perCent = perCent;
  }

  /** Returns the limit in per cent, as the standard writes it. */
  public String perCent() {
    return perCent;
  }

  /** Returns the limit as a share (1). */
  public double share() {
    return Double.parseDouble(perCent) / 100;
  }
}
