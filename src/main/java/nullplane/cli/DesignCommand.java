package nullplane.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import nullplane.acoustics.AdaptiveSweep;
import nullplane.io.BriefCsv;
import nullplane.io.BriefJson;
import nullplane.io.BriefWorkbook;
import nullplane.io.RankingCsv;
import nullplane.io.RankingJson;
import nullplane.io.ReadSpec;
import nullplane.io.ResultFolder;
import nullplane.io.RunManifest;
import nullplane.io.SpecReader;
import nullplane.network.CoilCatalogue;
import nullplane.report.DesignReport;
import nullplane.report.FactorySheet;
import nullplane.report.RunInfo;
import nullplane.report.TerminalSummary;
import nullplane.sample.MakerBrief;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Grade;
import nullplane.scoring.GradeWeights;
import nullplane.scoring.ScoringAxis;
import nullplane.scoring.StackAcoustics;
import nullplane.scoring.SystemScorer;
import nullplane.search.SearchConduct;
import nullplane.search.SearchOutcome;
import nullplane.search.SearchWatch;
import nullplane.search.WooferSearch;
import nullplane.tolerance.ToleranceStudy;
import nullplane.units.Air;
import nullplane.units.Curve;
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
    description = {
      "Searches woofers for the spec and writes the ranked specification sheets: one for each of"
          + " the five best distinct woofers, with pictures, ranking.csv and ranking.json.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "Ctrl-C ends the search and writes the best so far.",
      "",
      "Example:",
      "  java -jar target/nullplane.jar design specs/village-hall.yaml --seed 7"
    })
final class DesignCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(paramLabel = "SPEC", description = "The panel system, a YAML file.")
  private Path specFile;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of the search; same spec and seed, same result. Default: 1.")
  private long seed = 1;

  @Option(
      names = "--evaluations",
      paramLabel = "N",
      description = "Woofers to score before the search ends. Default: 60000.")
  private long evaluations = SearchConduct.USUAL_EVALUATIONS;

  @Override
  public Integer call() {
    int threads = options.threads();
    SearchConduct conduct =
        new SearchConduct(
            seed, options.inRange(evaluations, "--evaluations", 1000, 100_000_000), threads);
    Instant started = Instant.now();
    StepClock clock = new StepClock();
    ReadSpec read = SpecReader.read(specFile);
    Path folder = options.folderFor(specFile, "");
    StopSignal stop = program.stop();
    try (ResultFolder results = ResultFolder.open(folder);
        Workers workers = new Workers(threads)) {
      DesignReport.requireFonts();
      clock.done("read the spec");
      SystemScorer scorer = solvePanels(read, workers, stop);
      clock.done("solve the panels");
      SearchOutcome outcome = search(scorer, conduct, workers, stop);
      clock.done("search");
      RunInfo run = new RunInfo(read.digest(), seed, ProgramVersion.text());
      List<ToleranceStudy> tolerances =
          ToleranceStep.of(scorer, outcome.ranked(), seed, workers::each);
      clock.done("study tolerances");
      byte[] json = RankingJson.of(read, outcome, tolerances, run.version());
      results.add("ranking.json", json);
      results.add("ranking.csv", RankingCsv.of(outcome));
      workers.make(parts(read, outcome, run)).forEach(results::add);
      clock.done("draw and write");
      results.publish(
          new RunManifest(
              read.fileName(),
              read.digest(),
              seed,
              run.version(),
              started,
              Instant.now(),
              clock.steps(),
              outcome.evaluations()));
      print(read, outcome, run, folder, json);
      tell(started, outcome);
      return 0;
    }
  }

  /** Returns what makes the pages, and the files that a maker gets with each woofer. */
  private static SortedMap<String, Supplier<byte[]>> parts(
      ReadSpec read, SearchOutcome outcome, RunInfo run) {
    List<FactorySheet> sheets = DesignReport.sheets(read.spec(), outcome, run, read.date());
    SortedMap<String, Supplier<byte[]>> parts =
        new TreeMap<>(DesignReport.parts(read.spec(), outcome, run, sheets));
    for (FactorySheet sheet : sheets) {
      MakerBrief brief = sheet.brief();
      int rank = brief.rank();
      parts.put(DesignReport.makerFile(rank, ".json"), () -> BriefJson.of(brief));
      parts.put(DesignReport.makerFile(rank, ".csv"), () -> BriefCsv.of(brief));
      parts.put(DesignReport.makerFile(rank, ".xlsx"), () -> BriefWorkbook.of(brief));
    }
    return parts;
  }

  private SystemScorer solvePanels(ReadSpec read, Workers workers, StopSignal stop) {
    Air air = Air.standard();
    DesignSpec spec = read.spec();
    ScoringAxis axis = ScoringAxis.of(spec.target());
    Curve scored = axis.frequencyHz();
    long steps = (long) spec.stacks().size() * scored.size();
    List<AdaptiveSweep> sweeps;
    try (ProgressLine progress = new ProgressLine("panels", steps, options.watched())) {
      sweeps =
          new PanelStep(
                  spec, scored.at(0), scored.at(scored.size() - 1), air, workers, progress, stop)
              .solve(options.cache(command.commandLine().getErr()::println));
    }
    return new SystemScorer(
        spec,
        axis,
        acoustics(spec, sweeps, scored),
        acoustics(spec, sweeps, ScoringAxis.drawnFor(spec.target())),
        CoilCatalogue.standard().options(),
        GradeWeights.STANDARD,
        air);
  }

  private static List<StackAcoustics> acoustics(
      DesignSpec spec, List<AdaptiveSweep> sweeps, Curve axis) {
    List<StackAcoustics> all = new ArrayList<>();
    for (int s = 0; s < sweeps.size(); s++) {
      all.add(new StackAcoustics(spec.stacks().get(s), sweeps.get(s).on(axis)));
    }
    return all;
  }

  private SearchOutcome search(
      SystemScorer scorer, SearchConduct conduct, Workers workers, StopSignal stop) {
    try (ProgressLine progress =
        new ProgressLine("search", conduct.evaluations(), options.watched())) {
      SearchWatch watch =
          new SearchWatch() {
            @Override
            public boolean stopWanted() {
              return stop.wanted();
            }

            @Override
            public void generationDone(long done, long budget, Grade best) {
              progress.at(Math.min(done, budget));
              progress.note(
                  best.feasible()
                      ? String.format(Locale.ROOT, "best %.2f dB", best.costDb())
                      : "none buildable yet");
            }
          };
      return WooferSearch.run(scorer, conduct, workers.executor(), watch);
    }
  }

  private void print(ReadSpec read, SearchOutcome outcome, RunInfo run, Path folder, byte[] json) {
    PrintWriter out = command.commandLine().getOut();
    out.print(
        options.json()
            ? new String(json, StandardCharsets.UTF_8)
            : TerminalSummary.of(read.spec(), outcome, run, folder.toString(), options.colour()));
    out.flush();
  }

  /** Says on standard error what the run was, so that it can be repeated. */
  private void tell(Instant started, SearchOutcome outcome) {
    command
        .commandLine()
        .getErr()
        .printf(
            Locale.ROOT,
            "nullplane: %d woofers scored in %.1f s; %s%n",
            outcome.evaluations(),
            Duration.between(started, Instant.now()).toMillis() / 1e3,
            outcome.stopReason());
  }
}
