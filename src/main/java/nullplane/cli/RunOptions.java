package nullplane.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import nullplane.io.PanelCache;
import nullplane.io.ResultFolder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that every command takes. */
final class RunOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--json",
      description = "Print one JSON document on standard output and nothing else there.")
  private boolean json;

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description =
          "The folder for the results; default: one in results/ with the input's name. An earlier"
              + " run there is replaced, anything else is left alone.")
  private @Nullable Path out;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Threads to compute with; default: one per core. Changes no result.")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(names = "--no-cache", description = "Solve the panels anew and keep nothing.")
  private boolean noCache;

  /** Returns whether JSON is wanted. */
  boolean json() {
    return json;
  }

  /** Returns whether only the document is wanted: neither a folder nor pictures. */
  boolean documentAlone() {
    return json && out().isEmpty();
  }

  /** Returns where the results go, if the user said so. */
  Optional<Path> out() {
    return Optional.ofNullable(out);
  }

  /**
   * Returns where the results go: what the user said, else the input's name in results/.
   *
   * @param specFile the input: the spec, or a command's other first file
   * @param suffix what follows its name
   */
  Path folderFor(Path specFile, String suffix) {
    String name = String.valueOf(specFile.getFileName());
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    return out().orElseGet(() -> Path.of("results", stem + suffix));
  }

  /** Returns the number of threads, checked. */
  int threads() {
    return (int) inRange(threads, "--threads", 1, 256);
  }

  /**
   * Returns where solved panels are kept: the user's cache folder, or nowhere if that is wanted or
   * no home is known.
   *
   * @param notice takes lines for the user when the cache is damaged or cannot be used
   */
  PanelCache cache(Consumer<String> notice) {
    return noCache
        ? PanelCache.none()
        : CacheFolder.usual()
            .map(folder -> PanelCache.in(folder, notice))
            .orElseGet(PanelCache::none);
  }

  /** Returns the user's cache folder, or nothing if that is wanted or no home is known. */
  Optional<Path> cacheFolder() {
    return noCache ? Optional.empty() : CacheFolder.usual();
  }

  /** Returns a number if it is in range, else complains about the command line. */
  long inRange(long value, String option, long least, long most) {
    if (value < least || value > most) {
      throw new ParameterException(
          spec.commandLine(), option + " is " + value + "; allowed: " + least + " to " + most);
    }
    return value;
  }

  /**
   * Returns a line of progress, shown if somebody watches.
   *
   * @param task what is going on, in a few words
   * @param steps how many steps it takes
   */
  ProgressLine progress(String task, long steps) {
    return new ProgressLine(task, steps, watched());
  }

  /** Makes the contents of files on several threads and adds them to the results. */
  void draw(SortedMap<String, Supplier<byte[]>> parts, Workers workers, ResultFolder results) {
    try (ProgressLine progress = progress("pages and pictures", parts.size())) {
      workers.make(parts, progress).forEach(results::add);
    }
  }

  /** Returns whether somebody watches the terminal. */
  boolean watched() {
    return !json && Terminal.here().watched();
  }

  /** Returns whether colour is welcome on standard output. */
  boolean colour() {
    return !json && Terminal.here().wantsColour();
  }
}
