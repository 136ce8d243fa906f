package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The script of the completion command, run by a real bash where there is one. */
class CompletionCommandTest {
  @TempDir private Path folder;

  private Path script;

  private record Shell(int exitCode, String out) {}

  private Shell bash(String... words) throws IOException, InterruptedException {
    Process process;
    try {
      process =
          new ProcessBuilder(command(words))
              .redirectErrorStream(true)
              .directory(folder.toFile())
              .start();
    } catch (IOException e) {
      assumeThat(false).as("there is no bash here").isTrue();
      throw e;
    }
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
    return new Shell(process.exitValue(), out);
  }

  private static List<String> command(String... words) {
    return Stream.concat(Stream.of("bash", "--norc", "--noprofile"), Stream.of(words)).toList();
  }

  /** Asks the loaded script what may follow the words typed so far; the last may be unfinished. */
  private List<String> completions(String... words) throws IOException, InterruptedException {
    String typed = String.join(" ", words);
    Shell shell =
        bash(
            "-c",
            "source "
                + script
                + "\nCOMP_WORDS=("
                + typed
                + (words[words.length - 1].isEmpty() ? "''" : "")
                + ")\nCOMP_CWORD="
                + (words.length - 1)
                + "\nCOMP_LINE='"
                + typed
                + "'\nCOMP_POINT=${#COMP_LINE}\n"
                + "$(complete -p nullplane | sed 's/.*-F \\([^ ]*\\).*/\\1/') nullplane '"
                + words[words.length - 1]
                + "' x 2>/dev/null\nprintf '%s\\n' \"${COMPREPLY[@]}\"");
    assertThat(shell.exitCode()).as(shell.out()).isZero();
    return shell.out().lines().map(String::strip).toList();
  }

  @BeforeEach
  void writeScript() throws IOException {
    CommandRun ran = CommandRun.of("completion");
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    script = Files.writeString(folder.resolve("completion.sh"), ran.out());
  }

  @Test
  void bashFindsNoFaultInIt() throws Exception {
    Shell shell = bash("-n", script.toString());
    assertThat(shell.out()).isEmpty();
    assertThat(shell.exitCode()).isZero();
  }

  @Test
  void commandsAndOptionsAreCompleted() throws Exception {
    assertThat(completions("nullplane", "des")).containsExactly("design");
    assertThat(completions("nullplane", "")).contains("design", "judge", "rounds", "completion");
    assertThat(completions("nullplane", "design", "--ev")).containsExactly("--evaluations");
    assertThat(completions("nullplane", "judge", "--s")).containsExactly("--seed");
  }
}
