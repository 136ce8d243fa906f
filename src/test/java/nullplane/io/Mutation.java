package nullplane.io;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;

/** Changes bytes as damage and malice do; the same random numbers give the same bytes. */
final class Mutation {
  private static final List<String> TOKENS =
      List.of(
          "\"",
          "'",
          "{",
          "}",
          "[",
          "]",
          ":",
          ": ",
          ",",
          ";",
          "\t",
          "\n",
          "\r\n",
          "\n---\n",
          "#",
          "&a ",
          "*a",
          "!!java.net.URL ",
          "<<: ",
          "? ",
          "| ",
          "> ",
          "%",
          "nan",
          ".inf",
          "-",
          "1e999",
          "1e-999",
          "-0",
          "0",
          "99999999999999999999",
          "1,5",
          "0x1p3",
          "..",
          " .. ",
          " Hz",
          " cm",
          " ohm",
          " dB",
          "\u00b0",
          "\u2126",
          "\u03c6",
          "\u202e",
          "\ud83d\udd0a",
          "\ufeff",
          "\u0000",
          "\u001b[2J",
          "../",
          "/etc/passwd",
          "=1+1",
          "# locale: tr\n",
          "null",
          "~",
          "true");

  private final Random random;
  private final List<byte[]> seeds;

  /**
   * @param random where chance comes from
   * @param seeds what is changed
   */
  Mutation(Random random, List<byte[]> seeds) {
    this.random = random;
    this.seeds = List.copyOf(seeds);
  }

  /** Returns a seed with one to eight changes. */
  byte[] next() {
    byte[] bytes = seeds.get(random.nextInt(seeds.size())).clone();
    int changes = 1 + random.nextInt(8);
    for (int i = 0; i < changes; i++) {
      bytes = changed(bytes);
    }
    return bytes;
  }

  private byte[] changed(byte[] bytes) {
    int from = random.nextInt(bytes.length + 1);
    int to = Math.min(bytes.length, from + random.nextInt(40));
    return switch (random.nextInt(8)) {
      case 0 -> spliced(bytes, from, from, new byte[] {(byte) random.nextInt(256)});
      case 1 ->
          spliced(bytes, from, Math.min(bytes.length, from + 1), new byte[] {flipped(bytes, from)});
      case 2 -> spliced(bytes, from, to, new byte[0]);
      case 3 -> spliced(bytes, from, from, token());
      case 4 -> spliced(bytes, from, to, token());
      case 5 -> spliced(bytes, from, from, piece(bytes));
      case 6 -> spliced(bytes, from, from, piece(seeds.get(random.nextInt(seeds.size()))));
      default -> spliced(bytes, from, from, repeated(token()));
    };
  }

  private byte flipped(byte[] bytes, int at) {
    return at < bytes.length ? (byte) (bytes[at] ^ 1 << random.nextInt(8)) : 0;
  }

  private byte[] token() {
    return TOKENS.get(random.nextInt(TOKENS.size())).getBytes(StandardCharsets.UTF_8);
  }

  private byte[] piece(byte[] bytes) {
    int from = random.nextInt(bytes.length + 1);
    int length = Math.min(bytes.length - from, random.nextInt(200));
    return spliced(new byte[0], 0, 0, java.util.Arrays.copyOfRange(bytes, from, from + length));
  }

  private byte[] repeated(byte[] bytes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int times = 1 << random.nextInt(8);
    for (int i = 0; i < times; i++) {
      out.writeBytes(bytes);
    }
    return out.toByteArray();
  }

  /** Returns the bytes with a part of them exchanged. */
  private static byte[] spliced(byte[] bytes, int from, int to, byte[] middle) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, from);
    out.writeBytes(middle);
    out.write(bytes, to, bytes.length - to);
    return out.toByteArray();
  }
}
