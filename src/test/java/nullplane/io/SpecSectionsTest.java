package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.network.ActiveLimits;
import nullplane.network.CoilMake;
import nullplane.network.CrossoverFilter;
import nullplane.network.FilterAlignment;
import nullplane.network.MainDriver;
import nullplane.network.NetworkOffer;
import nullplane.network.Part;
import nullplane.network.Polarity;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.GradeWeights;
import nullplane.scoring.ScoringAxis;
import nullplane.units.ConductorMaterial;
import nullplane.units.Curve;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The keys of a spec that say what stands before the stacks, above them, and what counts most. */
class SpecSectionsTest {
  private static final String BASE =
      """
      title: Reading-room range
      woofer: {nominal: 300 mm, effective-diameter: 260 mm}
      stacks:
        - name: single
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
        - name: pair
          panel: {width: 44 cm, height: 150 cm}
          woofers: [{x: 0 cm, y: -45 cm}, {x: 0 cm, y: 45 cm}]
          level: 84 dB
      listening: {distance: 3 m, height: 1 m}
      target: {level: 78 dB, low-corner: 40 Hz, upper-corner: 200 Hz, loudest: 95 dB}
      amplifier: {voltage: 28 V, lowest-load: 3 ohm}
      """;

  /** Speed of sound of the standard air, 20 degrees C (m/s): Cramer, JASA 93 (1993) 2510. */
  private static final double SOUND = 343.4;

  @TempDir Path folder;

  @Test
  void whatIsLeftOutIsAsInAShortSpec() {
    DesignSpec spec = spec(BASE);
    assertThat(spec.networks()).isEqualTo(NetworkOffer.standard());
    assertThat(spec.weights()).isEqualTo(GradeWeights.STANDARD);
    assertThat(spec.target().upperOrder()).isZero();
    assertThat(spec.stacks()).allSatisfy(stack -> assertThat(stack.main()).isEmpty());
    assertThat(spec.stacks()).allSatisfy(stack -> assertThat(stack.upperCornerHz()).isEmpty());
    assertThat(spec(BASE + "crossover: {kind: passive}\npriorities: {}\n")).isEqualTo(spec);
  }

  @Test
  void passivePartsAreRead() {
    NetworkOffer.Passive offer =
        passive(
            """
            crossover:
              kind: passive
              most-parts: 3
              coils: {series: E6, range: 1 mH .. 10 mH, wire: 1 mm, material: aluminium}
              capacitors: {range: 47 uF .. 150 uF}
              resistors: none
              damping: {series: E12, range: 2200 mohm .. 3.3 ohm}
            """);
    assertThat(offer.mostParts()).isEqualTo(3);
    CoilMake make = new CoilMake.Wound(1e-3, ConductorMaterial.ALUMINIUM);
    // IEC 60063, series E6 and E12
    assertThat(offer.catalogue().coils())
        .containsExactly(
            make.coil(1e-3),
            make.coil(1.5e-3),
            make.coil(2.2e-3),
            make.coil(3.3e-3),
            make.coil(4.7e-3),
            make.coil(6.8e-3),
            make.coil(10e-3));
    assertThat(values(offer.catalogue().capacitors()))
        .containsExactly(47e-6, 68e-6, 100e-6, 150e-6);
    assertThat(offer.catalogue().resistors()).isEmpty();
    assertThat(values(offer.catalogue().dampings())).containsExactly(2.2, 2.7, 3.3);
  }

  @Test
  void coilsMayHaveAStatedResistance() {
    NetworkOffer.Passive offer =
        passive("crossover: {coils: {range: 1 mH .. 2 mH, resistance: 0.3 ohm/mH}}\n");
    assertThat(values(offer.catalogue().coils())).containsExactly(1e-3, 1.2e-3, 1.5e-3, 1.8e-3);
    // 0.3 ohm/mH times 1.8 mH
    assertThat(offer.catalogue().coils().get(3).resistanceOhm()).isCloseTo(0.54, within(1e-12));
    assertThat(offer.catalogue().capacitors())
        .isEqualTo(NetworkOffer.standard().catalogue().capacitors());
    assertThat(passive("crossover: {coils: {range: 1 mH, resistance: 300 Ω/H}}\n"))
        .isEqualTo(passive("crossover: {coils: {range: 1 mH, resistance: 0.3 ohm/mH}}\n"));
    assertThat(
            values(passive("crossover: {capacitors: {range: 0.1 mF}}\n").catalogue().capacitors()))
        .containsExactly(100e-6);
  }

  @Test
  void noNetworkIsAnOfferOfNone() {
    DesignSpec spec = spec(BASE + "crossover: {kind: none}\n");
    assertThat(spec.networks().rows(Curve.of(50, 100)).count()).isEqualTo(1);
  }

  @Test
  void activeLimitsAreRead() {
    ActiveLimits limits =
        active(
            """
            crossover:
              kind: active
              gain: -12 dB .. 6 dB
              shapes: [butterworth-2, linkwitz-riley-4]
              corner: 80 Hz .. 400 Hz
              correction: {frequency: 30 Hz .. 200 Hz, q: 0.5 .. 3, gain: -20 dB .. 20 dB}
            """);
    // 20 lg of an amplitude ratio: 20 dB is 10, -12 dB 0.251, 6 dB 1.995
    assertThat(limits.gain().lower()).isCloseTo(0.2512, within(1e-4));
    assertThat(limits.gain().upper()).isCloseTo(1.9953, within(1e-4));
    assertThat(limits.alignments())
        .containsExactly(FilterAlignment.BUTTERWORTH_2, FilterAlignment.LINKWITZ_RILEY_4);
    assertThat(limits.cornerHz()).isEqualTo(new Range(80, 400));
    assertThat(limits.correctionHz()).isEqualTo(new Range(30, 200));
    assertThat(limits.correctionQ()).isEqualTo(new Range(0.5, 3));
    assertThat(limits.correctionGain().lower()).isCloseTo(0.1, within(1e-12));
    assertThat(limits.correctionGain().upper()).isCloseTo(10, within(1e-12));
  }

  @Test
  void activeDefaultsFollowTheCorners() {
    String text = BASE.replace("level: 84 dB", "level: 84 dB\n    upper-corner: 150 Hz");
    ActiveLimits limits = active(text, "crossover: {kind: active}\n");
    assertThat(limits.cornerHz()).isEqualTo(new Range(75, 400));
    DesignSpec plain =
        spec(text + "crossover: {kind: active, gain: 0 dB, shapes: none, correction: none}\n");
    assertThat(plain.networks().rows(Curve.of(50, 100)).count()).isEqualTo(1);
    assertThat(active(BASE, "crossover: {kind: active, shapes: butterworth-3}\n").alignments())
        .containsExactly(FilterAlignment.BUTTERWORTH_3);
  }

  @Test
  void slopesAndCornersAreRead() {
    for (int order = 1; order <= 4; order++) {
      String slope = "upper-slope: " + 6 * order + " dB/oct, loudest:";
      assertThat(spec(BASE.replace("loudest:", slope)).target().upperOrder()).isEqualTo(order);
    }
    DesignSpec spec =
        spec(BASE.replace("level: 84 dB", "level: 84 dB\n    upper-corner: 0.12 kHz"));
    assertThat(spec.stacks().get(0).upperCornerHz()).isEmpty();
    assertThat(spec.stacks().get(1).upperCornerHz()).isEqualTo(OptionalDouble.of(120));
    assertThat(spec.upperCornersHz()).containsExactly(120.0, 200.0);
    assertThat(ScoringAxis.of(spec).frequencyHz().stream()).contains(120.0, 200.0);
  }

  /** Corners that nobody can tell apart are one corner: they would be one point of the axis. */
  @Test
  void cornersCloserThanCanBeToldAreOne() {
    DesignSpec spec =
        spec(
            BASE.replace("level: 84 dB", "level: 84 dB\n    upper-corner: 120.0000001 Hz")
                .replace("y: -25 cm}]", "y: -25 cm}]\n    upper-corner: 199.99999999 Hz"));
    assertThat(spec.upperCornersHz()).containsExactly(120.0, 200.0);
  }

  @Test
  void modelledMainDriverFollowsEachStack() {
    DesignSpec spec =
        spec(
            BASE.replace("level: 84 dB", "level: 84 dB\n    upper-corner: 150 Hz")
                + "main-driver: {high-pass: {shape: linkwitz-riley-2}, polarity: inverted,"
                + " behind: 43.2 cm}\n");
    for (int s = 0; s < 2; s++) {
      MainDriver.Modelled main = (MainDriver.Modelled) spec.stacks().get(s).main().orElseThrow();
      // 78 dB re 20 uPa is 0.15887 Pa, twice that at 84.02 dB; at 2.83 V
      assertThat(main.pressurePaPerV())
          .isCloseTo((s == 0 ? 0.158866 : 0.316979) / 2.83, within(1e-6));
      assertThat(main.highPass())
          .contains(new CrossoverFilter(FilterAlignment.LINKWITZ_RILEY_2, s == 0 ? 200 : 150));
      assertThat(main.polarity()).isEqualTo(Polarity.INVERTED);
      assertThat(main.delayS()).isCloseTo(3.432 / SOUND, within(1e-5));
    }
    DesignSpec stated =
        spec(
            BASE
                + "main-driver: {level: 80 dB, high-pass: {shape: butterworth-3, corner: 180 Hz}}\n");
    assertThat(stated.stacks().get(0).main()).isEqualTo(stated.stacks().get(1).main());
    MainDriver.Modelled main = (MainDriver.Modelled) stated.stacks().get(0).main().orElseThrow();
    assertThat(main.pressurePaPerV()).isCloseTo(0.2 / 2.83, within(1e-6)); // 80 dB is 0.2 Pa
    assertThat(main.polarity()).isEqualTo(Polarity.NORMAL);
    assertThat(main.highPass()).contains(new CrossoverFilter(FilterAlignment.BUTTERWORTH_3, 180));
  }

  @Test
  void measuredMainDriverIsReadFromAFile() throws Exception {
    Files.writeString(
        folder.resolve("main.txt"),
        "# f [Hz]; level [dB]; phase [deg]\n" + "40; 60; 170\n200; 80; 90\n400; 86.0206; -180\n");
    ReadSpec read = readSpec(BASE + "main-driver: {response: main.txt, padding: 6.0206 dB}\n");
    MainDriver.Measured main =
        (MainDriver.Measured) read.spec().stacks().get(0).main().orElseThrow();
    assertThat(read.spec().stacks().get(1).main()).contains(main);
    assertThat(main.measuredHz()).isEqualTo(Curve.of(40, 200, 400));
    // 80 dB is 0.2 Pa; 6.0206 dB halve it
    assertThat(main.pressurePaPerV().at(1)).isCloseTo(0.1 / 2.83, within(1e-6));
    assertThat(main.pressurePaPerV().at(2)).isCloseTo(0.2 / 2.83, within(1e-6));
    assertThat(main.phaseRad().at(1)).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(main.highPass()).isEmpty();
    assertThat(main.delayS()).isCloseTo(3 / SOUND, within(1e-5));
    MainDriver.Measured whole =
        (MainDriver.Measured)
            readSpec(
                    BASE
                        + "main-driver: {response: main.txt, time-of-flight: included,"
                        + " high-pass: {shape: butterworth-1}}\n")
                .spec()
                .stacks()
                .get(0)
                .main()
                .orElseThrow();
    assertThat(whole.delayS()).isZero();
    assertThat(whole.highPass()).contains(new CrossoverFilter(FilterAlignment.BUTTERWORTH_1, 200));
  }

  /** A change of the measured response is a change of the spec. */
  @Test
  void theDigestCoversTheResponse() throws Exception {
    String text = BASE + "main-driver: {response: main.txt}\n";
    Files.writeString(folder.resolve("main.txt"), "40 60 0\n400 80 0\n");
    String first = readSpec(text).digest();
    assertThat(readSpec(text).digest()).isEqualTo(first);
    Files.writeString(folder.resolve("main.txt"), "40 60 0\n400 80 1\n");
    assertThat(readSpec(text).digest()).isNotEqualTo(first);
    assertThat(readSpec(BASE).digest())
        .isEqualTo(Sha256.hex(BASE.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void responsesThatDoNotDoAreRefused() throws Exception {
    Files.writeString(folder.resolve("short.txt"), "50 60 0\n400 80 0\n");
    assertThat(fault("response: short.txt").problem())
        .isEqualTo(
            "the response is known from 50 Hz to 400 Hz; the sum is judged from 40 Hz to 400 Hz");
    assertThat(fault("response: short.txt").key()).isEqualTo("main-driver.response");
    assertThat(fault("response: ../main.txt").problem()).contains("leaves the folder");
    assertThat(fault("response: /etc/hosts").problem()).contains("leaves the folder");
    assertThat(fault("response: gone.txt").problem()).isEqualTo("there is no such file");
    Files.writeString(folder.resolve("bad.txt"), "40 60 0\n400 80 0\n");
    Files.createDirectory(folder.resolve("sub"));
    Files.writeString(folder.resolve("sub/falls.txt"), "400 80 0\n40 60 0\n30 500 0\n");
    List<InputFault> faults =
        catchThrowableOfType(
                InvalidInputException.class,
                () ->
                    readSpec(
                        BASE.replace("28 V", "28")
                            + "main-driver: {response: sub/falls.txt, paddin: 1 dB}\n"))
            .faults();
    assertThat(faults)
        .as("every fault of both files at once")
        .extracting(InputFault::line)
        .containsExactly(13, 14, 2, 3, 3);
    assertThat(faults.get(2).file()).endsWith("falls.txt");
    assertThat(faults.get(4).problem()).isEqualTo("the level is out of range");
    InputFault homeless = faults(BASE + "main-driver: {response: main.txt}\n").get(0);
    assertThat(homeless.problem()).contains("lies in no folder");
  }

  @Test
  void prioritiesMultiplyTheWeights() {
    GradeWeights usual = GradeWeights.STANDARD;
    GradeWeights weights =
        spec(BASE
                + "priorities: {shape: 3, output: 0, correction: 2, material: 0.5,"
                + " worst-stack: 0.25}\n")
            .weights();
    assertThat(weights)
        .isEqualTo(
            new GradeWeights(
                3 * usual.perDbDeviation(),
                3 * usual.perDbOutside(),
                0,
                2 * usual.perDbCorrection(),
                usual.perGramOfWoofer() / 2,
                usual.perJouleOfGap() / 2,
                2 * usual.perPart(),
                usual.perKilogramOfCopper() / 2,
                usual.perMillifarad() / 2,
                0.25));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // crossover
        "crossover: passive | crossover | keys with values | kind, most-parts, coils | write crossover: {kind: passive",
        "crossover: {kind: pasive} | crossover.kind | not one that is known | passive, active, none | write kind: passive",
        "crossover: {kind: [passive, none]} | crossover.kind | one word is needed | passive, active, none | write kind: passive",
        "crossover: {coil: none} | crossover.coil | unknown key | coils | did you mean coils?",
        "crossover: {gain: 0 dB} | crossover.gain | belongs to a filter before an amplifier | this kind | write kind: active",
        "crossover: {kind: active, coils: none} | crossover.coils | belongs to passive parts | this kind | write kind: passive",
        "crossover: {kind: none, most-parts: 2} | crossover.most-parts | belongs to a network | this kind | leave it out",
        "crossover: {most-parts: 5} | crossover.most-parts | out of range | 1 .. 4 | write most-parts: 2",
        "crossover: {most-parts: 1.5} | crossover.most-parts | a whole number | 1, 2, 3, 4 | write most-parts: 2",
        "crossover: {coils: some} | crossover.coils | keys with values are needed here, or none | none, or the keys series, range, wire | write coils: {series: E12",
        "crossover: {coils: {series: E13}} | crossover.coils.series | not one that is known | E6, E12, E24 | write series: E12",
        "crossover: {coils: {range: 1 .. 2}} | crossover.coils.range | the unit is missing | 0.01 mH .. 200 mH | write 1 mH",
        "crossover: {coils: {range: 1 uF}} | crossover.coils.range | uF is a unit of capacitance, not of inductance | 0.01 mH .. 200 mH | write range: 0.1 mH .. 33 mH",
        "crossover: {coils: {resistance: 0.3 ohm}} | crossover.coils.resistance | ohm is a unit of resistance, not of resistance per inductance | 0 ohm/mH .. 10 ohm/mH | write resistance: 0.3 ohm/mH",
        "crossover: {coils: {resistance: 0.3 ohm/mH, wire: 1 mm}} | crossover.coils.resistance | follows from wire | resistance alone | leave resistance out",
        "crossover: {coils: {material: tin}} | crossover.coils.material | not one that is known | copper, aluminium, copper-clad | write material: copper",
        "crossover: {coils: {wire: 20 mm}} | crossover.coils.wire | out of range | 0.2 mm .. 4 mm | write wire: 1.4 mm",
        "crossover: {capacitors: {range: 11 uF .. 14 uF}} | crossover.capacitors.range | no value of E6 lies in this range | such as 15 uF | write range: 10 uF .. 680 uF",
        "crossover: {capacitors: {wire: 1 mm}} | crossover.capacitors.wire | unknown key | series, range | leave it out",
        "crossover: {coils: none, resistors: none} | crossover.coils | neither coils nor resistors | coils or resistors | write kind: none",
        "crossover: {most-parts: 4, damping: {series: E24, range: 0.1 ohm .. 100 ohm}, capacitors: {series: E24}} | crossover.damping | 1062590 networks of up to 4 parts | 200000 at most | damping (73 values), capacitors (45 values), coils (31 values), resistors (9 values); or lower most-parts",
        // active
        "crossover: {kind: active, shapes: butterworth-5} | crossover.shapes | not one that is known | butterworth-1, butterworth-2 | write shapes: butterworth-1",
        "crossover: {kind: active, shapes: []} | crossover.shapes | the list is empty | one value or more | leave shapes out",
        "crossover: {kind: active, gain: 6 dB .. -12 dB} | crossover.gain | the range is reversed | -40 dB .. 20 dB | write the lower end first: -12 dB .. 6 dB",
        "crossover: {kind: active, corner: 5 Hz .. 100 Hz} | crossover.corner | out of range | 20 Hz .. 5000 Hz | write corner: 80 Hz .. 400 Hz",
        "crossover: {kind: active, correction: {q: 0 .. 3}} | crossover.correction.q | out of range | 0.1 .. 20 | write q: 0.5 .. 3",
        "crossover: {kind: active, correction: [none]} | crossover.correction | keys with values are needed here, or none | frequency, q, gain | write correction: {frequency: 30 Hz",
        // main driver
        "main-driver: {} | main-driver.high-pass | neither a high-pass nor a response | high-pass, response, or both | write high-pass: {shape:",
        "main-driver: {high-pass: {corner: 200 Hz}} | main-driver.high-pass.shape | the key is missing | butterworth-1 | write shape: linkwitz-riley-4",
        "main-driver: {high-pass: {shape: linkwitz-riley-3}} | main-driver.high-pass.shape | not one that is known | linkwitz-riley-4 | write shape: linkwitz-riley-2",
        "main-driver: {high-pass: {shape: butterworth-2, corner: 9 kHz}} | main-driver.high-pass.corner | out of range | 20 Hz .. 5000 Hz | write corner: 200 Hz",
        "main-driver: {high-pass: {shape: butterworth-2}, polarity: reversed} | main-driver.polarity | not one that is known | normal, inverted | write polarity: inverted",
        "main-driver: {high-pass: {shape: butterworth-2}, behind: -1 m} | main-driver.behind | out of range | -20 cm .. 5 m | write behind: 0 cm",
        "main-driver: {high-pass: {shape: butterworth-2}, level: 200 dB} | main-driver.level | out of range | 30 dB .. 130 dB | write level: 78 dB",
        "main-driver: {high-pass: {shape: butterworth-2}, padding: 3 dB} | main-driver.padding | no response beside it | only with a response | leave it out",
        "main-driver: {high-pass: {shape: butterworth-2}, time-of-flight: removed} | main-driver.time-of-flight | no response beside it | only with a response | leave it out",
        // priorities
        "priorities: {shape: 11} | priorities.shape | out of range | 0 .. 10 | write shape: 1",
        "priorities: {shap: 1} | priorities.shap | unknown key | shape, output | did you mean shape?",
        "priorities: {output: 2 dB} | priorities.output | a bare number is needed | 0 .. 10 | write 2",
        "priorities: {worst-stack: 80} | priorities.worst-stack | out of range | 0 .. 1 | write worst-stack: 0.8",
        "priorities: {shape: 0, output: 0} | priorities.shape | neither shape nor output counts | above 0 | write shape: 1",
      })
  void faultSaysWhereAndWhatToWrite(
      String line, String key, String problem, String allowed, String hint) {
    InputFault fault = only(BASE + line + "\n");
    assertThat(fault.line()).isEqualTo(14);
    assertThat(fault.key()).isEqualTo(key);
    assertThat(fault.problem()).contains(problem);
    assertThat(fault.allowed()).contains(allowed);
    assertThat(fault.hint()).contains(hint);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "loudest: | upper-slope: 15 dB/oct, loudest: | 12 | target.upper-slope | steps of 6 dB | 6, 12, 18 or 24 dB/oct | write upper-slope: 12 dB/oct",
        "loudest: | upper-slope: 30 dB/oct, loudest: | 12 | target.upper-slope | out of range | 6 dB/oct .. 24 dB/oct | write upper-slope: 12 dB/oct",
        "loudest: | upper-slope: 12, loudest: | 12 | target.upper-slope | the unit is missing | 6 dB/oct .. 24 dB/oct | write 12 dB/oct",
        "loudest: | upper-slope: 12 dB, loudest: | 12 | target.upper-slope | dB is a unit of level, not of slope | 6 dB/oct .. 24 dB/oct | write upper-slope: 12 dB/oct",
        "name: pair | name: pair, upper-corner: 40 Hz | 7 | stacks[1].upper-corner | above the target's low corner | above 40 Hz | raise it",
        "name: pair | name: pair, upper-corner: 4 kHz | 7 | stacks[1].upper-corner | out of range | 30 Hz .. 1000 Hz | write upper-corner: 200 Hz",
        "name: pair | name: pair, uper-corner: 90 Hz | 7 | stacks[1].uper-corner | unknown key | upper-corner | did you mean upper-corner?",
        "loudest: 95 dB} | upper-slope: 6 dB/oct, loudest: 95 dB}%main-driver: {high-pass: {shape: butterworth-2}}"
            + " | 12 | target.upper-slope | the sum of both | upper-slope, or main-driver | leave one of them out",
      })
  void faultsOfCornersAndSlopes(
      String from, String to, int line, String key, String problem, String allowed, String hint) {
    String text = BASE.replace(from, to.replace('%', '\n'));
    if (to.startsWith("name:")) {
      text =
          BASE.replaceAll("(?m)^  - name: pair\\R(    .*\\R)+", "")
              .replace(
                  "listening:",
                  "  - {"
                      + to
                      + ", level: 84 dB, panel: {width: 44 cm, height: 150 cm}, woofers: [{x: 0 cm,"
                      + " y: 0 cm}]}\nlistening:");
    }
    InputFault fault = only(text);
    assertThat(fault.line()).isEqualTo(line);
    assertThat(fault.key()).isEqualTo(key);
    assertThat(fault.problem()).contains(problem);
    assertThat(fault.allowed()).contains(allowed);
    assertThat(fault.hint()).contains(hint);
  }

  private static List<Double> values(List<? extends Part> parts) {
    return parts.stream().map(Part::value).toList();
  }

  private static NetworkOffer.Passive passive(String block) {
    return (NetworkOffer.Passive) spec(BASE + block).networks();
  }

  private static ActiveLimits active(String block) {
    return active(BASE, block);
  }

  private static ActiveLimits active(String base, String block) {
    return ((NetworkOffer.Active) spec(base + block).networks()).limits();
  }

  private ReadSpec readSpec(String text) throws Exception {
    return SpecReader.read(Files.writeString(folder.resolve("range.yaml"), text));
  }

  private InputFault fault(String keys) {
    List<InputFault> faults =
        catchThrowableOfType(
                InvalidInputException.class, () -> readSpec(BASE + "main-driver: {" + keys + "}\n"))
            .faults();
    assertThat(faults).hasSize(1);
    return faults.get(0);
  }

  private static DesignSpec spec(String text) {
    return SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "range.yaml").spec();
  }

  private static InputFault only(String text) {
    List<InputFault> faults = faults(text);
    assertThat(faults)
        .as(faults.stream().map(InputFault::oneLine).collect(Collectors.joining("\n")))
        .hasSize(1);
    return faults.get(0);
  }

  private static List<InputFault> faults(String text) {
    return Optional.ofNullable(catchThrowableOfType(InvalidInputException.class, () -> spec(text)))
        .map(InvalidInputException::faults)
        .orElse(List.of());
  }
}
