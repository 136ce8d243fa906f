package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The starter writes into a place of its own and touches nothing else. */
class StarterCommandTest {
  @TempDir private Path folder;

  private List<String> names(Path in) throws IOException {
    try (Stream<Path> entries = Files.list(in)) {
      return entries.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void itWritesTheFilesAndSaysWhatToTypeNext() throws IOException {
    Path hall = folder.resolve("our hall");
    CommandRun ran = CommandRun.of("starter", hall);
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(names(hall)).containsExactly("main.txt", "spec.yaml", "woofer.yaml");
    assertThat(names(folder)).containsExactly("our hall");
    assertThat(ran.out())
        .contains("Wrote " + hall.resolve("spec.yaml"))
        .contains(" design '" + hall.resolve("spec.yaml") + "'")
        .contains(" --woofers '" + hall.resolve("woofer.yaml") + "'");
  }

  @Test
  void jsonNamesTheFiles() {
    Path hall = folder.resolve("hall");
    CommandRun ran = CommandRun.of("starter", hall, "--units", "inch", "--json");
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out())
        .startsWith("{")
        .contains("\"units\" : \"inch\"")
        .contains("\"" + hall.resolve("spec.yaml").toString().replace("\\", "\\\\") + "\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"spec.yaml", "woofer.yaml", "main.txt"})
  void aNameThatIsTakenStopsIt(String taken) throws IOException {
    Path own = Files.writeString(folder.resolve(taken), "mine");
    CommandRun ran = CommandRun.of("starter", folder);
    assertThat(ran.errLines())
        .containsExactly(
            "nullplane: cannot write "
                + own
                + ": a file has this name already; name another folder");
    assertThat(ran.exitCode()).isEqualTo(5);
    assertThat(ran.out()).isEmpty();
    assertThat(names(folder)).containsExactly(taken);
    assertThat(own).hasContent("mine");
  }

  @Test
  void otherFilesOfAFolderStay() throws IOException {
    Path own = Files.writeString(folder.resolve("notes.txt"), "mine");
    assertThat(CommandRun.of("starter", folder).exitCode()).isZero();
    assertThat(own).hasContent("mine");
    assertThat(names(folder)).hasSize(4);
  }

  @Test
  void aFileIsNoFolder() throws IOException {
    Path own = Files.writeString(folder.resolve("hall"), "mine");
    for (Path place : List.of(own, own.resolve("below"))) {
      CommandRun ran = CommandRun.of("starter", place);
      assertThat(ran.errLines()).singleElement().asString().contains("cannot write " + place);
      assertThat(ran.exitCode()).isEqualTo(5);
    }
    assertThat(names(folder)).containsExactly("hall");
  }

  @Test
  void unitsAreAskedForByName() throws IOException {
    CommandRun ran = CommandRun.of("starter", folder.resolve("hall"), "--units", "feet");
    assertThat(ran.errLines())
        .containsExactly(
            "nullplane: --units is 'feet'; allowed: metric, inch; write for example --units metric"
                + " (nullplane starter --help says more)");
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(names(folder)).isEmpty();
  }

  /** Source: IEEE Std 1003.1-2017, 2.2.2: within single quotes every character is itself. */
  @Test
  void wordsAreQuotedForTheShell() {
    assertThat(ProgramCall.quoted("a/b-c.yaml")).isEqualTo("a/b-c.yaml");
    assertThat(ProgramCall.quoted("our hall")).isEqualTo("'our hall'");
    assertThat(ProgramCall.quoted("it's $HOME")).isEqualTo("'it'\\''s $HOME'");
    assertThat(ProgramCall.shown(Path.of("/a/b/x.jar"), Path.of("/a")))
        .isEqualTo(Path.of("b/x.jar"));
    assertThat(ProgramCall.shown(Path.of("/c/x.jar"), Path.of("/a")))
        .isEqualTo(Path.of("/c/x.jar"));
  }
}
