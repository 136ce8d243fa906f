package nullplane.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import nullplane.io.JudgingCsv;
import nullplane.io.JudgingJson;
import nullplane.io.ReadSpec;
import nullplane.io.ReadWoofer;
import nullplane.io.ReadWoofers;
import nullplane.io.SpecReader;
import nullplane.io.WooferFiles;
import nullplane.judging.Judgement;
import nullplane.judging.JudgingOutcome;
import nullplane.judging.WooferJudge;
import nullplane.report.JudgingReport;
import nullplane.report.JudgingSummary;
import nullplane.report.RunInfo;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.ScorersBySize;
import nullplane.scoring.SystemScorer;
import nullplane.search.SearchConduct;
import nullplane.search.SearchMemory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Ranks given woofers on a spec and says what each lacks. */
@Command(
    name = "judge",
    header = "Ranks woofers that there are on a spec's panels.",
    description = {
      "Ranks given woofers on the spec's panels, each with the best wiring and network for every"
          + " stack, and says what each lacks: where, in which stack, by how much, and how far it is"
          + " from the best woofer that could be built.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "A table has one row for each woofer and the keys of a woofer file in its header, with units:"
          + " \"fs [Hz]\". Rows that cannot be read are told with their lines; the others are judged."
    })
final class JudgeCommand implements Callable<Integer> {
  private static final long USUAL_EVALUATIONS = 20_000;

  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(
      paramLabel = "SPEC",
      description = "The panel system, a YAML file; starter writes one.")
  private Path specFile;

  @Option(
      names = "--woofers",
      required = true,
      paramLabel = "FILE_OR_FOLDER",
      description = "A woofer's YAML file, a CSV table of woofers, or a folder of both.")
  private Path wooferFiles = Path.of("");

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of the search for the best buildable woofer. Default: 1.")
  private long seed = 1;

  @Option(
      names = "--evaluations",
      paramLabel = "N",
      description =
          "Woofers to score in the search for the best buildable one, 1000 or more; 0 for no search."
              + " Default: 20000.")
  private long evaluations = USUAL_EVALUATIONS;

  @Override
  public Integer call() {
    int threads = options.threads();
    long budget =
        evaluations == 0 ? 0 : options.inRange(evaluations, "--evaluations", 1000, 100_000_000);
    CliRun run = new CliRun(command, options);
    ReadSpec read = SpecReader.read(specFile);
    ReadWoofers woofers = WooferFiles.readEach(wooferFiles);
    woofers.refused().forEach(fault -> run.tell("not judged: " + fault.oneLine()));
    Path folder = options.folderFor(specFile, "-judged");
    RunInfo info = new RunInfo(read.digest(), seed, ProgramVersion.text());
    try (Workers workers = new Workers(threads)) {
      run.write(
          folder,
          read.fileName(),
          info,
          results -> {
            run.done("read");
            JudgingOutcome outcome = judge(read.spec(), woofers.woofers(), budget, workers, run);
            byte[] json = JudgingJson.of(read, outcome, woofers.refused(), seed, info.version());
            results.add("judging.json", json);
            results.add("judging.csv", JudgingCsv.of(outcome));
            options.draw(
                JudgingReport.parts(read.spec(), outcome, woofers.refused(), info),
                workers,
                results);
            return CliRun.Made.of(
                json,
                JudgingSummary.of(
                    read.spec(),
                    outcome,
                    woofers.refused(),
                    info,
                    folder.toString(),
                    options.colour()),
                budget,
                List.of(closing(outcome.ranked().size(), run.seconds())));
          });
    }
    return 0;
  }

  private static String closing(int woofers, double seconds) {
    return String.format(
        Locale.ROOT,
        "%d %s judged in %.1f s",
        woofers,
        woofers == 1 ? "woofer" : "woofers",
        seconds);
  }

  private JudgingOutcome judge(
      DesignSpec spec, List<ReadWoofer> read, long budget, Workers workers, CliRun run) {
    List<ReadWoofer> fitting = new ArrayList<>();
    List<JudgingOutcome.Misfit> misfits = new ArrayList<>();
    for (ReadWoofer one : read) {
      Optional<JudgingOutcome.Misfit> misfit = WooferFit.misfitOf(one.woofer(), spec);
      misfit.ifPresentOrElse(misfits::add, () -> fitting.add(one));
    }
    if (fitting.isEmpty()) {
      throw WooferFit.notFitting(misfits);
    }
    ScorersBySize scorers =
        new ScorerStep(spec, workers, program.stop(), run.cache(), options.watched())
            .bySize(fitting.stream().map(ReadWoofer::woofer).toList(), false);
    run.done("solve the panels");
    Optional<Assessment> best =
        budget == 0 ? Optional.empty() : bestBuildable(scorers.own(), budget, workers);
    run.done("search the best buildable woofer");
    OptionalDouble bestCost =
        best.isPresent()
            ? OptionalDouble.of(best.orElseThrow().grade().costDb())
            : OptionalDouble.empty();
    WooferJudge judge = new WooferJudge(spec, bestCost);
    List<Callable<Judgement>> tasks = new ArrayList<>();
    for (ReadWoofer one : fitting) {
      SystemScorer scorer = scorers.of(one.woofer());
      tasks.add(() -> judge.judge(one.woofer(), one.contradictions(), scorer));
    }
    List<Judgement> ranked;
    try (ProgressLine progress = options.progress("judging", tasks.size())) {
      ranked = new ArrayList<>(workers.all(tasks, progress));
    }
    ranked.sort(Comparator.comparing(judgement -> judgement.assessment().grade()));
    run.done("judge");
    return new JudgingOutcome(ranked, misfits, best);
  }

  private Optional<Assessment> bestBuildable(SystemScorer scorer, long budget, Workers workers) {
    return SearchStep.run(
            scorer,
            new SearchConduct(seed, budget, options.threads()),
            workers,
            program.stop(),
            options.watched(),
            SearchMemory.NONE)
        .ranked()
        .stream()
        .findFirst()
        .filter(found -> found.grade().feasible());
  }
}
