package nullplane.report;

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
      row.check("time a day at " + (int) levels[i] + " dBA")
          .expected(row.figure(minutes[i]), "min")
          .computed(Cautions.minutesAt(levels[i]))
          .withinPercent(0.5);
    }
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
