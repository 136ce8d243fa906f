package nullplane.cli;

import java.util.stream.Stream;
import nullplane.units.FiniteText;

/** How far a step is and how long it will still take, in one line. */
final class ProgressWords {
  /** Before this, what is done says little about what is left (s). */
  private static final double SOONEST_S = 1;

  private static final double MINUTE_S = 60;
  private static final double HOUR_S = 3600;

  private ProgressWords() {}

  /**
   * Returns the line. The time left is what the rest takes at the mean pace so far; none is named
   * in the first second.
   *
   * @param task what goes on
   * @param done steps done
   * @param total steps in all, as far as it is known
   * @param before steps that were done when the time began
   * @param seconds time since the first step began (s)
   * @param note what else there is to say; may be empty
   * @param width columns that the line may take
   */
  static String of(
      String task, long done, long total, long before, double seconds, String note, int width) {
    if (total <= 0) {
      return task.length() > width ? "" : task;
    }
    long counted = Math.min(done, total);
    String share = task + ": " + 100 * counted / total + " %";
    String steps = ", " + counted + " of " + total;
    String left =
        done > before && done < total && seconds >= SOONEST_S
            ? ", about " + duration(seconds * (total - done) / (done - before)) + " left"
            : "";
    String last = note.isEmpty() ? "" : "; " + note;
    // what fits; no number is cut off
    return Stream.of(share + steps + left + last, share + steps + left, share + left, share)
        .filter(line -> line.length() <= width)
        .findFirst()
        .orElse("");
  }

  /** Returns a time in as many digits as an estimate deserves. */
  static String duration(double seconds) {
    if (seconds < 9.5) {
      return FiniteText.of("%d s", Math.max(1, Math.round(seconds)));
    }
    if (seconds < MINUTE_S - 2.5) {
      return FiniteText.of("%d s", 5 * Math.round(seconds / 5));
    }
    long minutes = Math.max(1, Math.round(seconds / MINUTE_S));
    if (seconds < HOUR_S - MINUTE_S / 2) {
      return FiniteText.of("%d min", minutes);
    }
    return FiniteText.of("%d h %d min", minutes / 60, minutes % 60);
  }
}
