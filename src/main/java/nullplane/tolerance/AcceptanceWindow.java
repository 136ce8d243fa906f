package nullplane.tolerance;

/**
 * The window of one inspected quantity.
 *
 * @param quantity what is measured
 * @param nominal wanted value (in the quantity's unit)
 * @param halfWidth half the window (share of the value, or dB), above 0
 * @param limit what keeps it from being wider
 */
public record AcceptanceWindow(
    MeasuredQuantity quantity, double nominal, double halfWidth, WindowLimit limit) {
  /** Checks that the width is a share or a number of decibels above 0. */
  public AcceptanceWindow {
    if (!(halfWidth > 0)
        || Double.isInfinite(halfWidth)
        || (!quantity.inDecibels() && halfWidth >= 1)) {
      throw new IllegalArgumentException(
          "window of " + quantity.symbol() + " is " + halfWidth + "; allowed: above 0, below 1");
    }
  }

  /** Returns the least value accepted (in the quantity's unit). */
  public double lower() {
    return quantity.at(nominal, -halfWidth);
  }

  /** Returns the greatest value accepted (in the quantity's unit). */
  public double upper() {
    return quantity.at(nominal, halfWidth);
  }

  /** Returns whether a measured value (in the quantity's unit) is accepted. */
  public boolean accepts(double value) {
    return value >= lower() && value <= upper();
  }

  /** Returns whether it is tighter than the tightest usual window: a warning, and a cost. */
  public boolean tighterThanUsual() {
    return halfWidth < quantity.practice().lower();
  }

  /** Returns the cost against the tightest usual window, as usual width per width (1). */
  public double costShare() {
    return quantity.practice().lower() / halfWidth;
  }
}
