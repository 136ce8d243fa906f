package nullplane.search;

import java.util.List;
import java.util.Optional;

/**
 * The memory of a search beyond its run: where its state is kept, and the state that an earlier run
 * left when it was cut off.
 */
public interface SearchMemory {
  /**
   * Returns a text that differs whenever the same genes may get other scores: the digest of the
   * spec and the version of the program.
   */
  String digest();

  /** Returns the state of an earlier run, if there is one to go on from. */
  Optional<byte[]> earlier();

  /** Returns what keeps the state. */
  StateKeeper keeper();

  /**
   * Hears that an earlier state cannot be used; the search then starts anew.
   *
   * @param reason why, in words
   */
  void unusable(String reason);

  /** Hears that the search has ended of itself and its results are written. */
  void done();

  /** Runs a search, from the earlier state if there is one. */
  default ParetoOutcome run(ParetoProblem problem, ParetoConduct conduct, ParetoWatch watch) {
    Optional<byte[]> state = earlier();
    if (state.isPresent()) {
      try {
        return ParetoSearch.resume(problem, conduct, state.orElseThrow(), watch, keeper());
      } catch (UnusableStateException e) {
        unusable(String.valueOf(e.getMessage()));
      }
    }
    return ParetoSearch.run(problem, conduct, List.of(), watch, keeper());
  }

  /** Remembers nothing. */
  SearchMemory NONE =
      new SearchMemory() {
        @Override
        public String digest() {
          return "";
        }

        @Override
        public Optional<byte[]> earlier() {
          return Optional.empty();
        }

        @Override
        public StateKeeper keeper() {
          return StateKeeper.NONE;
        }

        @Override
        public void unusable(String reason) {}

        @Override
        public void done() {}
      };
}
