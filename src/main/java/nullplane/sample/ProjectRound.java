package nullplane.sample;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import nullplane.fit.Finding;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;

/**
 * One round of a project: its samples, and what was asked for.
 *
 * @param stamp when it was, and what it was made from
 * @param samples its samples, one or more unless only its end is on record
 * @param end decision and request; empty if the run did not come to its end
 */
public record ProjectRound(
    RoundStamp stamp, List<SampleEntry> samples, Optional<RequestEntry> end) {
  /** Copies the list. */
  public ProjectRound {
    samples = List.copyOf(samples);
  }

  /** Returns the number of the round, from 1. */
  public int number() {
    return stamp.round();
  }

  /** Returns the samples that stand for the maker's work: not the golden ones, unless all are. */
  public List<SampleEntry> judged() {
    List<SampleEntry> judged = samples.stream().filter(sample -> !sample.golden()).toList();
    return judged.isEmpty() ? samples : judged;
  }

  /**
   * Returns the estimates of a figure among the judged samples.
   *
   * @param figure the figure
   */
  public List<Finding.Estimate> estimates(BenchFigure figure) {
    return judged().stream()
        .filter(sample -> sample.values().containsKey(figure))
        .map(sample -> sample.values().get(figure))
        .toList();
  }

  /** Returns what the judged samples show of the part that each lever moves. */
  public Map<Lever, LeverReading> readings() {
    Map<Lever, LeverReading> readings = new EnumMap<>(Lever.class);
    read(readings, Lever.MASS, BenchFigure.MOVING_MASS);
    read(readings, Lever.STIFFNESS, BenchFigure.KMS);
    read(readings, Lever.FLUX, BenchFigure.BL);
    read(readings, Lever.WINDING, BenchFigure.RE);
    double[] rests =
        judged().stream()
            .filter(sample -> sample.restPositionM().isPresent())
            .mapToDouble(sample -> sample.restPositionM().getAsDouble())
            .toArray();
    if (rests.length > 0) {
      double sum = 0;
      for (double rest : rests) {
        sum += rest;
      }
      readings.put(Lever.REST_POSITION, new LeverReading(sum / rests.length, 0, rests.length));
    }
    return readings;
  }

  private void read(Map<Lever, LeverReading> readings, Lever lever, BenchFigure figure) {
    List<Finding.Estimate> found = new ArrayList<>(estimates(figure));
    if (found.isEmpty()) {
      return;
    }
    double logs = 0;
    double variance = 0;
    for (Finding.Estimate estimate : found) {
      logs += Math.log(estimate.value());
      double share = estimate.standardError() / estimate.value();
      variance += share * share;
    }
    double mean = Math.exp(logs / found.size());
    readings.put(
        lever, new LeverReading(mean, mean * Math.sqrt(variance) / found.size(), found.size()));
  }

  /** Returns the records of this round, in the order in which they are written. */
  public List<LedgerEntry> entries() {
    List<LedgerEntry> entries = new ArrayList<>(samples);
    end.ifPresent(entries::add);
    return entries;
  }

  /** Returns whether another round holds the same but for the time. */
  public boolean sameAs(ProjectRound other) {
    return at(other.stamp()).equals(other);
  }

  private ProjectRound at(RoundStamp like) {
    RoundStamp moved = stamp.at(like.time());
    return new ProjectRound(
        moved,
        samples.stream()
            .map(
                s ->
                    new SampleEntry(
                        moved,
                        s.name(),
                        s.golden(),
                        s.mounting(),
                        s.decision(),
                        s.values(),
                        s.restPositionM()))
            .toList(),
        end.map(
            e ->
                new RequestEntry(
                    moved,
                    e.decision(),
                    e.basis(),
                    e.asked(),
                    e.gains(),
                    e.predicted(),
                    e.stillOutside(),
                    e.locked())));
  }
}
