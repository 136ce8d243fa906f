package nullplane.cli;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;

/** Progress on standard error with the time left, when somebody is watching; else nothing. */
final class ProgressLine implements AutoCloseable {
  private static final int WIDTH = 79;
  private static final int UPDATE_MS = 200;

  private final @Nullable ProgressBar bar;

  /**
   * @param task what is going on, in a word or two
   * @param steps how many steps it takes
   * @param watched whether to show anything
   */
  ProgressLine(String task, long steps, boolean watched) {
    bar =
        watched
            ? new ProgressBarBuilder()
                .setTaskName(task)
                .setInitialMax(steps)
                .setStyle(ProgressBarStyle.ASCII)
                .setMaxRenderedLength(WIDTH)
                .setUpdateIntervalMillis(UPDATE_MS)
                .build()
            : null;
  }

  /** Sets the number of steps done. */
  void at(long done) {
    if (bar != null) {
      bar.stepTo(done);
    }
  }

  /** Counts one more step; may be called from any thread. */
  void step() {
    if (bar != null) {
      bar.step();
    }
  }

  /** Says something behind the bar. */
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
