package nullplane.faults;

/** A fault with a message a person can act on; each subclass owns one exit code. */
public abstract class NullplaneException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** The process's exit code. */
  private final int exitCode;

  /**
   * @param exitCode the process's exit code
   * @param message one line: what, where, what is allowed, what to do
   */
  protected NullplaneException(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  /** Returns the exit code that belongs to this kind of fault. */
  public final int exitCode() {
    return exitCode;
  }
}
