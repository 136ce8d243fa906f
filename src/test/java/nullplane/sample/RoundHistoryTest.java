package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
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

  /** Each lever shows in its own figure; the rest position is the plain mean of those measured. */
  @Test
  void everyLeverIsReadFromItsFigure() {
    RoundStamp stamp = stamp(1, "m");
    ProjectRound round =
        new ProjectRound(
            stamp,
            List.of(
                measured(stamp, "A", false, 0.050, 9, 5, OptionalDouble.of(-0.4e-3)),
                measured(stamp, "B", false, 0.072, 16, 7.2, OptionalDouble.of(1.0e-3)),
                measured(stamp, "C", false, 0.060, 12, 6, OptionalDouble.empty()),
                measured(stamp, "G", true, 1, 1, 1, OptionalDouble.of(9e-3))),
            Optional.empty());
    Map<Lever, LeverReading> readings = round.readings();
    assertThat(readings.get(Lever.MASS).value()).isCloseTo(0.060, within(1e-12));
    assertThat(readings.get(Lever.FLUX).value()).isCloseTo(12, within(1e-12));
    assertThat(readings.get(Lever.WINDING).value()).isCloseTo(6, within(1e-12));
    assertThat(readings).doesNotContainKey(Lever.STIFFNESS);
    LeverReading rest = readings.get(Lever.REST_POSITION);
    assertThat(rest.value()).isCloseTo(0.3e-3, within(1e-15));
    assertThat(rest.samples()).isEqualTo(2);
    assertThat(rest.standardError()).isZero();
    // golden ones stand for themselves where there is nothing else
    ProjectRound golden =
        new ProjectRound(
            stamp,
            List.of(measured(stamp, "G", true, 0.06, 10, 6, OptionalDouble.empty())),
            Optional.empty());
    assertThat(golden.readings().get(Lever.FLUX).value()).isCloseTo(10, within(1e-12));
    assertThat(golden.readings()).doesNotContainKey(Lever.REST_POSITION);
  }

  private static SampleEntry measured(
      RoundStamp stamp,
      String name,
      boolean golden,
      double massKg,
      double bl,
      double re,
      OptionalDouble rest) {
    return new SampleEntry(
        stamp,
        name,
        golden,
        "free air",
        Decision.FAIL,
        Map.of(
            BenchFigure.MOVING_MASS, value(massKg, massKg / 100),
            BenchFigure.BL, value(bl, bl / 100),
            BenchFigure.RE, value(re, re / 100)),
        rest);
  }

  /** The time of a run is all that may differ. */
  @Test
  void roundIsTheSameAtAnotherTime() {
    RoundStamp early = stamp(1, "m");
    RoundStamp late = new RoundStamp(1, Instant.ofEpochSecond(99), "b1", "m", "0.1.0");
    ProjectRound first = round(early, 40, -0.1);
    assertThat(first.sameAs(round(late, 40, -0.1))).isTrue();
    assertThat(first.sameAs(round(late, 41, -0.1))).isFalse();
    assertThat(first.sameAs(round(late, 40, -0.2))).isFalse();
    assertThat(first.sameAs(round(stamp(1, "other"), 40, -0.1))).isFalse();
    assertThat(first.entries())
        .containsExactly(sample(early, "A", false, 40, 3000), request(early, -0.1));
    assertThat(RoundHistory.of(first.entries()).rounds()).containsExactly(first);
  }

  private static ProjectRound round(RoundStamp stamp, double fs, double stiffness) {
    return new ProjectRound(
        stamp,
        List.of(sample(stamp, "A", false, fs, 3000)),
        Optional.of(request(stamp, stiffness)));
  }

  /** Of a sample named twice in a run the last record counts, and of a brief the last too. */
  @Test
  void lastRecordOfANameCounts() {
    RoundStamp stamp = stamp(1, "m1");
    BriefEntry other = new BriefEntry("b2", "Hall", "hall 300", List.of());
    BriefEntry again = new BriefEntry("b1", "Hall again", "hall 300", List.of());
    RoundHistory history =
        RoundHistory.of(
            List.of(
                BRIEF,
                other,
                again,
                sample(stamp, "A", false, 40, 3000),
                sample(stamp, "B", false, 41, 3000),
                sample(stamp, "A", false, 42, 3000),
                sample(stamp(2, "m2"), "A", false, 39, 3000)));
    assertThat(history.briefs()).containsExactly(other, again);
    assertThat(history.rounds().get(0).samples())
        .containsExactly(sample(stamp, "B", false, 41, 3000), sample(stamp, "A", false, 42, 3000));
    assertThat(history.briefOf(history.rounds().get(0))).contains(again);
    assertThat(history.brief()).contains(again);
    assertThat(history.ofMeasurements("m2").orElseThrow().number()).isEqualTo(2);
    assertThat(history.ofMeasurements("m3")).isEmpty();
    assertThat(history.before(2).rounds()).hasSize(1);
    assertThat(history.with(BRIEF).briefs()).containsExactly(other, BRIEF);
    // before any round the last brief is in use
    assertThat(RoundHistory.NONE.brief()).isEmpty();
    assertThat(new RoundHistory(List.of(other, BRIEF), List.of()).brief()).contains(BRIEF);
    // the brief of the last round may not be on record
    assertThat(new RoundHistory(List.of(other), history.rounds()).brief()).contains(other);
  }

  @Test
  void roundMustComeAfterTheLast() {
    RoundHistory known =
        new RoundHistory(
            List.of(BRIEF), List.of(round(stamp(1, "m1"), 40, 0), round(stamp(2, "m2"), 40, 0)));
    assertThat(new OpenRound(known, stamp(3, "m3"), BRIEF).earlier()).isEqualTo(known);
    assertThatThrownBy(() -> new OpenRound(known, stamp(2, "m3"), BRIEF))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new OpenRound(known, stamp(1, "m3"), BRIEF))
        .isInstanceOf(IllegalArgumentException.class);
    // the first round's measurements again are the first round again
    assertThat(OpenRound.next(known, BRIEF, stamp(9, "m1")).stamp().round()).isEqualTo(1);
    assertThat(OpenRound.next(known, BRIEF, stamp(9, "m3")).stamp().round()).isEqualTo(3);
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

  /** Without errors the billionth part of a value is rounding, and more is drift. */
  @Test
  void roundingIsNoDrift() {
    List<Finding.Estimate> earlier = List.of(value(1000, 0));
    assertThat(drift(earlier, 1000 + 9e-7).significant()).isFalse();
    assertThat(drift(earlier, 1000 + 1.1e-6).significant()).isTrue();
    assertThat(drift(earlier, 1000 - 1.1e-6).significant()).isTrue();
    assertThat(drift(earlier, 998).drift()).isCloseTo(-2, within(1e-9));
    assertThatThrownBy(() -> drift(List.of(), 1)).isInstanceOf(IllegalArgumentException.class);
  }

  private static GoldenDrift drift(List<Finding.Estimate> earlier, double now) {
    return GoldenDrift.of("G", BenchFigure.KMS, earlier, value(now, 0));
  }

  /** Weights of 1/0.01 and 1/0.04: (100 x 30 + 25 x 35)/125 = 31; 1/125 + 0.2^2 = 0.048. */
  @Test
  void earlierFitsAreWeightedByTheirCertainty() {
    GoldenDrift drift =
        GoldenDrift.of(
            "G", BenchFigure.FS, List.of(value(30, 0.1), value(35, 0.2)), value(32, 0.2));
    assertThat(drift.earlier()).isCloseTo(31, within(1e-12));
    assertThat(drift.drift()).isCloseTo(1, within(1e-12));
    assertThat(drift.standardError()).isCloseTo(Math.sqrt(0.048), within(1e-12));
    assertThat(drift.rounds()).isEqualTo(2);
  }

  /** A fit that does not tell a figure is left out of that figure's mean. */
  @Test
  void figuresThatWereNotToldAreLeftOut() {
    RoundStamp first = stamp(1, "m1");
    RoundStamp second = stamp(2, "m2");
    RoundHistory earlier =
        RoundHistory.of(
            List.of(
                measured(first, "G", true, 0.06, 10, 6, OptionalDouble.empty()),
                sample(second, "G", true, 32, 3000)));
    List<GoldenDrift> drifts =
        GoldenDrift.all(earlier, List.of(sample(stamp(3, "m3"), "G", true, 32, 3000)));
    assertThat(drifts)
        .extracting(GoldenDrift::figure)
        .containsExactly(BenchFigure.FS, BenchFigure.KMS);
    assertThat(drifts).allMatch(one -> one.rounds() == 1);
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
