package nullplane.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.io.LedgerContents;
import nullplane.io.RoundLedger;
import nullplane.io.StoryJson;
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
    CliRun run = new CliRun(command, options);
    LedgerContents contents = new RoundLedger(folder, run::tell).read();
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
    run.done("read");
    RunInfo info = new RunInfo(contents.digest(), 0, ProgramVersion.text());
    byte[] json = StoryJson.of(story, info.version());
    if (options.documentAlone()) {
      run.show(json);
      return 0;
    }
    Path out = options.folderFor(folder.toAbsolutePath().normalize(), "-rounds");
    try (Workers drawers = new Workers(threads)) {
      run.write(
          out,
          RoundLedger.FILE_NAME,
          info,
          results -> {
            results.add("rounds.json", json);
            options.draw(RoundsReport.parts(story, info), drawers, results);
            return CliRun.Made.of(
                json, RoundsReport.terminal(story, info, out.toString(), options.colour()));
          });
    }
    return 0;
  }
}
