package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import nullplane.sample.LedgerEntry.SampleEntry;
import org.apache.commons.math3.util.FastMath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Programs that add to a ledger are killed at random moments: no record that was finished is lost,
 * and no torn one goes unreported. More kills with -Dnullplane.kills=300.
 */
class LedgerKillIT {
  private static final int KILLS = Integer.getInteger("nullplane.kills", 30);
  private static final int ENDLESS = 100_000;
  private static final int PATIENCE_MS = 30_000;

  @TempDir private Path parent;

  /** Where the classes are that the child needs, however the tests were started. */
  private static String classPath() {
    return Stream.of(
            LedgerChild.class,
            RoundLedger.class,
            ObjectMapper.class,
            JsonFactory.class,
            JsonCreator.class,
            FastMath.class)
        .map(type -> type.getProtectionDomain().getCodeSource().getLocation())
        .map(place -> Path.of(URI.create(place.toString())).toString())
        .distinct()
        .collect(Collectors.joining(File.pathSeparator));
  }

  private static Process start(Path folder, Path out, Path err, int from, int count)
      throws IOException {
    Files.write(out, new byte[0]);
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xshare:auto",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            classPath(),
            LedgerChild.class.getName(),
            folder.toString(),
            Integer.toString(from),
            Integer.toString(count))
        .redirectOutput(out.toFile())
        .redirectError(ProcessBuilder.Redirect.appendTo(err.toFile()))
        .start();
  }

  @Test
  void killsLoseNoFinishedRecordAndLeaveNoTornOneUnreported() throws Exception {
    Path folder = parent.resolve("ledger");
    Path file = folder.resolve(RoundLedger.FILE_NAME);
    Path err = parent.resolve("err.txt");
    Random chance = new Random(20_261_125);
    Set<Integer> finished = new HashSet<>();
    int tornByHand = 0;
    int next = 1;
    for (int kill = 0; kill < KILLS; kill++) {
      boolean tear = kill % 2 == 1 && Files.exists(file);
      if (tear) {
        // as a crash of the machine or a full disk leaves it: part of a record at the end
        byte[] line = LedgerLine.of(LedgerJson.of(ENDLESS + kill, LedgerRecords.sample(1)));
        int length = 1 + chance.nextInt(line.length - 2);
        Files.write(file, Arrays.copyOf(line, length), StandardOpenOption.APPEND);
        tornByHand++;
      }
      Path out = parent.resolve("out-" + kill + ".txt");
      Process child = start(folder, out, err, next, ENDLESS);
      // some while they add records, some as soon as they meet the torn end
      String sign = tear ? "ready" : "done";
      for (int wait = 0; wait < PATIENCE_MS && !Files.readString(out).contains(sign); wait++) {
        Thread.sleep(1);
      }
      Thread.sleep(chance.nextInt(tear ? 500 : 60));
      child.destroyForcibly();
      assertThat(child.waitFor(30, TimeUnit.SECONDS)).isTrue();
      for (String line : Files.readString(out).split("\n", -1)) {
        if (line.matches("done \\d+;")) { // the last line itself may be cut
          finished.add(Integer.parseInt(line.substring(5, line.length() - 1)));
        }
      }
      assertThat(child.exitValue()).as("killed, not ended").isEqualTo(137);
      Files.write(err, List.of(""), StandardOpenOption.APPEND, StandardOpenOption.CREATE);
      next = finished.stream().mapToInt(i -> i).max().orElse(0) + 1_000;
    }
    List<String> told = new ArrayList<>(Files.readAllLines(err));
    LedgerContents contents = new RoundLedger(folder, told::add).open();
    Set<Integer> kept = new HashSet<>();
    contents.entries().forEach(entry -> kept.add(((SampleEntry) entry).stamp().round()));
    assertThat(finished)
        .as("records finished before %d kills", KILLS)
        .hasSizeGreaterThanOrEqualTo(KILLS / 2);
    assertThat(kept).containsAll(finished);
    assertThat(contents.faults()).isEmpty();
    long reports = told.stream().filter(line -> line.contains("was cut off")).count();
    assertThat(reports).as("torn lines told").isGreaterThanOrEqualTo(tornByHand);
    assertThat(contents.tornFrom()).isLessThanOrEqualTo(contents.length());
    assertThat(new RoundLedger(folder, line -> {}).read().tornFrom()).isEqualTo(Files.size(file));
    // everything else on standard error would be a fault of the child
    assertThat(told).allMatch(line -> line.isEmpty() || line.contains("was cut off"));
    System.out.printf(
        java.util.Locale.ROOT,
        "%d kills: %d records finished, %d kept, %d torn by hand, %d reports%n",
        KILLS,
        finished.size(),
        kept.size(),
        tornByHand,
        reports);
  }

  @Test
  void twoWritersAtOnceLoseNothing() throws Exception {
    Path folder = parent.resolve("shared");
    Path err = parent.resolve("err.txt");
    Process first = start(folder, parent.resolve("out-1.txt"), err, 1, 25);
    Process second = start(folder, parent.resolve("out-2.txt"), err, 101, 25);
    for (Process child : List.of(first, second)) {
      assertThat(child.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(child.exitValue()).isZero();
    }
    List<String> told = new ArrayList<>();
    LedgerContents contents = new RoundLedger(folder, told::add).read();
    assertThat(told).isEmpty();
    assertThat(Files.readString(err)).isEmpty();
    assertThat(contents.lastSequence()).isEqualTo(50);
    Set<Integer> rounds = new HashSet<>();
    contents.entries().forEach(entry -> rounds.add(((SampleEntry) entry).stamp().round()));
    assertThat(rounds).hasSize(50);
  }
}
