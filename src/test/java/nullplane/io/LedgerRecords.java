package nullplane.io;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import nullplane.fit.Finding;
import nullplane.sample.AskedChange;
import nullplane.sample.BenchFigure;
import nullplane.sample.BriefUnit;
import nullplane.sample.BriefValue;
import nullplane.sample.BriefWindow;
import nullplane.sample.Decision;
import nullplane.sample.LedgerEntry;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;
import nullplane.sample.Lever;

/** Invented records of a ledger, for tests. */
final class LedgerRecords {
  private LedgerRecords() {}

  static RoundStamp stamp(int round) {
    return new RoundStamp(
        round, Instant.parse("2026-03-01T10:00:00Z"), "b" + round / 4, "m" + round, "0.1.0");
  }

  static LedgerEntry brief() {
    return new BriefEntry(
        "b0",
        "Village hall \u2013 \"main\"",
        "hall 300\nsecond line",
        List.of(
            new BriefValue(
                BriefValue.Section.TARGET,
                "fs",
                "fs",
                "resonance",
                BriefUnit.HERTZ,
                OptionalDouble.of(32),
                "",
                new BriefWindow(OptionalDouble.of(28.8), OptionalDouble.of(35.2), "the brief"),
                "",
                "")));
  }

  static LedgerEntry sample(int round) {
    return new SampleEntry(
        stamp(round),
        "A",
        round % 2 == 0,
        "free air",
        Decision.CANNOT_TELL,
        Map.of(
            BenchFigure.FS, new Finding.Estimate(33.1 + round, 0.1, 33 + round, 33.2 + round),
            BenchFigure.LEVEL, new Finding.Estimate(86.1, 0.1, 86, 86.2)),
        OptionalDouble.of(-1.0e-4 / 3));
  }

  static LedgerEntry request(int round) {
    return new RequestEntry(
        stamp(round),
        Decision.FAIL,
        "sample A",
        new AskedChange(
            0.0012, -0.31, 0, Optional.of(new AskedChange.WindingStep(0.001, 0.93, 1.02)), 0.0004),
        Map.of(Lever.STIFFNESS, 2 / 3.0),
        Map.of("fs", 31.9),
        List.of("re"),
        Set.of(Lever.FLUX));
  }

  /** Records of some rounds: a brief, then a sample and a request for each. */
  static List<LedgerEntry> rounds(int count) {
    List<LedgerEntry> all = new java.util.ArrayList<>(List.of(brief()));
    for (int round = 1; round <= count; round++) {
      all.add(sample(round));
      all.add(request(round));
    }
    return all;
  }
}
