package nullplane.tolerance;

/**
 * How much a measured quantity spreads over the units of a run.
 *
 * @param quantity what is measured
 * @param nominal its value in the woofer as designed (in the quantity's unit)
 * @param halfWidth half the window that holds 95 % of the units, two standard deviations (share of
 *     the value, or dB)
 */
public record QuantitySpread(MeasuredQuantity quantity, double nominal, double halfWidth) {

  /** Returns the lower end of what 95 % of the units have (in the quantity's unit). */
  public double lower() {
    return quantity.at(nominal, -halfWidth);
  }

  /** Returns the upper end of what 95 % of the units have (in the quantity's unit). */
  public double upper() {
    return quantity.at(nominal, halfWidth);
  }

  /** Returns the spread of values, one per unit. */
  static QuantitySpread of(MeasuredQuantity quantity, double nominal, double[] values) {
    double sum = 0;
    double squares = 0;
    for (double value : values) {
      double deviation = quantity.deviation(value, nominal);
      sum += deviation;
      squares += deviation * deviation;
    }
    double mean = sum / values.length;
    return new QuantitySpread(
        quantity, nominal, 2 * Math.sqrt(Math.max(0, squares / values.length - mean * mean)));
  }
}
