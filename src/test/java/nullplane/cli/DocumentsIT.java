package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every command line that a document holds is run, in a folder that holds the specs, as a reader's
 * does. It must end with the exit code that stands beside it ("# exit code 2"), or with 0. A block
 * under "
 * <!-- output 1-9 -->
 * " shows those lines of the output of the line before it; with -Ddocuments.write=true the blocks
 * are written anew. The pages of the commands list every file that their lines write, and no other.
 *
 * <p>Searches are cut short, unless the line states its evaluations. A line that stands in several
 * documents is run once, in a folder of its own; lines that name a ledger share one folder, in
 * their order. Solved panels are shared.
 */
class DocumentsIT {
  private static final Path COMMAND_PAGES = DocumentText.ROOT.resolve("src/site/markdown/commands");

  @TempDir private static Path scratch;

  /** What each line gave. */
  private static final Map<String, Ran> RAN = new LinkedHashMap<>();

  /** How a command line ended, and the folder it was run in. */
  private record Ran(ProgramRun.Ended ended, Path folder) {}

  @BeforeAll
  static void runAll() throws Exception {
    Set<String> all = new LinkedHashSet<>();
    Set<String> shown = new HashSet<>();
    for (Path document : documentsThatRun().toList()) {
      DocumentText text = DocumentText.read(document);
      text.lines().stream().filter(DocumentsIT::runnable).forEach(all::add);
      text.excerpts().forEach(excerpt -> shown.add(text.lines().get(excerpt.command())));
    }
    List<List<String>> tasks = new ArrayList<>();
    List<String> withLedger = all.stream().filter(line -> line.contains("ledger")).toList();
    tasks.add(withLedger);
    all.stream().filter(line -> !withLedger.contains(line)).map(List::of).forEach(tasks::add);
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      List<Future<Map<String, Ran>>> futures = new ArrayList<>();
      for (List<String> task : tasks) {
        Path folder = scratch.resolve(String.valueOf(futures.size()));
        futures.add(two.submit(() -> runIn(folder, task, shown)));
      }
      for (Future<Map<String, Ran>> future : futures) {
        RAN.putAll(future.get());
      }
    } finally {
      two.shutdownNow();
    }
  }

  static Stream<Path> documentsThatRun() throws IOException {
    List<Path> documents = new ArrayList<>();
    for (Path document : DocumentText.documents()) {
      if (DocumentText.read(document).lines().stream().anyMatch(DocumentsIT::runnable)) {
        documents.add(document);
      }
    }
    return documents.stream();
  }

  private static boolean runnable(String line) {
    return DocumentText.runsTheProgram(line) && !DocumentText.hasPlaceholders(line);
  }

  /** Runs lines one after the other in a folder with the specs, as after a build. */
  private static Map<String, Ran> runIn(Path folder, List<String> lines, Set<String> shown)
      throws Exception {
    copy(DocumentText.ROOT.resolve("specs"), folder.resolve("specs"));
    Map<String, Ran> ran = new LinkedHashMap<>();
    for (String line : lines) {
      List<String> words = new ArrayList<>(DocumentText.arguments(line));
      if (!shown.contains(line) && !words.contains("--evaluations")) {
        if (words.contains("design")) {
          words.addAll(List.of("--evaluations", "1000"));
        } else if (words.contains("judge")) {
          words.addAll(List.of("--evaluations", "0"));
        }
      }
      ran.put(
          line,
          new Ran(
              ProgramRun.start(folder, ProgramRun.QUICK, words.toArray(String[]::new)).end(),
              folder));
    }
    return ran;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path file : all.toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(target);
        } else {
          Files.copy(file, target);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("documentsThatRun")
  void everyLineEndsAsTheDocumentSays(Path document) throws IOException {
    for (String line : DocumentText.read(document).lines()) {
      if (runnable(line)) {
        ProgramRun.Ended ended = RAN.get(line).ended();
        assertThat(ended.exitCode())
            .as("%s: %s%n%s", document, line, ended.err())
            .isEqualTo(DocumentText.exitCode(line));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("documentsThatRun")
  void outputThatIsShownIsThatOfTheProgram(Path document) throws IOException {
    DocumentText text = DocumentText.read(document);
    List<String> written = new ArrayList<>(Files.readAllLines(document));
    for (int i = text.excerpts().size() - 1; i >= 0; i--) {
      DocumentText.Excerpt excerpt = text.excerpts().get(i);
      String line = text.lines().get(excerpt.command());
      ProgramRun.Ended ended = RAN.get(line).ended();
      // what goes wrong is told on standard error
      String out = ended.exitCode() == 0 ? ended.out() : ended.err();
      List<String> whole = out.lines().toList();
      List<String> wanted =
          whole.subList(
              Math.min(excerpt.first() - 1, whole.size()), Math.min(excerpt.last(), whole.size()));
      if (Boolean.getBoolean("documents.write")) {
        List<String> block = written.subList(excerpt.at(), excerpt.at() + excerpt.shown().size());
        block.clear();
        block.addAll(wanted);
        if (excerpt.bits().isPresent()) {
          written.set(
              excerpt.at() - 2,
              "<!-- output %d-%d bits %s -->"
                  .formatted(excerpt.first(), excerpt.last(), DocumentText.bitsHere()));
        }
      } else if (excerpt.bits().isEmpty()
          || excerpt.bits().orElseThrow().equals(DocumentText.bitsHere())) {
        assertThat(excerpt.shown())
            .as("%s: output of %s; to write it anew: -Ddocuments.write=true", document, line)
            .isEqualTo(wanted);
      } else {
        // another machine's search may end at other woofers, but it says the same things
        assertThat(out).as("output of %s", line).contains(wordsOf(excerpt.shown()));
      }
    }
    if (Boolean.getBoolean("documents.write")) {
      Files.write(document, written);
    }
  }

  /** The words of lines without figures, such as the heads of tables. */
  private static List<String> wordsOf(List<String> lines) {
    return Pattern.compile("[A-Za-z]{4,}")
        .matcher(
            lines.stream()
                .filter(line -> line.chars().noneMatch(Character::isDigit))
                .collect(Collectors.joining(" ")))
        .results()
        .map(MatchResult::group)
        .filter(word -> Character.isLowerCase(word.charAt(0)))
        .toList();
  }

  static Stream<Path> commandPages() throws IOException {
    return documentsThatRun().filter(page -> page.startsWith(COMMAND_PAGES));
  }

  /** In file names of a page N stands for any number. */
  @ParameterizedTest
  @MethodSource("commandPages")
  void thePageOfACommandListsTheFilesItWrites(Path page) throws IOException {
    String name = page.getFileName().toString().replace(".md", "");
    Set<String> files = filesOf(name, page);
    Set<String> stated = new LinkedHashSet<>();
    Matcher code =
        Pattern.compile("`([\\w/-]+\\.[a-z]+)`")
            .matcher(section(Files.readString(page), "## Files"));
    while (code.find()) {
      stated.add(code.group(1));
    }
    Set<String> unknown = new LinkedHashSet<>();
    Set<String> unused = new LinkedHashSet<>(stated);
    for (String file : files) {
      List<String> matching =
          stated.stream()
              .filter(pattern -> file.matches(pattern.replace(".", "\\.").replace("N", "\\d+")))
              .toList();
      if (matching.isEmpty()) {
        unknown.add(file);
      }
      unused.removeAll(matching);
    }
    assertThat(unknown).as("files that %s does not list", page).isEmpty();
    assertThat(unused).as("files that %s lists and %s does not write", page, name).isEmpty();
  }

  /**
   * Files of the result folders that the lines with this command name at the end of their output.
   */
  private static Set<String> filesOf(String command, Path page) throws IOException {
    Set<String> files = new LinkedHashSet<>();
    for (String line : DocumentText.read(page).lines()) {
      if (!runnable(line) || !DocumentText.arguments(line).get(0).equals(command)) {
        continue;
      }
      Pattern.compile("(?m)^Wrote (.+)$")
          .matcher(RAN.get(line).ended().out())
          .results()
          .forEach(wrote -> files.add(Path.of(wrote.group(1)).getFileName().toString()));
      Matcher told = Pattern.compile("(?m)^Files: (.+)$").matcher(RAN.get(line).ended().out());
      if (told.find()) {
        Path folder = RAN.get(line).folder().resolve(told.group(1));
        try (Stream<Path> all = Files.walk(folder)) {
          all.filter(Files::isRegularFile)
              .map(file -> folder.relativize(file).toString().replace('\\', '/'))
              .forEach(files::add);
        }
      }
    }
    return files;
  }

  private static String section(String page, String heading) {
    int start = page.indexOf("\n" + heading + "\n");
    assertThat(start).as("a section %s", heading).isPositive();
    int end = page.indexOf("\n## ", start + 1);
    return page.substring(start, end < 0 ? page.length() : end);
  }

  /** If nothing were found in the documents, nothing would be tested. */
  @Test
  void theDocumentsHoldLinesOfEveryCommand() {
    Set<String> commands =
        RAN.keySet().stream()
            .map(line -> DocumentText.arguments(line).get(0))
            .collect(Collectors.toSet());
    assertThat(commands)
        .contains(
            "design",
            "judge",
            "compare",
            "datasheet",
            "panel",
            "sample",
            "rounds",
            "starter",
            "completion",
            "help");
  }
}
