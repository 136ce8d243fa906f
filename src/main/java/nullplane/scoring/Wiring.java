package nullplane.scoring;

import java.util.ArrayList;
import java.util.List;

/**
 * How a stack's identical woofers are wired: strings in parallel, each of woofers in series. Woofer
 * number i (counted from 0, in the order of the spec) belongs to string i modulo the number of
 * strings.
 *
 * @param strings strings in parallel, 1 or more
 * @param inSeries woofers in series in each string, 1 or more
 */
public record Wiring(int strings, int inSeries) {
  /** Checks that both counts are at least 1. */
  public Wiring {
    if (strings < 1 || inSeries < 1) {
      throw new IllegalArgumentException(
          "wiring " + strings + " strings of " + inSeries + "; allowed: 1 or more of each");
    }
  }

  /** Returns the number of woofers. */
  public int woofers() {
    return strings * inSeries;
  }

  /** Returns every wiring of a number of woofers, from all in parallel to all in series. */
  public static List<Wiring> allOf(int woofers) {
    List<Wiring> all = new ArrayList<>();
    for (int inSeries = 1; inSeries <= woofers; inSeries++) {
      if (woofers % inSeries == 0) {
        all.add(new Wiring(woofers / inSeries, inSeries));
      }
    }
    return List.copyOf(all);
  }

  /** Returns the wiring in words. */
  public String inWords() {
    if (woofers() == 1) {
      return "single";
    }
    if (inSeries == 1) {
      return "all in parallel";
    }
    if (strings == 1) {
      return "all in series";
    }
    return strings + " strings in parallel, " + inSeries + " in series in each";
  }
}
