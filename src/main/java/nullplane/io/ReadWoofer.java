package nullplane.io;

import java.util.List;
import nullplane.driver.CompletedSet;
import nullplane.driver.Contradiction;
import nullplane.driver.Datasheet;
import nullplane.driver.Woofer;

/**
 * A woofer and the file it came from.
 *
 * @param woofer the woofer, by the figures that its sheet is completed from
 * @param sheet all that follows from its sheet, contradictions included
 * @param digest SHA-256 of the file's bytes, 64 hexadecimal digits
 * @param fileName the file as the user named it
 */
public record ReadWoofer(Woofer woofer, Datasheet sheet, String digest, String fileName) {

  /** Returns the completed set. */
  public CompletedSet completed() {
    return sheet.completed();
  }

  /** Returns where the sheet contradicts itself; the woofer can be judged all the same. */
  public List<Contradiction> contradictions() {
    return sheet.completed().contradictions();
  }
}
