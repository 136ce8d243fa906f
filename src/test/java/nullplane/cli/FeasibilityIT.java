package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every woofer that the example specs rank can be built, by {@link FeasibilityAudit}. */
class FeasibilityIT {
  /** specs/village-hall.yaml. Stiffness of 300 mm: common practice. */
  private static final FeasibilityAudit.Limits HALL =
      new FeasibilityAudit.Limits(
          new double[] {6.2 * 0.97, 6.2 * 1.03},
          new double[] {20, 45},
          new double[] {0.3, 1.6},
          new double[] {0.035, 0.110},
          new double[] {0.004, 0.014},
          new double[] {0.4, 1.0},
          new double[] {400, 12_000},
          Set.of(0.008),
          Set.of(0.038, 0.050, 0.065),
          3);

  /** specs/flat.yaml. Stiffness of 200 mm: common practice. */
  private static final FeasibilityAudit.Limits FLAT =
      new FeasibilityAudit.Limits(
          new double[] {6 * 0.97, 6 * 1.03},
          new double[] {28, 60},
          new double[] {0.3, 1.5},
          new double[] {0.016, 0.033},
          new double[] {0.003, 0.010},
          new double[] {0.4, 1.0},
          new double[] {300, 5_000},
          Set.of(0.005, 0.006, 0.008),
          Set.of(0.025, 0.032, 0.038),
          3);

  @TempDir private Path folder;

  private JsonNode ranked(String spec) throws Exception {
    Files.copy(Path.of("specs", spec), folder.resolve(spec));
    ProgramRun.Ended run =
        ProgramRun.start(
                folder, ProgramRun.QUICK, "design", spec, "--evaluations", "6000", "--out", "run")
            .end();
    assertThat(run.exitCode()).as(run.err()).isZero();
    return new ObjectMapper()
        .readTree(folder.resolve("run").resolve("ranking.json").toFile())
        .get("ranked");
  }

  @Test
  void theHallsWoofersCanBeBuilt() throws Exception {
    JsonNode ranked = ranked("village-hall.yaml");
    assertThat(ranked).hasSize(5);
    for (JsonNode woofer : ranked) {
      assertThat(FeasibilityAudit.faultsOf(woofer, HALL)).isEmpty();
    }
    theAuditCanFail(ranked.get(0));
  }

  @Test
  void theFlatsWoofersCanBeBuilt() throws Exception {
    JsonNode ranked = ranked("flat.yaml");
    assertThat(ranked).isNotEmpty();
    for (JsonNode woofer : ranked) {
      assertThat(FeasibilityAudit.faultsOf(woofer, FLAT)).isEmpty();
    }
  }

  /** A change in the eighth digit of any of these is found. */
  private static void theAuditCanFail(JsonNode good) {
    for (String path :
        List.of(
            "woofer/reOhm",
            "woofer/blTm",
            "woofer/travelM",
            "woofer/movingMassKg",
            "woofer/kmsNPerM",
            "motor/fluxT",
            "motor/insulatedWireM",
            "motor/poleFluxT",
            "motor/magnetMassKg",
            "masses/coneKg",
            "freeAir/qts")) {
      JsonNode changed = good.deepCopy();
      String[] keys = path.split("/");
      ObjectNode block = (ObjectNode) changed.get(keys[0]);
      block.put(keys[1], block.get(keys[1]).doubleValue() * (1 + 1e-8));
      assertThat(FeasibilityAudit.faultsOf(changed, HALL)).as(path).isNotEmpty();
    }
    JsonNode oneTurnMore = good.deepCopy();
    ObjectNode motor = (ObjectNode) oneTurnMore.get("motor");
    motor.put("turnsPerLayer", motor.get("turnsPerLayer").asInt() + 1);
    assertThat(FeasibilityAudit.faultsOf(oneTurnMore, HALL)).isNotEmpty();
  }
}
