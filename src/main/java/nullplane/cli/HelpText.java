package nullplane.cli;

import java.util.Arrays;
import java.util.ListResourceBundle;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.UsageMessageSpec;

/** Sets up every command's help: its width, its colours, and the worked example at its end. */
final class HelpText {
  /** Columns that help and results fit in. */
  static final int COLUMNS = 80;

  private HelpText() {}

  /** What stands beside the options that every command has, by picocli's keys. */
  private static final class StandardOptions extends ListResourceBundle {
    @Override
    protected Object[][] getContents() {
      return new Object[][] {
        {"mixinStandardHelpOptions.help", "Show this help."},
        {"mixinStandardHelpOptions.version", "Show the program's version."}
      };
    }
  }

  /**
   * Sets up the help of a program and its commands.
   *
   * @param program the program
   * @param colour whether colour is welcome
   */
  static void setUp(CommandLine program, boolean colour) {
    program.setUsageHelpWidth(COLUMNS);
    program.setResourceBundle(new StandardOptions());
    program.setColorScheme(CommandLine.Help.defaultColorScheme(colour ? Ansi.ON : Ansi.OFF));
    program.getSubcommands().values().forEach(HelpText::leaveHeaderToTheList);
    addExample(program);
    program.getSubcommands().values().forEach(HelpText::addExample);
  }

  /** A command's header stands in the list of commands; its own help has the longer text. */
  private static void leaveHeaderToTheList(CommandLine command) {
    command.setHelpSectionKeys(
        command.getHelpSectionKeys().stream()
            .filter(key -> !key.equals(UsageMessageSpec.SECTION_KEY_HEADER))
            .toList());
  }

  private static void addExample(CommandLine command) {
    UsageMessageSpec usage = command.getCommandSpec().usageMessage();
    WorkedExample.of(command.getCommandName())
        .ifPresent(
            example ->
                usage.footer(
                    Stream.concat(
                            Arrays.stream(usage.footer()),
                            example.paragraphs().stream().map(HelpText::literal))
                        .toArray(String[]::new)));
  }

  /** A text in a footer is a format: percent signs stand twice. */
  private static String literal(String text) {
    return text.replace("%", "%%");
  }
}
