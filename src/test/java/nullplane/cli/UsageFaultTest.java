package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A wrong command line gets one line in one voice, and exit code 2. */
class UsageFaultTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          dezign x | there is no command 'dezign'; did you mean 'design'? (nullplane --help lists them)
          help dezign | there is no command 'dezign'; did you mean 'design'? (nullplane --help lists them)
          --versoin | nullplane has no option '--versoin'; did you mean '--version'? (nullplane --help lists them)
          -q | nullplane has no option '-q' (nullplane --help lists them)
          design s.yaml --sead 7 | design has no option '--sead'; did you mean '--seed'? (nullplane design --help lists them)
          design s.yaml --sead=7 | design has no option '--sead'; did you mean '--seed'? (nullplane design --help lists them)
          design s.yaml --seed | --seed needs a value; write --seed N (nullplane design --help says more)
          design --out --seed 7 s.yaml | --out needs a value; write --out FOLDER (nullplane design --help says more)
          design s.yaml --seed x | --seed is 'x'; allowed: a whole number; write for example --seed 4 (nullplane design --help says more)
          design s.yaml --json=yes | --json takes no value; write --json alone (nullplane design --help says more)
          judge s.yaml --woofer w.yaml | judge has no option '--woofer'; did you mean '--woofers'? (nullplane judge --help lists them)
          design --seed 1 --seed 2 s.yaml | --seed stands there twice; write it once (nullplane design --help says more)
          design one two | design takes SPEC and options, and 'two' is one too many; put a name that holds blanks in quotes (nullplane design --help says more)
          design | SPEC is missing: the panel system, a YAML file; starter writes one; write nullplane design SPEC (nullplane design --help says more)
          judge s.yaml | --woofers FILE_OR_FOLDER is missing: a woofer's YAML file, a CSV table of woofers, or a folder of both; write nullplane judge SPEC --woofers FILE_OR_FOLDER (nullplane judge --help says more)
          """)
  void oneLineSaysWhatWhereAndWhatToWrite(String line, String told) {
    assertRefused(CommandRun.of((Object[]) line.split(" ", -1)), told);
  }

  @Test
  void withoutACommandOneIsAskedFor() {
    assertRefused(
        CommandRun.of(),
        "a command is missing; write for example: nullplane design SPEC (nullplane --help says"
            + " more)");
  }

  @Test
  void whatIsNearToNothingGetsTheWholeList() {
    CommandRun ran = CommandRun.of("zzzz");
    assertThat(ran.err()).contains("'zzzz'; allowed: compare, completion, datasheet, design, ");
    assertThat(ran.exitCode()).isEqualTo(2);
  }

  @Test
  void aWordThatSteersTheTerminalIsShownPlain() {
    CommandRun ran = CommandRun.of("\u001b[31mdesign\nnullplane: all is well");
    assertThat(ran.errLines()).hasSize(1);
    assertThat(ran.err()).doesNotContain("\u001b");
  }

  @Test
  void aMisspeltFileIsGuessed() throws Exception {
    Path specs = Files.createDirectory(folder.resolve("specs"));
    Files.writeString(specs.resolve("village-hall.yaml"), CliSpecs.READING_ROOM);
    for (List<String> slip :
        List.of(
            List.of("specs/village-hal.yaml", "file"),
            List.of("specs/village-hall", "file"),
            List.of("specs/Village-Hall.yml", "file"),
            List.of("spec/village-hall.yaml", "folder"))) {
      Path typed = folder.resolve(slip.get(0));
      assertRefused(
          CommandRun.of("design", typed),
          typed
              + ": there is no such "
              + slip.get(1)
              + "; did you mean "
              + specs.resolve("village-hall.yaml")
              + "?");
    }
    try (Stream<Path> entries = Files.list(folder)) {
      assertThat(entries).containsExactly(specs);
    }
  }

  private static void assertRefused(CommandRun ran, String told) {
    assertThat(ran.errLines()).containsExactly("nullplane: " + told);
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
  }
}
