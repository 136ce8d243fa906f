package nullplane.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import nullplane.io.NewFiles;
import nullplane.io.StarterFiles;
import nullplane.io.StarterJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the files that a new project begins with. */
@Command(
    name = "starter",
    header = "Writes a spec to begin with, every key explained.",
    description = {
      "Writes a spec to begin with: a small system that design can run as it stands, with a comment"
          + " for every key that there is. Beside it come an invented woofer, to try judge and"
          + " datasheet with, and an invented main driver's response.",
      ""
    },
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    footer = {
      "",
      "A folder that is there already is kept: files are added to it, and where one of the three"
          + " names is taken, nothing is written."
    })
final class StarterCommand implements Callable<Integer> {
  @Spec private CommandSpec command;

  @Parameters(paramLabel = "FOLDER", description = "Where the files go.")
  private Path folder;

  @Option(
      names = "--units",
      paramLabel = "UNITS",
      description =
          "metric, or inch: panels in inches and feet, the rest as the trade writes it."
              + " Default: metric.")
  private StarterFiles.Units units = StarterFiles.Units.METRIC;

  @Option(
      names = "--json",
      description = "Print one JSON document on standard output and nothing else there.")
  private boolean json;

  @Override
  public Integer call() {
    List<Path> files = NewFiles.write(folder, StarterFiles.in(units));
    String spec = folder.resolve(StarterFiles.SPEC).toString();
    String woofer = folder.resolve(StarterFiles.WOOFER).toString();
    List<String> next =
        List.of(ProgramCall.of("design", spec), ProgramCall.of("judge", spec, "--woofers", woofer));
    PrintWriter out = command.commandLine().getOut();
    if (json) {
      out.print(
          new String(
              StarterJson.of(files, units, next, ProgramVersion.text()), StandardCharsets.UTF_8));
    } else {
      files.forEach(file -> out.println("Wrote " + file));
      out.println();
      out.println("Read the spec and change what you know. Then type, or type at once:");
      next.forEach(line -> out.println("  " + line));
    }
    out.flush();
    return 0;
  }
}
