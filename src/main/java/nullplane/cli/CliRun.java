package nullplane.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import nullplane.io.PanelCache;
import nullplane.io.ResultFolder;
import nullplane.io.RunManifest;
import nullplane.report.DesignReport;
import nullplane.report.RunInfo;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * One run of a command from its first step to what it prints: its clock, its folder, its words. The
 * folder is claimed before the work begins and appears when all of it is written; only then is
 * anything printed.
 */
final class CliRun {
  private final CommandLine line;
  private final RunOptions options;
  private final Instant started = Instant.now();
  private final StepClock clock = new StepClock();

  CliRun(CommandSpec command, RunOptions options) {
    this.line = command.commandLine();
    this.options = options;
  }

  /**
   * What a command made.
   *
   * @param document the JSON document
   * @param summary what people read instead
   * @param evaluations woofers scored
   * @param closing lines for standard error at the end, without the program's name
   */
  record Made(String document, String summary, long evaluations, List<String> closing) {
    /** Returns a document and a summary, with more to say. */
    static Made of(byte[] json, String summary, long evaluations, List<String> closing) {
      return new Made(text(json), summary, evaluations, closing);
    }

    /** Returns a document and a summary, with no more to say. */
    static Made of(byte[] json, String summary) {
      return of(json, summary, 0, List.of());
    }
  }

  /** Makes the files of a folder. */
  interface Filling {
    /**
     * Adds all files.
     *
     * @return what is shown when they are in place
     */
    Made into(ResultFolder results);
  }

  /** Ends a step. */
  void done(String step) {
    clock.done(step);
  }

  /** Returns the time since the run began (s). */
  double seconds() {
    return clock.seconds();
  }

  /** Returns when the run began. */
  Instant started() {
    return started;
  }

  /** Says something on standard error. */
  void tell(String words) {
    line.getErr().println("nullplane: " + words);
  }

  /** Returns where solved panels are kept. */
  PanelCache cache() {
    return options.cache(this::tell);
  }

  /**
   * Writes a folder whole or not at all, and shows what was made.
   *
   * @param folder where it will be
   * @param input name of the file that the run began with
   * @param run digest of that file, seed and version
   * @param filling makes the files
   */
  void write(Path folder, String input, RunInfo run, Filling filling) {
    Made made;
    try (ResultFolder results = ResultFolder.open(folder, this::tell)) {
      DesignReport.requireFonts();
      made = filling.into(results);
      done("draw and write");
      results.publish(
          new RunManifest(
              input,
              run.digest(),
              run.seed(),
              run.version(),
              started,
              Instant.now(),
              clock.steps(),
              made.evaluations()));
    }
    print(options.json() ? made.document() : made.summary());
    made.closing().forEach(this::tell);
  }

  /** Prints a document alone, of a run that writes no folder. */
  void show(byte[] json) {
    print(text(json));
  }

  private static String text(byte[] json) {
    return new String(json, StandardCharsets.UTF_8);
  }

  private void print(String words) {
    PrintWriter out = line.getOut();
    out.print(words);
    out.flush();
  }
}
