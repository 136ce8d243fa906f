package nullplane.cli;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * What is at the other end of standard output and standard error.
 *
 * <p>Source: NO_COLOR, "when present and not an empty string (regardless of its value), prevents
 * the addition of ANSI color", no-color.org (2017); TERM=dumb and COLUMNS: IEEE Std 1003.1-2017,
 * base definitions, chapter 8.3.
 *
 * @param output whether standard output is a terminal
 * @param errors whether standard error is one
 * @param colourful whether the user's settings leave colour in
 * @param movable whether the terminal can write a line anew
 * @param columns how wide it is, as far as the user's settings say; {@link HelpText#COLUMNS} at
 *     most
 */
record Terminal(boolean output, boolean errors, boolean colourful, boolean movable, int columns) {
  private static final int LEAST_COLUMNS = 20;
  private static final Pattern DEVICE = Pattern.compile("/dev/(pts/|tty|console).*");
  private static final Pattern WIDTH = Pattern.compile("[0-9]{1,6}");

  /** Returns the terminal of this process. */
  static Terminal here() {
    boolean console = console();
    return of(
        open(1).map(Terminal::isDevice).orElse(console),
        open(2).map(Terminal::isDevice).orElse(console),
        name -> Optional.ofNullable(System.getenv(name)));
  }

  /**
   * Returns a terminal with a user's settings.
   *
   * @param output whether standard output is a terminal
   * @param errors whether standard error is one
   * @param settings the environment's variables by name
   */
  static Terminal of(boolean output, boolean errors, Function<String, Optional<String>> settings) {
    boolean dumb = settings.apply("TERM").filter("dumb"::equals).isPresent();
    boolean refused = settings.apply("NO_COLOR").filter(value -> !value.isEmpty()).isPresent();
    int columns =
        settings
            .apply("COLUMNS")
            .filter(text -> WIDTH.matcher(text).matches())
            .map(Integer::parseInt)
            .filter(number -> number >= LEAST_COLUMNS)
            .orElse(HelpText.COLUMNS);
    return new Terminal(
        output, errors, !dumb && !refused, !dumb, Math.min(columns, HelpText.COLUMNS));
  }

  /** Returns whether colour is welcome on standard output. */
  boolean wantsColour() {
    return output && colourful;
  }

  /**
   * Returns whether somebody sees a line on standard error that is written anew again and again.
   */
  boolean watched() {
    return errors && movable;
  }

  /**
   * Returns whether standard input and output are a terminal. From Java 22 on there is a console
   * even without a terminal, and it has to be asked.
   */
  @SuppressWarnings("SystemConsoleNull") // the newer answer is asked for below
  private static boolean console() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true;
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }

  /** Returns what a file descriptor of this process is open on, where the system tells. */
  private static Optional<Path> open(int descriptor) {
    try {
      return Optional.of(Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor)));
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.empty(); // not on every system
    }
  }

  private static boolean isDevice(Path file) {
    return DEVICE.matcher(file.toString()).matches();
  }
}
