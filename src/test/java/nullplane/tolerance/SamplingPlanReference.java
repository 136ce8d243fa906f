package nullplane.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import nullplane.HandbookRow;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("reference")
class SamplingPlanReference {
  /** Row AQ01: ISO 2859-1, tables 1 and 2-A. */
  @Test
  void plansOfALotOf500() {
    HandbookRow row = HandbookRow.of("AQ01");
    int lot = (int) row.figure("500");
    SamplingPlan one = plan(lot, AcceptanceQuality.AQL_1_0);
    assertThat(one.lotLetter()).isEqualTo('H');
    assertThat(one.planLetter()).isEqualTo('H');
    assertThat(one.sampleSize()).isEqualTo((int) row.figure("50"));
    row.check("sample size of a lot of 500, level II, AQL 1.0 and 0.65")
        .in("units")
        .add(row.figure("50"), one.sampleSize())
        .add(row.figure("80"), plan(lot, AcceptanceQuality.AQL_0_65).sampleSize())
        .exactly();
    assertThat(List.of(one.acceptanceNumber(), one.rejectionNumber())).containsExactly(1, 2);
    SamplingPlan arrow = plan(lot, AcceptanceQuality.AQL_0_65);
    assertThat(arrow.lotLetter()).isEqualTo('H');
    assertThat(arrow.planLetter()).isEqualTo('J');
    assertThat(arrow.sampleSize()).isEqualTo((int) row.figure("80"));
    assertThat(List.of(arrow.acceptanceNumber(), arrow.rejectionNumber())).containsExactly(1, 2);
    SamplingPlan wide = plan(lot, AcceptanceQuality.AQL_2_5);
    assertThat(List.of(wide.acceptanceNumber(), wide.rejectionNumber())).containsExactly(3, 4);
  }

  private static SamplingPlan plan(int lot, AcceptanceQuality quality) {
    return SamplingPlan.of(lot, InspectionLevel.II, quality);
  }

  /** Row AQ02: binomial distribution. */
  @Test
  void operatingCharacteristic() {
    HandbookRow row = HandbookRow.of("AQ02");
    SamplingPlan plan = plan(500, AcceptanceQuality.AQL_1_0);
    double[] bad = {0.01, 0.025, 0.05, 0.10};
    String[] passing = {"0.9106", "0.6435", "0.2794", "0.0338"};
    for (int i = 0; i < bad.length; i++) {
      row.check("chance that a lot passes, " + 100 * bad[i] + " % bad")
          .expected(row.figure(passing[i]), "")
          .computed(plan.acceptanceProbability(bad[i]))
          .within(0.0005);
    }
    assertThat(plan.acceptanceProbability(0)).isEqualTo(1);
    assertThat(plan.acceptanceProbability(1)).isZero();
  }

  /**
   * Columns of table 2-A, letters A to Q by lots at general level II: sample size and Ac. Source:
   * ISO 2859-1:1999, table 2-A, recalled from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "AQL_0_10, 125/0 125/0 125/0 125/0 125/0 125/0 125/0 125/0 125/0 125/0 125/0 500/1 500/1 800/2"
        + " 1250/3",
    "AQL_1_0, 13/0 13/0 13/0 13/0 13/0 13/0 50/1 50/1 80/2 125/3 200/5 315/7 500/10 800/14 1250/21",
    "AQL_4_0, 3/0 3/0 3/0 13/1 13/1 20/2 32/3 50/5 80/7 125/10 200/14 315/21 315/21 315/21 315/21",
    "AQL_6_5, 2/0 2/0 8/1 8/1 13/2 20/3 32/5 50/7 80/10 125/14 200/21 200/21 200/21 200/21 200/21",
  })
  void columnsOfTheTable(AcceptanceQuality quality, String column) {
    int[] lots = {
      8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000, 500_001
    };
    String letters = "ABCDEFGHJKLMNPQ";
    String[] plans = column.split(" ", -1);
    String limit = "AQL " + quality.name().substring("AQL_".length()).replace('_', '.');
    String table = "ISO 2859-1:1999, table 2-A (recalled from memory).";
    Check sizes = Validation.check("sample sizes at " + limit + ", 15 lots", table).in("units");
    Check accepted = Validation.check("acceptance numbers at " + limit + ", 15 lots", table);
    for (int row = 0; row < lots.length; row++) {
      SamplingPlan plan = plan(lots[row], quality);
      String[] expected = plans[row].split("/", -1);
      assertThat(plan.lotLetter()).isEqualTo(letters.charAt(row));
      sizes.add(Math.min(lots[row], Integer.parseInt(expected[0])), plan.sampleSize());
      accepted.add(Integer.parseInt(expected[1]), plan.acceptanceNumber());
    }
    sizes.exactly();
    accepted.exactly();
  }

  /** Source: ISO 2859-1:1999, table 1. */
  @ParameterizedTest
  @CsvSource({
    "2, A, A, B",
    "9, A, B, C",
    "26, C, D, E",
    "51, C, E, F",
    "91, D, F, G",
    "151, E, G, H",
    "281, F, H, J",
    "501, G, J, K",
    "1201, H, K, L",
    "3201, J, L, M",
    "10001, K, M, N",
    "35001, L, N, P",
    "150001, M, P, Q",
    "500001, N, Q, R"
  })
  void codeLetters(int lot, char first, char second, char third) {
    assertThat(InspectionLevel.I.codeLetter(lot)).isEqualTo(first);
    assertThat(InspectionLevel.II.codeLetter(lot)).isEqualTo(second);
    assertThat(InspectionLevel.III.codeLetter(lot)).isEqualTo(third);
  }

  /** Row AQ02: 28 % of lots that are 5 % bad pass, so a small order is tested unit by unit. */
  @Test
  void smallOrdersAreTestedUnitByUnit() {
    assertThat(plan(500, AcceptanceQuality.AQL_1_0).everyUnitBetter(0.05)).isTrue();
    assertThat(plan(5000, AcceptanceQuality.AQL_1_0).everyUnitBetter(0.05)).isFalse();
    // 10 % bad passes in 3 % of cases only
    assertThat(plan(500, AcceptanceQuality.AQL_1_0).everyUnitBetter(0.10)).isFalse();
    assertThat(plan(10, AcceptanceQuality.AQL_1_0).testsEveryUnit()).isTrue();
  }

  /** Closed forms: one unit passes with 1 - p, one of two with 1 - p^2; all may be bad for sure. */
  @Test
  void passingOfVerySmallSamples() {
    assertThat(SamplingPlan.passing(1, 0, 0.3)).isCloseTo(0.7, within(1e-12));
    assertThat(SamplingPlan.passing(2, 1, 0.3)).isCloseTo(0.91, within(1e-12));
    assertThat(SamplingPlan.passing(2, 2, 0.3)).isEqualTo(1);
    assertThat(SamplingPlan.passing(2, 2, 1)).isEqualTo(1);
    assertThat(SamplingPlan.passing(2, 1, 1)).isZero();
    for (double share : new double[] {-0.1, 1.1, Double.NaN}) {
      assertThatThrownBy(() -> SamplingPlan.passing(2, 1, share)).hasMessageContaining("share");
    }
    assertThatThrownBy(() -> SamplingPlan.passing(0, 0, 0.1)).hasMessageContaining("n = 0");
    assertThatThrownBy(() -> SamplingPlan.passing(1, -1, 0.1)).hasMessageContaining("Ac = -1");
  }

  @Test
  void aLotOfOneIsNoLot() {
    assertThatThrownBy(() -> plan(1, AcceptanceQuality.AQL_1_0)).hasMessageContaining("2 or more");
  }
}
