package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/**
 * When there is colour. Source: no-color.org (2017): NO_COLOR counts when it is "present and not an
 * empty string (regardless of its value)".
 */
class TerminalTest {
  private static Terminal terminal(Map<String, String> settings) {
    return Terminal.of(true, true, name -> Optional.ofNullable(settings.get(name)));
  }

  @Test
  void colourIsForTerminalsOnly() {
    assertThat(terminal(Map.of("TERM", "xterm")).wantsColour()).isTrue();
    assertThat(terminal(Map.of()).wantsColour()).isTrue();
    assertThat(Terminal.of(false, true, name -> Optional.empty()).wantsColour()).isFalse();
    assertThat(Terminal.of(false, true, name -> Optional.empty()).watched()).isTrue();
    assertThat(Terminal.of(true, false, name -> Optional.empty()).watched()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"1, false", "0, false", "false, false", "'', true", "' ', false"})
  void noColorCountsWhenItIsNotEmpty(String value, boolean colour) {
    Terminal told = terminal(Map.of("TERM", "xterm", "NO_COLOR", value));
    assertThat(told.wantsColour()).isEqualTo(colour);
    assertThat(told.watched()).as("progress is no colour").isTrue();
  }

  @Test
  void aDumbTerminalGetsNeitherColourNorProgress() {
    Terminal dumb = terminal(Map.of("TERM", "dumb"));
    assertThat(dumb.wantsColour()).isFalse();
    assertThat(dumb.watched()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"60, 60", "200, 80", "80, 80", "'', 80", "wide, 80", "-5, 80", "3, 80"})
  void widthIsThatOfTheTerminalAndEightyAtMost(String columns, int width) {
    assertThat(terminal(Map.of("COLUMNS", columns)).columns()).isEqualTo(width);
  }

  @Test
  void helpIsColouredOnlyIfWanted() {
    for (boolean colour : new boolean[] {true, false}) {
      try (StopSignal stop = new StopSignal()) {
        CommandLine program = new CommandLine(new Nullplane(stop));
        HelpText.setUp(program, colour);
        assertThat(program.getUsageMessage().contains("\u001b[")).isEqualTo(colour);
        assertThat(program.getSubcommands().get("design").getUsageMessage().contains("\u001b["))
            .isEqualTo(colour);
      }
    }
  }

  /** The output of tests goes to files and pipes. */
  @Test
  void nothingIsColouredInAPipe() {
    assertThat(CommandRun.of("design", "--help").out()).doesNotContain("\u001b");
  }
}
