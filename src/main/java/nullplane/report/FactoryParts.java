package nullplane.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import nullplane.sample.BriefTest;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;

/**
 * What other computations add to a factory sheet; whatever is missing falls back on common practice
 * or reads "not determined".
 *
 * @param specDate date that the spec bears
 * @param windows acceptance windows by the values' keys; each takes the place of the usual one
 * @param values coil, motor and large-signal values; each takes the place of the one with its key,
 *     or stands behind the others of its section
 * @param tests tests that stand behind the usual ones, for example a sampling plan; each takes the
 *     place of the usual one with its name
 * @param priorities what matters most, first things first; empty for the usual order
 * @param windowNotes why the windows are what they are, in sentences; empty if nothing is known
 */
public record FactoryParts(
    Optional<LocalDate> specDate,
    Map<String, BriefWindow> windows,
    List<BriefValue> values,
    List<BriefTest> tests,
    List<String> priorities,
    List<String> windowNotes) {
  /** Nothing is known beyond the assessment. */
  public static final FactoryParts NONE =
      new FactoryParts(Optional.empty(), Map.of(), List.of(), List.of(), List.of(), List.of());

  /** Copies the collections. */
  public FactoryParts {
    windows = Map.copyOf(windows);
    values = List.copyOf(values);
    tests = List.copyOf(tests);
    priorities = List.copyOf(priorities);
    windowNotes = List.copyOf(windowNotes);
  }

  /** Returns the same parts with a date. */
  public FactoryParts withDate(Optional<LocalDate> date) {
    return new FactoryParts(date, windows, values, tests, priorities, windowNotes);
  }
}
