package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The runnable jar as a user starts it: results, exit codes, both outputs, and Ctrl-C. */
class DesignCommandIT {
  /** The budget of the runs; the least that is allowed. */
  private static final String BUDGET = "1000";

  private static final List<String> SHEET =
      List.of(
          "excursion.png",
          "excursion.svg",
          "impedance.png",
          "impedance.svg",
          "level.png",
          "level.svg",
          "loudest.png",
          "loudest.svg",
          "sheet.html",
          "sheet.md",
          "window.svg");

  /** Endings of the files that a maker gets. */
  private static final List<String> MAKER =
      List.of(".csv", ".html", ".json", ".xlsx", "-a4.pdf", "-letter.pdf");

  /** The run that others are compared with, made once: two threads, default folder. */
  private static ProgramRun.Ended good;

  @TempDir private static Path goodFolder;
  @TempDir private static Path logFolder;
  @TempDir private Path folder;

  @BeforeAll
  static void runOnce() throws Exception {
    Files.writeString(goodFolder.resolve("reading-room.yaml"), CliSpecs.READING_ROOM);
    good =
        ProgramRun.start(
                goodFolder,
                Stream.concat(
                        ProgramRun.QUICK.stream(),
                        Stream.of("-Xlog:class+load:file=" + logFolder.resolve("classes.txt")))
                    .toList(),
                "design",
                "reading-room.yaml",
                "--evaluations",
                BUDGET,
                "--threads",
                "2")
            .end();
  }

  @BeforeEach
  void writeSpecs() throws IOException {
    Files.writeString(folder.resolve("reading-room.yaml"), CliSpecs.READING_ROOM);
    Files.writeString(folder.resolve("one-woofer.yaml"), CliSpecs.ONE_WOOFER);
    Files.writeString(folder.resolve("wall.yaml"), CliSpecs.WALL);
  }

  private ProgramRun.Ended run(String... words) throws Exception {
    return ProgramRun.start(folder, ProgramRun.QUICK, words).end();
  }

  private static Path goodRun() {
    return goodFolder.resolve("results").resolve("reading-room");
  }

  private static Set<String> filesIn(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(Files::isRegularFile)
          .map(file -> root.relativize(file).toString().replace('\\', '/'))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  private static Set<String> namesIn(Path root) throws IOException {
    try (Stream<Path> all = Files.list(root)) {
      return all.map(file -> file.getFileName().toString()).collect(Collectors.toSet());
    }
  }

  private static JsonNode json(Path file) throws IOException {
    return new ObjectMapper().readTree(file.toFile());
  }

  private void assertNothingWritten() throws IOException {
    assertThat(namesIn(folder))
        .containsExactlyInAnyOrder("reading-room.yaml", "one-woofer.yaml", "wall.yaml");
  }

  /** Checks that a folder holds the files of a run with so many sheets, each with its digest. */
  private static void assertWhole(Path run, int sheets) throws Exception {
    Set<String> expected =
        new TreeSet<>(
            Set.of(
                "index.html",
                "index.md",
                "manifest.json",
                "ranking.csv",
                "ranking.json",
                "front.csv"));
    for (String stem :
        List.of(
            "trade-output-margin",
            "trade-correction",
            "trade-material",
            "trade-yield",
            "convergence")) {
      expected.add(stem + ".png");
      expected.add(stem + ".svg");
    }
    for (int rank = 1; rank <= sheets; rank++) {
      for (String name : SHEET) {
        expected.add("woofer-" + rank + "/" + name);
      }
      for (String ending : MAKER) {
        expected.add("woofer-" + rank + "/brief-" + rank + ending);
      }
      expected.add("woofer-" + rank + "/swap-list-" + rank + ".csv");
      expected.add("woofer-" + rank + "/owner-kit-" + rank + ".csv");
    }
    assertThat(filesIn(run)).isEqualTo(expected);
    Set<String> listed = new TreeSet<>();
    for (JsonNode file : json(run.resolve("manifest.json")).get("files")) {
      String name = file.get("name").asText();
      byte[] bytes = Files.readAllBytes(run.resolve(name));
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      assertThat(file.get("sha256").asText()).as(name).isEqualTo(HexFormat.of().formatHex(digest));
      assertThat(file.get("bytes").asLong()).as(name).isEqualTo(bytes.length).isPositive();
      listed.add(name);
    }
    expected.remove("manifest.json");
    assertThat(listed).isEqualTo(expected);
    assertThat(json(run.resolve("ranking.json")).get("ranked")).hasSize(sheets);
  }

  /**
   * Without a socket there is no network (Java SE 17: the classes of java.net and java.nio). That
   * the JDK's fonts ask for the machine's own name is no part of it.
   */
  @Test
  void aRunOpensNoSocket() throws Exception {
    String loaded = Files.readString(logFolder.resolve("classes.txt"));
    assertThat(loaded).contains("nullplane.cli.DesignCommand ");
    assertThat(loaded.lines())
        .noneMatch(
            line ->
                line.matches(
                    ".* (java\\.net\\.\\w*Socket|java\\.net\\.http\\..*|sun\\.nio\\.ch\\.\\w*"
                        + "(Socket|Datagram)\\w*|sun\\.net\\.www\\.protocol\\.https?\\..*) source.*"));
  }

  @Test
  void aRunGivesAWholeFolderAndNothingBesideIt() throws Exception {
    assertThat(good.exitCode()).isZero();
    assertWhole(goodRun(), 5);
    assertThat(namesIn(goodFolder)).containsExactlyInAnyOrder("reading-room.yaml", "results");
    assertThat(namesIn(goodFolder.resolve("results"))).containsExactly("reading-room");
  }

  @Test
  void theManifestSaysHowToRepeatTheRun() throws Exception {
    JsonNode manifest = json(goodRun().resolve("manifest.json"));
    byte[] spec = Files.readAllBytes(goodFolder.resolve("reading-room.yaml"));
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(spec);
    assertThat(manifest.get("specFile").asText()).isEqualTo("reading-room.yaml");
    assertThat(manifest.get("specSha256").asText()).isEqualTo(HexFormat.of().formatHex(digest));
    assertThat(manifest.get("seed").asLong()).isEqualTo(1);
    assertThat(manifest.get("evaluations").asLong()).isGreaterThanOrEqualTo(1000);
  }

  @Test
  void theSummaryIsPlainTextThatFitsTheTerminal() {
    List<String> lines = good.out().lines().toList();
    String last = lines.get(lines.size() - 1);
    assertThat(last).isEqualTo("Files: " + Path.of("results", "reading-room"));
    assertThat(lines).allMatch(line -> line.length() <= 80);
    assertThat(good.out()).doesNotContain("\u001b").contains("Woofer 1").contains("seed 1");
    assertThat(good.err())
        .matches(
            "nullplane: \\d+ woofers scored in \\d+\\.\\d s\\Rnullplane: budget of 1000 .*\\R");
    assertThat(good.err().lines()).allMatch(line -> line.length() <= 80);
  }

  /** Started as a user does, with the full Java compiler. */
  @Test
  void jsonIsTheRankingAloneAndTheSameOnOneThread() throws Exception {
    ProgramRun.Ended ran =
        ProgramRun.start(
                folder,
                List.of(),
                "design",
                "reading-room.yaml",
                "--json",
                "--threads",
                "1",
                "--evaluations",
                BUDGET,
                "--out",
                "run")
            .end();
    byte[] ranking = Files.readAllBytes(folder.resolve("run").resolve("ranking.json"));
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.outBytes()).isEqualTo(ranking);
    assertThat(ran.err().lines()).hasSize(2);
    assertThat(ran.err()).doesNotContain("\r").doesNotContain("%");
    assertThat(ranking).isEqualTo(Files.readAllBytes(goodRun().resolve("ranking.json")));
  }

  @Test
  void fourThreadsGiveTheSameBytes() throws Exception {
    ProgramRun.Ended ran =
        run("design", "reading-room.yaml", "--threads", "4", "--evaluations", BUDGET, "--out", "r");
    assertThat(ran.exitCode()).isZero();
    assertThat(folder.resolve("r").resolve("ranking.json"))
        .hasSameBinaryContentAs(goodRun().resolve("ranking.json"));
  }

  @Test
  void anotherSeedGivesAnotherRanking() throws Exception {
    ProgramRun.Ended ran =
        run("design", "reading-room.yaml", "--seed", "2", "--evaluations", BUDGET, "--out", "r");
    assertThat(ran.exitCode()).isZero();
    JsonNode other = json(folder.resolve("r").resolve("ranking.json"));
    assertThat(other.get("seed").asLong()).isEqualTo(2);
    assertThat(other.get("ranked"))
        .isNotEqualTo(json(goodRun().resolve("ranking.json")).get("ranked"));
  }

  /** Five sheets were there; one is left, and no file of the earlier run. */
  @Test
  void anEarlierRunIsReplacedWhole() throws Exception {
    Path target = folder.resolve("run");
    try (Stream<Path> all = Files.walk(goodRun())) {
      for (Path from : all.toList()) {
        Files.copy(from, target.resolve(goodRun().relativize(from).toString()));
      }
    }
    assertWhole(target, 5);
    ProgramRun.Ended ran =
        run("design", "one-woofer.yaml", "--evaluations", BUDGET, "--out", "run");
    assertThat(ran.exitCode()).isZero();
    assertWhole(target, 1);
    assertThat(namesIn(folder))
        .containsExactlyInAnyOrder("reading-room.yaml", "one-woofer.yaml", "wall.yaml", "run");
  }

  /** The signal may come before the search has begun on a busy machine; then wait longer. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void ctrlCInTheSearchWritesTheBestSoFar() throws Exception {
    ProgramRun.Ended ended = null;
    for (long waitMs = 3000; waitMs <= 24_000; waitMs *= 2) {
      ProgramRun run =
          ProgramRun.start(
              folder,
              ProgramRun.QUICK,
              "design",
              "one-woofer.yaml",
              "--evaluations",
              "5000000",
              "--out",
              "r");
      Thread.sleep(waitMs);
      assertThat(run.isAlive()).isTrue();
      run.interrupt();
      long start = System.nanoTime();
      ended = run.end();
      assertThat((System.nanoTime() - start) / 1e9).as("seconds to the end").isLessThan(15);
      if (!ended.err().contains("the panels were being solved")) {
        break;
      }
      assertNothingWritten();
    }
    assertThat(ended.err()).contains("woofers scored").contains("stopped on request");
    assertThat(ended.exitCode()).isEqualTo(130);
    assertWhole(folder.resolve("r"), 1);
    assertThat(json(folder.resolve("r").resolve("ranking.json")).get("stopReason").asText())
        .startsWith("stopped on request after ")
        .endsWith(" evaluations, with the best so far");
    assertThat(ended.out()).contains("stopped on request").endsWith("Files: r\n");
    assertThat(namesIn(folder))
        .containsExactlyInAnyOrder("reading-room.yaml", "one-woofer.yaml", "wall.yaml", "r");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void ctrlCWhileThePanelsAreSolvedWritesNothing() throws Exception {
    ProgramRun run =
        ProgramRun.start(folder, ProgramRun.QUICK, "design", "wall.yaml", "--out", "some/run");
    while (run.isAlive() && !Files.exists(folder.resolve("some"))) {
      Thread.sleep(20);
    }
    Thread.sleep(500);
    run.interrupt();
    long start = System.nanoTime();
    ProgramRun.Ended ended = run.end();
    assertThat((System.nanoTime() - start) / 1e9).as("seconds to the end").isLessThan(15);
    assertThat(ended.err())
        .isEqualTo("nullplane: stopped while the panels were being solved; nothing was written\n");
    assertThat(ended.out()).isEmpty();
    assertThat(ended.exitCode()).isEqualTo(130);
    assertNothingWritten();
  }

  @Test
  void tooLittleMemoryIsSaidInALine() throws Exception {
    Path large = Files.writeString(folder.resolve("large.yaml"), CliSpecs.LARGE);
    ProgramRun.Ended ended =
        ProgramRun.start(
                folder, List.of("-Xmx24m"), "design", "large.yaml", "--threads", "2", "--out", "r")
            .end();
    Files.delete(large);
    assertThat(ended.err()).startsWith("nullplane: the memory is not enough; give more");
    assertThat(ended.err().lines()).hasSize(2);
    assertThat(ended.exitCode()).isEqualTo(70);
    assertNothingWritten();
  }

  /** A full disk behind standard output. */
  @Test
  void standardOutputThatCannotBeWrittenIsAFault() throws Exception {
    assumeThat(Path.of("/dev/full")).exists();
    ProgramRun.Ended ended =
        ProgramRun.startInto(Path.of("/dev/full"), folder, ProgramRun.QUICK, "design", "--help")
            .end();
    assertThat(ended.err())
        .isEqualTo("nullplane: cannot write standard output; is the disk full?\n");
    assertThat(ended.exitCode()).isEqualTo(5);
  }

  /** The whole process, the start of Java included. */
  @Test
  void faultsOfASpecReachTheShell() throws Exception {
    Files.write(folder.resolve("wall.yaml"), new byte[10_000_000]);
    long start = System.nanoTime();
    ProgramRun.Ended ended = run("design", "wall.yaml");
    assertThat((System.nanoTime() - start) / 1e9).as("seconds").isLessThan(2);
    assertThat(ended.exitCode()).isEqualTo(2);
    assertThat(ended.err()).startsWith("nullplane: wall.yaml: the file is too large");
    assertThat(ended.out()).isEmpty();
    assertNothingWritten();
  }
}
