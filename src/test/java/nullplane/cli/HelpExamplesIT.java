package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every example line is taken out of the help and run from the root of the sources. Results go to a
 * temporary folder, and searches are cut short.
 */
class HelpExamplesIT {
  private static final String JAR = "java -jar target/nullplane.jar ";
  private static final Path ROOT = Path.of(System.getProperty("basedir", "."));
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private static final Map<String, ProgramRun.Ended> DONE = new HashMap<>();

  @TempDir private static Path folder;

  static Stream<String> commands() {
    return HelpTextTest.commands().filter(command -> !command.equals("help"));
  }

  /** Returns the command lines that stand below "Example:", each in one piece. */
  private static List<String> examples(String command) {
    CommandRun help =
        command.equals("nullplane") ? CommandRun.of("--help") : CommandRun.of(command, "--help");
    List<String> lines = help.outLines();
    List<String> found = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String text : lines.subList(lines.indexOf("Example:") + 1, lines.size())) {
      if (text.isBlank()) {
        return found;
      }
      line.append(text.strip().replaceAll("\\\\$", ""));
      if (!text.endsWith("\\")) {
        found.add(line.toString());
        line.setLength(0);
      }
    }
    throw new AssertionError("no blank line after the example of " + command);
  }

  private List<String> words(String line, int run) {
    assertThat(line).startsWith(JAR);
    List<String> words = new ArrayList<>();
    WORD.matcher(line.substring(JAR.length()))
        .results()
        .map(word -> word.group(1) == null ? word.group(2) : word.group(1))
        .map(word -> word.startsWith("results/") ? folder.resolve(word).toString() : word)
        .forEach(words::add);
    String command = words.get(0);
    if (!List.of("starter", "completion").contains(command)) {
      words.addAll(List.of("--out", folder.resolve(command + "-" + run).toString()));
    }
    if (List.of("design", "judge").contains(command) && !words.contains("--evaluations")) {
      words.addAll(List.of("--evaluations", "1000"));
    }
    return words;
  }

  /** Runs a line; one that stands in two helps is run once. */
  private ProgramRun.Ended run(String line, int run) throws Exception {
    ProgramRun.Ended known = DONE.get(line);
    if (known != null) {
      return known;
    }
    String[] words = words(line, run).toArray(String[]::new);
    ProgramRun.Ended ended = ProgramRun.start(ROOT, ProgramRun.QUICK, words).end();
    DONE.put(line, ended);
    return ended;
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyExampleRunsAndPrintsWhatTheHelpShows(String command) throws Exception {
    List<String> examples = examples(command);
    assertThat(examples).isNotEmpty();
    ProgramRun.Ended ran = null;
    for (int i = 0; i < examples.size(); i++) {
      ran = run(examples.get(i), i);
      assertThat(ran.exitCode()).as("%s: %s", examples.get(i), ran.err()).isZero();
      if (!command.equals("completion")) {
        assertThat(Stream.concat(ran.out().lines(), ran.err().lines()))
            .filteredOn(line -> !line.contains(folder.toString()))
            .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
      }
    }
    String last = ran.out().replace(folder.resolve("results").toString(), "results");
    assertThat(last.lines()).containsAll(WorkedExample.of(command).orElseThrow().prints());
    if (command.equals("starter")) {
      assertThat(last).contains("  " + JAR + "design results/my-hall/spec.yaml");
    }
  }
}
