package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import nullplane.scoring.Assessment;
import nullplane.scoring.LimitStudy;
import nullplane.scoring.SystemScorer;
import nullplane.scoring.WorkshopSpecs;
import org.junit.jupiter.api.Test;

class LimitTablesTest {
  @Test
  void theSheetStatesTheLimits() {
    SystemScorer scorer = WorkshopSpecs.scorer(WorkshopSpecs.singleAndPair());
    Assessment woofer =
        scorer.assess(WorkshopSpecs.woofer(scorer.spec().woofer(), 30, 0.9, 0.06, 0.006));
    String sheet = new SpecificationSheet(scorer.spec(), woofer, 1, InventedRun.INFO).markdown();
    LimitStudy limits = woofer.stacks().get(0).limits().orElseThrow();
    assertThat(sheet)
        .contains("Re is then 9.56 ohm")
        .contains("A musical programme of the spectrum stated below needs no protection")
        .contains("settle at 200 \u00b0C")
        .contains(Figures.hertz(limits.fullVoltage().highPassHz().orElseThrow()) + ", ")
        .contains(Figures.decibels(limits.programmes().get(1).wholeDb()))
        .contains("estimate for a uniform gap without fringe field")
        .contains("wish: not less than the geometric travel");
    assertThat(sheet).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void withoutLimitsThereAreNoTables() {
    Assessment invented = InventedRun.outcome(InventedRun.spec()).ranked().get(0);
    assertThat(new LimitTables(invented).blocks()).isEmpty();
  }
}
