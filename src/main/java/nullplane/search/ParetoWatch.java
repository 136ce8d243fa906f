package nullplane.search;

/** Watches a search for several objectives and may end it. */
public interface ParetoWatch {
  /** Asked after each generation; true ends the search with the best so far. */
  boolean stopWanted();

  /**
   * Called after each generation, on the searching thread.
   *
   * @param evaluations candidates evaluated so far
   * @param budget candidates to evaluate in all
   * @param latest the latest entry of the history
   */
  void generationDone(long evaluations, long budget, ConvergencePoint latest);

  /** Watches nothing and never ends a search. */
  ParetoWatch NONE =
      new ParetoWatch() {
        @Override
        public boolean stopWanted() {
          return false;
        }

        @Override
        public void generationDone(long evaluations, long budget, ConvergencePoint latest) {}
      };
}
