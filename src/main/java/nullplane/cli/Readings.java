package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;

/** Reads several inputs one after another, and tells the faults of all of them at once. */
final class Readings {
  private final List<InputFault> faults = new ArrayList<>();

  /** Returns what a reading gives, or nothing if it is faulty. */
  <T> Optional<T> of(Supplier<T> reading) {
    try {
      return Optional.of(reading.get());
    } catch (InvalidInputException e) {
      faults.addAll(e.faults());
      return Optional.empty();
    }
  }

  /** Adds a fault found between inputs. */
  void add(InputFault fault) {
    faults.add(fault);
  }

  /**
   * Ends the reading.
   *
   * @throws InvalidInputException with all faults, if there are any
   */
  void end() {
    if (!faults.isEmpty()) {
      throw new InvalidInputException(faults);
    }
  }
}
