package nullplane.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program: parses the command line, runs a command, turns faults into lines and exit codes. */
@Command(
    name = "nullplane",
    description = {
      "From a bare-panel loudspeaker system to a ranked, buildable woofer specification. The"
          + " system is described in a spec, a YAML file: panels, size of the woofers, listening"
          + " place, levels, amplifier. To begin with, let starter write one.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    subcommands = {
      StarterCommand.class,
      DesignCommand.class,
      JudgeCommand.class,
      CompareCommand.class,
      DatasheetCommand.class,
      SampleCommand.class,
      RoundsCommand.class,
      PanelCommand.class,
      CompletionCommand.class,
      HelpCommand.class
    },
    commandListHeading = "%nCommands; each tells more with --help:%n",
    footer = {
      "",
      "Exit codes:",
      "  0   done",
      "  2   the input is wrong",
      "  3   outside what the model can say",
      "  4   a numerical method failed",
      "  5   output could not be written",
      "  70  a fault of the program"
    })
public final class Nullplane implements Runnable {
  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show where a fault happened.")
  private boolean debug;

  @Spec private CommandSpec spec;

  private final StopSignal stop;

  Nullplane(StopSignal stop) {
    this.stop = stop;
  }

  /** Returns what tells of Ctrl-C; the process waits until the last line is written. */
  StopSignal stop() {
    return stop;
  }

  /** Runs the program and exits with its code. */
  public static void main(String[] args) {
    System.exit(execute(args));
  }

  /** Runs the program and returns its exit code. */
  static int execute(String... args) {
    try (StopSignal stop = new StopSignal()) {
      return execute(new Nullplane(stop), args);
    }
  }

  private static int execute(Nullplane program, String... args) {
    CommandLine line = new CommandLine(program);
    line.setOut(new PrintWriter(System.out, true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(System.err, true, StandardCharsets.UTF_8));
    FaultHandler faults = new FaultHandler(() -> program.debug);
    line.setExecutionExceptionHandler(faults);
    line.setParameterExceptionHandler(FaultHandler::usage);
    HelpText.setUp(line, Terminal.here().wantsColour());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    try {
      return FaultHandler.delivered(line.execute(args), line);
    } catch (Error e) {
      return faults.programFault(e, line.getErr());
    }
  }

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "a command is missing; write for example: nullplane design SPEC");
  }
}
