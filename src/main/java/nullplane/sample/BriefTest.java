package nullplane.sample;

/**
 * One test that decides whether a woofer, or a lot, is accepted.
 *
 * @param name what is tested
 * @param method how
 * @param limit what passes
 * @param count how many are tested
 */
public record BriefTest(String name, String method, String limit, String count) {
  /** Checks that nothing is left out. */
  public BriefTest {
    if (name.isBlank() || method.isBlank() || limit.isBlank() || count.isBlank()) {
      throw new IllegalArgumentException("test \"" + name + "\" lacks its method, limit or count");
    }
  }
}
