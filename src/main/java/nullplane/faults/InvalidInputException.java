package nullplane.faults;

import java.util.List;
import java.util.stream.Collectors;

/** The input is wrong. Carries every fault found, in the order of the file. Exit code 2. */
public final class InvalidInputException extends NullplaneException {
  private static final long serialVersionUID = 1L;

  private final transient List<InputFault> faults;

  /**
   * @param faults at least one fault
   * @throws IllegalArgumentException if the list is empty
   */
  public InvalidInputException(List<InputFault> faults) {
    super(2, faults.stream().map(InputFault::oneLine).collect(Collectors.joining("\n")));
    if (faults.isEmpty()) {
      throw new IllegalArgumentException("an input exception needs at least one fault");
    }
    this.faults = List.copyOf(faults);
  }

  /** Returns the faults in the order of the file. */
  public List<InputFault> faults() {
    return faults;
  }
}
