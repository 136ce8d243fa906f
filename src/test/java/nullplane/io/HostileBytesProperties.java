package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * No bytes make a reader throw anything but faults of the input, hang or eat the memory. This is
 * the short run: the seeds, what the fuzzer found earlier (it is kept among the seeds), and a fixed
 * number of seeded changes. The long one is the profile {@code fuzz}.
 */
class HostileBytesProperties {
  private static final int CHANGES = 300;

  /** The other readers of YAML begin as the spec's does. */
  private static final List<FuzzedReader> ONE_OF_A_KIND =
      List.of(
          FuzzedReader.SPEC,
          FuzzedReader.WOOFER_TABLE,
          FuzzedReader.SWEEP,
          FuzzedReader.CHOSEN_POINTS);

  private static final long PATIENCE_MS = 60_000;
  private static final long MOST_BYTES = 512L << 20;

  @ParameterizedTest
  @EnumSource
  void seedsAndChangedSeedsAreReadOrRefused(FuzzedReader reader) {
    List<byte[]> seeds = reader.seeds();
    assertThat(seeds).isNotEmpty();
    seeds.forEach(bytes -> check(reader, bytes));
    Mutation mutation = new Mutation(new Random(reader.ordinal()), seeds);
    for (int i = 0; i < CHANGES; i++) {
      check(reader, mutation.next());
    }
  }

  /** Files as large as are read at all, each built to make some reader slow. */
  @ParameterizedTest(name = "{0} of {1}")
  @MethodSource
  void filesOfTheLargestSizeAreReadOrRefusedInTime(FuzzedReader reader, String name, byte[] bytes) {
    check(reader, bytes);
  }

  static Stream<Arguments> filesOfTheLargestSizeAreReadOrRefusedInTime() {
    List<Arguments> all = new ArrayList<>();
    for (FuzzedReader reader : ONE_OF_A_KIND) {
      add(all, reader, "open brackets", "", "[", "");
      add(all, reader, "open braces", "", "{a: ", "");
      add(all, reader, "dashes", "", "- ", "");
      add(all, reader, "question marks", "", "? ", "");
      add(all, reader, "growing indentation", "a:\n", " b:\n  c:\n   d:\n", "");
      add(all, reader, "blanks within a row", "20", " ", "6; 1\n");
      add(all, reader, "blanks before a comma", "20", " ", "6, 1\n");
      add(all, reader, "tabs within a row", "20\t6\n30", "\t ", "7\n");
      add(all, reader, "words above rows", "f [Hz] ", "z( ", "\n20 6\n30 7\n");
      add(all, reader, "brackets in a head", "f [Hz] ", "[(", "\n20 6\n30 7\n");
      add(all, reader, "a comment of stars", "", "*", "\n20 6\n30 7\n");
      add(all, reader, "digits", "title: ", "1", "");
      add(all, reader, "a long number", "woofer: {nominal: ", "9", " mm}\n");
      add(all, reader, "a range of dots", "woofer: {range: {fs: ", ". ", "}}\n");
      add(all, reader, "unknown keys", "", "fs: 1\nfx: 2\n", "");
      add(all, reader, "a long key", "", "k", ": 1\n");
      add(all, reader, "commas", "name,", ",", "\nA\n");
      add(all, reader, "columns", "name,", "fs [Hz],", "\nA,1\n");
      add(all, reader, "quotes", "name,fs [Hz]\n", "\"a\"\"\",", "\n");
      add(all, reader, "rows", "name,fs [Hz]\n", "A,1\n", "");
      add(all, reader, "short rows", "20 6\n", "1 2\n", "");
      add(all, reader, "equal rows", "f [Hz]; |Z| [ohm]; phase [deg]\n", "20; 6; 1\n", "");
      add(all, reader, "escapes", "title: \"", "\\U0001F50A", "\"\n");
      add(all, reader, "folded lines", "title: >\n", " a\n\n", "");
      add(all, reader, "quoted lines", "title: \"", "a\n\n", "\"\n");
      add(
          all,
          reader,
          "json lists",
          "{\"kind\": \"nullplane brief\", \"values\": [",
          "{},",
          "{}]}");
      add(all, reader, "line ends", "", "\n", "x");
      add(all, reader, "remarks", "", "# locale: xx\n", "name\n");
    }
    return all.stream();
  }

  /** Adds a file of the largest size, as one line and in lines as long as are read. */
  private static void add(
      List<Arguments> all, FuzzedReader reader, String name, String head, String part, String end) {
    int room = InputText.LARGEST - utf8(head + end).length;
    int times = room / utf8(part).length;
    all.add(Arguments.of(reader, name, utf8(head + part.repeat(times) + end)));
    if (part.indexOf('\n') < 0) {
      int inLine = (InputText.LONGEST_LINE - 100) / part.length();
      String line = part.repeat(inLine) + "\n";
      String lines = line.repeat(room / utf8(line).length);
      all.add(Arguments.of(reader, name + " in lines", utf8(head + lines + end)));
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Checks a reader's promise, and that it takes no more memory than a small machine has. */
  private static void check(FuzzedReader reader, byte[] bytes) {
    AtomicReference<Throwable> found = new AtomicReference<>();
    Thread thread =
        new Thread(
            () -> {
              ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
              long before = threads.getCurrentThreadAllocatedBytes();
              try {
                reader.check(bytes);
                assertThat(threads.getCurrentThreadAllocatedBytes() - before)
                    .as("bytes of memory taken, all that was let go meanwhile counted")
                    .isLessThan(MOST_BYTES);
              } catch (RuntimeException | Error e) {
                found.set(e);
              }
            });
    thread.setDaemon(true);
    thread.start();
    try {
      thread.join(PATIENCE_MS);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    if (thread.isAlive()) {
      AssertionError hang = new AssertionError("still reading after " + PATIENCE_MS + " ms");
      hang.setStackTrace(thread.getStackTrace());
      found.set(hang);
    }
    if (found.get() != null) {
      String start = new String(bytes, StandardCharsets.ISO_8859_1);
      throw new AssertionError(
          reader + " on " + start.substring(0, Math.min(start.length(), 2000)), found.get());
    }
  }
}
