package nullplane.report;

import java.awt.Color;
import java.util.List;

/**
 * Colours for a quantity over a plane, from low to high: readable for the colour-blind, and
 * steadily lighter, so that grey print keeps the order.
 *
 * <p>Source: viridis, S. van der Walt and N. Smith (2015), released into the public domain (CC0);
 * ten colours of it, straight lines between.
 */
final class ColourScale {
  private static final List<Color> COLOURS =
      List.of(
          new Color(0x440154),
          new Color(0x482878),
          new Color(0x3E4A89),
          new Color(0x31688E),
          new Color(0x26828E),
          new Color(0x1F9E89),
          new Color(0x35B779),
          new Color(0x6DCD59),
          new Color(0xB4DE2C),
          new Color(0xFDE725));

  private ColourScale() {}

  /** Returns the colour at a share of the way from low to high (1), 0 to 1. */
  static Color at(double share) {
    double place = Math.max(0, Math.min(1, share)) * (COLOURS.size() - 1);
    int lower = Math.min(COLOURS.size() - 2, (int) place);
    double rest = place - lower;
    Color from = COLOURS.get(lower);
    Color to = COLOURS.get(lower + 1);
    return new Color(
        between(from.getRed(), to.getRed(), rest),
        between(from.getGreen(), to.getGreen(), rest),
        between(from.getBlue(), to.getBlue(), rest));
  }

  private static int between(int from, int to, double share) {
    return (int) Math.round(from + share * (to - from));
  }
}
