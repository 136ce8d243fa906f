package nullplane.io;

import java.util.Collection;
import java.util.Optional;

/**
 * The known key that an unknown one was most likely meant to be.
 *
 * <p>Source: V. I. Levenshtein, Soviet Physics Doklady 10 (1966) 707 (edit distance).
 */
public final class NearestKey {
  private static final int LONGEST = 40;

  private NearestKey() {}

  /** Returns the known key with the least edit distance, if it is near enough to be a slip. */
  public static Optional<String> of(String unknown, Collection<String> known) {
    if (unknown.length() > LONGEST) {
      return Optional.empty();
    }
    Optional<String> nearest = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (String key : known) {
      int distance = distance(unknown, key);
      boolean near = distance <= Math.max(1, Math.min(unknown.length(), key.length()) / 2);
      if (near && distance < least) {
        least = distance;
        nearest = Optional.of(key);
      }
    }
    return nearest;
  }

  /** Returns the number of insertions, deletions and exchanges that turn one text into another. */
  static int distance(String from, String to) {
    int[] previous = new int[to.length() + 1];
    for (int j = 0; j <= to.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      int[] current = new int[to.length() + 1];
      current[0] = i;
      for (int j = 1; j <= to.length(); j++) {
        int exchange = previous[j - 1] + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        current[j] = Math.min(exchange, Math.min(previous[j], current[j - 1]) + 1);
      }
      previous = current;
    }
    return previous[to.length()];
  }
}
