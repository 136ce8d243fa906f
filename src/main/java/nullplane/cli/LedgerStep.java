package nullplane.cli;

import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import nullplane.io.LedgerContents;
import nullplane.io.ReadBrief;
import nullplane.io.ReadMeasurements;
import nullplane.io.RoundLedger;
import nullplane.sample.LedgerEntry;
import nullplane.sample.LedgerEntry.BriefEntry;
import nullplane.sample.LedgerEntry.RoundStamp;
import nullplane.sample.OpenRound;
import nullplane.sample.ProjectRound;
import nullplane.sample.ProjectStory;
import nullplane.sample.RoundHistory;
import nullplane.sample.SampleOutcome;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** The round of a project that a run of sample adds to the project's ledger. */
final class LedgerStep {
  private final RoundLedger ledger;
  private final LedgerContents known;
  private final OpenRound open;
  private final boolean closed;

  private LedgerStep(RoundLedger ledger, LedgerContents known, OpenRound open, boolean closed) {
    this.ledger = ledger;
    this.known = known;
    this.open = open;
    this.closed = closed;
  }

  /**
   * Reads a ledger and opens its next round.
   *
   * @param folder the ledger's folder; it need not be there yet
   * @param brief the brief
   * @param samples the measurements
   * @param run the run, whose start the round is stamped with
   * @param number number of the round, if the user says so
   * @param line the command line, to complain about
   */
  static LedgerStep of(
      Path folder,
      ReadBrief brief,
      ReadMeasurements samples,
      CliRun run,
      OptionalInt number,
      CommandLine line) {
    RoundLedger ledger = new RoundLedger(folder, run::tell);
    LedgerContents known = ledger.open();
    RoundHistory history = known.history();
    int last = history.last().map(ProjectRound::number).orElse(0);
    RoundStamp stamp =
        new RoundStamp(
            1,
            run.started().truncatedTo(ChronoUnit.SECONDS),
            brief.digest(),
            samples.digest(),
            ProgramVersion.text());
    BriefEntry entry =
        new BriefEntry(
            brief.digest(), brief.brief().title(), brief.brief().name(), brief.brief().values());
    if (number.isPresent()) {
      int wanted = number.getAsInt();
      if (wanted < Math.max(1, last) || wanted > last + 1) {
        throw new ParameterException(
            line,
            "--round is "
                + wanted
                + "; allowed: "
                + (last == 0 ? "1" : last + " (again) or " + (last + 1) + " (the next)"));
      }
      return new LedgerStep(ledger, known, OpenRound.of(history, entry, stamp, wanted), false);
    }
    OpenRound open = OpenRound.next(history, entry, stamp);
    return new LedgerStep(ledger, known, open, open.stamp().round() < last);
  }

  /** Returns the round. */
  OpenRound open() {
    return open;
  }

  /** Returns what has to be said about the round, one sentence each. */
  List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (closed) {
      notes.add(
          "These measurements are those of round "
              + open.stamp().round()
              + " of the ledger, and later rounds follow it: nothing is added.");
    }
    for (ProjectRound round : open.earlier().rounds()) {
      if (round.end().isEmpty()) {
        notes.add(
            "Round "
                + round.number()
                + " of the ledger did not come to its end: what was asked for in it is not known.");
      }
    }
    return notes;
  }

  /**
   * Adds the round to the ledger, unless it stands there already.
   *
   * @param outcome what came of it
   */
  void record(SampleOutcome outcome) {
    Optional<ProjectRound> made =
        outcome.story().map(ProjectStory::history).flatMap(RoundHistory::last);
    if (closed || made.isEmpty()) {
      return;
    }
    RoundHistory history = known.history();
    ProjectRound round = made.orElseThrow();
    boolean recorded =
        history.last().map(last -> last.end().isPresent() && last.sameAs(round)).orElse(false);
    if (recorded) {
      return;
    }
    List<LedgerEntry> entries = new ArrayList<>();
    boolean newBrief =
        history.briefs().stream().noneMatch(brief -> brief.digest().equals(open.brief().digest()));
    if (newBrief) {
      entries.add(open.brief());
    }
    entries.addAll(round.entries());
    ledger.append(entries, known);
  }
}
