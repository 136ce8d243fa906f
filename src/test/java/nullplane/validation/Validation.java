package nullplane.validation;

/**
 * Comparisons with something outside the project. A reference test makes each through here, so that
 * one call both asserts and puts a row on the page src/site/markdown/validation.md.
 */
public final class Validation {
  private Validation() {}

  /**
   * Starts a comparison.
   *
   * @param title what is compared; no other comparison of the test class bears this title
   * @param source author, title, year, or the closed form
   */
  public static Check check(String title, String source) {
    return new Check(Recorder.testClass(), title, source);
  }
}
