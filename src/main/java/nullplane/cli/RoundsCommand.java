package nullplane.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.io.LedgerContents;
import nullplane.io.ResultFolder;
import nullplane.io.RoundLedger;
import nullplane.io.RunManifest;
import nullplane.io.StoryJson;
import nullplane.report.DesignReport;
import nullplane.report.RoundsReport;
import nullplane.report.RunInfo;
import nullplane.sample.ProjectStory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows the rounds of a project without adding one. */
@Command(
    name = "rounds",
    header = "Shows the rounds of samples on record.",
    description = {
      "Shows the rounds in a project's ledger: every value by round against its window, what was"
          + " asked and what came, how the maker answers, and whether golden samples moved. Changes"
          + " nothing in the ledger.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class)
final class RoundsCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(paramLabel = "FOLDER", description = "The folder that sample --ledger was given.")
  private Path folder;

  @Override
  public Integer call() {
    int threads = options.threads();
    Instant started = Instant.now();
    StepClock clock = new StepClock();
    PrintWriter err = command.commandLine().getErr();
    LedgerContents contents =
        new RoundLedger(folder, told -> err.println("nullplane: " + told)).read();
    if (contents.history().rounds().isEmpty()) {
      throw new InvalidInputException(
          List.of(
              new InputFault(
                  folder.toString(),
                  0,
                  "",
                  "",
                  "no round in this ledger can be read",
                  "",
                  "add one with sample --ledger")));
    }
    ProjectStory story = ProjectStory.of(contents.history());
    clock.done("read");
    RunInfo run = new RunInfo(contents.digest(), 0, ProgramVersion.text());
    byte[] json = StoryJson.of(story, run.version());
    String shown = new String(json, StandardCharsets.UTF_8);
    if (!options.json() || options.out().isPresent()) {
      DesignReport.requireFonts();
      Path out = options.folderFor(folder.toAbsolutePath().normalize(), "-rounds");
      try (ResultFolder results = ResultFolder.open(out, command.commandLine().getErr()::println);
          Workers drawers = new Workers(threads)) {
        results.add("rounds.json", json);
        options.draw(RoundsReport.parts(story, run), drawers, results);
        clock.done("draw and write");
        results.publish(
            new RunManifest(
                RoundLedger.FILE_NAME,
                contents.digest(),
                run.seed(),
                run.version(),
                started,
                Instant.now(),
                clock.steps(),
                0));
      }
      if (!options.json()) {
        shown = RoundsReport.terminal(story, run, out.toString(), options.colour());
      }
    }
    PrintWriter out = command.commandLine().getOut();
    out.print(shown);
    out.flush();
    return 0;
  }
}
