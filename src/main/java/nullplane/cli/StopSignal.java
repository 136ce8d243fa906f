package nullplane.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ctrl-C as a wish rather than an end: work asks {@link #wanted} and finishes in order, and the
 * process waits for that.
 */
final class StopSignal implements AutoCloseable {
  private static final long PATIENCE_S = 60;

  private final CountDownLatch finished = new CountDownLatch(1);
  private final Thread hook;
  private volatile boolean wanted;

  StopSignal() {
    hook =
        new Thread(
            () -> {
              wanted = true;
              try {
                if (!finished.await(PATIENCE_S, TimeUnit.SECONDS)) {
                  System.err.println("nullplane: gave up waiting; nothing was written");
                }
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "stop signal");
    Runtime.getRuntime().addShutdownHook(hook);
  }

  /** Returns whether the work should come to an end. */
  boolean wanted() {
    return wanted;
  }

  /** Lets a waiting process go. */
  @Override
  public void close() {
    finished.countDown();
    if (!wanted) {
      try {
        Runtime.getRuntime().removeShutdownHook(hook);
      } catch (IllegalStateException e) {
        // the process is ending already; the hook has just been let go
      }
    }
  }
}
