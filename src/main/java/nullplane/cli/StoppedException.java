package nullplane.cli;

/** A run was stopped by hand before there was anything to keep. */
final class StoppedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What shells expect after Ctrl-C. */
  static final int EXIT_CODE = 130;

  StoppedException(String doing) {
    super("stopped while " + doing + "; nothing was written");
  }
}
