package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import nullplane.io.WholeRun;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The jar on a machine that fails: killed processes, full and read-only disks, a damaged cache, a
 * clock that jumps, two runs for one place. What stands in a result folder is always a whole run.
 * The profile {@code faults} raises the numbers from {@link #FEW} to hundreds.
 */
@DisabledOnOs(OS.WINDOWS)
class FaultsIT {
  private static final int FEW = 3;
  private static final int TIMES = Integer.getInteger("nullplane.faults", FEW);
  private static final long PATIENCE_S = 120;
  private static final List<String> DESIGN =
      List.of("design", "one-woofer.yaml", "--evaluations", "1000", "--out", "out/design");
  private static final List<String> DATASHEET =
      List.of("datasheet", "woofer.yaml", "--out", "out/datasheet");
  private static final List<String> COMPARE =
      List.of("compare", "one-woofer.yaml", "woofer.yaml", "other.yaml", "--out", "out/compare");
  private static final List<String> JUDGE =
      List.of(
          "judge",
          "one-woofer.yaml",
          "--woofers",
          "woofer.yaml",
          "--evaluations",
          "0",
          "--out",
          "out/judge");

  private static final String WOOFER =
      """
      name: Sample A
      nominal: 300 mm
      effective-diameter: 260 mm
      re: 5.6 ohm
      fs: 31 Hz
      qms: 5.2
      qes: 0.85
      mms: 78 g
      travel: 8 mm
      le: 0.9 mH
      power: 150 W
      """;

  @TempDir private static Path folder;
  private static final List<String> COUNTS = new ArrayList<>();
  private static byte[] ranking;
  private static long bytesOfAll;

  /** What a run gave. */
  private record Ended(int exit, String out, String err) {}

  @BeforeAll
  static void goodRunsOfEveryCommand() throws Exception {
    Files.writeString(folder.resolve("one-woofer.yaml"), CliSpecs.ONE_WOOFER);
    Files.writeString(folder.resolve("woofer.yaml"), WOOFER);
    Files.writeString(
        folder.resolve("other.yaml"), WOOFER.replace("31 Hz", "36 Hz").replace(" A", " B"));
    for (List<String> command : List.of(DESIGN, DATASHEET)) {
      assertThat(run(command).exit()).isZero();
    }
    ranking = Files.readAllBytes(out(DESIGN).resolve("ranking.json"));
    try (Stream<Path> all = Files.walk(out(DESIGN))) {
      bytesOfAll = all.filter(Files::isRegularFile).mapToLong(file -> file.toFile().length()).sum();
    }
  }

  @AfterAll
  static void tellTheCounts() {
    COUNTS.forEach(line -> System.out.println("faults: " + line));
  }

  @Test
  void aKillAtAnyMomentLeavesWholeRunsOnly() throws Exception {
    List<List<String>> commands =
        TIMES > FEW
            ? List.of(DESIGN, DATASHEET, COMPARE, JUDGE, DESIGN)
            : List.of(DESIGN, DATASHEET);
    Random random = new Random(3);
    double[] seconds = new double[commands.size()];
    int before = 0;
    int told = 0;
    for (int kill = 0; kill < TIMES; kill++) {
      int which = kill % commands.size();
      List<String> command = commands.get(which);
      if (seconds[which] == 0) {
        long start = System.nanoTime();
        assertThat(run(command).exit()).isZero();
        seconds[which] = (System.nanoTime() - start) / 1e9;
      }
      Process process = start(List.of(), command, "killed");
      boolean ended =
          process.waitFor(
              (long) (1e6 * seconds[which] * random.nextDouble()), TimeUnit.MICROSECONDS);
      process.toHandle().destroyForcibly();
      assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
      before += ended ? 0 : 1;
      if (Files.exists(out(command))) {
        WholeRun.require(out(command));
      }
    }
    for (List<String> command : commands.stream().distinct().toList()) {
      boolean left =
          hidden().stream()
              .anyMatch(name -> name.startsWith("." + out(command).getFileName() + ".part-"));
      Ended next = run(command);
      assertThat(next.exit()).as(next.err()).isZero();
      assertThat(next.err().contains("what it left is removed")).isEqualTo(left);
      told += left ? 1 : 0;
      WholeRun.require(out(command));
    }
    assertThat(hidden()).isEmpty();
    assertThat(Files.readAllBytes(out(DESIGN).resolve("ranking.json"))).isEqualTo(ranking);
    COUNTS.add(TIMES + " kills of commands (" + before + " before the end); nothing half written");
    assertThat(told).isBetween(0, commands.size());
  }

  /** The shell's limit on the size of files stops writes as a full disk does, for every user. */
  @Test
  void writesThatEndTooEarlyAreToldAndTheEarlierRunStays() throws Exception {
    Random random = new Random(5);
    int times = Math.max(2, TIMES / 10);
    for (int i = 0; i < times; i++) {
      int blocks = 1 + random.nextInt(40);
      Ended ended =
          run(List.of("bash", "-c", "ulimit -f " + blocks + "; exec \"$@\"", "x"), DESIGN);
      assertThat(ended.exit()).as(ended.err()).isEqualTo(5);
      assertThat(ended.err().lines().filter(line -> line.startsWith("nullplane: cannot write")))
          .hasSize(1);
      WholeRun.require(out(DESIGN));
      assertThat(hidden()).isEmpty();
    }
    COUNTS.add(times + " writes cut by a limit on the size of files; the earlier run stayed");
  }

  @Test
  void aFullDiskIsToldAndTheEarlierRunStays() throws Exception {
    Random random = new Random(7);
    int times = Math.max(1, TIMES / 10);
    int full = 0;
    for (int i = 0; i < times; i++) {
      // The first run takes the place; what is left is too little for a second one beside it.
      long bytes = bytesOfAll * 5 / 4 + random.nextInt((int) (bytesOfAll / 4)) + 65536;
      try (Disk disk = Disk.of(folder, bytes)) {
        List<String> there = withOut(DESIGN, disk.path().resolve("out").toString());
        assertThat(run(there).exit()).isZero();
        Ended second = run(there);
        assertThat(second.exit()).as(second.err()).isEqualTo(5);
        assertThat(second.err()).contains("No space left on device");
        WholeRun.require(disk.path().resolve("out"));
        try (Stream<Path> all = Files.list(disk.path())) {
          assertThat(all).hasSize(1);
        }
        full++;
      }
    }
    COUNTS.add(full + " full disks; the earlier run stayed");
  }

  @Test
  void aFullCacheIsToldAndTheRunGoesOn() throws Exception {
    try (Disk disk = Disk.of(folder, 4096)) {
      Files.write(disk.path().resolve("full"), new byte[4096]);
      Ended ended = run(List.of("env", "XDG_CACHE_HOME=" + disk.path()), DESIGN);
      assertThat(ended.exit()).as(ended.err()).isZero();
      assertThat(ended.err()).contains("cannot keep panel acoustics in the cache");
      assertThat(Files.readAllBytes(out(DESIGN).resolve("ranking.json"))).isEqualTo(ranking);
    }
  }

  @Test
  void aDiskThatCanOnlyBeReadIsToldAtOnce() throws Exception {
    try (Disk disk = Disk.of(folder, bytesOfAll * 2)) {
      disk.readOnly();
      Ended ended = run(withOut(DESIGN, disk.path().resolve("out").toString()));
      assertThat(ended.exit()).as(ended.err()).isEqualTo(5);
      assertThat(ended.err().lines().toList()).hasSize(1);
      assertThat(ended.err()).contains("cannot write").contains("Read-only file system");
    }
  }

  @Test
  void aDamagedCacheIsToldAndSolvedAnew() throws Exception {
    Random random = new Random(9);
    int times = Math.max(2, TIMES / 5);
    for (int i = 0; i < times; i++) {
      Path entry = cacheEntries().get(0);
      byte[] bytes = Files.readAllBytes(entry);
      if (i % 2 == 0) {
        Files.write(entry, Arrays.copyOf(bytes, random.nextInt(bytes.length)));
      } else {
        bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        Files.write(entry, bytes);
      }
      Ended ended = run(DESIGN);
      assertThat(ended.exit()).as(ended.err()).isZero();
      assertThat(ended.err()).contains("is damaged").contains("computing it again");
      assertThat(Files.readAllBytes(out(DESIGN).resolve("ranking.json"))).isEqualTo(ranking);
    }
    COUNTS.add(times + " damaged cache files; each was told, the results were the same");
  }

  @Test
  void aClockThatJumpedChangesNothing() throws Exception {
    for (Duration jump : List.of(Duration.ofDays(-20_000), Duration.ofDays(20_000))) {
      for (Path entry : cacheEntries()) {
        Files.setLastModifiedTime(entry, FileTime.from(Instant.now().plus(jump)));
      }
      Ended ended = run(DESIGN);
      assertThat(ended.exit()).as(ended.err()).isZero();
      assertThat(ended.err()).doesNotContain("cache");
      assertThat(Files.readAllBytes(out(DESIGN).resolve("ranking.json"))).isEqualTo(ranking);
    }
  }

  @Test
  void twoRunsForOnePlaceDoNotMix() throws Exception {
    Process first = start(List.of(), DESIGN, "first");
    while (first.isAlive() && hidden().stream().noneMatch(name -> name.contains(".part-"))) {
      Thread.sleep(5);
    }
    Ended second = run(DESIGN);
    assertThat(first.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
    assertThat(first.exitValue()).as(Files.readString(folder.resolve("first.err"))).isZero();
    assertThat(second.exit()).as(second.err()).isEqualTo(5);
    assertThat(second.err().lines().toList()).hasSize(1);
    assertThat(second.err())
        .contains("another run (process " + first.pid() + ") is about to write it");
    WholeRun.require(out(DESIGN));
    assertThat(hidden()).isEmpty();
  }

  /** A small disk of its own, which only the superuser can make. */
  private record Disk(Path path) implements AutoCloseable {
    static Disk of(Path folder, long bytes) throws Exception {
      Path place = Files.createTempDirectory(folder, "disk");
      boolean made =
          call("mount", "-t", "tmpfs", "-o", "size=" + bytes, "tmpfs", place.toString()) == 0;
      assumeThat(made).as("whether this user may mount a small disk").isTrue();
      return new Disk(place);
    }

    void readOnly() throws Exception {
      assertThat(call("mount", "-o", "remount,ro", path.toString())).isZero();
    }

    @Override
    public void close() throws Exception {
      assertThat(call("umount", path.toString())).isZero();
      Files.delete(path);
    }

    private static int call(String... words) throws Exception {
      try {
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        process.getInputStream().readAllBytes();
        return process.waitFor();
      } catch (IOException e) {
        return -1; // no such command here
      }
    }
  }

  private static Path out(List<String> command) {
    return folder.resolve(command.get(command.indexOf("--out") + 1));
  }

  /** A search that was cut off goes on, to the bytes of one that nothing disturbed. */
  @Test
  void aDesignThatIsCutOffGoesOn() throws Exception {
    List<String> longer = new ArrayList<>(withOut(DESIGN, "out/long"));
    longer.set(longer.indexOf("--evaluations") + 1, "12000");
    List<String> undisturbed = new ArrayList<>(withOut(longer, "out/undisturbed"));
    undisturbed.add("--no-cache");
    assertThat(run(undisturbed).exit()).isZero();
    Process process = start(List.of(), longer, "killed");
    long patience = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
    while (states().isEmpty() && process.isAlive() && System.nanoTime() < patience) {
      Thread.sleep(5);
    }
    process.toHandle().destroyForcibly();
    assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
    assertThat(states()).as("a state is kept before the run ends").isNotEmpty();
    Ended next = run(longer);
    assertThat(next.exit()).as(next.err()).isZero();
    assertThat(next.err()).contains("going on with a search that was cut off");
    assertThat(Files.readAllBytes(out(longer).resolve("ranking.json")))
        .isEqualTo(Files.readAllBytes(out(undisturbed).resolve("ranking.json")));
    assertThat(states()).isEmpty();
  }

  private static List<Path> states() throws IOException {
    return cacheEntries().stream().filter(file -> file.toString().endsWith(".search")).toList();
  }

  private static List<String> withOut(List<String> command, String place) {
    List<String> words = new ArrayList<>(command);
    words.set(words.indexOf("--out") + 1, place);
    return words;
  }

  private static List<Path> cacheEntries() throws IOException {
    try (Stream<Path> all = Files.walk(folder.resolve("cache"))) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }

  /** Names that begin with a point where results go. */
  private static List<String> hidden() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("out"))) {
      return all.map(file -> file.getFileName().toString())
          .filter(name -> name.startsWith("."))
          .toList();
    }
  }

  private static Ended run(List<String> words) throws Exception {
    return run(List.of(), words);
  }

  private static Ended run(List<String> before, List<String> words) throws Exception {
    Process process = start(before, words, "run");
    try {
      assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
    } finally {
      process.destroyForcibly();
    }
    return new Ended(
        process.exitValue(),
        Files.readString(folder.resolve("run.out")),
        Files.readString(folder.resolve("run.err")));
  }

  private static Process start(List<String> before, List<String> words, String name)
      throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:-UsePerfData", "-jar"));
    command.add(System.getProperty("nullplane.jar"));
    command.addAll(words);
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(folder.resolve(name + ".out").toFile())
            .redirectError(folder.resolve(name + ".err").toFile());
    builder.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
    Process process = builder.start();
    process.getOutputStream().close();
    return process;
  }
}
