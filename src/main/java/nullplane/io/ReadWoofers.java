package nullplane.io;

import java.util.List;
import nullplane.faults.InputFault;

/**
 * The woofers of a file, table or folder: those that could be read, and what was wrong with the
 * others.
 *
 * @param woofers the woofers, in the order of the rows or of the files' names
 * @param refused every fault of every other row or file
 */
public record ReadWoofers(List<ReadWoofer> woofers, List<InputFault> refused) {
  /** Copies the lists. */
  public ReadWoofers {
    woofers = List.copyOf(woofers);
    refused = List.copyOf(refused);
  }
}
