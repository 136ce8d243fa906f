package nullplane.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressState;
import org.jspecify.annotations.Nullable;

/**
 * Progress on standard error with the time left, when somebody is watching; else nothing. The line
 * goes away when the step is done.
 */
final class ProgressLine implements AutoCloseable {
  private static final int UPDATE_MS = 200;
  private static final double MS_PER_S = 1000;

  private final @Nullable ProgressBar bar;
  private final AtomicLong before = new AtomicLong(-1);

  /**
   * @param task what is going on, in a few words
   * @param steps how many steps it takes
   * @param watched whether to show anything
   */
  ProgressLine(String task, long steps, boolean watched) {
    bar =
        watched
            ? new ProgressBarBuilder()
                .setTaskName(task)
                .setInitialMax(steps)
                .setRenderer(this::line)
                .setConsumer(
                    new ConsoleProgressBarConsumer(System.err, Terminal.here().columns() - 1))
                .setUpdateIntervalMillis(UPDATE_MS)
                .clearDisplayOnFinish()
                .build()
            : null;
  }

  /** Returns the line as wide as it may be, so that nothing of a longer one is left behind it. */
  private String line(ProgressState state, int width) {
    String words =
        ProgressWords.of(
            "nullplane: " + state.getTaskName(),
            state.getCurrent(),
            state.getMax(),
            Math.max(0, before.get()),
            state.getElapsedAfterStart().toMillis() / MS_PER_S,
            Optional.ofNullable(state.getExtraMessage()).orElse("").strip(),
            width);
    return String.format(Locale.ROOT, "%-" + Math.max(1, width) + "s", words);
  }

  /**
   * Sets the number of steps done. What the first call names may have been done by an earlier run,
   * so it does not count for the pace.
   */
  void at(long done) {
    if (bar != null) {
      before.compareAndSet(-1, done);
      bar.stepTo(done);
    }
  }

  /** Sets how many steps it takes, as far as it is known by now. */
  void expect(long steps) {
    if (bar != null) {
      bar.maxHint(steps);
    }
  }

  /** Counts one more step; may be called from any thread. */
  void step() {
    if (bar != null) {
      bar.step();
    }
  }

  /** Says something behind the numbers. */
  void note(String text) {
    if (bar != null) {
      bar.setExtraMessage(text);
    }
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
