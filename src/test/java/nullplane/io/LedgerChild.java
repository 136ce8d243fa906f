package nullplane.io;

import java.nio.file.Path;
import java.util.List;
import nullplane.faults.OutputException;

/** A program of its own that adds records to a ledger until it has added enough or is killed. */
final class LedgerChild {
  private LedgerChild() {}

  /**
   * Arguments: folder, number of the first record, number of records. Says each when it is done.
   */
  public static void main(String[] words) {
    RoundLedger ledger =
        new RoundLedger(Path.of(words[0]), told -> System.err.println("told: " + told));
    int from = Integer.parseInt(words[1]);
    int count = Integer.parseInt(words[2]);
    System.out.println("ready");
    for (int i = from; i < from + count; i++) {
      boolean done = false;
      while (!done) {
        LedgerContents known = ledger.open();
        try {
          ledger.append(List.of(LedgerRecords.sample(i)), known);
          done = true;
        } catch (OutputException e) {
          if (!String.valueOf(e.getMessage()).contains("in the meantime")) {
            throw e;
          }
        }
      }
      System.out.println("done " + i + ";");
    }
  }
}
