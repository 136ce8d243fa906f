package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.scoring.LimitStudy;
import nullplane.scoring.StackAssessment;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import nullplane.search.SearchOutcome;
import org.junit.jupiter.api.Test;

class LimitJsonTest {
  private static final ReadSpec SPEC = SpecReader.read(Path.of("specs/village-hall.yaml"));

  /** The limits come as one more field of each stack; what stood there stays as it was. */
  @Test
  void limitsAreAdded() throws IOException {
    SystemScorer scorer = WorkshopSpecs.scorer(WorkshopSpecs.singleAndPair());
    Assessment with =
        scorer.assess(WorkshopSpecs.woofer(scorer.spec().woofer(), 30, 0.9, 0.06, 0.006));
    List<StackAssessment> bare =
        with.stacks().stream()
            .map(
                s ->
                    new StackAssessment(
                        s.brief(), s.wiring(), s.network(), s.figures(), s.curves()))
            .toList();
    Assessment without =
        new Assessment(
            with.woofer(),
            with.freeAir(),
            with.budget(),
            with.motor(),
            bare,
            with.grade(),
            with.parts(),
            with.violations());
    JsonNode stack = stack(with, 1);
    JsonNode limits = stack.get("limits");
    LimitStudy study = with.stacks().get(1).limits().orElseThrow();
    List<String> names = new ArrayList<>();
    stack.fieldNames().forEachRemaining(names::add);
    JsonNode plain = stack(without, 1);
    List<String> plainNames = new ArrayList<>();
    plain.fieldNames().forEachRemaining(plainNames::add);
    names.remove("limits");
    assertThat(names).isEqualTo(plainNames);
    for (String name : plainNames) {
      assertThat(stack.get(name)).isEqualTo(plain.get(name));
    }
    assertThat(limits.at("/heat/atRatedPower/reOhm").asDouble())
        .isEqualTo(study.rated().resistanceOhm());
    assertThat(limits.at("/heat/levelAtRatedPowerDb"))
        .hasSize(stack.at("/curves/frequencyHz").size());
    assertThat(limits.at("/amplifier/ratedClassOhm").asDouble())
        .isEqualTo(study.load().ratedClassOhm().orElseThrow());
    assertThat(limits.at("/subsonic/atFullVoltage/highPassHz").asDouble())
        .isEqualTo(study.fullVoltage().highPassHz().orElseThrow());
    assertThat(limits.at("/programmes/1/binding").asText())
        .isEqualTo(study.programmes().get(1).binding().word());
    assertThat(limits.at("/programmes/1/wholeDb").asDouble())
        .isEqualTo(study.programmes().get(1).wholeDb());
    assertThat(limits.at("/travel/compliance75M").isNull()).isTrue();
  }

  private static JsonNode stack(Assessment assessment, int index) throws IOException {
    SearchOutcome outcome =
        new SearchOutcome(List.of(assessment), List.of(), 1, 1, 0, List.of(), "one woofer", 7);
    return new ObjectMapper()
        .readTree(RankingJson.of(SPEC, outcome, "0.1.0"))
        .at("/ranked/0/stacks/" + index);
  }
}
