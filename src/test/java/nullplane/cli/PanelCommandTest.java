package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.Direction;
import nullplane.acoustics.FieldPoint;
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelSolution;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.units.Air;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PanelCommandTest {
  private static final String SPEC =
      """
      title: Reading-room panels
      woofer: {nominal: 200 mm, effective-diameter: 160 mm}
      stacks:
        - name: stand
          panel: {width: 40 cm, height: 60 cm, clearance: 5 cm}
          woofers: [{x: 0 cm, y: -12 cm}, {x: 4 cm, y: 12 cm}]
        - name: hanging
          panel: {width: 40 cm, height: 50 cm}
          woofers: [{x: 0 cm, y: 0 cm}]
      listening: {distance: 2 m, height: 80 cm}
      target: {level: 72 dB, loudest: 80 dB, low-corner: 60 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 20 V, lowest-load: 3 ohm}
      """;

  /** Small, so that the many frequencies of the pictures cost little. */
  private static final String SMALL =
      """
      title: Reading-room panel
      woofer: {nominal: 200 mm, effective-diameter: 160 mm}
      stacks:
        - name: hanging
          panel: {width: 30 cm, height: 30 cm}
          woofers: [{x: 0 cm, y: 0 cm}]
      listening: {distance: 2 m, height: 80 cm}
      target: {level: 72 dB, loudest: 80 dB, low-corner: 60 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 20 V, lowest-load: 3 ohm}
      """;

  @TempDir private Path folder;
  private Path spec;

  /** What a run of the program left behind. */
  private record Run(int exit, String out, String err) {}

  @BeforeEach
  void writeSpec() throws Exception {
    spec = Files.writeString(folder.resolve("panels.yaml"), SPEC);
  }

  private static synchronized Run run(String... args) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(outBytes, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(errBytes, true, StandardCharsets.UTF_8));
      int exit = Nullplane.execute(args);
      return new Run(
          exit,
          outBytes.toString(StandardCharsets.UTF_8),
          errBytes.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private Run json(String... more) {
    String[] args = new String[3 + more.length];
    args[0] = "panel";
    args[1] = spec.toString();
    args[2] = "--json";
    System.arraycopy(more, 0, args, 3, more.length);
    return run(args);
  }

  @Test
  void theDocumentIsTheSolversNumbers() throws Exception {
    Run run = json("--frequencies", "63 Hz, 31.5 Hz", "--angles", "30/0, 0/30");
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("airDensity").doubleValue()).isEqualTo(1.2041);
    assertThat(root.get("speedOfSound").doubleValue()).isEqualTo(343.2);
    assertThat(root.get("stacks")).hasSize(2);
    assertThat(root.at("/stacks/0/name").textValue()).isEqualTo("stand");
    assertThat(root.at("/stacks/0/woofers").intValue()).isEqualTo(2);
    assertThat(root.at("/stacks/1/woofers").intValue()).isEqualTo(1);
    PanelSolver stand =
        new PanelSolver(
            Panel.overFloor(0.4, 0.6, 0.05),
            List.of(new Piston(0, -0.12, 0.08), new Piston(0.04, 0.12, 0.08)),
            Air.standard());
    check(root.at("/stacks/0/frequencies"), stand, new FieldPoint(0, 0.8 - 0.35, 2));
    PanelSolver hanging =
        new PanelSolver(
            Panel.inFreeSpace(0.4, 0.5), List.of(new Piston(0, 0, 0.08)), Air.standard());
    check(root.at("/stacks/1/frequencies"), hanging, new FieldPoint(0, 0.8 - 0.25, 2));
    assertThat(root.at("/stacks/0/frequencies/0/figures").has("floorGainDb")).isTrue();
    assertThat(root.at("/stacks/1/frequencies/0/figures").has("floorGainDb")).isFalse();
    assertThat(run.out()).doesNotContain("NaN").doesNotContain("Infinity");
  }

  private static void check(JsonNode frequencies, PanelSolver solver, FieldPoint ear) {
    double[] hertz = {63, 31.5};
    double[][] degrees = {{30, 0}, {0, 30}};
    assertThat(frequencies).hasSize(2);
    for (int f = 0; f < 2; f++) {
      JsonNode at = frequencies.get(f);
      assertThat(at.get("frequencyHz").doubleValue()).isEqualTo(hertz[f]);
      PanelSolution own =
          solver.solve(
              hertz[f],
              List.of(ear),
              List.of(Direction.ofDegrees(30, 0), Direction.ofDegrees(0, 30)));
      same(at.get("impedanceRe"), at.get("impedanceIm"), own.impedance());
      assertThat(at.get("estimatedError").doubleValue()).isBetween(0.0, 0.05);
      assertThat(at.get("farField")).hasSize(2);
      for (int d = 0; d < 2; d++) {
        JsonNode direction = at.get("farField").get(d);
        assertThat(direction.get("horizontalDeg").doubleValue()).isEqualTo(degrees[d][0]);
        assertThat(direction.get("verticalDeg").doubleValue()).isEqualTo(degrees[d][1]);
        sameRow(direction, own.farField(), d);
      }
      sameRow(at.get("listening"), own.pressure(), 0);
    }
  }

  private static void same(JsonNode re, JsonNode im, ComplexMatrix matrix) {
    assertThat(re).hasSize(matrix.rows());
    assertThat(im).hasSize(matrix.rows());
    for (int i = 0; i < matrix.rows(); i++) {
      assertThat(re.get(i)).hasSize(matrix.columns());
      for (int j = 0; j < matrix.columns(); j++) {
        assertThat(re.get(i).get(j).doubleValue())
            .isCloseTo(matrix.re(i, j), within(1e-12 * matrix.largestModulus()));
        assertThat(im.get(i).get(j).doubleValue())
            .isCloseTo(matrix.im(i, j), within(1e-12 * matrix.largestModulus()));
      }
    }
  }

  private static void sameRow(JsonNode parts, ComplexMatrix matrix, int row) {
    assertThat(parts.get("re")).hasSize(matrix.columns());
    assertThat(parts.get("im")).hasSize(matrix.columns());
    for (int j = 0; j < matrix.columns(); j++) {
      assertThat(parts.get("re").get(j).doubleValue())
          .isCloseTo(matrix.re(row, j), within(1e-12 * matrix.largestModulus()));
      assertThat(parts.get("im").get(j).doubleValue())
          .isCloseTo(matrix.im(row, j), within(1e-12 * matrix.largestModulus()));
    }
  }

  @Test
  void theDefaultsAreTheStandardsMidbandsAndFourAngles() throws Exception {
    Files.writeString(spec, SMALL);
    JsonNode root = new ObjectMapper().readTree(json().out());
    JsonNode frequencies = root.at("/stacks/0/frequencies");
    assertThat(frequencies).hasSize(18);
    assertThat(frequencies.get(0).get("frequencyHz").doubleValue())
        .isCloseTo(19.953, within(0.001));
    assertThat(frequencies.get(17).get("frequencyHz").doubleValue()).isEqualTo(1000);
    assertThat(frequencies.get(0).get("farField")).hasSize(4);
    assertThat(frequencies.get(0).get("farField").get(3).get("verticalDeg").doubleValue())
        .isEqualTo(30);
  }

  @Test
  void theBytesDependOnNothingButTheInput() throws Exception {
    Files.writeString(spec, SMALL);
    String[] chosen = {"--frequencies", "50 Hz, 200 Hz"};
    String one = json(chosen[0], chosen[1], "--threads", "1").out();
    assertThat(json(chosen[0], chosen[1], "--threads", "3").out()).isEqualTo(one);
    Path results = folder.resolve("run");
    Run whole = json(chosen[0], chosen[1], "--out", results.toString());
    assertThat(whole.out()).isEqualTo(one);
    assertThat(Files.readString(results.resolve("panel.json"))).isEqualTo(one);
  }

  @Test
  void writesAFolderAndASummaryOfEightyColumns() throws Exception {
    Files.writeString(spec, SMALL);
    Path results = folder.resolve("run");
    Run run = run("panel", spec.toString(), "--out", results.toString());
    assertThat(run.exit()).isZero();
    assertThat(run.out().lines().toList().get(0)).startsWith("Air that moves with each cone");
    assertThat(run.out().lines().filter(line -> !line.startsWith("Files: ")))
        .allMatch(line -> line.length() <= 80);
    assertThat(run.out()).endsWith("Files: " + results + "\n");
    for (String file :
        List.of(
            "index.md",
            "index.html",
            "panel.json",
            "manifest.json",
            "stack-1/figures.csv",
            "stack-1/impedance.csv",
            "stack-1/directivity.csv",
            "stack-1/panel.svg",
            "stack-1/polars.png")) {
      assertThat(results.resolve(file)).isNotEmptyFile();
    }
    List<String> rows = Files.readAllLines(results.resolve("stack-1/figures.csv"));
    assertThat(rows).hasSize(1 + 43);
    assertThat(rows.get(0)).startsWith("frequency [Hz],added mass of woofer 1 [kg],");
    assertThat(rows.get(1).split(",", -1)).hasSameSizeAs(rows.get(0).split(",", -1));
  }

  @Test
  void faultsEndWithTwoAndSayWhatToWrite() {
    Run run = json("--frequencies", "63, 50 m");
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().toList())
        .hasSize(2)
        .allMatch(line -> line.startsWith("nullplane: --frequencies: "));
    assertThat(run.err()).contains("write 63 Hz");
    assertThat(json("--frequencies", "63", "--angles", "30").err().lines()).hasSize(2);
    assertThat(json("--angles", "30").err()).contains("such as 30/0");
    assertThat(json("--angles", "30").exit()).isEqualTo(2);
    assertThat(run("panel").exit()).isEqualTo(2);
    assertThat(json("--threads", "0").exit()).isEqualTo(2);
  }
}
