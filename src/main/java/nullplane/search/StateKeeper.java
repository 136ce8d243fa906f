package nullplane.search;

import java.time.Duration;

/** Keeps the state of a running search, so that it can be resumed after an abrupt end. */
public interface StateKeeper {
  /** Returns how long a state may grow old before the next is kept; zero for every generation. */
  Duration interval();

  /**
   * Keeps a state in place of the one before, whole or not at all. Called on the searching thread,
   * between generations, and once at the end.
   *
   * @param state the bytes to give to {@link ParetoSearch#resume}
   */
  void keep(byte[] state);

  /** Keeps nothing. */
  StateKeeper NONE =
      new StateKeeper() {
        @Override
        public Duration interval() {
          return Duration.ofDays(100_000);
        }

        @Override
        public void keep(byte[] state) {}
      };
}
