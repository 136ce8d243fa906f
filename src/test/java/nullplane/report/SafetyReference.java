package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;

import nullplane.HandbookRow;
import nullplane.scoring.PanelStability;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Figures of the cautions against the rules they come from. */
@Tag("reference")
class SafetyReference {

  /** NIOSH Publication 98-126: time per day at a level, printed to three digits. */
  @Test
  void timeAtALevel() {
    HandbookRow row = HandbookRow.of("HS01");
    double[] levels = {85, 88, 94, 100, 105, 110, 115};
    String[] minutes = {"480", "240", "60", "15", "4.72", "1.49", "0.469"};
    for (int i = 0; i < levels.length; i++) {
      row.check("time a day at " + (int) levels[i] + " dBA")
          .expected(row.figure(minutes[i]), "min")
          .computed(NoiseExposure.minutesPerDay(levels[i]))
          .withinPercent(0.5);
    }
  }

  /**
   * ITU-T H.870: 1.6 Pa2 h a week are 80 dB(A) for 40 h, 0.51 Pa2 h are 75 dB(A) for 40 h (from
   * memory; the second is printed to two digits). The same energy rule halves the time for every 10
   * lg 2 = 3.01 dB.
   */
  @Test
  void timeInAWeek() {
    String source = "ITU-T H.870 (from memory) and the equal-energy rule.";
    Validation.check("time a week at 75 dBA of 0.51 Pa2 h", source)
        .expected(2400, "min")
        .computed(NoiseExposure.minutesPerWeek(75, 0.51))
        .withinPercent(1);
    Check adults = Validation.check("time a week of 1.6 Pa2 h, 60 to 100 dBA", source).in("min");
    double[][] rows = {{80, 2400}, {83.0103, 1200}, {90, 240}, {100, 24}, {60, 10080}};
    for (double[] row : rows) {
      adults.add(row[1], NoiseExposure.minutesPerWeek(row[0], 1.6));
    }
    adults.withinPercent(0.01);
  }

  @Test
  void allowancesAreThoseOfTheStandard() {
    assertThat(NoiseExposure.ADULTS_PA2H).isEqualTo(1.6);
    assertThat(NoiseExposure.CHILDREN_PA2H).isEqualTo(0.51);
  }

  /** Tilt by 10 degrees; geometry, printed to a tenth of a millimetre. */
  @Test
  void halfBaseForATilt() {
    HandbookRow row = HandbookRow.of("TP01");
    row.check("half depth of the base for a tilt by 10 degrees, centre of gravity at 500 mm")
        .expected(row.figure("88.2"), "mm")
        .computed(PanelStability.halfBaseForTiltM(row.figure("500") * 1e-3) * 1e3)
        .withinPercent(0.1);
  }

  /** Push by 13 % of the weight; geometry. */
  @Test
  void halfBaseForAPush() {
    HandbookRow row = HandbookRow.of("TP02");
    row.check("half depth of the base for a push of 13 % at 1 m")
        .expected(row.figure("130"), "mm")
        .computed(PanelStability.halfBaseForPushM(row.figure("1.0")) * 1e3)
        .within(1e-9);
  }
}
