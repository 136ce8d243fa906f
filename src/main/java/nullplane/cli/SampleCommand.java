package nullplane.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.io.BriefReader;
import nullplane.io.MeasurementsReader;
import nullplane.io.ReadBrief;
import nullplane.io.ReadMeasurements;
import nullplane.io.ReadSpec;
import nullplane.io.SampleCsv;
import nullplane.io.SampleJson;
import nullplane.io.SpecReader;
import nullplane.report.DesignReport;
import nullplane.report.RunInfo;
import nullplane.report.SampleReport;
import nullplane.sample.BriefStacks;
import nullplane.sample.Lever;
import nullplane.sample.PanelAir;
import nullplane.sample.SampleBrief;
import nullplane.sample.SampleJudge;
import nullplane.sample.SampleOutcome;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.Wiring;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Holds measured samples against their brief and says what to change. */
@Command(
    name = "sample",
    header = "Fits, judges and corrects a maker's samples.",
    description = {
      "Fits measured samples, passes or fails them against their brief, shows what each does in"
          + " every stack, and asks for the smallest change in the maker's own levers. A sample that"
          + " fails is a result: the exit code is 0.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "MEASUREMENTS names the sweeps, which lie in its folder or below:",
      "  samples:",
      "    - {name: A, free-air: a.txt, added-mass: a-mass.txt, mass: 30 g}",
      "    - {name: B, free-air: b.txt, moving-mass: 62 g, rest-position: 0.4 mm}",
      "    - {name: C, free-air: c.txt, bl: 6.1 Tm}",
      "    - {name: D, on-panel: d.txt, stack: pair, woofer: 1, moving-mass: 62 g}",
      "    - {name: G, free-air: g.txt, moving-mass: 62 g, golden: true}",
      "On a panel the other woofers of the stack hang open; held still: others: still.",
      "A golden sample is a reference measured again each round; it decides nothing."
    })
final class SampleCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(
      index = "0",
      paramLabel = "SPEC",
      description = "The panel system, a YAML file; starter writes one.")
  private Path specFile;

  @Parameters(
      index = "1",
      paramLabel = "BRIEF",
      description = "The brief, a brief-N.json that design wrote.")
  private Path briefFile;

  @Parameters(
      index = "2",
      paramLabel = "MEASUREMENTS",
      description = "What was measured, a YAML file.")
  private Path measurementsFile;

  @Option(
      names = "--lock",
      split = ",",
      paramLabel = "LEVER,...",
      hideParamSyntax = true,
      description =
          "Levers that the maker cannot move: mass, stiffness, flux, winding, rest-position.")
  private List<String> locks = new ArrayList<>();

  @Option(
      names = "--ledger",
      paramLabel = "FOLDER",
      description =
          "The project's ledger: this round is added to it, its history is shown, and the request"
              + " reckons with what came of the earlier ones.")
  private @Nullable Path ledger;

  @Option(
      names = "--round",
      paramLabel = "N",
      description =
          "Number of this round in the ledger: the next one, or the last one again if its"
              + " measurements were wrong. Default: the next one; the same again for the same"
              + " measurements.")
  private @Nullable Integer round;

  @Override
  public Integer call() {
    int threads = options.threads();
    Set<Lever> locked = locked();
    CliRun run = new CliRun(command, options);
    Readings readings = new Readings();
    Optional<ReadSpec> spec = readings.of(() -> SpecReader.read(specFile));
    Optional<ReadBrief> brief = readings.of(() -> BriefReader.read(briefFile));
    Optional<ReadMeasurements> measured =
        readings.of(() -> MeasurementsReader.read(measurementsFile, spec.map(ReadSpec::spec)));
    if (spec.isPresent() && brief.isPresent()) {
      requireSameStacks(spec.orElseThrow().spec(), brief.orElseThrow(), readings);
    }
    readings.end();
    ReadSpec read = spec.orElseThrow();
    ReadBrief held = brief.orElseThrow();
    ReadMeasurements samples = measured.orElseThrow();
    WooferFit.require(List.of(held.brief().woofer()), read.spec());
    run.done("read");
    if (!options.documentAlone()) {
      DesignReport.requireFonts(); // before the ledger gets its round
    }
    Optional<LedgerStep> project = ledgerStep(held, samples, run);
    try (Workers workers = new Workers(threads)) {
      SampleOutcome outcome = judge(read, held.brief(), samples, locked, project, workers, run);
      run.done("fit and judge");
      project.ifPresent(step -> step.record(outcome));
      RunInfo info = new RunInfo(samples.digest(), 0, ProgramVersion.text());
      byte[] json =
          SampleJson.of(outcome, read.digest(), held.digest(), samples.digest(), info.version());
      if (options.documentAlone()) {
        run.show(json);
        return 0;
      }
      Path folder = options.folderFor(measurementsFile, "-sample");
      run.write(
          folder,
          samples.fileName(),
          info,
          results -> {
            results.add("sample.json", json);
            results.add("sample.csv", SampleCsv.of(outcome));
            options.draw(SampleReport.parts(read.spec(), outcome, info), workers, results);
            return CliRun.Made.of(
                json,
                SampleReport.terminal(
                    read.spec(), outcome, info, folder.toString(), options.colour()));
          });
    }
    return 0;
  }

  private SampleOutcome judge(
      ReadSpec read,
      SampleBrief brief,
      ReadMeasurements samples,
      Set<Lever> locked,
      Optional<LedgerStep> project,
      Workers workers,
      CliRun run) {
    Woofer woofer = brief.woofer();
    SystemScorer scorer =
        new ScorerStep(read.spec(), workers, program.stop(), run.cache(), options.watched())
            .bySize(List.of(woofer), false)
            .of(woofer);
    PanelAir panels =
        PanelAirStep.solve(
            samples.samples(), read.spec(), woofer, workers, program.stop(), options.watched());
    run.done("solve the panels");
    List<String> notes = new ArrayList<>();
    if (!brief.specDigest().equals(read.digest())) {
      notes.add(
          "The brief was made from another state of the spec; windows and parts are the brief's,"
              + " panels and targets the spec's.");
    }
    project.ifPresent(step -> notes.addAll(step.notes()));
    return new SampleJudge(new BriefStacks(scorer, brief), panels)
        .judge(samples.samples(), locked, notes, project.map(LedgerStep::open));
  }

  private Optional<LedgerStep> ledgerStep(ReadBrief held, ReadMeasurements samples, CliRun run) {
    Path folder = ledger;
    Integer number = round;
    if (folder == null) {
      if (number != null) {
        throw new ParameterException(
            command.commandLine(), "--round needs --ledger FOLDER beside it");
      }
      return Optional.empty();
    }
    LedgerStep step =
        LedgerStep.of(
            folder,
            held,
            samples,
            run,
            number == null ? OptionalInt.empty() : OptionalInt.of(number),
            command.commandLine());
    return Optional.of(step);
  }

  private Set<Lever> locked() {
    Set<Lever> locked = EnumSet.noneOf(Lever.class);
    for (String word : locks) {
      locked.add(
          Lever.ofWord(word.strip())
              .orElseThrow(
                  () ->
                      new ParameterException(
                          command.commandLine(),
                          "--lock names \""
                              + word
                              + "\"; allowed: "
                              + Arrays.stream(Lever.values())
                                  .map(Lever::word)
                                  .collect(Collectors.joining(", ")))));
    }
    return locked;
  }

  /** Adds a fault where the brief's stacks are not the spec's. */
  private static void requireSameStacks(DesignSpec spec, ReadBrief brief, Readings readings) {
    List<SampleBrief.StackParts> parts = brief.brief().stacks();
    List<String> names = spec.stacks().stream().map(StackBrief::name).toList();
    List<String> found = parts.stream().map(SampleBrief.StackParts::name).toList();
    if (!names.equals(found)) {
      readings.add(
          fault(
              brief,
              String.join(", ", found),
              "the brief's stacks are not those of the spec",
              String.join(", ", names)));
      return;
    }
    for (int s = 0; s < names.size(); s++) {
      StackBrief stack = spec.stacks().get(s);
      List<Wiring> allowed =
          stack.wiring().map(List::of).orElseGet(() -> Wiring.allOf(stack.pistons().size()));
      if (!allowed.contains(parts.get(s).wiring())) {
        readings.add(
            fault(
                brief,
                parts.get(s).wiring().inWords(),
                "stack " + stack.name() + " of the spec cannot be wired so",
                allowed.stream().map(Wiring::inWords).collect(Collectors.joining(", "))));
      }
    }
  }

  private static InputFault fault(ReadBrief brief, String value, String problem, String allowed) {
    return new InputFault(
        brief.fileName(),
        0,
        "stacks",
        value,
        problem,
        allowed,
        "give the spec that the brief was made from");
  }
}
