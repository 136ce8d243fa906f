package nullplane.search;

/**
 * Where a search stands with its {@link StallRule}.
 *
 * @param best the best mark of the living population
 * @param bestGeneration the generation of that mark; until there is one, the one before the
 *     population's first
 * @param start mark of the archive when the population started
 * @param fruitless populations given up in a row that brought no progress
 * @param givenUp populations given up in all
 */
record Stall(Mark best, long bestGeneration, Mark start, int fruitless, int givenUp) {
  static final Stall NONE = new Stall(Mark.WORST, 0, Mark.WORST, 0, 0);

  /**
   * A measure of progress.
   *
   * @param violation least violation, 0 when something is feasible
   * @param hypervolume volume dominated, 0 when nothing feasible reaches the reference
   */
  record Mark(double violation, double hypervolume) {
    static final Mark WORST = new Mark(Double.MAX_VALUE, 0);

    /**
     * Returns whether this is progress over an earlier mark. While the front is feasible but beyond
     * the reference there is no measure, and the answer is yes.
     *
     * @param gain least relative gain (1)
     */
    boolean gainsOver(Mark earlier, double gain) {
      if (violation > 0) {
        return violation < earlier.violation * (1 - gain);
      }
      return earlier.violation > 0
          || hypervolume == 0
          || hypervolume > earlier.hypervolume * (1 + gain);
    }
  }

  /** Returns this after the population was measured. */
  Stall measured(Mark mark, long generation, double gain) {
    return mark.gainsOver(best, gain)
        ? new Stall(mark, generation, start, fruitless, givenUp)
        : this;
  }

  /**
   * Returns this when the population is given up.
   *
   * @param archive mark of the archive
   * @param generation the last generation of the population
   * @param gain least relative gain (1)
   */
  Stall givenUp(Mark archive, long generation, double gain) {
    int inARow = archive.gainsOver(start, gain) ? 0 : fruitless + 1;
    return new Stall(Mark.WORST, generation, archive, inARow, givenUp + 1);
  }

  /** Returns whether the search ends. */
  boolean ended(StallRule rule) {
    return givenUp > 0 && fruitless >= rule.restarts();
  }

  /** Returns the number of fresh populations, without the first. */
  int restarts(boolean ended) {
    return ended ? givenUp - 1 : givenUp;
  }
}
