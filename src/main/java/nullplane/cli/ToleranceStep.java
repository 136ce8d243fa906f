package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import nullplane.scoring.Assessment;
import nullplane.scoring.SystemScorer;
import nullplane.tolerance.BatchRunner;
import nullplane.tolerance.ToleranceConduct;
import nullplane.tolerance.ToleranceStudy;

/** Studies what production does to the ranked woofers: the best in full, the others in short. */
final class ToleranceStep {
  private static final int UNITS_OF_OTHERS = 2000;
  private static final int SAMPLES_OF_OTHERS = 256;

  private ToleranceStep() {}

  /** Returns one study per woofer, in their order. */
  static List<ToleranceStudy> of(
      SystemScorer scorer,
      List<Assessment> ranked,
      long seed,
      BatchRunner runner,
      boolean watched) {
    ToleranceConduct full = ToleranceConduct.usual(seed);
    List<ToleranceStudy> studies = new ArrayList<>();
    long units = full.units() + UNITS_OF_OTHERS * Math.max(0L, ranked.size() - 1L);
    try (ProgressLine progress = new ProgressLine("tolerances", units, watched)) {
      long done = 0;
      for (Assessment assessment : ranked) {
        ToleranceConduct conduct =
            studies.isEmpty() ? full : full.withUnits(UNITS_OF_OTHERS, SAMPLES_OF_OTHERS);
        studies.add(ToleranceStudy.of(scorer, assessment, conduct, runner));
        done += conduct.units();
        progress.at(done);
      }
    }
    return studies;
  }
}
