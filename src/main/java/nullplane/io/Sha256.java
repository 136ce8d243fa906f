package nullplane.io;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 digests. Source: FIPS 180-4. */
public final class Sha256 {
  /** Length of a digest (bytes). */
  static final int BYTES = 32;

  private Sha256() {}

  /** Returns the digest of the bytes, 64 small hexadecimal digits. */
  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(digest(bytes, bytes.length));
  }

  /** Returns the digest of the first bytes of an array. */
  static byte[] digest(byte[] bytes, int count) {
    try {
      MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
      sha256.update(bytes, 0, count);
      return sha256.digest();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
