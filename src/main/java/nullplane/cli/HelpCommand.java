package nullplane.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** Shows the help of the program or of one command. */
@Command(
    name = "help",
    header = "Shows the help of a command.",
    description = {"Shows the help of a command, as its --help does.", ""},
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    helpCommand = true)
final class HelpCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @Parameters(
      arity = "0..1",
      paramLabel = "COMMAND",
      description = "The command; without it, the commands are listed.")
  private @Nullable String name;

  @Override
  public Integer call() {
    CommandLine program = command.commandLine().getParent();
    CommandLine shown = program;
    if (name != null) {
      CommandLine named = program.getSubcommands().get(name);
      if (named == null) {
        throw new UnmatchedArgumentException(program, List.of(name));
      }
      shown = named;
    }
    shown.usage(shown.getOut());
    return 0;
  }
}
