package nullplane.io;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/** The faults of one file, gathered while it is read. */
final class FaultList {
  /** More than these are only counted: nobody reads further, and noise can hold very many. */
  static final int MOST_SHOWN = 100;

  private final String file;
  private final List<InputFault> faults = new ArrayList<>();
  private int notShown;

  FaultList(String file) {
    this.file = file;
  }

  /** Adds a fault; see {@link InputFault} for the arguments. */
  void add(int line, String key, String value, String problem, String allowed, String hint) {
    if (faults.size() >= MOST_SHOWN) {
      notShown++;
      return;
    }
    faults.add(new InputFault(file, line, key, Excerpt.of(value), problem, allowed, hint));
  }

  boolean isEmpty() {
    return faults.isEmpty();
  }

  /** Returns the faults in the order of the file, and a last one that counts those left out. */
  List<InputFault> inOrder() {
    List<InputFault> sorted = new ArrayList<>(faults);
    sorted.sort(Comparator.comparingInt(InputFault::line));
    if (notShown > 0) {
      sorted.add(new InputFault(file, 0, "", "", notShown + " more faults are not shown", "", ""));
    }
    return List.copyOf(sorted);
  }

  /**
   * Throws all faults at once, if there are any.
   *
   * @throws InvalidInputException with every fault in the order of the file
   */
  void throwIfAny() {
    if (!isEmpty()) {
      throw new InvalidInputException(inOrder());
    }
  }

  /** Returns the one fault that ends the reading of a file, as an exception to throw. */
  static InvalidInputException fatal(
      String file, int line, String value, String problem, String allowed, String hint) {
    return new InvalidInputException(
        List.of(new InputFault(file, line, "", Excerpt.of(value), problem, allowed, hint)));
  }
}
