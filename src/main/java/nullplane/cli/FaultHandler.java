package nullplane.cli;

import java.io.PrintWriter;
import java.util.function.BooleanSupplier;
import nullplane.faults.NullplaneException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns faults into lines on standard error and into exit codes. */
final class FaultHandler implements IExecutionExceptionHandler {
  private static final int USAGE = 2;
  private static final int UNWRITTEN = 5;
  private static final int PROGRAM_FAULT = 70;

  private final BooleanSupplier debug;

  /**
   * @param debug whether to show where a fault happened, asked when there is one
   */
  FaultHandler(BooleanSupplier debug) {
    this.debug = debug;
  }

  @Override
  public int handleExecutionException(
      Exception fault, CommandLine commandLine, ParseResult parsed) {
    PrintWriter err = commandLine.getErr();
    if (fault instanceof NullplaneException known) {
      String.valueOf(known.getMessage()).lines().forEach(line -> err.println("nullplane: " + line));
      if (debug.getAsBoolean()) {
        known.printStackTrace(err);
      }
      return known.exitCode();
    }
    if (fault instanceof StoppedException) {
      err.println("nullplane: " + fault.getMessage());
      return StoppedException.EXIT_CODE;
    }
    return programFault(fault, err);
  }

  /** Says that the program, or the machine under it, failed; returns the exit code. */
  int programFault(Throwable fault, PrintWriter err) {
    if (fault instanceof OutOfMemoryError || fault.getCause() instanceof OutOfMemoryError) {
      err.println(
          "nullplane: the memory is not enough; give more, for example java -Xmx4g -jar"
              + " nullplane.jar, or take fewer --threads or a smaller panel");
    } else {
      err.println(
          "nullplane: a fault of the program: "
              + fault
              + "; please report it with the command and the spec");
    }
    if (debug.getAsBoolean()) {
      fault.printStackTrace(err);
    } else {
      err.println("nullplane: run again with --debug to see where it happened");
    }
    return PROGRAM_FAULT;
  }

  /** Returns the exit code of a run that ended well, once its output is known to have arrived. */
  static int delivered(int exitCode, CommandLine commandLine) {
    if (exitCode == 0 && commandLine.getOut().checkError()) {
      commandLine.getErr().println("nullplane: cannot write standard output; is the disk full?");
      return UNWRITTEN;
    }
    return exitCode;
  }

  /** Handles a wrong command line: one line. */
  static int usage(ParameterException fault, String[] args) {
    fault.getCommandLine().getErr().println("nullplane: " + UsageFault.line(fault, args));
    return USAGE;
  }
}
