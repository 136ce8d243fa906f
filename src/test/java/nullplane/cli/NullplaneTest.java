package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Command lines that end before any search: exit code, standard output, standard error. */
class NullplaneTest {
  @TempDir private Path folder;

  private Path spec;
  private Path results;

  @BeforeEach
  void writeSpec() throws IOException {
    spec = Files.writeString(folder.resolve("spec.yaml"), CliSpecs.READING_ROOM);
    results = folder.resolve("results");
  }

  private CommandRun design(Path file) {
    return CommandRun.of("design", file, "--out", results);
  }

  /** Checks that a run was refused with one line, and that it left no trace. */
  private void assertRefused(CommandRun ran, int exitCode, String line) throws IOException {
    assertThat(ran.errLines()).containsExactly("nullplane: " + line);
    assertThat(ran.exitCode()).isEqualTo(exitCode);
    assertThat(ran.out()).isEmpty();
    assertNothingWritten();
  }

  private void assertNothingWritten() throws IOException {
    try (Stream<Path> entries = Files.list(folder)) {
      assertThat(entries.map(p -> p.getFileName().toString()))
          .allMatch(name -> name.endsWith(".yaml"));
    }
  }

  @Test
  void everyFaultOfASpecIsToldAtOnce() throws IOException {
    Path bad =
        Files.writeString(
            folder.resolve("bad.yaml"),
            """
            title: Reading-room panel
            woofer:
              nominal: 300 mm
              effective-diameter: 260 mm
              le: 0.9
              re: -5.6 ohm
              qms: NaN
            stacks:
              - name: pair
                panel: {width: 44 cm, hieght: 110 cm, clearance: 4 cm}
                woofers:
                  - {x: 0 cm, y: -25 cm}
                  - {x: 0 cm, y: -10 cm}
              - name: single
                panel: {width: 44 cm, height: 110 cm}
                woofers:
                  - {x: 30 cm, y: 0 cm}
            listening: {distance: 3 m, height: 1 m}
            target: {level: 76 dB, loudest: 86 dB, low-corner: 40 Hz, upper-corner: 200 Hz}
            amplifier: {voltage: 28 V, lowest-load: 3 ohm}
            """);
    CommandRun ran = design(bad);
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    String at = "nullplane: " + bad + ":";
    assertThat(ran.errLines())
        .containsExactly(
            at
                + "5: woofer.le: the unit is missing (found 0.9); allowed: 0 mH .. 20 mH;"
                + " write 0.9 mH",
            at
                + "6: woofer.re: a resistance below zero has no meaning here (found -5.6 ohm);"
                + " allowed: 0.5 ohm .. 100 ohm; write re: 5.6 ohm",
            at
                + "7: woofer.qms: the number must be finite (found NaN); allowed: 0.2 .. 50;"
                + " write qms: 5.2",
            at
                + "10: stacks[0].panel.hieght: unknown key; allowed: width, height, clearance,"
                + " outline, diameter, mass, base-depth; did you mean height?",
            at
                + "13: stacks[0].woofers[1]: woofers 1 and 2 of stack \"pair\" overlap by 11 cm"
                + " (found x 0 cm, y -10 cm); allowed: centres at least 26 cm apart; move one of"
                + " them",
            at
                + "17: stacks[1].woofers[0]: woofer 1 of stack \"single\" reaches over the panel's"
                + " rim by 21 cm (found x 30 cm, y 0 cm); allowed: its centre at least 13 cm inside"
                + " the rim; move the woofer or enlarge the panel");
    assertNothingWritten();
  }

  @Test
  void anEmptySpecIsRefused() throws IOException {
    Path empty = Files.createFile(folder.resolve("empty.yaml"));
    assertRefused(design(empty), 2, empty + ": the file is empty; start from an example");
  }

  @Test
  void tenMegabytesOfNoiseAreRefusedAtOnce() throws IOException {
    byte[] bytes = new byte[10_000_000];
    new Random(1).nextBytes(bytes);
    Path noise = Files.write(folder.resolve("noise.yaml"), bytes);
    long start = System.nanoTime();
    CommandRun ran = design(noise);
    double seconds = (System.nanoTime() - start) / 1e9;
    assertRefused(
        ran, 2, noise + ": the file is too large; allowed: 1 MiB at most; is this the right file?");
    assertThat(seconds).isLessThan(2);
  }

  /** Noise small enough to be read. */
  @Test
  void noiseIsRefused() throws IOException {
    byte[] bytes = new byte[100_000];
    new Random(1).nextBytes(bytes);
    Path noise = Files.write(folder.resolve("noise.yaml"), bytes);
    CommandRun ran = design(noise);
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.errLines())
        .singleElement()
        .asString()
        .startsWith("nullplane: " + noise + ":1: this is not UTF-8 text");
    assertThat(ran.out()).isEmpty();
    assertNothingWritten();
  }

  @Test
  void aMissingSpecIsRefused() throws IOException {
    Path missing = folder.resolve("missing.yaml");
    assertRefused(design(missing), 2, missing + ": there is no such file; check the name");
  }

  @Test
  void aFolderAsSpecIsRefused() throws IOException {
    assertRefused(
        design(folder), 2, folder + ": this is a folder; allowed: a YAML file; name a file in it");
  }

  @Test
  void aPanelBeyondTheSolverIsDeclined() throws IOException {
    Path large = Files.writeString(folder.resolve("large.yaml"), CliSpecs.TOO_LARGE);
    CommandRun ran = design(large);
    assertThat(ran.errLines())
        .singleElement()
        .asString()
        .startsWith("nullplane: panel solver: a panel 1000.0 cm wide, 1000.0 cm high")
        .contains("is outside what the model can say; at most 1 million")
        .endsWith("use a smaller panel, a larger woofer or a lower frequency");
    assertThat(ran.exitCode()).isEqualTo(3);
    assertThat(ran.out()).isEmpty();
    assertNothingWritten();
  }

  /** Below a regular file nobody can make a folder, not even the machine's owner. */
  @Test
  void aPlaceThatCannotBeWrittenIsRefused() throws IOException {
    Path below = spec.resolve("some/where");
    CommandRun ran = CommandRun.of("design", spec, "--out", below);
    assertThat(ran.errLines())
        .singleElement()
        .asString()
        .startsWith("nullplane: cannot write " + below + ": ");
    assertThat(ran.exitCode()).isEqualTo(5);
    assertThat(ran.out()).isEmpty();
    assertThat(spec).hasContent(CliSpecs.READING_ROOM);
    assertNothingWritten();
  }

  @Test
  void aFileAsResultFolderIsRefused() throws IOException {
    assertRefused(
        CommandRun.of("design", spec, "--out", spec),
        5,
        "cannot write " + spec + ": a file has this name; name a folder");
    assertThat(spec).hasContent(CliSpecs.READING_ROOM);
  }

  @Test
  void aFolderOfSomebodyElseIsLeftAlone() throws IOException {
    Path foreign = Files.createDirectory(results);
    Path notes = Files.writeString(foreign.resolve("notes.txt"), "listening test of the hall");
    CommandRun ran = design(spec);
    assertThat(ran.errLines())
        .containsExactly(
            "nullplane: cannot write "
                + foreign
                + ": the folder holds files that no run of this program wrote; name a new or empty"
                + " folder");
    assertThat(ran.exitCode()).isEqualTo(5);
    assertThat(ran.out()).isEmpty();
    try (Stream<Path> entries = Files.list(foreign)) {
      assertThat(entries).containsExactly(notes);
    }
    assertThat(notes).hasContent("listening test of the hall");
  }

  @ParameterizedTest
  @CsvSource({
    "--threads, 0, 1 to 256",
    "--threads, 257, 1 to 256",
    "--evaluations, 10, 1000 to 100000000",
    "--evaluations, -1, 1000 to 100000000",
  })
  void aNumberOutOfRangeIsRefused(String option, String value, String allowed) throws IOException {
    CommandRun ran = CommandRun.of("design", spec, "--out", results, option, value);
    assertThat(ran.errLines())
        .containsExactly(
            "nullplane: "
                + option
                + " is "
                + value
                + "; allowed: "
                + allowed
                + " (nullplane design --help says more)");
    assertThat(ran.exitCode()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertNothingWritten();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--version", "design --version"})
  void versionIsOneLine(String line) {
    CommandRun ran = CommandRun.of((Object[]) line.split(" "));
    assertThat(ran.exitCode()).isZero();
    assertThat(ran.err()).isEmpty();
    assertThat(ran.out()).matches("nullplane \\d+\\.\\d+\\.\\d+\\R");
  }

  @Test
  void debugShowsWhereAFaultHappened() {
    CommandRun plain = design(folder.resolve("missing.yaml"));
    CommandRun debug =
        CommandRun.of("--debug", "design", folder.resolve("missing.yaml"), "--out", results);
    assertThat(debug.exitCode()).isEqualTo(2);
    assertThat(debug.err()).startsWith(plain.err()).contains("\tat nullplane.");
    assertThat(plain.err()).doesNotContain("\tat ");
  }
}
