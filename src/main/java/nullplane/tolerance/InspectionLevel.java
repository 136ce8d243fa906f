package nullplane.tolerance;

/** General inspection levels of ISO 2859-1: how large a sample is taken from a lot. */
public enum InspectionLevel {
  /** Less discrimination needed: smaller samples. */
  I("AABCCDEFGHJKLMN"),
  /** The usual level. */
  II("ABCDEFGHJKLMNPQ"),
  /** More discrimination needed: larger samples. */
  III("BCDEFGHJKLMNPQR");

  private static final int[] LOT_UP_TO = {
    8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000
  };

  private final String letters;

  InspectionLevel(String letters) {
    this.letters = letters;
  }

  /**
   * Returns the sample size code letter of a lot.
   *
   * <p>Source: ISO 2859-1:1999, table 1.
   *
   * @param lotSize units of the lot, 2 or more
   * @throws IllegalArgumentException if the lot is smaller
   */
  public char codeLetter(int lotSize) {
    if (lotSize < 2) {
      throw new IllegalArgumentException("lot of " + lotSize + "; allowed: 2 or more");
    }
    int row = 0;
    while (row < LOT_UP_TO.length && lotSize > LOT_UP_TO[row]) {
      row++;
    }
    return letters.charAt(row);
  }
}
