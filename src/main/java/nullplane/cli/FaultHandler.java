package nullplane.cli;

import java.io.PrintWriter;
import java.util.List;
import nullplane.faults.NullplaneException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns faults into lines on standard error and into exit codes. */
final class FaultHandler implements IExecutionExceptionHandler {
  private static final int USAGE = 2;
  private static final int OUT_OF_MEMORY = 3;
  private static final int PROGRAM_FAULT = 70;

  @Override
  public int handleExecutionException(
      Exception fault, CommandLine commandLine, ParseResult parsed) {
    PrintWriter err = commandLine.getErr();
    boolean debug = parsed.hasMatchedOption("--debug");
    if (fault instanceof NullplaneException known) {
      known.getMessage().lines().forEach(line -> err.println("nullplane: " + line));
      if (debug) {
        known.printStackTrace(err);
      }
      return known.exitCode();
    }
    if (fault instanceof StoppedException) {
      err.println("nullplane: " + fault.getMessage());
      return StoppedException.EXIT_CODE;
    }
    err.println(
        "nullplane: a fault of the program: "
            + fault
            + "; please report it with the command and the spec");
    if (debug) {
      fault.printStackTrace(err);
    } else {
      err.println("nullplane: run again with --debug to see where it happened");
    }
    return PROGRAM_FAULT;
  }

  /** Handles a wrong command line: one line, with the nearest command or option if there is one. */
  static int usage(ParameterException fault, String[] args) {
    CommandLine commandLine = fault.getCommandLine();
    PrintWriter err = commandLine.getErr();
    StringBuilder line = new StringBuilder("nullplane: ").append(fault.getMessage());
    if (fault instanceof UnmatchedArgumentException unmatched) {
      List<String> near = unmatched.getSuggestions();
      if (!near.isEmpty()) {
        line.append("; did you mean ").append(String.join(" or ", near)).append('?');
      }
    }
    err.println(line.toString().replaceAll("\\s*\\R\\s*", " "));
    err.println("nullplane: see " + commandLine.getCommandSpec().qualifiedName() + " --help");
    return USAGE;
  }

  /** Handles memory that ran out, which is no exception to the command line. */
  static int outOfMemory(PrintWriter err) {
    err.println(
        "nullplane: the panel needs more memory than the program was given; use a larger woofer or"
            + " a smaller panel, or give more with java -Xmx4g -jar target/nullplane.jar");
    return OUT_OF_MEMORY;
  }
}
