package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import nullplane.faults.InvalidInputException;
import nullplane.faults.OutputException;
import nullplane.sample.LedgerEntry;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RoundLedgerTest {
  private static final List<LedgerEntry> RECORDS = LedgerRecords.rounds(2);

  @TempDir private Path parent;
  private Path folder;
  private Path file;
  private final List<String> told = new ArrayList<>();

  @BeforeEach
  void name() {
    folder = parent.resolve("hall");
    file = folder.resolve(RoundLedger.FILE_NAME);
  }

  private RoundLedger ledger() {
    return new RoundLedger(folder, told::add);
  }

  private byte[] written() throws Exception {
    RoundLedger ledger = ledger();
    ledger.append(RECORDS, ledger.open());
    return Files.readAllBytes(file);
  }

  @Test
  void whatIsAddedIsReadBack() throws Exception {
    byte[] bytes = written();
    LedgerContents contents = ledger().read();
    assertThat(contents.entries()).isEqualTo(RECORDS);
    assertThat(contents.lastSequence()).isEqualTo(5);
    ledger().append(List.of(LedgerRecords.sample(3)), contents);
    assertThat(Files.readAllBytes(file)).startsWith(bytes);
    assertThat(ledger().read().entries()).hasSize(6).last().isEqualTo(LedgerRecords.sample(3));
    assertThat(told).isEmpty();
  }

  /**
   * The Castagnoli checksum of "123456789" is e3069283 (RFC 3720, appendix B.4 by its polynomial).
   */
  @Test
  void checksumIsThatOfAllBytesBeforeIt() throws Exception {
    CRC32C check = new CRC32C();
    check.update("123456789".getBytes(StandardCharsets.US_ASCII));
    assertThat(check.getValue()).isEqualTo(0xe3069283L);
    written();
    for (String line : Files.readAllLines(file)) {
      int at = line.indexOf(",\"crc32c\":\"");
      CRC32C sum = new CRC32C();
      sum.update(line.substring(0, at).getBytes(StandardCharsets.UTF_8));
      assertThat(line.substring(at))
          .isEqualTo(String.format(",\"crc32c\":\"%08x\"}", sum.getValue()));
    }
  }

  /** Whatever the length at which the file was cut: no whole record is lost, no torn one silent. */
  @Test
  void everyCutIsToldAndSetAside() throws Exception {
    byte[] bytes = written();
    String text = Files.readString(file);
    List<Integer> ends = new ArrayList<>();
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        ends.add(i + 1);
      }
    }
    for (int length = 0; length <= bytes.length; length++) {
      int cut = length;
      if (length % 41 != 0 && ends.stream().noneMatch(end -> Math.abs(end - cut) <= 3)) {
        continue; // each costs some flushes to the disk
      }
      Files.write(file, Arrays.copyOf(bytes, length));
      told.clear();
      LedgerContents contents = ledger().open();
      // a record is whole once all but its line feed is there
      int whole = (int) ends.stream().filter(end -> end - 1 <= cut).count();
      assertThat(contents.entries()).as("cut at %d", length).isEqualTo(RECORDS.subList(0, whole));
      int start = whole == 0 ? 0 : ends.get(whole - 1);
      if (length > start) {
        assertThat(told).as("cut at %d", length).hasSize(1);
        assertThat(told.get(0))
            .contains(RoundLedger.FILE_NAME + ":" + (whole + 1) + ": the last record was cut off")
            .contains("set aside in torn-1.txt");
        assertThat(Files.readAllBytes(folder.resolve("torn-1.txt")))
            .isEqualTo(Arrays.copyOfRange(bytes, start, length));
        Files.delete(folder.resolve("torn-1.txt"));
      } else {
        assertThat(told).as("cut at %d", length).isEmpty();
      }
      // what follows goes to a clean end
      List<LedgerEntry> rest = RECORDS.subList(whole, RECORDS.size());
      if (!rest.isEmpty()) {
        ledger().append(rest, contents);
        assertThat(Files.readString(file)).isEqualTo(text);
      }
    }
  }

  @Test
  void readingTellsATornLineAndLeavesIt() throws Exception {
    byte[] bytes = Arrays.copyOf(written(), 200);
    Files.write(file, bytes);
    ledger().read();
    assertThat(told).hasSize(1);
    assertThat(told.get(0)).contains("passed over");
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  /**
   * Every single wrong byte within a line is found, told with its line, and costs that line only.
   */
  @Test
  void damagedRecordIsToldWithItsLine() throws Exception {
    byte[] bytes = written();
    int lineStart = new String(bytes, StandardCharsets.ISO_8859_1).indexOf('\n') + 1;
    int lineEnd = new String(bytes, StandardCharsets.ISO_8859_1).indexOf('\n', lineStart);
    for (int i = lineStart; i < lineEnd; i++) {
      byte[] damaged = bytes.clone();
      damaged[i] ^= 0x04;
      Files.write(file, damaged);
      told.clear();
      LedgerContents contents = ledger().read();
      assertThat(told)
          .as("byte %d", i)
          .anyMatch(line -> line.contains(":2: this record is damaged"));
      assertThat(contents.entries()).contains(RECORDS.get(0)).containsAll(RECORDS.subList(2, 5));
    }
  }

  @Test
  void missingRepeatedAndUnknownRecordsAreTold() throws Exception {
    written();
    List<String> lines = Files.readAllLines(file);
    Files.write(file, List.of(lines.get(0), lines.get(3), lines.get(1), lines.get(4)));
    assertThat(ledger().read().entries()).hasSize(4);
    assertThat(told)
        .anyMatch(line -> line.contains(":2: 2 record(s) are missing before this one"))
        .anyMatch(line -> line.contains(":3: record 2 stands after record 4"));
    told.clear();
    byte[] later =
        LedgerLine.of(
            "{\"seq\":6,\"format\":9,\"kind\":\"sample\"}".getBytes(StandardCharsets.UTF_8));
    Files.write(file, lines);
    Files.write(file, later, java.nio.file.StandardOpenOption.APPEND);
    assertThat(ledger().read().entries()).hasSize(5);
    assertThat(told).singleElement().asString().contains(":6: this record is of a form");
  }

  @Test
  void aRoundAddedMeanwhileIsNotPassedOver() throws Exception {
    written();
    LedgerContents known = ledger().open();
    ledger().append(List.of(LedgerRecords.sample(3)), known);
    byte[] bytes = Files.readAllBytes(file);
    assertThatThrownBy(() -> ledger().append(List.of(LedgerRecords.sample(4)), known))
        .isInstanceOf(OutputException.class)
        .hasMessageContaining("another run added a round in the meantime");
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
  }

  @Test
  void whatIsNoLedgerIsSaid() throws Exception {
    assertThatThrownBy(() -> ledger().read())
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining("no ledger of rounds");
    assertThat(ledger().open()).isEqualTo(LedgerContents.NONE);
    assertThat(folder).doesNotExist();
    Files.writeString(folder, "a file");
    assertThatThrownBy(() -> ledger().open()).isInstanceOf(OutputException.class);
  }
}
