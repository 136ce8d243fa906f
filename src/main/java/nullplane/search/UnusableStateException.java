package nullplane.search;

/** A kept state that cannot be resumed; the message says why, in a few words. */
public final class UnusableStateException extends Exception {
  private static final long serialVersionUID = 1;

  UnusableStateException(String why) {
    super(why);
  }
}
