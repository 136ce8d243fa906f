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
import nullplane.acoustics.Panel;
import nullplane.acoustics.PanelSolver;
import nullplane.acoustics.Piston;
import nullplane.units.Air;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DatasheetCommandTest {
  private static final String WOOFER =
      """
      name: "Sample <b>8</b>"
      nominal: 200 mm
      effective-diameter: 160 mm
      re: 5.6 ohm
      fs: 42 Hz
      qms: 4.1
      qes: 0.92
      mms: 24 g
      """;

  private static final String PANELS =
      """
      title: Reading-room panels
      woofer: {nominal: 200 mm, effective-diameter: 150 mm}
      stacks:
        - name: two
          panel: {width: 40 cm, height: 60 cm, clearance: 5 cm}
          woofers: [{x: 0 cm, y: -12 cm}, {x: 4 cm, y: 12 cm}]
        - name: one
          panel: {width: 30 cm, height: 30 cm}
          woofers: [{x: 0 cm, y: 0 cm}]
      listening: {distance: 2 m, height: 80 cm}
      target: {level: 72 dB, loudest: 80 dB, low-corner: 60 Hz, upper-corner: 200 Hz}
      amplifier: {voltage: 20 V, lowest-load: 3 ohm}
      """;

  @TempDir private Path folder;
  private Path woofer;
  private Path panels;

  private record Run(int exit, String out, String err) {}

  @BeforeEach
  void writeFiles() throws Exception {
    woofer = Files.writeString(folder.resolve("sample-8.yaml"), WOOFER);
    panels = Files.writeString(folder.resolve("panels.yaml"), PANELS);
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

  /** The panel's row is the solver's own: Im of the mean row sum over w, at the resonance found. */
  @Test
  void panelRowsAreTheSolvedAirAtTheResonanceThere() throws Exception {
    Run run = run("datasheet", woofer.toString(), "--panel", panels.toString(), "--json");
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("consistent").booleanValue()).isTrue();
    JsonNode mountings = root.get("mountings");
    assertThat(mountings.findValuesAsText("mounting"))
        .containsExactly("free air", "infinite baffle", "panel: two", "panel: one");
    assertThat(mountings.get(0).get("resonanceHz").doubleValue()).isCloseTo(42, within(1e-9));
    PanelSolver solver =
        new PanelSolver(
            Panel.overFloor(0.4, 0.6, 0.05),
            List.of(new Piston(0, -0.12, 0.08), new Piston(0.04, 0.12, 0.08)),
            Air.standard());
    JsonNode two = mountings.get(2);
    double hertz = two.get("resonanceHz").doubleValue();
    ComplexMatrix z = solver.solve(hertz, List.of(), List.of()).impedance();
    double mass = (z.im(0, 0) + z.im(0, 1) + z.im(1, 0) + z.im(1, 1)) / 2 / (2 * Math.PI * hertz);
    assertThat(two.get("airMassKg").doubleValue() / mass).isCloseTo(1, within(1e-4));
    // Kms stays: fs^2 Mms is that of free air.
    double stays = Math.pow(hertz, 2) * two.get("movingMassKg").doubleValue() / (42 * 42 * 0.024);
    assertThat(stays).isCloseTo(1, within(1e-9));
    assertThat(two.get("airMassKg").doubleValue())
        .isGreaterThan(mountings.get(0).get("airMassKg").doubleValue());
  }

  @Test
  void verdictComesFirstAndLinesFitEightyColumns() throws Exception {
    Path results = folder.resolve("out");
    String wrong = WOOFER + "vas: 70 l\nbl: 6.2 Tm\nqts: 1.2\n";
    Files.writeString(woofer, wrong);
    Run run =
        run(
            "datasheet",
            woofer.toString(),
            "--panel",
            panels.toString(),
            "--out",
            results.toString());
    assertThat(run.exit()).isZero();
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(1)).startsWith("The sheet contradicts itself in 2 figures: Qts and Vas.");
    assertThat(run.out())
        .contains("Contradictions\n- Qts is stated as 1.20, the rest gives 0.751")
        .contains("not determined") // travel
        .contains("solved for this woofer's piston of 160 mm; the spec is for 150")
        .endsWith("Files: " + results + "\n");
    assertThat(lines.subList(0, lines.size() - 1)).allMatch(line -> line.length() <= 80);
    assertThat(results.resolve("datasheet.json")).isNotEmptyFile();
    assertThat(results.resolve("manifest.json")).isNotEmptyFile();
    assertThat(Files.readString(results.resolve("index.html")))
        .contains("Sample &lt;b&gt;8&lt;/b&gt;")
        .doesNotContain("<b>8");
  }

  @Test
  void jsonIsOneDocumentAndAsExactAsTheFile() throws Exception {
    Run run = run("datasheet", woofer.toString(), "--json");
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("settled").booleanValue()).isTrue();
    assertThat(root.get("notDetermined").toString()).contains("travel");
    for (JsonNode figure : root.get("figures")) {
      boolean stated = "stated".equals(figure.get("origin").textValue());
      assertThat(figure.get("route").textValue().isEmpty()).isEqualTo(stated);
    }
    assertThat(run("datasheet", woofer.toString(), "--json", "--threads", "1").out())
        .isEqualTo(run.out());
    assertThat(folder.resolve("results")).doesNotExist();
  }

  @Test
  void faultsEndWithTwo() throws Exception {
    Files.writeString(woofer, WOOFER.replace("42 Hz", "42"));
    Files.writeString(panels, PANELS.replace("40 cm", "40"));
    Run run = run("datasheet", woofer.toString(), "--panel", panels.toString(), "--json");
    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("write 42 Hz").contains("write 40 cm");
    Files.writeString(
        woofer, WOOFER.replace("nominal: 200 mm\neffective-diameter: 160", "sd: 900"));
    assertThat(run("datasheet", woofer.toString()).exit()).isEqualTo(2);
    Files.writeString(
        woofer,
        WOOFER
            .replace("nominal: 200 mm\neffective-diameter: 160 mm", "sd: 900 cm2")
            .replace("24 g", "240 g"));
    Files.writeString(panels, PANELS);
    Run large = run("datasheet", woofer.toString(), "--panel", panels.toString(), "--json");
    assertThat(large.exit()).isEqualTo(2);
    assertThat(large.err()).contains("does not fit this stack's panel").contains("two");
    assertThat(run("datasheet").exit()).isEqualTo(2);
  }
}
