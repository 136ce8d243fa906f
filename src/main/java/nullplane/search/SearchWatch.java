package nullplane.search;

import nullplane.scoring.Grade;

/** Watches a search and may end it. */
public interface SearchWatch {
  /** Asked after each generation; true ends the search with the best so far. */
  boolean stopWanted();

  /**
   * Called after each generation, on the searching thread.
   *
   * @param evaluations woofers scored so far
   * @param budget woofers to score in all
   * @param best grade of the best so far
   */
  void generationDone(long evaluations, long budget, Grade best);

  /** Watches nothing and never ends a search. */
  SearchWatch NONE =
      new SearchWatch() {
        @Override
        public boolean stopWanted() {
          return false;
        }

        @Override
        public void generationDone(long evaluations, long budget, Grade best) {}
      };
}
