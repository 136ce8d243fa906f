package nullplane.faults;

/** Output could not be written. Exit code 5. */
public final class OutputException extends NullplaneException {
  private static final long serialVersionUID = 1L;

  /**
   * @param path where
   * @param cause why, in words
   */
  public OutputException(String path, String cause) {
    super(5, "cannot write " + path + ": " + cause);
  }
}
