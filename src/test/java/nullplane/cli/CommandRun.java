package nullplane.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/**
 * One run of the program within the test's own process.
 *
 * @param exitCode what it ended with
 * @param out standard output
 * @param err standard error
 */
record CommandRun(int exitCode, String out, String err) {

  /** Runs a command line; each word may be anything that has a text. */
  static CommandRun of(Object... words) {
    String[] args = Stream.of(words).map(Object::toString).toArray(String[]::new);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream usualOut = System.out;
    PrintStream usualErr = System.err;
    int exitCode;
    try (PrintStream newOut = new PrintStream(out, true, StandardCharsets.UTF_8);
        PrintStream newErr = new PrintStream(err, true, StandardCharsets.UTF_8)) {
      System.setOut(newOut);
      System.setErr(newErr);
      exitCode = Nullplane.execute(args);
    } finally {
      System.setOut(usualOut);
      System.setErr(usualErr);
    }
    return new CommandRun(
        exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  List<String> outLines() {
    return out.lines().toList();
  }

  List<String> errLines() {
    return err.lines().toList();
  }
}
