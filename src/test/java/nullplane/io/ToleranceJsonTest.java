package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import nullplane.driver.Woofer;
import nullplane.scoring.Assessment;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import nullplane.search.SearchOutcome;
import nullplane.tolerance.BatchRunner;
import nullplane.tolerance.MeasuredQuantity;
import nullplane.tolerance.ToleranceConduct;
import nullplane.tolerance.ToleranceStudy;
import org.junit.jupiter.api.Test;

class ToleranceJsonTest {
  @Test
  void theBestWooferCarriesItsTolerances() throws IOException {
    DesignSpec spec =
        WorkshopSpecs.spec(
            WorkshopSpecs.brief300(),
            WorkshopSpecs.column("single", 0.44, 1.1, 0.13, 75, 86, -0.25));
    SystemScorer scorer = WorkshopSpecs.scorer(spec);
    Woofer woofer = WorkshopSpecs.woofer(spec.woofer(), 40, 1.1, 0.045, 0.008);
    Assessment assessment = scorer.assess(woofer);
    ToleranceStudy study =
        ToleranceStudy.of(
            scorer,
            assessment,
            ToleranceConduct.usual(1).withUnits(500, 16),
            BatchRunner.sequential());
    SearchOutcome outcome =
        new SearchOutcome(
            List.of(assessment, assessment),
            List.of(),
            1000,
            1,
            0,
            List.of(),
            "the budget is spent",
            1);
    ReadSpec read = SpecReader.read(Path.of("specs/one-stack.yaml"));
    byte[] bytes = RankingJson.of(read, outcome, List.of(study), "0.1.0");
    JsonNode ranked = new ObjectMapper().readTree(bytes).get("ranked");
    assertThat(ranked.get(1).has("tolerances")).isFalse();
    JsonNode tolerances = ranked.get(0).get("tolerances");
    assertThat(tolerances.get("units").asInt()).isEqualTo(500);
    assertThat(tolerances.get("findings")).hasSameSizeAs(study.findings());
    assertThat(tolerances.get("spread").get("kms").asDouble()).isEqualTo(0.2);
    JsonNode single = tolerances.get("production").get("stacks").get(0);
    assertThat(single.get("yield").asDouble())
        .isEqualTo(study.production().stacks().get(0).share());
    assertThat(single.get("permittedLowerDb"))
        .hasSameSizeAs(tolerances.get("production").get("frequencyHz"));
    JsonNode fs = tolerances.get("windows").get("windows").get(0);
    assertThat(fs.get("symbol").asText()).isEqualTo("fs");
    double halfWidth = study.windows().of(MeasuredQuantity.RESONANCE).halfWidth();
    assertThat(fs.get("lower").asDouble()).isCloseTo(40 * (1 - halfWidth), within(1e-9));
    assertThat(fs.get("usualTo").asDouble()).isEqualTo(0.15);
    assertThat(tolerances.get("windows").get("wider").get("factor").asDouble()).isEqualTo(1.5);
    assertThat(tolerances.get("influences")).hasSize(7);
    assertThat(tolerances.get("sampling").get("sampleSize").asInt()).isEqualTo(50);
    assertThat(tolerances.get("sampling").get("everyUnit").asBoolean()).isTrue();
  }
}
