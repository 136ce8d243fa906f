package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import nullplane.faults.OutputException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ResultFolderTest {
  private static final RunManifest RUN =
      new RunManifest(
          "specs/flat.yaml",
          "ab".repeat(32),
          7,
          "0.1.0",
          Instant.parse("2026-01-02T03:04:05Z"),
          Instant.parse("2026-01-02T03:04:25Z"),
          List.of(),
          1);

  private final List<String> notices = new ArrayList<>();

  @TempDir Path temp;

  @Test
  void appearsWholeWhenPublished() throws IOException {
    Path target = temp.resolve("results/flat");
    try (ResultFolder folder = ResultFolder.open(target, notices::add)) {
      folder.add("ranking.csv", bytes("rank,name\r\n"));
      folder.add("plots/level.svg", bytes("<svg/>"));
      assertThat(target).doesNotExist();
      assertThat(folder.files())
          .extracting(RunManifest.FileEntry::name)
          .containsExactly("plots/level.svg", "ranking.csv");
      folder.publish(RUN);
    }
    assertThat(tree(temp))
        .containsExactly(
            "results/flat/manifest.json",
            "results/flat/plots/level.svg",
            "results/flat/ranking.csv");
    assertThat(target.resolve("ranking.csv")).hasContent("rank,name\r\n");
    JsonNode manifest = new ObjectMapper().readTree(target.resolve("manifest.json").toFile());
    JsonNode file = manifest.get("files").get(0);
    assertThat(file.get("name").asText()).isEqualTo("plots/level.svg");
    assertThat(file.get("bytes").asLong()).isEqualTo(6);
    assertThat(file.get("sha256").asText()).isEqualTo(Sha256.hex(bytes("<svg/>")));
  }

  @Test
  void nothingStaysWithoutPublishing() throws IOException {
    try (ResultFolder folder = ResultFolder.open(temp.resolve("new/deep/flat"), notices::add)) {
      folder.add("plots/a.png", bytes("x"));
    }
    assertThat(everything(temp)).isEmpty();
  }

  @Test
  void earlierRunIsReplaced() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    publish(target, "new.csv", "new");
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/new.csv");
  }

  @Test
  void earlierRunStaysWhileANewOneGathersAndWhenItIsDropped() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    try (ResultFolder folder = ResultFolder.open(target, notices::add)) {
      folder.add("new.csv", bytes("new"));
      assertThat(target.resolve("old.csv")).hasContent("old");
    }
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/old.csv");
  }

  @Test
  void emptyFolderIsReplaced() throws IOException {
    Path target = Files.createDirectory(temp.resolve("flat"));
    publish(target, "new.csv", "new");
    assertThat(target.resolve("new.csv")).exists();
  }

  @Test
  void linkToAFolderIsFollowed() throws IOException {
    Path real = temp.resolve("real");
    publish(real, "old.csv", "old");
    Path link = Files.createSymbolicLink(temp.resolve("link"), real);
    publish(link, "new.csv", "new");
    assertThat(link).isSymbolicLink();
    assertThat(real.resolve("new.csv")).exists();
    assertThat(real.resolve("old.csv")).doesNotExist();
  }

  @Test
  void foreignFolderIsRefused() throws IOException {
    Path target = Files.createDirectory(temp.resolve("photos"));
    Files.writeString(target.resolve("hall.jpg"), "x");
    assertRefused(target, "no run of this program wrote");
    assertThat(tree(temp)).containsExactly("photos/hall.jpg");
  }

  @ParameterizedTest
  @ValueSource(strings = {"{\"name\": \"an extension\", \"files\": []}", "not json", "", "[]", "7"})
  void somebodyElsesManifestDoesNotMakeAFolderOurs(String manifest) throws IOException {
    Path target = Files.createDirectory(temp.resolve("web"));
    Files.writeString(target.resolve("manifest.json"), manifest);
    assertRefused(target, "no run of this program wrote");
    assertThat(target.resolve("manifest.json")).hasContent(manifest);
  }

  @Test
  void folderSomebodyAddedToIsRefused() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    Files.writeString(target.resolve("my-notes.txt"), "keep");
    assertRefused(target, "did not write (my-notes.txt)");
    assertThat(target.resolve("my-notes.txt")).hasContent("keep");
  }

  @Test
  void fileInThePlaceIsRefused() throws IOException {
    Path target = Files.writeString(temp.resolve("flat"), "x");
    assertRefused(target, "a file has this name");
    assertRefused(target.resolve("below"), "");
    assertRefused(target.resolve("further/below"), "");
    assertThat(tree(temp)).containsExactly("flat");
  }

  @Test
  void unwritablePlaceIsRefusedAtOnce() {
    Path unwritable = Path.of("/proc"); // not even the superuser can make a folder there
    Assumptions.assumeTrue(Files.isDirectory(unwritable));
    assertRefused(unwritable.resolve("nullplane-result"), "");
    assertRefused(Path.of("/"), "root of a disk");
  }

  @Test
  void failedWriteLeavesNothing() throws IOException {
    Path target = temp.resolve("results/flat");
    try (ResultFolder folder = ResultFolder.open(target, notices::add)) {
      folder.add("plots", bytes("a file where a folder is needed"));
      assertThatThrownBy(() -> folder.add("plots/level.png", bytes("x")))
          .isInstanceOf(OutputException.class)
          .hasMessageContaining("cannot write")
          .hasMessageContaining("plots/level.png");
    }
    assertThat(everything(temp)).isEmpty();
  }

  @Test
  void vanishedGatheringFolderIsAFault() throws IOException {
    Path target = temp.resolve("flat");
    try (ResultFolder folder = ResultFolder.open(target, notices::add)) {
      for (Path gathering : everything(temp)) {
        Files.delete(gathering);
      }
      assertThatThrownBy(() -> folder.publish(RUN)).isInstanceOf(OutputException.class);
    }
    assertThat(target).doesNotExist();
  }

  @Test
  void tamperedFileIsAFault() throws IOException {
    ResultFolder folder = ResultFolder.open(temp.resolve("flat"), notices::add);
    folder.add("ranking.csv", bytes("rank,name"));
    for (Path path : everything(temp)) {
      if (path.endsWith("ranking.csv")) {
        Files.writeString(path, "rank");
      }
    }
    assertThatThrownBy(() -> folder.publish(RUN))
        .isInstanceOf(OutputException.class)
        .hasMessageContaining("ranking.csv changed");
    assertThat(everything(temp)).isEmpty();
  }

  @Test
  void placeTakenMeanwhileIsNotOverwritten() throws IOException {
    Path target = temp.resolve("flat");
    ResultFolder folder = ResultFolder.open(target, notices::add);
    folder.add("new.csv", bytes("new"));
    Files.createDirectory(target);
    Files.writeString(target.resolve("precious.txt"), "keep");
    assertThatThrownBy(() -> folder.publish(RUN)).isInstanceOf(OutputException.class);
    assertThat(tree(temp)).containsExactly("flat/precious.txt");
  }

  @Test
  void failedRenameLeavesTheEarlierRun() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    for (int failing = 1; failing <= 2; failing++) {
      int which = failing;
      AtomicInteger calls = new AtomicInteger();
      ResultFolder folder =
          ResultFolder.open(
              target,
              notices::add,
              (from, to) -> {
                if (calls.incrementAndGet() == which) {
                  throw new IOException("disk error");
                }
                Files.move(from, to);
              });
      folder.add("new.csv", bytes("new"));
      assertThatThrownBy(() -> folder.publish(RUN))
          .isInstanceOf(OutputException.class)
          .hasMessageContaining("disk error");
      assertThat(everything(temp)).hasSize(3);
      assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/old.csv");
    }
  }

  @Test
  void earlierRunSurvivesEvenWhenItCannotBePutBack() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    AtomicInteger calls = new AtomicInteger();
    ResultFolder folder =
        ResultFolder.open(
            target,
            notices::add,
            (from, to) -> {
              if (calls.incrementAndGet() >= 2) {
                throw new IOException("disk error");
              }
              Files.move(from, to);
            });
    folder.add("new.csv", bytes("new"));
    assertThatThrownBy(() -> folder.publish(RUN)).isInstanceOf(OutputException.class);
    assertThat(tree(temp)).anyMatch(name -> name.endsWith("/run/old.csv"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", ".", "..", "../x", "a/../../x", "/etc/x", "a\\b", "manifest.json", "a/./b"})
  void namesStayInTheFolder(String name) {
    try (ResultFolder folder = ResultFolder.open(temp.resolve("flat"), notices::add)) {
      assertThatThrownBy(() -> folder.add(name, bytes("x")))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void closedFolderTakesNothing() {
    ResultFolder folder = ResultFolder.open(temp.resolve("flat"), notices::add);
    folder.publish(RUN);
    folder.close();
    assertThat(temp.resolve("flat/manifest.json")).exists();
    assertThatThrownBy(() -> folder.add("a", bytes("x"))).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aSecondRunForOnePlaceIsToldSoAndTheFirstGoesOn() throws IOException {
    Path target = temp.resolve("flat");
    ResultFolder one = ResultFolder.open(target, notices::add);
    one.add("one.csv", bytes("1"));
    assertRefused(target, "another run (process " + ProcessHandle.current().pid() + ") is about");
    assertRefused(temp.resolve("detour/../flat"), "another run");
    ResultFolder.open(temp.resolve("other"), notices::add).close();
    one.publish(RUN);
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/one.csv");
    publish(target, "other.csv", "2");
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/other.csv");
    assertThat(notices).isEmpty();
  }

  @Test
  void whatAKilledRunGatheredIsRemovedAndTold() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    Path left = Files.createDirectories(temp.resolve(".flat.part-77-0/plots"));
    Files.writeString(left.resolve("level.svg"), "<sv");
    Files.writeString(temp.resolve(".flat.lock"), "process 77\nx\n");
    Path other = Files.createDirectories(temp.resolve(".flat2.part-77-0"));
    Path file = Files.writeString(temp.resolve(".flat.part-77-1"), "not a folder");
    ResultFolder.open(target, notices::add).close();
    assertThat(notices).singleElement().asString().contains("stopped before it was done");
    assertThat(other).isDirectory();
    assertThat(file).exists();
    assertThat(tree(temp)).containsExactly(".flat.part-77-1", "flat/manifest.json", "flat/old.csv");
  }

  @Test
  void aRunThatWasMovedAsideIsPutBackAndTold() throws IOException {
    Path target = temp.resolve("flat");
    publish(target, "old.csv", "old");
    Path holder = Files.createDirectory(temp.resolve(".flat.old-77-0"));
    Files.move(target, holder.resolve("run"));
    ResultFolder folder = ResultFolder.open(target, notices::add);
    assertThat(notices).singleElement().asString().contains("the run before is put back");
    folder.close();
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/old.csv");
    Files.createDirectories(holder.resolve("run"));
    Files.writeString(holder.resolve("run/half.csv"), "half deleted");
    ResultFolder.open(target, notices::add).close();
    assertThat(tree(temp)).containsExactly("flat/manifest.json", "flat/old.csv");
  }

  private void assertRefused(Path target, String why) {
    assertThatThrownBy(() -> ResultFolder.open(target, notices::add))
        .isInstanceOf(OutputException.class)
        .hasMessageContaining(why)
        .satisfies(e -> assertThat(((OutputException) e).exitCode()).isEqualTo(5));
  }

  private void publish(Path target, String name, String text) {
    try (ResultFolder folder = ResultFolder.open(target, notices::add)) {
      folder.add(name, bytes(text));
      folder.publish(RUN);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Files below a folder, hidden ones too. */
  private static List<String> tree(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(Files::isRegularFile)
          .map(file -> root.relativize(file).toString())
          .sorted()
          .toList();
    }
  }

  private static List<Path> everything(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(path -> !path.equals(root)).toList();
    }
  }
}
