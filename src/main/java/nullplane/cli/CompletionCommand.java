package nullplane.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints a script with which a shell completes commands, options and file names. */
@Command(
    name = "completion",
    header = "Prints a script that completes commands in bash and zsh.",
    description = {
      "Prints a script for bash and zsh. Once loaded, the Tab key completes commands, options and"
          + " file names.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "The script completes the word nullplane, so the shell has to know it. Write these two lines"
          + " into ~/.bashrc or ~/.zshrc, with the jar's own place, and open a new terminal:",
      "  nullplane() { java -jar \"$HOME/nullplane/target/nullplane.jar\" \"$@\"; }",
      "  source <(nullplane completion)",
      "The bash that comes with some systems is older than 4 and cannot do the second line; there"
          + " write instead:",
      "  eval \"$(nullplane completion)\""
    })
final class CompletionCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @Override
  public Integer call() {
    var program = command.commandLine().getParent();
    program.getOut().print(AutoComplete.bash(program.getCommandName(), program));
    program.getOut().flush();
    return 0;
  }
}
