package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/**
 * The help of every command: it fits 80 columns, breaks where it should, and ends in an example.
 */
class HelpTextTest {
  static Stream<String> commands() {
    return Stream.concat(Stream.of("nullplane"), program().getSubcommands().keySet().stream());
  }

  private static CommandLine program() {
    try (StopSignal stop = new StopSignal()) {
      CommandLine program = new CommandLine(new Nullplane(stop));
      HelpText.setUp(program, false);
      return program;
    }
  }

  private static CommandLine line(String command) {
    CommandLine program = program();
    return command.equals("nullplane") ? program : program.getSubcommands().get(command);
  }

  private static String help(String command) {
    CommandRun ran =
        command.equals("nullplane") ? CommandRun.of("--help") : CommandRun.of(command, "--help");
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    return ran.out();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void itFitsEightyColumns(String command) {
    assertThat(help(command).lines())
        .allSatisfy(text -> assertThat(text.length()).isLessThanOrEqualTo(80))
        .noneMatch(text -> text.endsWith(" "));
  }

  /**
   * Two texts without a blank line or an indent between them were one paragraph, broken by hand:
   * the second starts in the middle of a line's width when the first is wrapped.
   */
  @ParameterizedTest
  @MethodSource("commands")
  void paragraphsAreBrokenInOnePlaceOnly(String command) {
    String[] footer = line(command).getCommandSpec().usageMessage().footer();
    for (int i = 1; i < footer.length; i++) {
      if (footer[i - 1].length() > 80) {
        assertThat(footer[i]).as("after \"%s\"", footer[i - 1]).matches("(  .*)?|[A-Z].*");
      }
      assertThat(footer[i].startsWith("  ") && footer[i].length() > 80).isFalse();
      assertThat(footer[i]).as("goes on a sentence").doesNotMatch("[a-z].*");
    }
  }

  @ParameterizedTest
  @MethodSource("commands")
  void itEndsInAnExample(String command) {
    if (command.equals("help")) {
      return; // it shows the others' examples
    }
    WorkedExample example = WorkedExample.of(command).orElseThrow();
    List<String> seen = help(command).lines().toList();
    int at = seen.indexOf("Example:");
    assertThat(at).isPositive();
    assertThat(seen.subList(at + 1, seen.size()))
        .containsAll(example.lines().stream().map(text -> "  " + text).toList())
        .containsAll(example.prints().stream().map(text -> "  " + text).toList());
    long told = seen.subList(at + 1 + example.lines().size(), seen.size()).size() - 1;
    assertThat(told).as("lines that say what one sees").isBetween(1L, 6L);
    String all = String.join(" ", example.lines());
    assertThat(all).contains(command.equals("nullplane") ? " design " : " " + command);
  }

  @Test
  void theLibrarysOwnWordsAreNotShown() {
    commands()
        .forEach(
            command ->
                assertThat(help(command)).doesNotContain("and exit.").contains("Show this help."));
  }
}
