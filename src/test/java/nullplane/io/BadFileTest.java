package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files that are no spec at all: each gives its fault at once and nothing else. */
class BadFileTest {
  @TempDir Path folder;

  @Test
  void emptyFiles() {
    assertOne("", 0, "the file is empty");
    assertOne("  \n\n \n", 0, "the file is empty");
    assertOne("# only a comment\n", 0, "the file is empty");
    assertOne("\uFEFF", 0, "the file is empty");
  }

  @Test
  void tenMegabytesOfNoise() throws IOException {
    byte[] noise = new byte[10_000_000];
    new Random(1).nextBytes(noise);
    Path file = Files.write(folder.resolve("noise.yaml"), noise);
    InputFault fault = Assertions.assertTimeout(Duration.ofSeconds(2), () -> only(file));
    assertThat(fault.problem()).isEqualTo("the file is too large");
    assertThat(fault.allowed()).isEqualTo("1 MiB at most");
  }

  @Test
  void endlessFile() {
    Path zeros = Path.of("/dev/zero");
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(zeros));
    assertThat(only(zeros).problem()).isEqualTo("the file is too large");
  }

  @Test
  void largestFileIsStillRead() {
    byte[] bytes = "title: x\n# ".getBytes(StandardCharsets.UTF_8);
    byte[] padded = Arrays.copyOf(bytes, InputText.LARGEST);
    Arrays.fill(padded, bytes.length, padded.length, (byte) '#');
    for (int i = InputText.LONGEST_LINE; i < padded.length; i += InputText.LONGEST_LINE) {
      padded[i] = '\n';
    }
    assertThat(faults(padded)).extracting(InputFault::key).contains("woofer");
    byte[] larger = Arrays.copyOf(padded, InputText.LARGEST + 1);
    assertThat(faults(larger))
        .extracting(InputFault::problem)
        .containsExactly("the file is too large");
  }

  @Test
  void longestLineIsStillRead() {
    String longest = "# " + "x".repeat(InputText.LONGEST_LINE - 2);
    assertThat(
            faults((longest + "\r\n" + longest + "\rtitle: x\n").getBytes(StandardCharsets.UTF_8)))
        .extracting(InputFault::key)
        .contains("woofer");
    assertOne("title: x\n" + longest + "x\n", 2, "the line is too long");
  }

  @Test
  void binaryBytes() {
    byte[] bytes = "title: x\nwoofer: \u0000\n".getBytes(StandardCharsets.UTF_8);
    InputFault fault = faults(bytes).get(0);
    assertThat(fault.line()).isEqualTo(2);
    assertThat(fault.value()).isEqualTo("character U+0000");
    assertThat(fault.problem()).contains("not a text file");
  }

  @Test
  void badUtf8() {
    byte[] bytes = "title: x\nwoofer:\n  name: ?\n".getBytes(StandardCharsets.UTF_8);
    bytes[bytes.length - 2] = (byte) 0xE9; // e with acute accent in ISO 8859-1
    InputFault fault = faults(bytes).get(0);
    assertThat(fault.line()).isEqualTo(3);
    assertThat(fault.value()).isEqualTo("byte 0xE9");
    assertThat(fault.hint()).contains("UTF-8");
    byte[] cut = {'a', (byte) 0xC3};
    assertThat(faults(cut))
        .extracting(InputFault::problem)
        .containsExactly("this is not UTF-8 text");
  }

  @Test
  void utf16() {
    assertThat(faults("title: x".getBytes(StandardCharsets.UTF_16)))
        .extracting(InputFault::problem)
        .containsExactly("the file is UTF-16 text");
  }

  @Test
  void missingFileAndFolder() {
    assertThat(only(folder.resolve("none.yaml")).problem()).isEqualTo("there is no such file");
    assertThat(only(folder).problem()).isEqualTo("this is a folder");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "title: &name x\\nwoofer: *name | 2 | anchors and aliases are not read",
        "title: x\\nwoofer: &w {nominal: 300 mm}\\namplifier: *w | 2 | anchors and aliases",
        "woofer: *w | 1 | anchors and aliases",
        "title: !!java.net.URL [http://localhost] | 1 | tags are not read",
        "title: x\\nwoofer: !secret {a: b} | 2 | tags are not read",
        "title: x\\n---\\ntitle: y | 3 | a second document starts here",
        "title: x\\n\\twoofer: y | 2 | this is not YAML",
        "title: x\\nwoofer: {nominal: 300 mm\\n | 3 | this is not YAML",
        "title: \"x | 1 | this is not YAML",
        "title: x\\n  woofer: y | 2 | this is not YAML",
        "[1, 2] | 1 | keys with values are needed here",
        "just some words | 1 | keys with values are needed here",
        "? [a, b]\\n: c | 1 | this is not YAML",
      })
  void refusedYaml(String text, int line, String problem) {
    assertOne(text.replace("\\n", "\n").replace("\\t", "\t"), line, problem);
  }

  @Test
  void tabIsExplained() {
    assertThat(
            faults("woofer:\n\tnominal: 300 mm\n".getBytes(StandardCharsets.UTF_8)).get(0).hint())
        .contains("not with tabs");
  }

  @Test
  void deepNesting() {
    assertOne("a: " + "[".repeat(50_000), 1, "the nesting is too deep");
    assertOne("a: " + "{b: ".repeat(16_000), 1, "the nesting is too deep");
  }

  @Test
  void veryManyValues() {
    assertOne("a: [" + "1,".repeat(25_000) + "1]", 1, "the file holds too many values");
  }

  @Test
  void veryManyFaultsAreCounted() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 5000; i++) {
      text.append("key").append(i).append(": 1\n");
    }
    List<InputFault> faults = faults(text.toString().getBytes(StandardCharsets.UTF_8));
    assertThat(faults).hasSize(FaultList.MOST_SHOWN + 1);
    // 5000 unknown keys and six that are missing, one hundred of them shown
    assertThat(faults.get(FaultList.MOST_SHOWN).problem())
        .isEqualTo("4906 more faults are not shown");
  }

  @Test
  void messagesCannotSteerATerminal() {
    String text = "\"a\\e[31m\\u202e\": 1\ntitle: \"\\e]0;x\\a\"\n";
    String message =
        catchThrowableOfType(
                InvalidInputException.class,
                () -> SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "bad.yaml"))
            .getMessage();
    assertThat(message.codePoints().filter(c -> c != '\n')).allMatch(Excerpt::visible);
  }

  /** Mutated specs: the reader must give a spec or faults, whatever the bytes. */
  @Test
  void damagedFilesNeverFailInAnotherWay() throws IOException {
    Random random = new Random(20250101);
    List<byte[]> seeds =
        List.of(
            Files.readAllBytes(Path.of("specs/village-hall.yaml")),
            Files.readAllBytes(Path.of("specs/one-stack.yaml")));
    String tokens = "{}[]:,-#&*!|>'\"%@`\n\t .0123456789eEcmHz";
    int bad = 0;
    for (int i = 0; i < 4000; i++) {
      byte[] bytes = seeds.get(i % 2).clone();
      int changes = 1 + random.nextInt(4);
      for (int c = 0; c < changes; c++) {
        int at = random.nextInt(bytes.length);
        bytes[at] =
            random.nextInt(10) == 0
                ? (byte) random.nextInt(256)
                : (byte) tokens.charAt(random.nextInt(tokens.length()));
      }
      if (random.nextInt(5) == 0) {
        bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
      }
      try {
        SpecReader.read(bytes, "damaged.yaml");
      } catch (InvalidInputException e) {
        bad++;
        assertThat(e.faults()).isNotEmpty();
      }
    }
    assertThat(bad).isGreaterThan(1000);
  }

  private void assertOne(String text, int line, String problem) {
    List<InputFault> faults = faults(text.getBytes(StandardCharsets.UTF_8));
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).problem()).contains(problem);
    assertThat(faults.get(0).line()).isEqualTo(line);
    assertThat(faults.get(0).file()).isEqualTo("bad.yaml");
  }

  private static List<InputFault> faults(byte[] bytes) {
    return catchThrowableOfType(
            InvalidInputException.class, () -> SpecReader.read(bytes, "bad.yaml"))
        .faults();
  }

  private static InputFault only(Path file) {
    List<InputFault> faults =
        catchThrowableOfType(InvalidInputException.class, () -> SpecReader.read(file)).faults();
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).file()).isEqualTo(file.toString());
    return faults.get(0);
  }
}
