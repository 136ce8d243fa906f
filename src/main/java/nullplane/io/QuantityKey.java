package nullplane.io;

/**
 * A key whose value is a quantity.
 *
 * @param name the key as it stands in the file
 * @param dimension what it measures
 * @param limits its plausible values
 * @param example a value to write
 */
record QuantityKey(String name, Dimension dimension, Limits limits, String example) {

  /**
   * Returns a key.
   *
   * @param limits its plausible values as text, for example "5 cm .. 10 m"
   */
  static QuantityKey of(String name, Dimension dimension, String limits, String example) {
    return new QuantityKey(name, dimension, Limits.of(limits, dimension), example);
  }

  /** Returns what to write, for a message. */
  String write() {
    return "write " + name + ": " + example;
  }

  /** Returns how the quantity is asked for. */
  Quantity.Form form() {
    int blank = example.lastIndexOf(' ');
    String unit = dimension == Dimension.NUMBER || blank < 0 ? "" : example.substring(blank + 1);
    return new Quantity.Form(dimension, unit, write());
  }
}
