package nullplane.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import nullplane.io.BriefCsv;
import nullplane.io.BriefJson;
import nullplane.io.BriefWorkbook;
import nullplane.io.FrontCsv;
import nullplane.io.RankingCsv;
import nullplane.io.RankingJson;
import nullplane.io.ReadSpec;
import nullplane.io.SpecReader;
import nullplane.io.SwapCsv;
import nullplane.report.DesignReport;
import nullplane.report.FactorySheet;
import nullplane.report.RunInfo;
import nullplane.report.TerminalSummary;
import nullplane.sample.MakerBrief;
import nullplane.scoring.Assessment;
import nullplane.scoring.FamilyParts;
import nullplane.scoring.SystemScorer;
import nullplane.search.SearchConduct;
import nullplane.search.SearchMemory;
import nullplane.search.SearchOutcome;
import nullplane.tolerance.ToleranceStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Searches woofers for a spec and writes the ranked specification sheets. */
@Command(
    name = "design",
    header = "Searches the best woofers for a spec that a maker can build.",
    description = {
      "Searches woofers for the spec and writes the ranked specification sheets: one for each of"
          + " the five best distinct woofers, with pictures, lists of parts to swap between stacks,"
          + " ranking.csv and ranking.json; front.csv has the best compromises.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "Ctrl-C ends the search and writes the best so far. The same command run again goes on from"
          + " there, as it does after a run that was cut off."
    })
final class DesignCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(
      paramLabel = "SPEC",
      description = "The panel system, a YAML file; starter writes one.")
  private Path specFile;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of the search; same spec and seed, same result. Default: 1.")
  private long seed = 1;

  @Option(
      names = "--evaluations",
      paramLabel = "N",
      description =
          "Woofers, each with its networks, to score before the search ends. Default: 60000.")
  private long evaluations = SearchConduct.USUAL_EVALUATIONS;

  @Option(
      names = "--time-limit",
      paramLabel = "SECONDS",
      description =
          "Longest time to search; where it ends then depends on the machine. Default: no limit.")
  private long seconds;

  @Override
  public Integer call() {
    int threads = options.threads();
    SearchConduct conduct =
        new SearchConduct(
            seed,
            options.inRange(evaluations, "--evaluations", 1000, 100_000_000),
            Optional.of(Duration.ofSeconds(options.inRange(seconds, "--time-limit", 0, 1_000_000)))
                .filter(limit -> !limit.isZero()),
            threads);
    CliRun run = new CliRun(command, options);
    ReadSpec read = SpecReader.read(specFile);
    Path folder = options.folderFor(specFile, "");
    StopSignal stop = program.stop();
    RunInfo info = new RunInfo(read.digest(), seed, ProgramVersion.text());
    SearchMemory memory = KeptSearch.in(options.cacheFolder(), read.digest(), conduct, run::tell);
    try (Workers workers = new Workers(threads)) {
      run.write(
          folder,
          read.fileName(),
          info,
          results -> {
            run.done("read the spec");
            SystemScorer scorer =
                new ScorerStep(read.spec(), workers, stop, run.cache(), options.watched()).own();
            run.done("solve the panels");
            SearchOutcome outcome =
                SearchStep.run(scorer, conduct, workers, stop, options.watched(), memory);
            run.done("search");
            List<ToleranceStudy> tolerances =
                ToleranceStep.of(scorer, outcome.ranked(), seed, workers::each, options.watched());
            run.done("study tolerances");
            List<FamilyParts> families = families(scorer, outcome.ranked(), workers);
            run.done("look for parts to share");
            byte[] json = RankingJson.of(read, outcome, tolerances, families, info.version());
            results.add("ranking.json", json);
            results.add("ranking.csv", RankingCsv.of(outcome));
            if (!outcome.front().isEmpty()) {
              results.add("front.csv", FrontCsv.of(read.spec(), outcome.front(), scorer.air()));
            }
            options.draw(parts(read, outcome, tolerances, families, info), workers, results);
            return CliRun.Made.of(
                json,
                TerminalSummary.of(read.spec(), outcome, info, folder.toString(), options.colour()),
                outcome.evaluations(),
                closing(outcome, run.seconds()));
          });
    }
    if (!stop.wanted()) {
      memory.done();
    }
    return 0;
  }

  /** Says what the run was, so that it can be repeated. */
  private static List<String> closing(SearchOutcome outcome, double seconds) {
    return List.of(
        String.format(Locale.ROOT, "%d woofers scored in %.1f s", outcome.evaluations(), seconds),
        outcome.stopReason());
  }

  private List<FamilyParts> families(
      SystemScorer scorer, List<Assessment> ranked, Workers workers) {
    try (ProgressLine progress = options.progress("parts to share", ranked.size())) {
      return workers.all(
          ranked.stream()
              .map(found -> (Callable<FamilyParts>) () -> FamilyParts.of(scorer, found))
              .toList(),
          progress);
    }
  }

  /** Returns what makes the pages, and the files that a maker gets with each woofer. */
  private static SortedMap<String, Supplier<byte[]>> parts(
      ReadSpec read,
      SearchOutcome outcome,
      List<ToleranceStudy> tolerances,
      List<FamilyParts> families,
      RunInfo run) {
    List<FactorySheet> sheets =
        DesignReport.sheets(read.spec(), outcome, tolerances, run, read.date());
    SortedMap<String, Supplier<byte[]>> parts =
        new TreeMap<>(DesignReport.parts(read.spec(), outcome, run, sheets, families));
    for (FactorySheet sheet : sheets) {
      MakerBrief brief = sheet.brief();
      int rank = brief.rank();
      parts.put(DesignReport.makerFile(rank, ".json"), () -> BriefJson.of(brief));
      parts.put(DesignReport.makerFile(rank, ".csv"), () -> BriefCsv.of(brief));
      parts.put(DesignReport.makerFile(rank, ".xlsx"), () -> BriefWorkbook.of(brief));
      FamilyParts family = families.get(rank - 1);
      parts.put(DesignReport.swapFile(rank), () -> SwapCsv.swaps(family));
      parts.put(DesignReport.kitFile(rank), () -> SwapCsv.kit(family.kit()));
    }
    return parts;
  }
}
