package nullplane.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import nullplane.faults.InvalidInputException;

/**
 * The text of an input file, read with a size limit and checked to be text at all.
 *
 * @param fileName the file as the user named it
 * @param text its text
 * @param digest SHA-256 of its bytes, hexadecimal
 */
record InputText(String fileName, String text, String digest) {
  /** The largest file that is read (bytes). */
  static final int LARGEST = 1 << 20;

  /** The longest line that is read (characters); what reads YAML slows down with its square. */
  static final int LONGEST_LINE = 1 << 16;

  private static final String SAVE = "save the file as plain UTF-8 text";

  /**
   * Reads a file.
   *
   * @throws InvalidInputException if it is missing, unreadable, too large, empty, or not UTF-8 text
   */
  static InputText read(Path file) {
    String name = file.toString();
    if (Files.isDirectory(file)) {
      throw FaultList.fatal(name, 0, "", "this is a folder", "a YAML file", "name a file in it");
    }
    return of(bytes(file), name);
  }

  /**
   * Returns the bytes of a file, one more than allowed if it is too large.
   *
   * @throws InvalidInputException if it is missing or unreadable
   */
  static byte[] bytes(Path file) {
    String name = file.toString();
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(LARGEST + 1);
    } catch (NoSuchFileException e) {
      throw FaultList.fatal(name, 0, "", NearFiles.problem(file), "", NearFiles.hint(file));
    } catch (IOException e) {
      throw FaultList.fatal(name, 0, "", "the file cannot be read", "", reason(e));
    }
  }

  /**
   * Checks and decodes the bytes of a file.
   *
   * @throws InvalidInputException if they are too many, empty, or not UTF-8 text, or a line is too
   *     long
   */
  static InputText of(byte[] bytes, String name) {
    if (bytes.length > LARGEST) {
      throw FaultList.fatal(
          name, 0, "", "the file is too large", "1 MiB at most", "is this the right file?");
    }
    int start = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
    if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
      throw FaultList.fatal(name, 1, "", "the file is UTF-16 text", "UTF-8 text", SAVE);
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    if (result.isError()) {
      int line = 1;
      for (int i = 0; i < in.position(); i++) {
        line += bytes[i] == '\n' ? 1 : 0;
      }
      String found = String.format("byte 0x%02X", bytes[in.position()]);
      throw FaultList.fatal(name, line, found, "this is not UTF-8 text", "UTF-8 text", SAVE);
    }
    String text = out.flip().toString();
    refuseControls(text, name);
    refuseLongLines(text, name);
    if (text.isBlank()) {
      throw FaultList.fatal(name, 0, "", "the file is empty", "", "start from an example");
    }
    return new InputText(name, text, Sha256.hex(bytes));
  }

  private static void refuseControls(String text, String name) {
    int line = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n') {
        line++;
      } else if ((c < ' ' && c != '\t' && c != '\r') || (c >= 0x7F && c < 0xA0 && c != 0x85)) {
        String found = String.format("character U+%04X", (int) c);
        throw FaultList.fatal(
            name, line, found, "this is not a text file: it holds a control character", "", SAVE);
      }
    }
  }

  private static void refuseLongLines(String text, String name) {
    int line = 1;
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n'))) {
        line++;
        start = i + 1;
      } else if (c != '\r' && i - start >= LONGEST_LINE) {
        throw FaultList.fatal(
            name,
            line,
            "",
            "the line is too long",
            LONGEST_LINE + " characters at most",
            "break it into several lines");
      }
    }
  }

  private static boolean startsWith(byte[] bytes, int... head) {
    if (bytes.length < head.length) {
      return false;
    }
    for (int i = 0; i < head.length; i++) {
      if ((bytes[i] & 0xFF) != head[i]) {
        return false;
      }
    }
    return true;
  }

  private static String reason(IOException e) {
    String message = e.getMessage();
    return message == null ? e.getClass().getSimpleName() : Excerpt.of(message);
  }
}
