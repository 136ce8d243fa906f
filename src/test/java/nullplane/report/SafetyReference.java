package nullplane.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import nullplane.HandbookRow;
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
      assertThat(Cautions.minutesAt(levels[i]))
          .isCloseTo(row.figure(minutes[i]), withinPercentage(0.5));
    }
  }

  /** Tilt by 10 degrees; geometry, printed to a tenth of a millimetre. */
  @Test
  void halfBaseForATilt() {
    HandbookRow row = HandbookRow.of("TP01");
    assertThat(PanelStability.halfBaseForTiltM(row.figure("500") * 1e-3))
        .isCloseTo(row.figure("88.2") * 1e-3, withinPercentage(0.1));
  }

  /** Push by 13 % of the weight; geometry. */
  @Test
  void halfBaseForAPush() {
    HandbookRow row = HandbookRow.of("TP02");
    assertThat(PanelStability.halfBaseForPushM(row.figure("1.0")))
        .isCloseTo(row.figure("130") * 1e-3, within(1e-12));
  }
}
