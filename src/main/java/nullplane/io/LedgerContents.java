package nullplane.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import nullplane.sample.LedgerEntry;
import nullplane.sample.RoundHistory;

/**
 * What a ledger holds.
 *
 * @param entries the records that are whole, in the order of the file
 * @param lastSequence the highest number of a record; 0 if there is none
 * @param faults one line for each record that is damaged, unknown, missing or there twice
 * @param length length of the file (bytes)
 * @param tornFrom where a line starts that was cut off (bytes); the length if none was
 * @param tornLine its number, from 1
 * @param unended whether the last record is whole but for its line feed
 * @param digest SHA-256 of the file, hexadecimal
 */
public record LedgerContents(
    List<LedgerEntry> entries,
    long lastSequence,
    List<String> faults,
    long length,
    long tornFrom,
    int tornLine,
    boolean unended,
    String digest) {
  /** A ledger that is not there yet. */
  public static final LedgerContents NONE =
      new LedgerContents(List.of(), 0, List.of(), 0, 0, 0, false, Sha256.hex(new byte[0]));

  /** Copies the lists. */
  public LedgerContents {
    entries = List.copyOf(entries);
    faults = List.copyOf(faults);
  }

  /** Returns the rounds on record. */
  public RoundHistory history() {
    return RoundHistory.of(entries);
  }

  /** What is known while the lines are gone through. */
  private static final class Scan {
    final List<LedgerEntry> entries = new ArrayList<>();
    final List<String> faults = new ArrayList<>();
    final String name;
    long last;
    int damagedSince;

    Scan(String name) {
      this.name = name;
    }

    void line(byte[] bytes, int from, int to, int number) {
      Optional<byte[]> object = LedgerLine.object(bytes, from, to);
      if (object.isEmpty()) {
        damagedSince++;
        fault(number, "this record is damaged, its checksum does not match; it is not used");
        return;
      }
      Optional<LedgerReader.Numbered> read = LedgerReader.read(object.orElseThrow());
      if (read.isEmpty()) {
        damagedSince++;
        fault(number, "this record is of a form that this version does not know; it is not used");
        return;
      }
      long sequence = read.orElseThrow().sequence();
      if (sequence <= last) {
        fault(
            number,
            "record " + sequence + " stands after record " + last + "; it is used as it stands");
      } else if (sequence - last - 1 > damagedSince) {
        fault(
            number,
            (sequence - last - 1 - damagedSince) + " record(s) are missing before this one");
      }
      last = Math.max(last, sequence);
      damagedSince = 0;
      entries.add(read.orElseThrow().entry());
    }

    private void fault(int number, String problem) {
      faults.add(name + ":" + number + ": " + problem);
    }
  }

  /**
   * Returns what bytes hold.
   *
   * @param bytes the whole file
   * @param name the file as the user named it
   */
  static LedgerContents of(byte[] bytes, String name) {
    Scan scan = new Scan(name);
    int from = 0;
    int number = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        scan.line(bytes, from, i, ++number);
        from = i + 1;
      }
    }
    boolean unended =
        from < bytes.length && LedgerLine.object(bytes, from, bytes.length).isPresent();
    if (unended) {
      scan.line(bytes, from, bytes.length, number + 1);
      from = bytes.length;
    }
    return new LedgerContents(
        scan.entries,
        scan.last,
        scan.faults,
        bytes.length,
        from,
        number + 1,
        unended,
        Sha256.hex(bytes));
  }
}
