package nullplane.io;

/** A cache entry that is not what was once written; the message says why, in a few words. */
final class DamagedEntryException extends Exception {
  private static final long serialVersionUID = 1;

  DamagedEntryException(String why) {
    super(why);
  }
}
