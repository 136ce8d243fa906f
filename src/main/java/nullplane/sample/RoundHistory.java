package nullplane.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RequestEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.LedgerEntry.SampleEntry;

/**
 * The rounds of a project so far.
 *
 * @param briefs the briefs that were in use, first things first
 * @param rounds the rounds, by their numbers
 */
public record RoundHistory(List<BriefEntry> briefs, List<ProjectRound> rounds) {
  /** Nothing yet. */
  public static final RoundHistory NONE = new RoundHistory(List.of(), List.of());

  /** Copies the lists and checks that the numbers ascend. */
  public RoundHistory {
    briefs = List.copyOf(briefs);
    rounds = List.copyOf(rounds);
    for (int i = 1; i < rounds.size(); i++) {
      if (rounds.get(i).number() <= rounds.get(i - 1).number()) {
        throw new IllegalArgumentException("rounds of a project must ascend");
      }
    }
  }

  /**
   * Returns the rounds that records tell. Of a round recorded more than once the last run counts;
   * of a sample named twice in it, the last record.
   *
   * @param entries the records in the order in which they were written
   */
  public static RoundHistory of(List<LedgerEntry> entries) {
    List<BriefEntry> briefs = new ArrayList<>();
    SortedMap<Integer, ProjectRound> rounds = new TreeMap<>();
    for (LedgerEntry entry : entries) {
      if (entry instanceof BriefEntry brief) {
        briefs.removeIf(one -> one.digest().equals(brief.digest()));
        briefs.add(brief);
      } else if (entry instanceof SampleEntry sample) {
        ProjectRound round = open(rounds, sample.stamp());
        List<SampleEntry> samples = new ArrayList<>(round.samples());
        samples.removeIf(one -> one.name().equals(sample.name()));
        samples.add(sample);
        rounds.put(
            sample.stamp().round(), new ProjectRound(sample.stamp(), samples, Optional.empty()));
      } else if (entry instanceof RequestEntry end) {
        ProjectRound round = open(rounds, end.stamp());
        rounds.put(
            end.stamp().round(), new ProjectRound(end.stamp(), round.samples(), Optional.of(end)));
      }
    }
    return new RoundHistory(briefs, List.copyOf(rounds.values()));
  }

  /** The round as far as the same run has recorded it. */
  private static ProjectRound open(SortedMap<Integer, ProjectRound> rounds, RoundStamp stamp) {
    ProjectRound known = rounds.get(stamp.round());
    return known != null && known.stamp().equals(stamp)
        ? known
        : new ProjectRound(stamp, List.of(), Optional.empty());
  }

  /** Returns the last round, if there is one. */
  public Optional<ProjectRound> last() {
    return rounds.isEmpty() ? Optional.empty() : Optional.of(rounds.get(rounds.size() - 1));
  }

  /** Returns the round made from measurements of a digest, if there is one. */
  public Optional<ProjectRound> ofMeasurements(String digest) {
    return rounds.stream()
        .filter(round -> round.stamp().measurementsDigest().equals(digest))
        .findFirst();
  }

  /** Returns the rounds before a number. */
  public RoundHistory before(int round) {
    return new RoundHistory(briefs, rounds.stream().filter(one -> one.number() < round).toList());
  }

  /** Returns this history with a round at its end. */
  public RoundHistory with(ProjectRound round) {
    List<ProjectRound> more = new ArrayList<>(rounds);
    more.add(round);
    return new RoundHistory(briefs, more);
  }

  /** Returns this history with a brief in use. */
  public RoundHistory with(BriefEntry brief) {
    List<BriefEntry> more = new ArrayList<>(briefs);
    more.removeIf(one -> one.digest().equals(brief.digest()));
    more.add(brief);
    return new RoundHistory(more, rounds);
  }

  /** Returns the brief of a round, if it is on record. */
  public Optional<BriefEntry> briefOf(ProjectRound round) {
    return briefs.stream()
        .filter(brief -> brief.digest().equals(round.stamp().briefDigest()))
        .findFirst();
  }

  /** Returns the brief that was in use last, if one is on record. */
  public Optional<BriefEntry> brief() {
    Optional<BriefEntry> last = last().flatMap(this::briefOf);
    return last.isPresent() || briefs.isEmpty() ? last : Optional.of(briefs.get(briefs.size() - 1));
  }

  /** Returns what came of every request that a later round followed. */
  public List<MakerMove> moves() {
    List<MakerMove> moves = new ArrayList<>();
    for (int i = 1; i < rounds.size(); i++) {
      ProjectRound before = rounds.get(i - 1);
      ProjectRound after = rounds.get(i);
      before
          .end()
          .filter(end -> !end.asked().levers().isEmpty())
          .ifPresent(
              end ->
                  moves.add(
                      new MakerMove(
                          before.number(),
                          after.number(),
                          end.asked(),
                          end.gains(),
                          before.readings(),
                          after.readings())));
    }
    return moves;
  }
}
