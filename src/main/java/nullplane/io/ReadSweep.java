package nullplane.io;

import java.util.List;
import nullplane.fit.ImpedanceSweep;

/**
 * A sweep as it was read from a file.
 *
 * @param sweep the sweep, in order of frequency
 * @param warnings what was repaired or assumed, one sentence each
 * @param digest SHA-256 of the file's bytes, hexadecimal
 */
public record ReadSweep(ImpedanceSweep sweep, List<String> warnings, String digest) {
  /** Copies the list. */
  public ReadSweep {
    warnings = List.copyOf(warnings);
  }
}
