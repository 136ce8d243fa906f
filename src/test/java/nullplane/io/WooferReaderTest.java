package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import nullplane.driver.Contradiction;
import nullplane.driver.Mounting;
import nullplane.driver.Parameter;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.units.Air;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class WooferReaderTest {
  private static final String GOOD =
      """
      name: Sample 12A
      nominal: 300 mm
      effective-diameter: 260 mm
      re: 5.6 ohm
      fs: 31 Hz
      qms: 5.2
      qes: 0.85
      mms: 78 g
      mounting: free-air
      travel: 8 mm
      le: 0.9 mH
      power: 150 W
      """;

  @TempDir Path folder;

  @Test
  void sheetShowsWhatItStates() {
    Woofer woofer = woofer(GOOD);
    assertThat(woofer.name()).isEqualTo("Sample 12A");
    assertThat(woofer.nominalM()).isEqualTo(0.3);
    assertThat(woofer.resistanceOhm()).isEqualTo(5.6);
    assertThat(woofer.inductanceH()).isEqualTo(0.0009);
    assertThat(woofer.travelM()).isEqualTo(0.008);
    assertThat(woofer.powerW()).isEqualTo(150);
    // Area of a circle of 26 cm: pi/4 x 26^2 = 530.93 cm2.
    assertThat(woofer.effectiveAreaM2() * 1e4).isCloseTo(530.93, within(0.005));
    // Lamb, Hydrodynamics, art. 102: free disc 8/3 rho a^3 = 8/3 x 1.2041 x 0.13^3 = 7.05442 g.
    assertThat(woofer.bareMassKg() * 1e3).isCloseTo(78 - 7.05442, within(1e-5));
    SmallSignal set = SmallSignal.of(woofer, Mounting.FREE_AIR, Air.standard());
    assertThat(set.resonanceHz()).isCloseTo(31, within(1e-12));
    assertThat(set.mechanicalQ()).isCloseTo(5.2, within(1e-12));
    assertThat(set.electricalQ()).isCloseTo(0.85, within(1e-12));
    assertThat(set.movingMassKg()).isCloseTo(0.078, within(1e-15));
    // Small 1972: Bl = sqrt(2 pi fs Mms Re / Qes) = sqrt(2 pi 31 0.078 5.6 / 0.85) = 10.004667 T m.
    assertThat(woofer.forceFactorTm()).isCloseTo(10.004667, within(1e-6));
  }

  @Test
  void mountingDecidesTheAirInMms() {
    // Twice the free disc's air in an infinite baffle: 16/3 rho a^3 = 14.10884 g.
    Woofer woofer = woofer(GOOD.replace("free-air", "infinite-baffle"));
    assertThat(woofer.bareMassKg() * 1e3).isCloseTo(78 - 14.10884, within(1e-5));
    SmallSignal baffle = SmallSignal.of(woofer, Mounting.INFINITE_BAFFLE, Air.standard());
    assertThat(baffle.resonanceHz()).isCloseTo(31, within(1e-12));
    assertThat(SmallSignal.of(woofer, Mounting.FREE_AIR, Air.standard()).resonanceHz())
        .isGreaterThan(31);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // Qts = 5.2 x 0.85 / 6.05 = 0.7305785
        "qes: 0.85 | qts: 0.7305785124",
        "qms: 5.2 | qts: 0.7305785124",
        // Bl = sqrt(2 pi 31 0.078 5.6 / 0.85)
        "qes: 0.85 | bl: 10.0046669 Tm",
        "effective-diameter: 260 mm | sd: 530.929158 cm2",
        // 78 g less the free disc's 7.05442 g
        "mms: 78 g | moving-mass: 70.9455795 g",
        "mounting: free-air | # left out",
      })
  void equivalentStatementsGiveTheSameWoofer(String from, String to) {
    Woofer one = woofer(GOOD);
    Woofer other = woofer(GOOD.replace(from, to));
    Percentage digits = Percentage.withPercentage(1e-4);
    assertThat(other.forceFactorTm()).isCloseTo(one.forceFactorTm(), digits);
    assertThat(other.lossNsPerM()).isCloseTo(one.lossNsPerM(), digits);
    assertThat(other.stiffnessNPerM()).isCloseTo(one.stiffnessNPerM(), digits);
    assertThat(other.bareMassKg()).isCloseTo(one.bareMassKg(), digits);
    assertThat(other.effectiveAreaM2()).isCloseTo(one.effectiveAreaM2(), digits);
  }

  @Test
  void optionalKeysFollowFromTheSize() {
    ReadWoofer read =
        WooferReader.read(
            bytes(
                """
                sd: 505 cm2
                re: 5.6 ohm
                fs: 31 Hz
                qts: 0.73
                bl: 10 Tm
                moving-mass: 71 g
                travel: 8 mm
                """),
            "sheets/sample-12b.yaml");
    assertThat(read.woofer().name()).isEqualTo("sample-12b");
    assertThat(read.woofer().nominalM()).isEqualTo(0.3);
    assertThat(read.woofer().inductanceH()).isEqualTo(0.9e-3);
    assertThat(read.woofer().powerW()).isEqualTo(150);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "fs: 31 Hz | fs: 31 | 5 | fs | the unit is missing | 5 Hz .. 500 Hz | write 31 Hz",
        "fs: 31 Hz | f0: 31 Hz | 5 | f0 | unknown key | name, nominal | did you mean fs?",
        "fs: 31 Hz | fs: -31 Hz | 5 | fs | below zero | 5 Hz .. 500 Hz | write fs: 31 Hz",
        "travel: 8 mm | travel: 80 mm | 10 | travel | out of range | 0.2 mm .. 60 mm | write travel",
        "travel: 8 mm | # | 1 | travel | the key is missing | 0.2 mm .. 60 mm | write travel: 8 mm",
        "mounting: free-air | mounting: box | 9 | mounting | unknown mounting"
            + " | free-air, infinite-baffle | write mounting: free-air",
        "mms: 78 g | mms: 5 g | 8 | mms | not more than the air alone, which is 7.05442 g"
            + " | above 7.05442 g | moving-mass",
        "mms: 78 g | # | 1 | mms | the moving mass is missing | mms (with air) | write mms: 78 g",
        "effective-diameter: 260 mm | # | 1 | effective-diameter | size of the piston is missing"
            + " | effective-diameter or sd | write effective-diameter: 260 mm",
        "effective-diameter: 260 mm | sd: 900 cm2 | 3 | sd | larger than the nominal size, by 3.85 cm"
            + " | 15 cm .. 30 cm | radiating piston",
        "qes: 0.85 | # | 1 | qes | the electrical losses are missing | qes, or bl | write qes: 0.85",
        "qms: 5.2 | # | 1 | qms | the mechanical losses are missing | qms, or qts | write qms: 5.2",
        "qes: 0.85 | qts: 5.4 | 7 | qts | Qts must lie below the Qms | below 5.2 | check both",
        "qms: 5.2 | qts: 0.9 | 6 | qts | Qts must lie below the Qes | below 0.85 | check both",
      })
  void faultSaysWhereAndWhatToWrite(
      String from, String to, int line, String key, String problem, String allowed, String hint) {
    String text =
        GOOD.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to.replace("\\n", "\n")));
    List<InputFault> faults = faults(text);
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).line()).isEqualTo(line);
    assertThat(faults.get(0).key()).isEqualTo(key);
    assertThat(faults.get(0).problem()).contains(problem);
    assertThat(faults.get(0).allowed()).contains(allowed);
    assertThat(faults.get(0).hint()).contains(hint);
  }

  /** What contradicts the rest is told with the woofer, which can be judged all the same. */
  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // Qts = 5.2 x 0.85 / 6.05 = 0.730579
        "qms: 5.2 | `qms: 5.2\\nqts: 0.9` | TOTAL_Q | 0.730579 | MECHANICAL_Q ELECTRICAL_Q",
        // Bl = sqrt(2 pi 31 0.078 5.6 / 0.85) = 10.0047 T m
        "qms: 5.2 | `qms: 5.2\\nbl: 7 Tm` | FORCE_FACTOR | 10.004667"
            + " | ELECTRICAL_Q RESONANCE MOVING_MASS RESISTANCE",
        // 60 g and the free disc's 7.05442 g
        "mms: 78 g | `mms: 78 g\\nmoving-mass: 60 g` | MOVING_MASS | 0.06705442"
            + " | BARE_MASS DIAMETER",
        // 2 sqrt(480 cm2 / pi)
        "re: 5.6 ohm | `re: 5.6 ohm\\nsd: 480 cm2` | DIAMETER | 0.2472155 | AREA",
      })
  void contradictionsComeWithTheWoofer(
      String from, String to, Parameter parameter, double found, String against) {
    String text =
        GOOD.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to.replace("\\n", "\n")));
    ReadWoofer read = WooferReader.read(bytes(text), "woofer.yaml");
    assertThat(read.contradictions()).hasSize(1);
    Contradiction contradiction = read.contradictions().get(0);
    assertThat(contradiction.parameter()).isEqualTo(parameter);
    assertThat(contradiction.found().orElseThrow())
        .isCloseTo(found, Percentage.withPercentage(1e-4));
    assertThat(contradiction.against().stream().map(Parameter::name))
        .containsExactlyInAnyOrder(against.split(" "));
    assertThat(read.woofer().resistanceOhm()).isEqualTo(5.6);
  }

  @Test
  void allFaultsOfASheetComeAtOnce() {
    assertThat(
            faults(
                GOOD.replace("5.6 ohm", "5.6")
                    .replace("260 mm", "360 mm")
                    .replace("qms: 5.2", "qms: 5.2 Hz")
                    .replace("travel", "trvael")))
        .extracting(fault -> fault.line() + " " + fault.key())
        .containsExactly("3 effective-diameter", "4 re", "6 qms", "10 trvael");
  }

  static Stream<Woofer> woofers() {
    Random random = new Random(20250102);
    return Stream.generate(
            () ->
                new Woofer(
                    "Sample '" + random.nextInt(1000) + "': #1",
                    0.3,
                    0.045 + 0.01 * random.nextDouble(),
                    3 + 5 * random.nextDouble(),
                    2e-3 * random.nextDouble(),
                    0.04 + 0.1 * random.nextDouble(),
                    800 + 4000 * random.nextDouble(),
                    1 + 4 * random.nextDouble(),
                    6 + 10 * random.nextDouble(),
                    0.004 + 0.01 * random.nextDouble(),
                    50 + 200 * random.nextDouble()))
        .limit(200);
  }

  @ParameterizedTest
  @MethodSource("woofers")
  void writtenWooferReadsBackTheSame(Woofer woofer) {
    Woofer back = woofer(WooferYaml.of(woofer));
    assertThat(back.name()).isEqualTo(woofer.name());
    // Stated as they are: exact.
    assertThat(back.nominalM()).isEqualTo(woofer.nominalM());
    assertThat(back.effectiveAreaM2()).isEqualTo(woofer.effectiveAreaM2());
    assertThat(back.resistanceOhm()).isEqualTo(woofer.resistanceOhm());
    assertThat(back.inductanceH()).isEqualTo(woofer.inductanceH());
    assertThat(back.bareMassKg()).isEqualTo(woofer.bareMassKg());
    assertThat(back.travelM()).isEqualTo(woofer.travelM());
    assertThat(back.powerW()).isEqualTo(woofer.powerW());
    // By way of fs and the Qs: a few roundings.
    Percentage rounding = Percentage.withPercentage(1e-11);
    assertThat(back.stiffnessNPerM()).isCloseTo(woofer.stiffnessNPerM(), rounding);
    assertThat(back.lossNsPerM()).isCloseTo(woofer.lossNsPerM(), rounding);
    assertThat(back.forceFactorTm()).isCloseTo(woofer.forceFactorTm(), rounding);
  }

  @Test
  void folderIsReadInTheOrderOfNames() throws IOException {
    Files.writeString(folder.resolve("b.yaml"), GOOD.replace("12A", "12B"));
    Files.writeString(folder.resolve("a.yml"), GOOD);
    Files.writeString(folder.resolve("notes.txt"), "not a woofer");
    Files.writeString(folder.resolve(".hidden.yaml"), "not a woofer");
    assertThat(WooferFiles.readEach(folder).woofers())
        .extracting(read -> read.woofer().name())
        .containsExactly("Sample 12A", "Sample 12B");
    assertThat(WooferFiles.readEach(folder.resolve("a.yml")).woofers()).hasSize(1);
  }

  @Test
  void faultsOfAllFilesOfAFolderComeAtOnce() throws IOException {
    Files.writeString(folder.resolve("a.yaml"), GOOD.replace("31 Hz", "31"));
    Files.writeString(folder.resolve("b.yaml"), "");
    Files.writeString(folder.resolve("c.yaml"), GOOD);
    Files.writeString(folder.resolve("d.yaml"), GOOD);
    assertThat(WooferFiles.readEach(folder).refused())
        .extracting(fault -> Path.of(fault.file()).getFileName() + ": " + fault.problem())
        .containsExactly(
            "a.yaml: the unit is missing",
            "b.yaml: the file is empty",
            "d.yaml: the woofer of " + folder.resolve("c.yaml") + " has this name too");
  }

  @Test
  void folderWithoutWoofersAndTablesAreRefused() {
    assertThat(
            catchThrowableOfType(InvalidInputException.class, () -> WooferFiles.readEach(folder)))
        .hasMessageContaining("the folder holds no woofers");
    assertThat(
            catchThrowableOfType(
                InvalidInputException.class,
                () -> WooferReader.read(folder.resolve("woofers.csv"))))
        .hasMessageContaining("a table of woofers");
  }

  private static Woofer woofer(String text) {
    return WooferReader.read(bytes(text), "woofer.yaml").woofer();
  }

  private static List<InputFault> faults(String text) {
    return catchThrowableOfType(InvalidInputException.class, () -> woofer(text)).faults();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
