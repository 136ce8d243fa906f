package nullplane.cli;

import nullplane.scoring.Grade;
import nullplane.scoring.SystemScorer;
import nullplane.search.SearchConduct;
import nullplane.search.SearchMemory;
import nullplane.search.SearchOutcome;
import nullplane.search.SearchWatch;
import nullplane.search.WooferSearch;
import nullplane.units.FiniteText;

/** Runs a search, shows how far it is, and ends it on Ctrl-C with the best so far. */
final class SearchStep {
  private SearchStep() {}

  /**
   * Runs a search.
   *
   * @param scorer scores a woofer on the spec
   * @param conduct seed, budget, threads
   * @param workers threads to score on
   * @param stop tells of Ctrl-C
   * @param watched whether to show progress
   * @param memory keeps the search's state from one run to the next
   */
  static SearchOutcome run(
      SystemScorer scorer,
      SearchConduct conduct,
      Workers workers,
      StopSignal stop,
      boolean watched,
      SearchMemory memory) {
    try (ProgressLine progress = new ProgressLine("search", conduct.evaluations(), watched)) {
      SearchWatch watch =
          new SearchWatch() {
            @Override
            public boolean stopWanted() {
              return stop.wanted();
            }

            @Override
            public void generationDone(long done, long budget, Grade best) {
              progress.at(Math.min(done, budget));
              progress.note(
                  best.feasible()
                      ? FiniteText.of("cost of the best %.2f dB", best.costDb())
                      : "none buildable yet");
              if (done >= budget) {
                progress.note("polishing the best ones");
              }
            }
          };
      return WooferSearch.run(scorer, conduct, workers.executor(), watch, memory);
    }
  }
}
