package nullplane.tolerance;

/** Cuts a run of units into batches, each with work space of its own. */
final class Batches {
  /** Units of a batch: a few milliseconds' work, so that threads share evenly. */
  static final int USUAL_SIZE = 256;

  private final BatchRunner runner;
  private final int size;

  Batches(BatchRunner runner, int size) {
    if (size < 1) {
      throw new IllegalArgumentException("batches of " + size + " units; allowed: 1 or more");
    }
    this.runner = runner;
    this.size = size;
  }

  /** Returns what runs the batches. */
  BatchRunner runner() {
    return runner;
  }

  /** Returns the units of a batch. */
  int size() {
    return size;
  }

  /** What works through the units of a batch. */
  interface Work {
    /**
     * Works through units.
     *
     * @param from first unit
     * @param to end, not included
     */
    void batch(int from, int to);
  }

  /** Works through all units, batch by batch. */
  void over(int units, Work work) {
    int batches = (units + size - 1) / size;
    runner.run(batches, b -> work.batch(b * size, Math.min(units, (b + 1) * size)));
  }
}
