package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** judge and compare as a user starts them. */
class JudgeCompareIT {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String TABLE =
      "name,nominal [mm],sd [cm2],re [ohm],fs [Hz],qms,qes,mms [g],travel [mm],le [mH],power [W]\n"
          + "Strong,300,531,5.6,28,6,0.36,74,7,1,180\n"
          + "Weak,300,531,5.6,30,6,1.2,74,7,1,180\n"
          + "Small,250,340,5.6,30,6,1.2,44,7,1,180\n"
          + "Huge,530,1700,5.6,25,6,1.2,250,9,1,180\n"
          + "Blank,300,531,5.6,,6,1.2,74,7,1,180\n";

  @TempDir private static Path folder;
  private static ProgramRun.Ended judged;
  private static ProgramRun.Ended designed;

  @BeforeAll
  static void runOnce() throws Exception {
    Files.writeString(folder.resolve("room.yaml"), CliSpecs.READING_ROOM);
    Files.writeString(folder.resolve("woofers.csv"), TABLE);
    designed = run("design", "room.yaml", "--evaluations", "1000", "--json", "--out", "designed");
    JsonNode best = JSON.readTree(designed.out()).at("/ranked/0");
    Files.writeString(folder.resolve("best.yaml"), sheetOf(best));
    judged =
        run(
            "judge",
            "room.yaml",
            "--woofers",
            ".",
            "--evaluations",
            "1000",
            "--json",
            "--out",
            "judged");
  }

  private static ProgramRun.Ended run(String... words) throws Exception {
    return ProgramRun.start(folder, ProgramRun.QUICK, words).end();
  }

  /** A ranked woofer as its data sheet, every figure with all its digits. */
  private static String sheetOf(JsonNode ranked) {
    JsonNode woofer = ranked.path("woofer");
    JsonNode set = ranked.path("freeAir");
    return "name: From the search\n"
        + line("nominal", woofer.path("nominalM"), "m")
        + line("effective-diameter", woofer.path("effectiveDiameterM"), "m")
        + line("re", woofer.path("reOhm"), "ohm")
        + line("fs", set.path("fsHz"), "Hz")
        + line("qms", set.path("qms"), "")
        + line("qes", set.path("qes"), "")
        + line("moving-mass", woofer.path("movingMassKg"), "kg")
        + line("travel", woofer.path("travelM"), "m")
        + line("le", woofer.path("leH"), "H")
        + line("power", woofer.path("powerW"), "W");
  }

  private static String line(String key, JsonNode value, String unit) {
    return (key + ": " + new java.math.BigDecimal(value.asText()).toPlainString() + " " + unit)
            .stripTrailing()
        + "\n";
  }

  private static JsonNode ranked(JsonNode document, String name) {
    return StreamSupport.stream(document.path("ranked").spliterator(), false)
        .filter(woofer -> woofer.path("name").asText().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** The score of a sheet is that of the same woofer in the search, to 1e-12. */
  @Test
  void aSheetScoresAsTheSameWooferInTheSearch() throws Exception {
    assertThat(designed.exitCode()).as(designed.err()).isZero();
    assertThat(judged.exitCode()).as(judged.err()).isZero();
    JsonNode searched = JSON.readTree(designed.out()).at("/ranked/0");
    JsonNode sheet = ranked(JSON.readTree(judged.out()), "From the search");
    double cost = searched.path("costDb").asDouble();
    assertThat(sheet.path("costDb").asDouble()).isCloseTo(cost, within(1e-12 * Math.abs(cost)));
    assertThat(sheet.path("violation").asDouble()).isZero();
    double level = searched.at("/stacks/0/figures/rmsDeviationDb").asDouble();
    assertThat(sheet.at("/stacks/0/figures/rmsDeviationDb").asDouble())
        .isCloseTo(level, within(1e-12 * level));
  }

  @Test
  void whatCannotBeJudgedIsTold() throws Exception {
    JsonNode document = JSON.readTree(judged.out());
    assertThat(document.path("ranked")).hasSize(4);
    assertThat(document.at("/misfits/0/name").asText()).isEqualTo("Huge");
    assertThat(document.path("refused").findValuesAsText("line")).contains("6");
    assertThat(judged.err()).contains("woofers.csv:6").contains("not judged");
    assertThat(document.path("bestBuildable").path("feasible").asBoolean()).isTrue();
    JsonNode strong = ranked(document, "Strong");
    assertThat(strong.path("findings").findValuesAsText("kind")).contains("lacks-bass");
    assertThat(Files.readString(folder.resolve("judged/judging.csv")))
        .contains("behind best [dB]")
        .contains("From the search");
  }

  @Test
  void compareSplitsTheDifference() throws Exception {
    ProgramRun.Ended compared =
        run(
            "compare",
            "room.yaml",
            "woofers.csv#Strong",
            "woofers.csv#Weak",
            "--json",
            "--out",
            "compared");
    assertThat(compared.exitCode()).as(compared.err()).isZero();
    JsonNode document = JSON.readTree(compared.out());
    JsonNode stack = document.at("/stacks/0");
    for (int f = 0; f < stack.path("frequencyHz").size(); f++) {
      double sum = 0;
      for (JsonNode share : stack.path("levelSharesDb")) {
        sum += share.get(f).asDouble();
      }
      assertThat(sum)
          .isCloseTo(
              stack.path("secondBareLevelDb").get(f).asDouble()
                  - stack.path("firstBareLevelDb").get(f).asDouble(),
              within(1e-9));
    }
    assertThat(stack.at("/levelSharesDb/travel/0").asDouble()).isZero();
    assertThat(folder.resolve("compared/shares.svg")).isNotEmptyFile();
    ProgramRun.Ended unknown = run("compare", "room.yaml", "woofers.csv#Nobody", "best.yaml");
    assertThat(unknown.exitCode()).isEqualTo(2);
    assertThat(unknown.err()).contains("no woofer of this name").contains("Strong");
  }
}
