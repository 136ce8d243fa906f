package nullplane.io;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 digests as hexadecimal text. Source: FIPS 180-4. */
final class Sha256 {
  private Sha256() {}

  /** Returns the digest of the bytes, 64 small hexadecimal digits. */
  static String hex(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
