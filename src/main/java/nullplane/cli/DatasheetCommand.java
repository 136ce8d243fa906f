package nullplane.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import nullplane.driver.Datasheet;
import nullplane.driver.LoadedResonance;
import nullplane.driver.Woofer;
import nullplane.io.DatasheetJson;
import nullplane.io.ReadDatasheet;
import nullplane.io.ReadSpec;
import nullplane.io.SpecReader;
import nullplane.io.WooferReader;
import nullplane.report.DatasheetReport;
import nullplane.report.RunInfo;
import nullplane.units.Air;
import nullplane.units.FiniteText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Completes and cross-checks one woofer's data. */
@Command(
    name = "datasheet",
    header = "Completes and cross-checks one woofer's data.",
    description = {
      "Completes one woofer's data from whatever it states, says which figures contradict the rest"
          + " and why, and shows the woofer in free air, in an infinite baffle and, with --panel,"
          + " on each stack's panel. Writes datasheet.json and a page.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "The folder is results/NAME-datasheet unless --out says otherwise. With --json and without"
          + " --out, only the document is made."
    })
final class DatasheetCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @ParentCommand private Nullplane program;

  @Mixin private RunOptions options = new RunOptions();

  @Parameters(paramLabel = "WOOFER", description = "The woofer, a YAML file.")
  private Path wooferFile;

  @Option(
      names = "--panel",
      paramLabel = "SPEC",
      description = "A panel system, a YAML file: adds the woofer on each of its panels.")
  private @Nullable Path specFile;

  @Override
  public Integer call() {
    int threads = options.threads();
    CliRun run = new CliRun(command, options);
    Readings readings = new Readings();
    Optional<ReadDatasheet> read = readings.of(() -> WooferReader.readDatasheet(wooferFile));
    Path panels = specFile;
    Optional<ReadSpec> spec =
        panels == null ? Optional.empty() : readings.of(() -> SpecReader.read(panels));
    readings.end();
    run.done("read the woofer");
    ReadDatasheet woofer = read.orElseThrow();
    Datasheet sheet = woofer.sheet();
    List<String> notes = new ArrayList<>();
    if (spec.isPresent()) {
      try (Workers workers = new Workers(threads)) {
        sheet = onPanels(sheet, spec.orElseThrow(), workers, notes);
      }
      run.done("solve the panels");
    }
    byte[] json = DatasheetJson.of(sheet, woofer.digest(), ProgramVersion.text());
    if (options.documentAlone()) {
      run.show(json);
    } else {
      write(woofer, sheet, notes, json, run);
    }
    return 0;
  }

  private Datasheet onPanels(Datasheet sheet, ReadSpec read, Workers workers, List<String> notes) {
    Optional<Woofer> woofer = sheet.small();
    if (woofer.isEmpty()) {
      return sheet;
    }
    List<LoadedResonance> loaded =
        PanelLoadStep.solve(
            woofer.orElseThrow(), read, Air.standard(), workers, program.stop(), options.watched());
    Datasheet more = sheet;
    for (int s = 0; s < loaded.size(); s++) {
      more = more.with("panel: " + read.spec().stacks().get(s).name(), loaded.get(s));
    }
    notes.add(
        "On a panel all woofers of the stack move together; the air is that of the solved panel"
            + " at the resonance found there, its loss by radiation is left out.");
    double own = 2e3 * woofer.orElseThrow().radiusM();
    double meant = 2e3 * read.spec().stacks().get(0).pistons().get(0).radiusM();
    if (Math.abs(own / meant - 1) > 0.005) {
      notes.add(
          FiniteText.of(
              "The panels were solved for this woofer's piston of %.0f mm; the spec is for %.0f mm.",
              own, meant));
    }
    return more;
  }

  private void write(
      ReadDatasheet woofer, Datasheet sheet, List<String> notes, byte[] json, CliRun run) {
    Path folder = options.folderFor(wooferFile, "-datasheet");
    RunInfo info = new RunInfo(woofer.digest(), 0, ProgramVersion.text());
    run.write(
        folder,
        woofer.fileName(),
        info,
        results -> {
          results.add("datasheet.json", json);
          DatasheetReport.pages(sheet, info, notes).forEach(results::add);
          return CliRun.Made.of(
              json,
              DatasheetReport.terminal(sheet, info, notes, folder.toString(), options.colour()));
        });
  }
}
