package nullplane.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;

/**
 * A process that publishes one run after the other into one folder, and keeps and finds an entry of
 * a cache, until somebody kills it. Every file of a run bears the run's number.
 */
final class PublishLoop {
  static final int FILES = 4;
  private static final int SLOW_MS = 15;
  private static final int LINES = 2000;

  private PublishLoop() {}

  /** Takes the folder of results, the folder of the cache and the first run's number. */
  public static void main(String[] arguments) {
    Path results = Path.of(arguments[0]);
    PanelCache cache = PanelCache.in(Path.of(arguments[1]), PublishLoop::say);
    for (int run = Integer.parseInt(arguments[2]); true; run++) {
      publish(results, run);
      cache.keep(KeptSolutions.KEY, KeptSolutions.few());
      if (cache.find(KeptSolutions.KEY).isEmpty()) {
        say("the cache lost its entry");
      }
      say("run " + run);
    }
  }

  /** Publishes one run. */
  static void publish(Path results, int number) {
    try (ResultFolder folder =
        ResultFolder.open(results, PublishLoop::say, PublishLoop::renameSlowly)) {
      for (int i = 0; i < FILES; i++) {
        folder.add("part-" + i + "/numbers.csv", content(number));
      }
      folder.publish(
          new RunManifest(
              "flat.yaml",
              "ab".repeat(32),
              number,
              "0.1.0",
              Instant.EPOCH,
              Instant.EPOCH,
              List.of(),
              1));
    }
  }

  /** A slow disk: the moments between two renames are long enough to be hit. */
  private static void renameSlowly(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    try {
      Thread.sleep(SLOW_MS);
    } catch (InterruptedException e) {
      throw new IOException(e);
    }
  }

  private static byte[] content(int number) {
    return (number + "\r\n").repeat(LINES).getBytes(StandardCharsets.UTF_8);
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
