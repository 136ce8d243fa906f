package nullplane.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import nullplane.acoustics.Accuracy;
import nullplane.io.AnglePair;
import nullplane.io.ChosenPoints;
import nullplane.io.PanelCsv;
import nullplane.io.PanelJson;
import nullplane.io.ReadSpec;
import nullplane.io.SpecReader;
import nullplane.report.PanelReport;
import nullplane.report.PanelSummary;
import nullplane.report.RunInfo;
import nullplane.scoring.PanelStudy;
import nullplane.scoring.StudyAxis;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Shows what a spec's panels do to its woofers and to the sound, whatever woofer is in them. */
@Command(
    name = "panel",
    header = "Shows the panels alone, whatever woofer is in them.",
    description = {
      "Shows the panels alone, whatever woofer sits in them: the air that moves with the cones, the"
          + " way round the panel, the response on and off the axis, the floor. Writes panel.json,"
          + " tables and pictures with an index page.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "The folder is results/NAME-panel unless --out says otherwise. With --json and without --out,"
          + " only the document is made: no folder, no pictures."
    })
final class PanelCommand implements Callable<Integer> {
  private static final String USUAL_ANGLES = "0/0, 30/0, 60/0, 0/30";

  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(
      paramLabel = "SPEC",
      description = "The panel system, a YAML file; starter writes one.")
  private Path specFile;

  @Option(
      names = "--frequencies",
      paramLabel = "LIST",
      description =
          "Frequencies of panel.json, such as \"31.5 Hz, 63 Hz\". Default: the exact third-octave"
              + " midbands from 20 Hz to 1 kHz.")
  private @Nullable String frequencies;

  @Option(
      names = "--angles",
      paramLabel = "LIST",
      description =
          "Far-field directions of panel.json, horizontal/vertical in degrees, to the listener's"
              + " right and upwards. Default: \"0/0, 30/0, 60/0, 0/30\".")
  private String angles = USUAL_ANGLES;

  @Option(
      names = "--accuracy",
      paramLabel = "SHARE",
      description =
          "Estimated error allowed, of the largest impedance: 0.03 %% to 3 %%; of the pressures in"
              + " proportion, 0.03 dB at the default of 0.3 %%.")
  private String accuracy = "0.3 %";

  /** What one run works on. */
  private record Work(
      ReadSpec read, List<Double> frequenciesHz, List<AnglePair> angles, Accuracy accuracy) {}

  @Override
  public Integer call() {
    int threads = options.threads();
    CliRun run = new CliRun(command, options);
    Work work = work();
    StopSignal stop = program.stop();
    try (Workers workers = new Workers(threads)) {
      if (options.documentAlone()) {
        run.show(json(work, solve(work, work.frequenciesHz(), workers, stop)));
      } else {
        writeFolder(work, run, workers, stop);
      }
    }
    return 0;
  }

  /** Reads everything the user gave, and tells all faults of it at once. */
  private Work work() {
    Readings readings = new Readings();
    Optional<List<Double>> chosen =
        readings.of(
            () ->
                frequencies == null
                    ? StudyAxis.thirdOctaves().stream().boxed().toList()
                    : ChosenPoints.frequencies(frequencies, "--frequencies"));
    Optional<List<AnglePair>> directions =
        readings.of(() -> ChosenPoints.angles(angles, "--angles"));
    Optional<Accuracy> wanted = readings.of(() -> ChosenPoints.accuracy(accuracy, "--accuracy"));
    Optional<ReadSpec> read = readings.of(() -> SpecReader.read(specFile));
    readings.end();
    return new Work(
        read.orElseThrow(), chosen.orElseThrow(), directions.orElseThrow(), wanted.orElseThrow());
  }

  private void writeFolder(Work work, CliRun run, Workers workers, StopSignal stop) {
    Path folder = options.folderFor(specFile, "-panel");
    ReadSpec read = work.read();
    RunInfo info = new RunInfo(read.digest(), 0, ProgramVersion.text());
    run.write(
        folder,
        read.fileName(),
        info,
        results -> {
          run.done("read the spec");
          TreeSet<Double> all = new TreeSet<>(work.frequenciesHz());
          StudyAxis.pictures().stream().forEach(all::add);
          List<PanelStudy> studies = solve(work, List.copyOf(all), workers, stop);
          run.done("solve the panels");
          byte[] json = json(work, studies);
          results.add("panel.json", json);
          for (int i = 0; i < studies.size(); i++) {
            String stack = PanelReport.folder(i);
            results.add(stack + "figures.csv", PanelCsv.figures(studies.get(i)));
            results.add(stack + "impedance.csv", PanelCsv.impedance(studies.get(i)));
            results.add(stack + "directivity.csv", PanelCsv.directivity(studies.get(i)));
          }
          options.draw(PanelReport.parts(read.spec(), studies, info), workers, results);
          return CliRun.Made.of(
              json,
              PanelSummary.of(read.spec(), studies, info, folder.toString(), options.colour()),
              0,
              List.of(
                  String.format(
                      Locale.ROOT,
                      "%d solutions and their pictures in %.1f s",
                      PanelStudyStep.solutions(
                          read.spec(), studies.get(0).response().frequencyHz()),
                      run.seconds())));
        });
  }

  private List<PanelStudy> solve(
      Work work, List<Double> frequenciesHz, Workers workers, StopSignal stop) {
    Curve axis =
        Curve.of(frequenciesHz.stream().mapToDouble(hertz -> hertz).sorted().distinct().toArray());
    long steps = PanelStudyStep.solutions(work.read().spec(), axis);
    try (ProgressLine progress = options.progress("panels", steps)) {
      return PanelStudyStep.solve(
          work.read().spec(),
          axis,
          work.angles().stream().map(AnglePair::direction).toList(),
          Air.standard(),
          work.accuracy(),
          workers,
          progress,
          stop);
    }
  }

  private static byte[] json(Work work, List<PanelStudy> studies) {
    return PanelJson.of(
        work.read(), studies, work.frequenciesHz(), work.angles(), ProgramVersion.text());
  }
}
