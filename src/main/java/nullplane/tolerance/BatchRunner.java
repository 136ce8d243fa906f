package nullplane.tolerance;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/**
 * Runs the parts of a large computation. The parts do not depend on each other, write to places of
 * their own, and may run in any order and at once; what comes out does not depend on how they ran.
 */
@FunctionalInterface
public interface BatchRunner {
  /**
   * Runs a task for each part and returns when all are done; what they wrote is visible then.
   *
   * @param parts number of parts, 0 or more
   * @param task takes the index of a part, from 0
   */
  void run(int parts, IntConsumer task);

  /** Returns a runner that runs one part after the other on the caller's thread. */
  static BatchRunner sequential() {
    return (parts, task) -> IntStream.range(0, parts).forEach(task);
  }
}
