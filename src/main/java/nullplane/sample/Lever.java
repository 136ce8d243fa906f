package nullplane.sample;

import java.util.Optional;

/**
 * What a maker can change on a woofer without changing its area. The usual step is what a maker
 * takes without a second thought. Common practice, without a source.
 */
public enum Lever {
  /** Moving mass; usual step 5 %. */
  MASS("mass", "moving mass", Math.log(1.05)),
  /** Stiffness of spider and surround; usual step 10 %. */
  STIFFNESS("stiffness", "suspension stiffness", Math.log(1.1)),
  /** Flux in the gap; usual step 5 %. */
  FLUX("flux", "flux", Math.log(1.05)),
  /** Wire, layers and turns, and with them the coil's height; usual step 5 % of Re. */
  WINDING("winding", "winding", Math.log(1.05)),
  /** Rest position of the coil in the gap. */
  REST_POSITION("rest-position", "rest position of the coil", 1);

  private final String word;
  private final String name;
  private final double step;

  Lever(String word, String name, double step) {
    this.word = word;
    this.name = name;
    this.step = step;
  }

  /** Returns the lever as it stands on the command line. */
  public String word() {
    return word;
  }

  /** Returns the lever in words. */
  public String inWords() {
    return name;
  }

  /** Returns the usual step, as the logarithm of a ratio (1). */
  double step() {
    return step;
  }

  /** Returns the lever of a word, if there is one. */
  public static Optional<Lever> ofWord(String word) {
    for (Lever lever : values()) {
      if (lever.word.equals(word)) {
        return Optional.of(lever);
      }
    }
    return Optional.empty();
  }
}
