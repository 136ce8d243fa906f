package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.fit.ImpedanceSweep;

/**
 * Every reader of bytes that people or disks hand to the program, as a function that must hold for
 * any bytes at all: it returns, or it tells faults of the input, within {@link #MOST_SECONDS}. A
 * new reader gets a constant here and a folder of small seeds below {@link #SEEDS}; the fuzzer and
 * the short run of the tests find both by the constant's name.
 */
enum FuzzedReader {
  /** A panel system. */
  SPEC {
    @Override
    void read(byte[] bytes) {
      SpecReader.read(bytes, "hall.yaml");
    }
  },

  /** One woofer's data. */
  WOOFER {
    @Override
    void read(byte[] bytes) {
      WooferReader.read(bytes, "sample.yaml");
    }
  },

  /** A table of woofers: a bad row must not spoil the others. */
  WOOFER_TABLE {
    @Override
    void read(byte[] bytes) {
      InputText input = InputText.of(bytes, "woofers.csv");
      for (WooferTable.Row row : WooferTable.rows(input, WooferSheet.KEYS)) {
        try {
          WooferReader.read(input, row.keys(), "woofers.csv line " + row.line());
        } catch (InvalidInputException e) {
          e.faults().forEach(FuzzedReader::requireOneLine);
        }
      }
    }
  },

  /** A measured impedance. */
  SWEEP {
    @Override
    void read(byte[] bytes) {
      ReadSweep read = SweepReader.of(bytes, "a.txt");
      ImpedanceSweep sweep = read.sweep();
      for (int i = 0; i < sweep.frequencyHz().size(); i++) {
        assertThat(sweep.frequencyHz().at(i)).isFinite().isPositive();
        assertThat(sweep.magnitudeOhm().at(i)).isFinite().isPositive();
      }
      read.warnings().forEach(FuzzedReader::requireVisible);
    }
  },

  /** A description of measurements; two good sweeps and nothing else lie beside it. */
  MEASUREMENTS {
    @Override
    void read(byte[] bytes) {
      MeasurementsReader.read(
          InputText.of(bytes, "measurements.yaml"),
          NamedFiles.beside(SweepsBeside.FOLDER.resolve("measurements.yaml")),
          Optional.empty());
    }
  },

  /** A maker's brief. */
  BRIEF {
    @Override
    void read(byte[] bytes) {
      BriefReader.read(InputText.of(bytes, "brief-1.json"));
    }
  },

  /** A file of the panel cache, as it is and with its check sum set right. */
  CACHE_ENTRY {
    @Override
    void read(byte[] bytes) {
      decode(bytes);
      if (bytes.length >= 2 * Sha256.BYTES) {
        byte[] sealed = bytes.clone();
        int end = sealed.length - Sha256.BYTES;
        System.arraycopy(Sha256.digest(sealed, end), 0, sealed, end, Sha256.BYTES);
        decode(sealed);
      }
    }

    private void decode(byte[] bytes) {
      try {
        byte[] again =
            CacheEntry.encode(KeptSolutions.KEY, CacheEntry.decode(KeptSolutions.KEY, bytes));
        assertThat(again).isEqualTo(bytes);
      } catch (DamagedEntryException e) {
        requireVisible(String.valueOf(e.getMessage()));
      }
    }
  },

  /** A ledger of rounds as it is, and every line as a record whose check sum was right. */
  LEDGER {
    @Override
    void read(byte[] bytes) {
      LedgerContents.of(bytes, "rounds.jsonl");
      for (String line : new String(bytes, StandardCharsets.UTF_8).split("\n", -1)) {
        LedgerReader.read(line.getBytes(StandardCharsets.UTF_8));
      }
    }
  },

  /** The manifest of a folder that may be replaced. */
  MANIFEST {
    @Override
    void read(byte[] bytes) {
      EarlierRun.filesListedIn(bytes);
    }
  },

  /** What stands behind options: frequencies, angles, accuracy. */
  CHOSEN_POINTS {
    @Override
    void read(byte[] bytes) {
      String text = new String(bytes, StandardCharsets.UTF_8);
      for (Runnable one :
          List.<Runnable>of(
              () -> ChosenPoints.frequencies(text, "--frequencies"),
              () -> ChosenPoints.angles(text, "--angles"),
              () -> ChosenPoints.accuracy(text, "--accuracy"))) {
        try {
          one.run();
        } catch (InvalidInputException e) {
          e.faults().forEach(FuzzedReader::requireOneLine);
        }
      }
    }
  };

  /** The longest that reading a file may take (s), as the thread's own time on a core. */
  static final double MOST_SECONDS = 2;

  /** Where the seeds lie: one folder for each constant, in lower case with hyphens. */
  static final Path SEEDS =
      Path.of(System.getProperty("basedir", "."))
          .resolve("src/test/resources/nullplane/io/ReaderFuzzInputs");

  /** Reads bytes; lets through whatever the reader throws. */
  abstract void read(byte[] bytes);

  /**
   * Reads bytes and holds the reader to its promise.
   *
   * @throws RuntimeException what the reader should not have thrown
   * @throws AssertionError if it took too long, or told a fault that does not fit on a line
   */
  final void check(byte[] bytes) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    try {
      read(bytes);
    } catch (InvalidInputException e) {
      assertThat(e.faults()).isNotEmpty();
      e.faults().forEach(FuzzedReader::requireOneLine);
    }
    double seconds = (threads.getCurrentThreadCpuTime() - start) / 1e9;
    if (seconds > MOST_SECONDS) {
      throw new AssertionError(this + " took " + seconds + " s for " + bytes.length + " bytes");
    }
  }

  /** Returns the name of the folder of seeds, which is also the reader's name for people. */
  final String folder() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Returns the seeds, in the order of their names. */
  final List<byte[]> seeds() {
    try (Stream<Path> files = Files.list(SEEDS.resolve(folder()))) {
      return files.sorted().map(FuzzedReader::bytes).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Returns the reader of a folder's name. */
  static FuzzedReader of(String folder) {
    return Arrays.stream(values())
        .filter(reader -> reader.folder().equals(folder))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no reader is called " + folder));
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void requireOneLine(InputFault fault) {
    requireVisible(fault.oneLine());
  }

  /** A message must not break its line or steer the terminal. */
  private static void requireVisible(String message) {
    if (!message.codePoints().allMatch(Excerpt::visible)) {
      throw new AssertionError("a message with characters that do not show: " + message);
    }
    if (message.length() > 2000) {
      throw new AssertionError("a message of " + message.length() + " characters: " + message);
    }
  }

  /** A folder with two sweeps, made once. */
  private static final class SweepsBeside {
    static final Path FOLDER = make();

    private static Path make() {
      try {
        Path folder = Files.createTempDirectory("nullplane-sweeps").toRealPath();
        Files.writeString(folder.resolve("a.txt"), "f [Hz]; |Z| [ohm]\n20; 6.1\n40; 30\n80; 7\n");
        Files.writeString(folder.resolve("b.txt"), "20 6.1 4\n30 30 0\n80 7 -3\n");
        Files.walk(folder).forEach(path -> path.toFile().deleteOnExit());
        return folder;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
