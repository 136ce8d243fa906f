package nullplane.io;

import nullplane.units.Range;

/**
 * The plausible values of a key, kept as people read them.
 *
 * @param words the limits in words, for example "5 cm .. 10 m"
 * @param range the same in SI
 */
record Limits(String words, Range range) {

  /**
   * Returns the limits a text states.
   *
   * @throws IllegalArgumentException if the text is no range of the dimension
   */
  static Limits of(String words, Dimension dimension) {
    try {
      return new Limits(words, Quantity.parseRange(words, dimension));
    } catch (UnreadableQuantityException e) {
      throw new IllegalArgumentException(words, e);
    }
  }
}
