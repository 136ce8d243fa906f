package nullplane.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.io.ComparisonJson;
import nullplane.io.NearestKey;
import nullplane.io.ReadSpec;
import nullplane.io.ReadWoofer;
import nullplane.io.SpecReader;
import nullplane.io.WooferFiles;
import nullplane.judging.Comparison;
import nullplane.report.ComparisonReport;
import nullplane.report.ComparisonSummary;
import nullplane.report.RunInfo;
import nullplane.scoring.ScorersBySize;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Shows why two woofers behave differently on a spec. */
@Command(
    name = "compare",
    header = "Shows why two woofers differ on the same panels.",
    description = {
      "Shows why two woofers behave differently on the same panels: level, loudest level, impedance,"
          + " excursion and decay one over the other, and which parameter makes how many decibels at"
          + " which frequency. The shares add up to the whole difference.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "A woofer in a table is named by the file, a # and its name: catalogue.csv#NAME."
    })
final class CompareCommand implements Callable<Integer> {
  /** Woofers of a table that a message names. */
  private static final int MOST_NAMED = 10;

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
      paramLabel = "WOOFER_A",
      description = "The first woofer: a YAML file, or TABLE.csv#NAME.")
  private String first;

  @Parameters(
      index = "2",
      paramLabel = "WOOFER_B",
      description = "The second woofer: a YAML file, or TABLE.csv#NAME.")
  private String second;

  @Override
  public Integer call() {
    CliRun run = new CliRun(command, options);
    ReadSpec read = SpecReader.read(specFile);
    Woofer a = woofer(first);
    Woofer b = woofer(second);
    boolean alike = b.name().equals(a.name());
    Woofer one = alike ? a.withName(a.name() + " (first)") : a;
    Woofer other = alike ? b.withName(b.name() + " (second)") : b;
    WooferFit.require(List.of(one, other), read.spec());
    Path folder = options.folderFor(specFile, "-compared");
    RunInfo info = new RunInfo(read.digest(), 0, ProgramVersion.text());
    try (Workers workers = new Workers(options.threads())) {
      run.write(
          folder,
          read.fileName(),
          info,
          results -> {
            run.done("read");
            ScorersBySize scorers =
                new ScorerStep(read.spec(), workers, program.stop(), run.cache(), options.watched())
                    .bySize(List.of(one, other), true);
            run.done("solve the panels");
            Comparison comparison = Comparison.of(one, other, scorers);
            run.done("compare");
            byte[] json = ComparisonJson.of(read, comparison, info.version());
            results.add("comparison.json", json);
            options.draw(ComparisonReport.parts(read.spec(), comparison, info), workers, results);
            return CliRun.Made.of(
                json,
                ComparisonSummary.of(
                    read.spec(), comparison, info, folder.toString(), options.colour()));
          });
    }
    return 0;
  }

  /** Reads a woofer from a file of its own, or the named one of a table. */
  private static Woofer woofer(String place) {
    int mark = place.lastIndexOf('#');
    boolean named = mark > 0 && place.substring(0, mark).toLowerCase(Locale.ROOT).endsWith(".csv");
    Path file = Path.of(named ? place.substring(0, mark) : place);
    List<ReadWoofer> all = WooferFiles.readEach(file).woofers();
    String name = named ? place.substring(mark + 1) : "";
    List<String> names = new ArrayList<>();
    for (ReadWoofer read : all) {
      if ((all.size() == 1 && !named) || read.woofer().name().equals(name)) {
        return read.woofer();
      }
      names.add(read.woofer().name());
    }
    String near = NearestKey.of(name, names).orElse(names.get(0));
    throw new InvalidInputException(
        List.of(
            new InputFault(
                file.toString(),
                0,
                "",
                name,
                named ? "the table holds no woofer of this name" : "there are several woofers here",
                String.join(", ", names.subList(0, Math.min(MOST_NAMED, names.size())))
                    + (names.size() > MOST_NAMED ? " and others" : ""),
                "write \"" + file + "#" + near + "\"")));
  }
}
