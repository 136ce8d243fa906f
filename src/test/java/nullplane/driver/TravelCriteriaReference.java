package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import nullplane.HandbookRow;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Travel criteria against turns counted in the gap; rated impedances against IEC 60268-5. */
@Tag("reference")
class TravelCriteriaReference {
  /** Share of the rest's force factor at a place, turn by turn. */
  private static double share(double windingM, double gapM, double placeM) {
    int turns = 100_000;
    int atRest = 0;
    int now = 0;
    for (int i = 0; i < turns; i++) {
      double z = windingM * ((i + 0.5) / turns - 0.5);
      atRest += Math.abs(z) <= gapM / 2 ? 1 : 0;
      now += Math.abs(z + placeM) <= gapM / 2 ? 1 : 0;
    }
    return (double) now / atRest;
  }

  /** Overhung (the coil of row VC02) and underhung. Counting is exact to a turn in 10^5. */
  @Test
  void forceFactorByCountingTurns() {
    HandbookRow row = HandbookRow.of("VC02");
    String source = "Turns counted in the gap, 100,000 of them.";
    Check full =
        Validation.check("share of the force factor just inside the geometric travel", source);
    Check falls = Validation.check("share of the force factor at the 82 % travel", source);
    double[][] pairs = {{row.figure("24") * 1e-3, row.figure("8") * 1e-3}, {0.008, 0.024}};
    for (double[] pair : pairs) {
      TravelCriteria criteria = TravelCriteria.of(pair[0], pair[1]);
      assertThat(criteria.geometricM()).isEqualTo(0.008, offset(1e-12));
      full.add(1, share(pair[0], pair[1], criteria.geometricM() - 1e-6));
      falls.add(0.82, share(pair[0], pair[1], criteria.forceFactorM()));
    }
    full.within(1e-4);
    falls.within(1e-4);
  }

  /** IEC 60268-5: the least modulus is at least 80 % of the rated impedance. Exact. */
  @Test
  void zr01HighestUsualRating() {
    HandbookRow row = HandbookRow.of("ZR01");
    assertThat(RatedImpedance.highestUsualOhm(row.figure("6.4"))).hasValue(row.figure("8"));
    assertThat(RatedImpedance.highestUsualOhm(row.figure("3.2"))).hasValue(row.figure("4"));
    assertThat(RatedImpedance.highestUsualOhm(Math.nextDown(6.4))).hasValue(6);
    assertThat(RatedImpedance.highestUsualOhm(1.5)).isEmpty();
  }
}
