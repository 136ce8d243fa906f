package nullplane.io;

import static nullplane.io.KeptSolutions.KEY;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import nullplane.acoustics.ComplexMatrix;
import nullplane.acoustics.PanelSolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PanelCacheTest {
  private static final int DIGEST_BYTES = 32;
  private static final int COUNT_AT = 8 + 32;
  private static final int SHAPE_AT = COUNT_AT + 4 + 16;

  private final List<String> notices = Collections.synchronizedList(new ArrayList<>());

  @TempDir private Path temp;

  private PanelCache cache() {
    return PanelCache.in(folder(), notices::add);
  }

  private Path folder() {
    return temp.resolve("cache/panels");
  }

  private Path entry() {
    return folder().resolve(KEY.hex() + ".panel");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder())) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private byte[] keptBytes() throws IOException {
    cache().keep(KEY, KeptSolutions.few());
    return Files.readAllBytes(entry());
  }

  /** Puts the right digest at the end of changed bytes. */
  private static byte[] sealed(byte[] bytes) {
    byte[] result = bytes.clone();
    int end = result.length - DIGEST_BYTES;
    System.arraycopy(Sha256.digest(result, end), 0, result, end, DIGEST_BYTES);
    return result;
  }

  private void assertDamaged(byte[] bytes, String why) throws IOException {
    notices.clear();
    Files.write(entry(), bytes);
    assertThat(cache().find(KEY)).isEmpty();
    assertThat(notices)
        .containsExactly(
            "cache entry " + entry() + " is damaged (" + why + "); computing it again");
    assertThat(entry()).doesNotExist();
  }

  private static Path sized(Path file, long bytes) throws IOException {
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(bytes);
    }
    return file;
  }

  private static void aged(Path file, Duration age) throws IOException {
    Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(age)));
  }

  // What was kept is found.

  @Test
  void solutionsComeBackToTheLastBit() throws IOException {
    for (List<PanelSolution> solutions :
        List.of(
            KeptSolutions.few(),
            KeptSolutions.of(48, 4, 1, 74),
            KeptSolutions.of(1, 1, 0, 0),
            List.<PanelSolution>of())) {
      cache().keep(KEY, solutions);
      // Equality of numbers in records and matrices is by their bits.
      assertThat(cache().find(KEY)).contains(solutions);
    }
    assertThat(names()).containsExactly(KEY.hex() + ".panel");
    assertThat(notices).isEmpty();
  }

  @Test
  void theBytesAreTheFormatsOwn() throws IOException {
    byte[] bytes = keptBytes();
    PanelSolution first = KeptSolutions.few().get(0);
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    byte[] start = new byte[7];
    buffer.get(start);
    assertThat(new String(start, StandardCharsets.US_ASCII)).isEqualTo("NPANELS");
    assertThat(buffer.get()).isEqualTo((byte) 1);
    assertThat(buffer.getInt(COUNT_AT)).isEqualTo(2);
    assertThat(buffer.getDouble(COUNT_AT + 4)).isEqualTo(first.frequencyHz());
    assertThat(buffer.getInt(SHAPE_AT)).isEqualTo(2);
    assertThat(buffer.getDouble(SHAPE_AT + 8 + 8)).isEqualTo(first.impedance().re(0, 1));
    assertThat(bytes).hasSize(8 + 32 + 4 + 2 * (2 * 8 + 3 * 8 + (4 + 2) * 16) + DIGEST_BYTES);
    assertThat(sealed(bytes)).isEqualTo(bytes);
  }

  @Test
  void otherKeysFindNothingAndNobodyIsTold() {
    assertThat(cache().find(KEY)).isEmpty();
    assertThat(folder()).doesNotExist();
    cache().keep(KEY, KeptSolutions.few());
    assertThat(cache().find(new PanelCacheKey("00".repeat(32)))).isEmpty();
    assertThat(notices).isEmpty();
  }

  @Test
  void noCacheFindsAndKeepsNothing() {
    PanelCache.none().keep(KEY, KeptSolutions.few());
    assertThat(PanelCache.none().find(KEY)).isEmpty();
  }

  // Damage is noticed.

  @Test
  void everyTruncationIsNoticed() throws IOException {
    byte[] whole = keptBytes();
    for (int length = 0; length < whole.length; length++) {
      byte[] cut = Arrays.copyOf(whole, length);
      boolean hasHead = length >= COUNT_AT + 4 + DIGEST_BYTES;
      assertDamaged(cut, hasHead ? "its check sum does not match" : "it is cut short");
    }
    assertDamaged(Arrays.copyOf(whole, whole.length + 1), "its check sum does not match");
  }

  @Test
  void everyFlippedByteIsNoticed() throws IOException {
    byte[] whole = keptBytes();
    Random random = new Random(20260704);
    for (int i = 0; i < 500; i++) {
      byte[] flipped = whole.clone();
      int at = random.nextInt(flipped.length);
      flipped[at] ^= (byte) (1 + random.nextInt(255));
      assertDamaged(
          flipped, at < 8 ? "it does not start as an entry does" : "its check sum does not match");
    }
  }

  /** A check sum only tells accidents; what it covers is not trusted either. */
  @Test
  void flippedBytesWithAFittingCheckSumNeverCrash() throws IOException {
    byte[] whole = keptBytes();
    Random random = new Random(11);
    int found = 0;
    for (int i = 0; i < 2000; i++) {
      byte[] flipped = whole.clone();
      flipped[random.nextInt(flipped.length - DIGEST_BYTES)] ^= (byte) (1 + random.nextInt(255));
      Files.write(entry(), sealed(flipped));
      notices.clear();
      int told = cache().find(KEY).isPresent() ? 0 : 1;
      assertThat(notices).hasSize(told);
      found += 1 - told;
    }
    assertThat(found).isBetween(1000, 1900); // most bytes are digits of some number
  }

  @Test
  void cutsWithAFittingCheckSumAreNoticed() throws IOException {
    byte[] whole = keptBytes();
    for (int length = COUNT_AT + 4 + DIGEST_BYTES; length < whole.length; length++) {
      assertDamaged(sealed(Arrays.copyOf(whole, length)), "it states a wrong count");
    }
    assertDamaged(sealed(Arrays.copyOf(whole, whole.length + 1)), "it is too long");
  }

  @Test
  void hugeCountsAreRefusedBeforeAnythingIsMadeForThem() throws IOException {
    byte[] whole = keptBytes();
    int most = Integer.MAX_VALUE;
    int[][] counts = {
      {COUNT_AT, most}, {COUNT_AT, -1}, {COUNT_AT, 3}, {COUNT_AT, 1 << 28},
      {SHAPE_AT, most}, {SHAPE_AT, -1}, {SHAPE_AT, 1 << 28}, {SHAPE_AT + 4, most},
      {SHAPE_AT + 4, -2}
    };
    for (int[] count : counts) {
      byte[] changed = whole.clone();
      ByteBuffer.wrap(changed).putInt(count[0], count[1]);
      assertDamaged(sealed(changed), "it states a wrong count");
    }
    // Products that come out as 0, or small, in 32 bits.
    for (int[] shape : new int[][] {{most, most}, {1 << 16, 1 << 16}, {1 << 31 - 1, 4}, {-1, -1}}) {
      byte[] changed = whole.clone();
      ByteBuffer.wrap(changed).putInt(SHAPE_AT, shape[0]).putInt(SHAPE_AT + 4, shape[1]);
      assertDamaged(sealed(changed), "it states a wrong count");
    }
  }

  @Test
  void numbersThatNoResultHoldsAreNoticed() throws IOException {
    byte[] whole = keptBytes();
    for (double number : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      for (int at : new int[] {COUNT_AT + 4, COUNT_AT + 12, SHAPE_AT + 8}) {
        byte[] changed = whole.clone();
        ByteBuffer.wrap(changed).putDouble(at, number);
        assertDamaged(sealed(changed), "a number is not finite");
      }
    }
    for (double frequencyHz : new double[] {0, -20, 22.5}) {
      byte[] changed = whole.clone();
      ByteBuffer.wrap(changed).putDouble(COUNT_AT + 4, frequencyHz);
      assertDamaged(sealed(changed), "its frequencies do not ascend");
    }
  }

  @Test
  void anEntryUnderAnothersNameIsNoticed() throws IOException {
    byte[] whole = keptBytes();
    whole[8] ^= 1;
    assertDamaged(sealed(whole), "it belongs to another panel");
  }

  @Test
  void aHugeFileIsNotRead() throws IOException {
    keptBytes();
    sized(entry(), (64L << 20) + 1);
    assertThat(cache().find(KEY)).isEmpty();
    assertThat(notices).singleElement().asString().contains("(it is larger than 64 MiB)");
    assertThat(entry()).doesNotExist();
  }

  @Test
  void damageIsHealedByKeeping() throws IOException {
    assertDamaged(Arrays.copyOf(keptBytes(), 99), "its check sum does not match");
    cache().keep(KEY, KeptSolutions.few());
    assertThat(cache().find(KEY)).contains(KeptSolutions.few());
  }

  // What cannot be written is told once.

  private void assertToldOnceAndGoesOn(Path place, String why) {
    PanelCache cache = PanelCache.in(place, notices::add);
    for (int i = 0; i < 3; i++) {
      assertThat(cache.find(KEY)).isEmpty();
      cache.keep(KEY, KeptSolutions.few());
    }
    assertThat(notices)
        .containsExactly(
            "cannot keep panel acoustics in the cache: "
                + place
                + ": "
                + why
                + "; going on without");
  }

  @Test
  void aFolderThatIsAFile() throws IOException {
    Path file = Files.writeString(temp.resolve("file"), "mine");
    assertToldOnceAndGoesOn(file, "a file has that name");
    assertThat(file).hasContent("mine");
  }

  @Test
  void aFolderBelowAFile() throws IOException {
    Path file = Files.writeString(temp.resolve("file"), "mine");
    PanelCache cache = PanelCache.in(file.resolve("cache"), notices::add);
    cache.keep(KEY, KeptSolutions.few());
    cache.keep(KEY, KeptSolutions.few());
    assertThat(cache.find(KEY)).isEmpty();
    assertThat(notices)
        .singleElement()
        .asString()
        .startsWith("cannot keep panel acoustics in the cache: " + file.resolve("cache") + ": ")
        .endsWith("; going on without");
  }

  /** Java's own class files: nobody may write there, whatever rights they have. */
  @Test
  void aPlaceThatCanOnlyBeRead() {
    Path modules = FileSystems.getFileSystem(URI.create("jrt:/")).getPath("/modules");
    assertToldOnceAndGoesOn(modules, "it can only be read");
    notices.clear();
    assertToldOnceAndGoesOn(modules.resolve("nullplane"), "it can only be read");
  }

  @Test
  void anEntryThatCannotBeReplacedLeavesNothingBehind() throws IOException {
    Path inTheWay = Files.createDirectories(entry()).resolve("mine");
    Files.writeString(inTheWay, "mine");
    PanelCache cache = cache();
    cache.keep(KEY, KeptSolutions.few());
    cache.keep(KEY, KeptSolutions.few());
    assertThat(notices)
        .singleElement()
        .asString()
        .startsWith("cannot keep panel acoustics in the cache: " + folder())
        .endsWith("; going on without");
    assertThat(cache.find(KEY)).isEmpty();
    assertThat(notices).hasSize(2).last().asString().contains("is damaged (it is no file)");
    assertThat(names()).containsExactly(KEY.hex() + ".panel");
    assertThat(inTheWay).hasContent("mine");
  }

  @Test
  void resultsThatCouldNotBeReadBackAreNotKept() {
    ComplexMatrix none = new ComplexMatrix(0, 1, new double[0], new double[0]);
    ComplexMatrix one = new ComplexMatrix(1, 1, new double[1], new double[1]);
    ComplexMatrix broken = new ComplexMatrix(1, 1, new double[1], new double[] {Double.NaN});
    ComplexMatrix large = new ComplexMatrix(1, 1 << 22, new double[1 << 22], new double[1 << 22]);
    PanelSolution at30 = new PanelSolution(30, one, none, none, 0);
    assertRefused("do not ascend", at30, at30);
    assertRefused("do not ascend", new PanelSolution(0, one, none, none, 0));
    assertRefused("not finite", new PanelSolution(Double.NaN, one, none, none, 0));
    assertRefused("not finite", new PanelSolution(30, one, none, none, Double.NaN));
    assertRefused("not finite", new PanelSolution(30, one, none, broken, 0));
    assertRefused("larger than 64 MiB", new PanelSolution(30, one, large, none, 0));
    assertThat(folder()).doesNotExist();
  }

  private void assertRefused(String why, PanelSolution... solutions) {
    notices.clear();
    cache().keep(KEY, List.of(solutions));
    assertThat(notices)
        .singleElement()
        .asString()
        .startsWith("cannot keep panel acoustics in the cache: ")
        .contains(why);
  }

  // Many at once.

  @Test
  void threadsKeepAndFindTheSameEntry() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(8);
    try {
      List<Callable<Integer>> tasks = new ArrayList<>();
      for (int t = 0; t < 8; t++) {
        PanelCache cache = cache();
        tasks.add(
            () -> {
              int found = 0;
              for (int i = 0; i < 25; i++) {
                cache.keep(KEY, KeptSolutions.few());
                found += cache.find(KEY).equals(Optional.of(KeptSolutions.few())) ? 1 : 0;
              }
              return found;
            });
      }
      for (Future<Integer> found : threads.invokeAll(tasks)) {
        assertThat(found.get()).isEqualTo(25);
      }
    } finally {
      threads.shutdownNow();
    }
    assertThat(notices).isEmpty();
    assertThat(names()).containsExactly(KEY.hex() + ".panel");
  }

  @Test
  void twoProcessesKeepAndFindTheSameEntry() throws Exception {
    List<Process> processes = new ArrayList<>();
    for (int p = 0; p < 2; p++) {
      processes.add(
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-cp",
                  classPathOf(PanelCache.class) + File.pathSeparator + classPathOf(getClass()),
                  KeptSolutions.class.getName(),
                  folder().toString(),
                  "100")
              .redirectErrorStream(true)
              .start());
    }
    for (Process process : processes) {
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(said).isEqualTo("[]");
      assertThat(process.exitValue()).isZero();
    }
    assertThat(names()).containsExactly(KEY.hex() + ".panel");
    assertThat(cache().find(KEY)).contains(KeptSolutions.few());
  }

  private static String classPathOf(Class<?> type) throws Exception {
    return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI()).toString();
  }

  // The folder stays tidy.

  @Test
  void passingFilesGoAfterADayAndNothingElseIsTouched() throws IOException {
    Files.createDirectories(folder());
    String other = "ab".repeat(32);
    List<String> stay =
        List.of(other + ".panel", other + ".x.part", other + ".part", "notes.txt", "7.part");
    List<String> go = List.of(other + ".17.part", KEY.hex() + ".18446744073709551615.part");
    for (String name : Stream.concat(stay.stream(), go.stream()).toList()) {
      aged(Files.writeString(folder().resolve(name), name), Duration.ofHours(25));
    }
    String young = other + ".18.part";
    aged(Files.writeString(folder().resolve(young), young), Duration.ofHours(23));
    String nested = other + ".19.part";
    aged(Files.createDirectory(folder().resolve(nested)), Duration.ofHours(25));

    cache().keep(KEY, KeptSolutions.few());

    List<String> expected = new ArrayList<>(stay);
    expected.addAll(List.of(young, nested, KEY.hex() + ".panel"));
    assertThat(names()).containsExactlyInAnyOrderElementsOf(expected);
    assertThat(notices).isEmpty();
  }

  @Test
  void theOldestEntriesMakeRoom() throws IOException {
    long each = keptBytes().length;
    aged(entry(), Duration.ofHours(5));
    for (int i = 1; i <= 4; i++) {
      Path entry = sized(folder().resolve("%064x.panel".formatted(i)), each);
      aged(entry, Duration.ofHours(10 + (i == 3 ? 9 : i)));
    }
    Path foreign = sized(folder().resolve("large.bin"), 100 * each);
    PanelCacheKey fresh = new PanelCacheKey("ff".repeat(32));
    new FolderPanelCache(folder(), notices::add, 3 * each).keep(fresh, KeptSolutions.few());
    assertThat(names())
        .containsExactlyInAnyOrder(
            "%064x.panel".formatted(1), KEY.hex() + ".panel", fresh.hex() + ".panel", "large.bin");
    assertThat(foreign).hasSize(100 * each);

    new FolderPanelCache(folder(), notices::add, 1).keep(KEY, KeptSolutions.few());
    assertThat(names()).containsExactlyInAnyOrder(KEY.hex() + ".panel", "large.bin");
    assertThat(notices).isEmpty();
  }

  @Test
  void theUsualLimitIs256MiB() throws IOException {
    long kept = keptBytes().length;
    Path old = sized(folder().resolve("%064x.panel".formatted(1)), (256L << 20) - kept);
    aged(old, Duration.ofHours(1));
    cache().keep(KEY, KeptSolutions.few());
    assertThat(old).exists();
    aged(sized(old, (256L << 20) - kept + 1), Duration.ofHours(1));
    cache().keep(KEY, KeptSolutions.few());
    assertThat(old).doesNotExist();
    assertThat(entry()).exists();
  }
}
