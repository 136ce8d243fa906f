package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import nullplane.fit.Finding;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;
import org.junit.jupiter.api.Test;

class RoundHistoryTest {
  private static final BriefEntry BRIEF = new BriefEntry("b1", "Hall", "hall 300", List.of());

  private static RoundStamp stamp(int round, String measurements) {
    return new RoundStamp(round, Instant.ofEpochSecond(round), "b1", measurements, "0.1.0");
  }

  private static Finding.Estimate value(double value, double error) {
    return new Finding.Estimate(value, error, value - 2 * error, value + 2 * error);
  }

  private static SampleEntry sample(
      RoundStamp stamp, String name, boolean golden, double fs, double kms) {
    return new SampleEntry(
        stamp,
        name,
        golden,
        "free air",
        Decision.FAIL,
        Map.of(BenchFigure.FS, value(fs, 0.1), BenchFigure.KMS, value(kms, 30)),
        OptionalDouble.empty());
  }

  private static RequestEntry request(RoundStamp stamp, double stiffness) {
    return new RequestEntry(
        stamp,
        Decision.FAIL,
        "sample A",
        new AskedChange(0, stiffness, 0, Optional.empty(), 0),
        Map.of(Lever.STIFFNESS, 1.0),
        Map.of("fs", 32.0),
        List.of(),
        Set.of());
  }

  @Test
  void lastRunOfARoundCounts() {
    RoundStamp first = stamp(1, "m1");
    RoundStamp corrected = stamp(1, "m1b");
    RoundHistory history =
        RoundHistory.of(
            List.of(
                BRIEF,
                sample(first, "A", false, 40, 3000),
                sample(first, "B", false, 41, 3100),
                request(first, -0.3),
                sample(corrected, "A", false, 39, 2900),
                request(corrected, -0.2),
                sample(stamp(2, "m2"), "C", false, 35, 2500)));
    assertThat(history.rounds()).hasSize(2);
    ProjectRound round = history.rounds().get(0);
    assertThat(round.samples()).extracting(SampleEntry::name).containsExactly("A");
    assertThat(round.end().orElseThrow().asked().stiffnessShare()).isEqualTo(-0.2);
    assertThat(history.last().orElseThrow().end()).isEmpty();
    assertThat(history.brief()).contains(BRIEF);
    List<MakerMove> moves = history.moves();
    assertThat(moves).hasSize(1);
    assertThat(moves.get(0).achieved(Lever.STIFFNESS, 1).orElseThrow())
        .isCloseTo(2500 / 2900.0 - 1, within(1e-12));
    assertThat(moves.get(0).predicted(Lever.STIFFNESS)).isCloseTo(-0.2, within(1e-12));
    assertThat(moves.get(0).achieved(Lever.MASS, 1)).isEmpty();
  }

  @Test
  void sameMeasurementsAreTheSameRoundAndOthersTheNext() {
    RoundHistory known =
        RoundHistory.of(
            List.of(
                BRIEF, sample(stamp(1, "m1"), "A", false, 40, 3000), request(stamp(1, "m1"), 0)));
    OpenRound again = OpenRound.next(known, BRIEF, stamp(9, "m1"));
    assertThat(again.stamp().round()).isEqualTo(1);
    assertThat(again.earlier().rounds()).isEmpty();
    OpenRound next = OpenRound.next(known, BRIEF, stamp(9, "m2"));
    assertThat(next.stamp().round()).isEqualTo(2);
    assertThat(next.earlier().rounds()).hasSize(1);
    assertThat(OpenRound.next(RoundHistory.NONE, BRIEF, stamp(9, "m")).stamp().round())
        .isEqualTo(1);
  }

  @Test
  void meanOfSeveralSamplesIsMoreCertainAndLeavesGoldenOnesOut() {
    RoundStamp stamp = stamp(1, "m");
    ProjectRound round =
        new ProjectRound(
            stamp,
            List.of(
                sample(stamp, "A", false, 40, 2000),
                sample(stamp, "B", false, 40, 4000),
                sample(stamp, "G", true, 40, 9000)),
            Optional.empty());
    LeverReading reading = round.readings().get(Lever.STIFFNESS);
    assertThat(reading.value()).isCloseTo(Math.sqrt(2000.0 * 4000), within(1e-9));
    assertThat(reading.samples()).isEqualTo(2);
    // shares of 1.5 % and 0.75 %, in quadrature, over two
    assertThat(reading.standardError() / reading.value())
        .isCloseTo(Math.hypot(0.015, 0.0075) / 2, within(1e-12));
  }

  /** A golden sample is held against its own earlier fits, not against namesakes before it. */
  @Test
  void goldenSampleIsHeldAgainstItself() {
    RoundHistory earlier =
        RoundHistory.of(
            List.of(
                sample(stamp(1, "m1"), "A", false, 50, 5000),
                request(stamp(1, "m1"), -0.1),
                sample(stamp(2, "m2"), "A", false, 35.0, 2500),
                request(stamp(2, "m2"), -0.1),
                sample(stamp(3, "m3"), "A", true, 35.2, 2500),
                request(stamp(3, "m3"), -0.1)));
    RoundStamp now = stamp(4, "m4");
    List<GoldenDrift> drifts =
        GoldenDrift.all(
            earlier, List.of(sample(now, "A", true, 35.6, 2510), sample(now, "B", false, 1, 1)));
    assertThat(drifts).hasSize(2).allMatch(drift -> drift.rounds() == 2);
    GoldenDrift fs = drifts.get(0);
    assertThat(fs.figure()).isEqualTo(BenchFigure.FS);
    assertThat(fs.earlier()).isCloseTo(35.1, within(1e-12));
    // 0.1 now, 0.1/sqrt(2) before: 1.96 sqrt(0.01 + 0.005) = 0.240
    assertThat(fs.limit95()).isCloseTo(0.2400, within(1e-4));
    assertThat(fs.significant()).isTrue();
    assertThat(drifts.get(1).significant()).isFalse();
  }

  /** Of a sample that has not moved, 5 % of the comparisons are significant at 95 %. */
  @Test
  void restingSampleDriftsInOneOfTwentyCases() {
    Random chance = new Random(5);
    int moved = 0;
    int trials = 4000;
    for (int i = 0; i < trials; i++) {
      List<Finding.Estimate> earlier = new ArrayList<>();
      for (int k = 0; k < 3; k++) {
        double error = 0.05 * (k + 1);
        earlier.add(value(32 + error * chance.nextGaussian(), error));
      }
      Finding.Estimate now = value(32 + 0.1 * chance.nextGaussian(), 0.1);
      moved += GoldenDrift.of("G", BenchFigure.FS, earlier, now).significant() ? 1 : 0;
    }
    // binomial with p = 0.05: 3.5 standard deviations are 1.2 %
    assertThat(moved / (double) trials).isBetween(0.038, 0.062);
  }
}
