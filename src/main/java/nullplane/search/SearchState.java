package nullplane.search;

import java.util.List;

/**
 * All that a search for several objectives needs to go on, bounded however long it runs.
 *
 * @param problem the problem's digest
 * @param shape what shapes the evolution, in words
 * @param generation generations evolved
 * @param evaluations candidates evaluated
 * @param spentMillis time spent (ms), counted when time is limited; otherwise 0
 * @param population the living, best first; empty when a fresh population comes next
 * @param archive what the archive holds
 * @param stall where it stands with its stop rule
 * @param historyStride generations from one entry of the history to the next
 * @param history how it went
 */
record SearchState(
    String problem,
    String shape,
    long generation,
    long evaluations,
    long spentMillis,
    List<Candidate> population,
    List<Candidate> archive,
    Stall stall,
    long historyStride,
    List<ConvergencePoint> history) {
  /** Copies the lists. */
  SearchState {
    population = List.copyOf(population);
    archive = List.copyOf(archive);
    history = List.copyOf(history);
  }
}
