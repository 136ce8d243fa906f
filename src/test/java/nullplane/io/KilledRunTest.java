package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processes that publish and keep all the time are killed at seeded moments: what stands in the
 * folder is whole, the next run says what it found, and no run that was published is lost. The
 * profile {@code faults} raises the number of kills.
 */
class KilledRunTest {
  private static final int KILLS = Integer.getInteger("nullplane.faults", 8);
  private static final int LATEST_MS = 200;

  @TempDir private Path temp;

  private int aside;
  private int unfinished;

  @Test
  void aKillAtAnyMomentLosesNothing() throws Exception {
    Random random = new Random(11);
    Path results = temp.resolve("results");
    Path cache = temp.resolve("cache");
    PublishLoop.publish(results, 0);
    int published = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      published = killed(results, cache, published + 1, random.nextInt(LATEST_MS));
      if (Files.exists(results, LinkOption.NOFOLLOW_LINKS)) {
        WholeRun.require(results);
      }
      List<String> notices = new ArrayList<>();
      List<String> names = namesIn(temp);
      boolean gathered = names.stream().anyMatch(name -> name.startsWith(".results.part-"));
      boolean away = !names.contains("results");
      ResultFolder.open(results, notices::add).close();
      assertThat(notices).hasSize((gathered ? 1 : 0) + (away ? 1 : 0));
      count(notices);
      WholeRun.require(results);
      // The last run that was told is there, or the one that was about to be told.
      int there =
          new ObjectMapper()
              .readTree(results.resolve("manifest.json").toFile())
              .get("seed")
              .asInt();
      assertThat(there).isBetween(published, published + 1);
      published = there;
      assertThat(namesIn(temp)).containsExactlyInAnyOrder("results", "cache");
      List<String> damage = new ArrayList<>();
      assertThat(PanelCache.in(cache, damage::add).find(KeptSolutions.KEY))
          .contains(KeptSolutions.few());
      assertThat(damage).isEmpty();
    }
    System.out.printf(
        "faults: %d kills while publishing; %d runs put back, %d unfinished ones removed,"
            + " nothing lost%n",
        KILLS, aside, unfinished);
  }

  private void count(List<String> notices) {
    for (String notice : notices) {
      aside += notice.contains("put back") ? 1 : 0;
      unfinished += notice.contains("is removed") ? 1 : 0;
    }
  }

  /** Starts the loop, kills it a while after its first run and returns the last run it told. */
  private static int killed(Path results, Path cache, int first, int afterMs) throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Xmx64m",
                "-cp",
                classPath(),
                PublishLoop.class.getName(),
                results.toString(),
                cache.toString(),
                Integer.toString(first))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    int told = first - 1;
    try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
      String line = lines.readLine();
      assertThat(line).isEqualTo("run " + first);
      told = first;
      Thread.sleep(afterMs);
      process.toHandle().destroyForcibly(); // SIGKILL; what it said stays readable
      for (line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("run ")) {
          told = Integer.parseInt(line.substring(4));
        } else {
          assertThat(line).as("nothing is noticed without a kill").isEmpty();
        }
      }
    } finally {
      process.destroyForcibly();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    }
    return told;
  }

  /** What the loop needs: the program, the tests, the writer of JSON. */
  private static String classPath() throws URISyntaxException {
    List<String> places = new ArrayList<>();
    for (Class<?> type : List.of(ResultFolder.class, PublishLoop.class, JsonFactory.class)) {
      places.add(
          Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return String.join(File.pathSeparator, places);
  }

  private static List<String> namesIn(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(file -> file.getFileName().toString()).toList();
    }
  }
}
