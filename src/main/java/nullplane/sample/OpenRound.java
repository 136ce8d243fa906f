package nullplane.sample;

import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RoundStamp;

/**
 * The round of a project that is being judged.
 *
 * @param earlier the rounds before it
 * @param stamp what its records will bear
 * @param brief the brief it is held against
 */
public record OpenRound(RoundHistory earlier, RoundStamp stamp, BriefEntry brief) {
  /** Checks that the earlier rounds are earlier. */
  public OpenRound {
    if (earlier.last().map(last -> last.number() >= stamp.round()).orElse(false)) {
      throw new IllegalArgumentException("round " + stamp.round() + " is not after the last one");
    }
  }

  /**
   * Opens the next round of a project, or the one that these measurements were recorded as before.
   *
   * @param known the rounds on record
   * @param brief the brief
   * @param stamp what its records will bear; the number is replaced
   */
  public static OpenRound next(RoundHistory known, BriefEntry brief, RoundStamp stamp) {
    int round =
        known
            .ofMeasurements(stamp.measurementsDigest())
            .or(known::last)
            .map(
                last ->
                    last.stamp().measurementsDigest().equals(stamp.measurementsDigest())
                        ? last.number()
                        : last.number() + 1)
            .orElse(1);
    return of(known, brief, stamp, round);
  }

  /**
   * Opens a round of a given number.
   *
   * @param known the rounds on record
   * @param brief the brief
   * @param stamp what its records will bear; the number is replaced
   * @param round the number, at most one above the last on record
   */
  public static OpenRound of(RoundHistory known, BriefEntry brief, RoundStamp stamp, int round) {
    return new OpenRound(
        known.before(round),
        new RoundStamp(
            round, stamp.time(), stamp.briefDigest(), stamp.measurementsDigest(), stamp.version()),
        brief);
  }
}
