package nullplane.report;

/**
 * What tells two prints of one system apart.
 *
 * @param digest digest of the spec, as hexadecimal digits
 * @param seed seed of the search
 * @param version version of the program
 */
public record RunInfo(String digest, long seed, String version) {
  private static final int SHOWN = 12;

  /** Checks that the digest is made of hexadecimal digits and that there is a version. */
  public RunInfo {
    if (!digest.matches("[0-9a-fA-F]{8,}")) {
      throw new IllegalArgumentException(
          "spec digest is \"" + digest + "\"; allowed: 8 or more hexadecimal digits");
    }
    if (version.isBlank()) {
      throw new IllegalArgumentException("the version is empty; allowed: any text");
    }
  }

  /** Returns the first twelve digits of the digest. */
  public String shortDigest() {
    return digest.substring(0, Math.min(SHOWN, digest.length()));
  }

  /** Returns digest, seed and version in one line. */
  String oneLine() {
    return "spec " + shortDigest() + ", seed " + seed + ", version " + version;
  }
}
