package nullplane.report;

import java.awt.Color;
import java.util.List;

/**
 * The colours of all pictures.
 *
 * <p>Source: M. Okabe and K. Ito, Color Universal Design (2008). Black and yellow of that set are
 * left out of the stacks' colours: black is the ink, yellow is too faint on white.
 */
final class Palette {
  static final Color INK = new Color(0x000000);
  static final Color SOFT_INK = new Color(0x555555);
  static final Color MAJOR_GRID = new Color(0xBDBDBD);
  static final Color MINOR_GRID = new Color(0xE3E3E3);
  static final Color PAPER = Color.WHITE;

  /** Ordered so that neighbours also differ in grey print. */
  private static final List<Color> STACKS =
      List.of(
          new Color(0, 114, 178),
          new Color(230, 159, 0),
          new Color(0, 158, 115),
          new Color(204, 121, 167),
          new Color(213, 94, 0),
          new Color(86, 180, 233));

  private Palette() {}

  /** Returns the colour that a stack keeps in all pictures, by its place in the spec from 0. */
  static Color stack(int index) {
    return STACKS.get(index % STACKS.size());
  }

  /** Returns the colour mixed with white; share 1 is the colour itself, 0 is white. */
  static Color tint(Color colour, double share) {
    return new Color(
        mix(colour.getRed(), share), mix(colour.getGreen(), share), mix(colour.getBlue(), share));
  }

  /** Returns the colour darkened for letters: share 1 is the colour itself, 0 is black. */
  static Color shade(Color colour, double share) {
    return new Color(
        (int) Math.round(colour.getRed() * share),
        (int) Math.round(colour.getGreen() * share),
        (int) Math.round(colour.getBlue() * share));
  }

  private static int mix(int channel, double share) {
    return (int) Math.round(255 + share * (channel - 255));
  }
}
