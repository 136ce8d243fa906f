package nullplane.search;

import nullplane.scoring.Grade;

/** Hears how a search gets on. */
@FunctionalInterface
public interface SearchProgress {
  /**
   * Called after each generation, on the searching thread.
   *
   * @param evaluations woofers scored so far
   * @param budget woofers to score in all
   * @param best grade of the best so far
   */
  void generationDone(long evaluations, long budget, Grade best);
}
