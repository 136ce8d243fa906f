package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RankingWritersTest {
  private static final ReadSpec SPEC = SpecReader.read(Path.of("specs/village-hall.yaml"));

  @Test
  void jsonHoldsEverythingAtFullPrecision() throws IOException {
    JsonNode root = json(RankingJson.of(SPEC, outcome("Nr. 1", "Nr. 2"), "0.1.0"));
    assertThat(root.get("title").asText()).isEqualTo("Village-hall range");
    assertThat(root.get("specSha256").asText()).isEqualTo(SPEC.digest());
    assertThat(root.get("seed").asLong()).isEqualTo(7);
    assertThat(root.get("version").asText()).isEqualTo("0.1.0");
    assertThat(root.get("evaluations").asLong()).isEqualTo(50_000);
    assertThat(root.get("stopReason").asText()).isEqualTo("the budget is spent");
    assertThat(root.get("convergence").get(0).get("violation").asDouble()).isEqualTo(0.5);
    assertThat(root.get("convergence").get(1).get("bestCostDb").asDouble()).isEqualTo(4.25);
    assertThat(root.get("ranked")).hasSize(2);
    JsonNode second = root.get("ranked").get(1);
    assertThat(second.get("rank").asInt()).isEqualTo(2);
    assertThat(second.get("name").asText()).isEqualTo("Nr. 2");
    assertThat(second.get("woofer").get("movingMassKg").asDouble()).isEqualTo(0.071);
    assertThat(second.get("woofer").get("effectiveAreaM2").asDouble()).isEqualTo(0.0531);
    // Small 1972: fs = sqrt(Kms/Mms)/(2 pi), Mms = 71 g + 8/3 rho a^3 = 78.055 g: 30.989 Hz.
    assertThat(second.get("freeAir").get("fsHz").asDouble()).isCloseTo(30.989, within(2e-3));
    assertThat(second.get("gradeParts").get(0).get("reason").asText()).contains("single");
    JsonNode four = second.get("stacks").get(2);
    assertThat(four.get("name").asText()).isEqualTo("four");
    assertThat(four.get("woofers")).hasSize(4);
    assertThat(four.get("wiring").get("inSeries").asInt()).isEqualTo(4);
    assertThat(four.get("coil").get("inductanceH").asDouble()).isEqualTo(3.3e-3);
    assertThat(four.get("figures").get("outputLimit").asText()).isEqualTo("excursion");
    assertThat(four.get("figures").get("panelQts").asDouble()).isEqualTo(0.8);
    JsonNode level = four.get("curves").get("levelDb");
    assertThat(level.get(1).asDouble()).isEqualTo(0.1 + 0.2);
    assertThat(level.get(2).asDouble()).isEqualTo(1.0 / 3);
    assertThat(four.get("curves").get("binding").get(1).asText()).isEqualTo("heat");
  }

  /**
   * By hand for the single: a sheet of 0.4840 m2 less a hole of 0.0531 m2 weighs 5.171 kg (12
   * kg/m2) and lies 0.0308 m above the centre; the woofer, 4.05 kg (45 kg/m2 of 0.3 m squared),
   * 0.25 m below. Together 0.0925 m below the centre, which is 0.59 m high. The base is 2 h tan 10
   * degrees.
   */
  @Test
  void whatEachStackWeighsAndStandsOnIsWritten(@TempDir Path folder) throws IOException {
    String text = Files.readString(Path.of("specs/village-hall.yaml"));
    Path file = folder.resolve("with-a-base.yaml");
    Files.writeString(
        file, text.replace("height: 110 cm, clear", "height: 110 cm, base-depth: 30 cm, clear"));
    ReadSpec spec = SpecReader.read(file);
    JsonNode stacks =
        json(RankingJson.of(spec, ExampleOutcome.of(spec, List.of("1", "2"), 1), "0.1.0"))
            .get("ranked")
            .get(1)
            .get("stacks");
    JsonNode stand = stacks.get(0).get("stand");
    assertThat(stand.get("massKg").asDouble()).isCloseTo(9.2209, within(1e-4));
    assertThat(stand.get("centreOfGravityM").asDouble()).isCloseTo(0.49747, within(1e-5));
    assertThat(stand.get("leastBaseDepthM").asDouble()).isCloseTo(0.17543, within(1e-5));
    assertThat(stand.get("baseDepthM").asDouble()).isEqualTo(0.3);
    // atan(0.15/0.49747)
    assertThat(stand.get("tippingRad").asDouble()).isCloseTo(0.29285, within(1e-5));
    assertThat(stacks.get(1).get("stand").has("baseDepthM")).isFalse();
  }

  @Test
  void coilAndMotorAreWrittenWhereTheyAreKnown() throws IOException {
    JsonNode ranked = json(RankingJson.of(SPEC, outcome("Nr. 1", "Nr. 2"), "0.1.0")).get("ranked");
    JsonNode motor = ranked.get(0).get("motor");
    assertThat(motor.get("turnsPerLayer").asInt()).isEqualTo(60);
    assertThat(motor.get("layers").asInt()).isEqualTo(4);
    assertThat(motor.get("wire").asText()).isEqualTo("copper");
    assertThat(motor.get("fluxT").asDouble()).isEqualTo(0.9);
    // 0.334 mm on 50.3 mm: mean diameter 51.636 mm
    assertThat(motor.get("meanDiameterM").asDouble()).isCloseTo(0.051636, within(1e-12));
    assertThat(motor.get("windingHeightM").asDouble()).isCloseTo(0.02004, within(1e-12));
    JsonNode masses = ranked.get(0).get("masses");
    double sum = 0;
    for (String part : List.of("cone", "surroundShare", "spiderShare", "former", "glue", "coil")) {
      sum += masses.get(part + "Kg").asDouble();
    }
    assertThat(sum).isCloseTo(0.071, within(1e-15));
    assertThat(ranked.get(1).get("motor").isNull()).isTrue();
    assertThat(ranked.get(1).get("masses").isNull()).isTrue();
    List<String> lines = csv("Nr. 1", "Nr. 2");
    assertThat(lines.get(0))
        .contains(",former [mm],wire,bare wire [mm],insulated wire [mm],layers,");
    assertThat(lines.get(1)).contains(",50,copper,0.3,0.334,4,60,20.04,8,0.9,");
    assertThat(lines.get(2)).contains(",,,,,,,,,,,,,");
  }

  @Test
  void jsonIsTheSameByteForByte() {
    byte[] first = RankingJson.of(SPEC, outcome("Nr. 1"), "0.1.0");
    Locale usual = Locale.getDefault();
    String separator = System.getProperty("line.separator");
    try {
      Locale.setDefault(Locale.GERMANY);
      System.setProperty("line.separator", "\r\n");
      assertThat(RankingJson.of(SPEC, outcome("Nr. 1"), "0.1.0")).isEqualTo(first);
    } finally {
      Locale.setDefault(usual);
      System.setProperty("line.separator", separator);
    }
    String text = new String(first, StandardCharsets.UTF_8);
    assertThat(text).doesNotContain("\r").endsWith("}\n");
    assertThat(text).contains("0.30000000000000004").contains("0.3333333333333333");
  }

  @Test
  void numbersHaveTheShortestDigits() {
    // 2^-44: the shortest digits that give this double are 5.684341886080802E-14. Double.toString
    // of Java 17 prints one digit more (JDK bug 4511638), that of Java 19 does not.
    byte[] bytes = JsonText.of(json -> json.number("x", Math.scalb(1.0, -44)));
    assertThat(new String(bytes, StandardCharsets.UTF_8)).contains("5.684341886080802E-14");
  }

  @Test
  void noNumberThatIsNotFiniteReachesJson() {
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      SearchOutcome outcome = ExampleOutcome.of(SPEC, List.of("a", "b"), bad);
      assertThatThrownBy(() -> RankingJson.of(SPEC, outcome, "0.1.0"))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining("ranked[0].stacks[0].curves.levelDb[0] is " + bad);
    }
    assertThatThrownBy(() -> JsonText.of(json -> json.number("x", Double.NEGATIVE_INFINITY)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("x is -Infinity");
  }

  @Test
  void csvHasOneRowPerWooferAndUnitsInTheHeader() {
    List<String> lines = csv("Nr. 1", "Nr. 2");
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0))
        .startsWith("rank,name,feasible,cost [dB],")
        .contains(",re [ohm],fs [Hz],qms,qes,qts,bl [Tm],mms [g],moving-mass [g],mounting,")
        .contains("single: output margin [dB]");
    assertThat(lines.get(1)).startsWith("1,Nr. 1,yes,3.5,0,300,531,5.6,30.98");
    int columns = lines.get(0).split(",", -1).length;
    assertThat(lines.get(2).split(",", -1)).hasSize(columns);
  }

  @Test
  void csvEndsLinesAsRfc4180Asks() {
    String text = new String(RankingCsv.of(outcome("Nr. 1")), StandardCharsets.UTF_8);
    assertThat(text).endsWith("\r\n");
    assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
  }

  @Test
  void csvQuotesNames() {
    assertThat(csv("A, \"B\"").get(1)).startsWith("1,\"A, \"\"B\"\"\",yes,");
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@x", "\tx", " =1", "=HYPERLINK(\"x\")"})
  void csvNamesAreNoFormulas(String name) {
    String cell = csv(name).get(1).split(",", 3)[1];
    assertThat(cell).matches("\"?'.*");
  }

  @Test
  void csvNegativeNumbersStayNumbers() {
    assertThat(csv("Nr. 1").get(1)).contains(",-0.4,");
  }

  @Test
  void emptyRankingIsStillATable() {
    assertThat(csv()).containsExactly("rank,name");
  }

  @Test
  void manifestHoldsTheRun() throws IOException {
    RunManifest manifest =
        new RunManifest(
            "specs/flat.yaml",
            "ab".repeat(32),
            7,
            "0.1.0",
            Instant.parse("2026-01-02T03:04:05Z"),
            Instant.parse("2026-01-02T03:04:25Z"),
            List.of(new RunManifest.Step("panels", 4.5), new RunManifest.Step("search", 15)),
            50_000);
    JsonNode root =
        json(manifest.toJson(List.of(new RunManifest.FileEntry("a.csv", 3, "cd".repeat(32)))));
    assertThat(root.get("specSha256").asText()).isEqualTo("ab".repeat(32));
    assertThat(root.get("seed").asLong()).isEqualTo(7);
    assertThat(root.get("started").asText()).isEqualTo("2026-01-02T03:04:05Z");
    assertThat(root.get("steps").get(1).get("seconds").asDouble()).isEqualTo(15);
    assertThat(root.get("evaluations").asLong()).isEqualTo(50_000);
    assertThat(root.get("files").get(0).get("sha256").asText()).isEqualTo("cd".repeat(32));
  }

  private static SearchOutcome outcome(String... names) {
    return ExampleOutcome.of(SPEC, List.of(names), 76.5);
  }

  private static List<String> csv(String... names) {
    String text = new String(RankingCsv.of(outcome(names)), StandardCharsets.UTF_8);
    return List.of(text.split("\r\n", 0));
  }

  private static JsonNode json(byte[] bytes) throws IOException {
    return new ObjectMapper().readTree(bytes);
  }
}
