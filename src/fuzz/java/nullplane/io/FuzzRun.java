package nullplane.io;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Fuzzes every reader for a while, each in a process of its own with 512 MiB of memory, and says
 * how many inputs were tried. New inputs that reach new code gather in target/fuzz and are taken up
 * by the next run; an input that breaks a promise is kept there too, and the run fails.
 */
public final class FuzzRun {
  /** What stands before the number of inputs. */
  static final String TRIED = "inputs tried: ";

  private static final String FUZZER = "com.code_intelligence.jazzer.Jazzer";
  private static final Path GATHERED = Path.of("target", "fuzz");
  private static final int LONGEST_INPUT = 8192;

  private FuzzRun() {}

  /** How a reader fared. */
  private record Outcome(FuzzedReader reader, int exit, String tried, double seconds) {}

  /**
   * Runs the fuzzer.
   *
   * @param arguments seconds for each reader, readers at a time, and the readers' names; all of
   *     them if none is named
   */
  public static void main(String[] arguments) throws Exception {
    long seconds = Long.parseLong(arguments[0]);
    int atOnce = Integer.parseInt(arguments[1]);
    List<FuzzedReader> readers =
        arguments.length > 2 && !arguments[2].isBlank()
            ? Arrays.stream(arguments[2].split(",")).map(FuzzedReader::of).toList()
            : List.of(FuzzedReader.values());
    ExecutorService threads = Executors.newFixedThreadPool(atOnce);
    try {
      List<Callable<Outcome>> tasks = new ArrayList<>();
      for (FuzzedReader reader : readers) {
        tasks.add(() -> fuzz(reader, seconds));
      }
      boolean well = true;
      for (Future<Outcome> future : threads.invokeAll(tasks)) {
        Outcome outcome = future.get();
        well &= outcome.exit() == 0 && !outcome.tried().isEmpty();
        System.out.printf(
            Locale.ROOT,
            "%-14s %12s inputs in %.0f s, %s%n",
            outcome.reader().folder(),
            outcome.tried().isEmpty() ? "?" : outcome.tried(),
            outcome.seconds(),
            outcome.exit() == 0 ? "no promise broken" : "FAILED: see " + log(outcome.reader()));
      }
      System.exit(well ? 0 : 1);
    } finally {
      threads.shutdownNow();
    }
  }

  private static Path log(FuzzedReader reader) {
    return GATHERED.resolve(reader.folder() + ".log");
  }

  private static Outcome fuzz(FuzzedReader reader, long seconds)
      throws IOException, InterruptedException {
    Path corpus = Files.createDirectories(GATHERED.resolve(reader.folder()));
    Path broken = Files.createDirectories(GATHERED.resolve(reader.folder() + "-broken"));
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                FUZZER,
                "--target_class=" + ReaderFuzz.class.getName(),
                "--target_args=" + reader.folder(),
                "--instrumentation_includes="
                    + String.join(
                        File.pathSeparator,
                        "nullplane.**",
                        "org.yaml.snakeyaml.**",
                        "com.fasterxml.jackson.**"),
                "--reproducer_path=" + broken,
                "-artifact_prefix=" + broken + File.separator,
                "-max_total_time=" + seconds,
                "-max_len=" + LONGEST_INPUT,
                "-timeout=60", // for what never ends; the limit proper is the reader's time on a
                // core
                "-rss_limit_mb=0", // the heap's limit above counts
                "-seed=1",
                corpus.toString(),
                FuzzedReader.SEEDS.resolve(reader.folder()).toString())
            .redirectErrorStream(true)
            .start();
    process.getOutputStream().close();
    String tried = "";
    try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8);
        var log = Files.newBufferedWriter(log(reader))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        log.write(line);
        log.newLine();
        if (line.startsWith(TRIED)) {
          tried = line.substring(TRIED.length());
        }
      }
    }
    int exit = process.waitFor();
    return new Outcome(reader, exit, tried, (System.nanoTime() - start) / 1e9);
  }
}
