package nullplane.cli;

import java.io.Console;

/** Tells whether a person is at the other end of standard output. */
final class Terminal {
  private Terminal() {}

  /**
   * Returns whether standard input and output are a terminal. From Java 22 on there is a console
   * even without a terminal, and it has to be asked.
   */
  @SuppressWarnings("SystemConsoleNull") // the newer answer is asked for below
  static boolean attached() {
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

  /** Returns whether colour is welcome: a terminal, and NO_COLOR not set. */
  static boolean wantsColour() {
    String noColour = System.getenv("NO_COLOR");
    return attached() && (noColour == null || noColour.isEmpty());
  }
}
