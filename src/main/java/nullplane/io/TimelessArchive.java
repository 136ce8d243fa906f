package nullplane.io;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.function.BiFunction;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes an archive anew with one date on every entry. It goes by the archive's directory, because
 * the JDK's stream reader refuses the long lengths that the workbook library writes behind entries.
 *
 * <p>Source: PKWARE, .ZIP File Format Specification 6.3: 4.3.7 local header, 4.3.12 central
 * directory, 4.3.16 its end. Valid for archives below 4 GiB made by the program itself.
 */
final class TimelessArchive {
  private static final int END = 0x06054b50;
  private static final int DIRECTORY = 0x02014b50;
  private static final int END_BYTES = 22;
  private static final int DIRECTORY_BYTES = 46;
  private static final int LOCAL_BYTES = 30;

  private TimelessArchive() {}

  /**
   * Returns the archive with dated entries.
   *
   * @param archive the archive
   * @param date the date that every entry gets
   * @param change gives an entry's content from its name and its content
   * @throws IOException if it is no archive
   */
  static byte[] of(byte[] archive, LocalDate date, BiFunction<String, byte[], byte[]> change)
      throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
    int end = archive.length - END_BYTES;
    if (end < 0 || buffer.getInt(end) != END) {
      throw new IOException("an archive without its end");
    }
    int entries = Short.toUnsignedInt(buffer.getShort(end + 10));
    int at = buffer.getInt(end + 16);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (int i = 0; i < entries; i++) {
        if (buffer.getInt(at) != DIRECTORY) {
          throw new IOException("an archive with a broken directory");
        }
        int nameBytes = Short.toUnsignedInt(buffer.getShort(at + 28));
        String name = new String(archive, at + DIRECTORY_BYTES, nameBytes, StandardCharsets.UTF_8);
        byte[] content =
            inflated(
                archive,
                start(buffer, buffer.getInt(at + 42)),
                buffer.getInt(at + 20),
                buffer.getInt(at + 24));
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(date.atStartOfDay());
        out.putNextEntry(entry);
        out.write(change.apply(name, content));
        out.closeEntry();
        at +=
            DIRECTORY_BYTES
                + nameBytes
                + Short.toUnsignedInt(buffer.getShort(at + 30))
                + Short.toUnsignedInt(buffer.getShort(at + 32));
      }
    }
    return bytes.toByteArray();
  }

  private static int start(ByteBuffer buffer, int local) {
    return local
        + LOCAL_BYTES
        + Short.toUnsignedInt(buffer.getShort(local + 26))
        + Short.toUnsignedInt(buffer.getShort(local + 28));
  }

  private static byte[] inflated(byte[] archive, int start, int packed, int length)
      throws IOException {
    byte[] content = new byte[length];
    Inflater inflater = new Inflater(true);
    try {
      inflater.setInput(archive, start, packed);
      int done = 0;
      while (done < length && !inflater.finished()) {
        int more = inflater.inflate(content, done, length - done);
        if (more == 0) {
          throw new IOException("an archive with a short entry");
        }
        done += more;
      }
      return content;
    } catch (DataFormatException e) {
      throw new IOException("an archive with a broken entry", e);
    } finally {
      inflater.end();
    }
  }
}
