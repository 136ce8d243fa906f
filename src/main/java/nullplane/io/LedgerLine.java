package nullplane.io;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * One line of a ledger: a JSON object whose last field is the checksum of all bytes before it. Any
 * cut and any single burst of wrong bits up to 32 long is found, others but for one in 2^32.
 *
 * <p>Source: RFC 3720, sec. 12.1 (CRC32C); RFC 8259.
 */
final class LedgerLine {
  private static final String FIELD = ",\"crc32c\":\"";
  private static final String END = "\"}";
  private static final int DIGITS = 8;
  private static final int SUFFIX = FIELD.length() + DIGITS + END.length();

  private LedgerLine() {}

  /**
   * Returns the bytes of a line, its line feed included.
   *
   * @param object a JSON object in one line, with one field or more
   */
  static byte[] of(byte[] object) {
    int open = object.length - 1;
    byte[] suffix = suffix(object, open);
    byte[] line = Arrays.copyOf(object, open + SUFFIX + 1);
    System.arraycopy(suffix, 0, line, open, SUFFIX);
    line[line.length - 1] = '\n';
    return line;
  }

  /**
   * Returns the object of a line without its checksum; empty if the line is damaged.
   *
   * @param bytes bytes that hold it
   * @param from where it starts
   * @param to where it ends, without a line feed
   */
  static Optional<byte[]> object(byte[] bytes, int from, int to) {
    int open = to - SUFFIX - from;
    if (open < 1) {
      return Optional.empty();
    }
    byte[] line = Arrays.copyOfRange(bytes, from, to);
    if (!Arrays.equals(suffix(line, open), Arrays.copyOfRange(line, open, line.length))) {
      return Optional.empty();
    }
    byte[] object = Arrays.copyOf(line, open + 1);
    object[open] = '}';
    return Optional.of(object);
  }

  private static byte[] suffix(byte[] bytes, int count) {
    CRC32C sum = new CRC32C();
    sum.update(bytes, 0, count);
    return (FIELD + String.format("%08x", sum.getValue()) + END)
        .getBytes(StandardCharsets.US_ASCII);
  }
}
