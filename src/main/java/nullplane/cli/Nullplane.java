package nullplane.cli;

/** The program's entry point. */
public final class Nullplane {
  private Nullplane() {}

  /** Runs the program. */
  public static void main(String[] args) {
    System.exit(0);
  }
}
