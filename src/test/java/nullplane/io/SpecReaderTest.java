package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import nullplane.acoustics.Corner;
import nullplane.acoustics.Piston;
import nullplane.acoustics.PolygonOutline;
import nullplane.acoustics.RectangularOutline;
import nullplane.acoustics.RoundOutline;
import nullplane.driver.Mounting;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.motor.CoilBrief;
import nullplane.motor.MagnetMaterial;
import nullplane.scoring.Amplifier;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.Listening;
import nullplane.scoring.StackBrief;
import nullplane.scoring.Target;
import nullplane.scoring.Wiring;
import nullplane.scoring.WooferBrief;
import nullplane.units.Air;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpecReaderTest {
  private static final String GOOD =
      """
      title: Reading-room range
      woofer:
        nominal: 300 mm
        effective-diameter: 260 mm
        range:
          fs: 20 Hz .. 45 Hz
          qts: 0.3 .. 1.5
          moving-mass: 40 g .. 110 g
          travel: 4 mm .. 14 mm
      stacks:
        - name: single
          panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}
          woofers: [{x: 0 cm, y: -25 cm}]
        - name: pair
          panel: {width: 44 cm, height: 150 cm}
          woofers: [{x: 0 cm, y: -45 cm}, {x: 0 cm, y: 45 cm}]
          level: 84 dB
          wiring: parallel
      listening: {distance: 3 m, height: 1 m}
      target: {level: 78 dB, voltage: 2.83 V, low-corner: 40 Hz, upper-corner: 200 Hz,
        corridor: 2 dB, loudest: 95 dB}
      amplifier: {voltage: 28 V, lowest-load: 3 ohm}
      """;

  @TempDir Path folder;

  @Test
  void readsEveryKey() {
    DesignSpec spec = spec(GOOD);
    assertThat(spec.title()).isEqualTo("Reading-room range");
    WooferBrief woofer = spec.woofer();
    assertThat(woofer.nominalM()).isEqualTo(0.3);
    assertThat(woofer.effectiveDiameterM()).isEqualTo(0.26);
    assertThat(woofer.resonanceHz()).isEqualTo(new Range(20, 45));
    assertThat(woofer.totalQ()).isEqualTo(new Range(0.3, 1.5));
    assertThat(woofer.bareMassKg()).isEqualTo(new Range(0.04, 0.11));
    assertThat(woofer.travelM()).isEqualTo(new Range(0.004, 0.014));
    assertThat(spec.stacks()).hasSize(2);
    StackBrief single = spec.stacks().get(0);
    assertThat(single.name()).isEqualTo("single");
    assertThat(single.panel().outline()).isEqualTo(new RectangularOutline(0.44, 1.10));
    assertThat(single.panel().clearanceM()).isEqualTo(OptionalDouble.of(0.04));
    assertThat(single.pistons()).containsExactly(new Piston(0, -0.25, 0.13));
    assertThat(single.levelDb()).isEqualTo(78);
    assertThat(single.loudestDb()).isEqualTo(95);
    assertThat(single.wiring()).isEmpty();
    StackBrief pair = spec.stacks().get(1);
    assertThat(pair.panel().clearanceM()).isEmpty();
    assertThat(pair.levelDb()).isEqualTo(84);
    assertThat(pair.loudestDb()).isEqualTo(95);
    assertThat(pair.wiring()).isEqualTo(Optional.of(new Wiring(2, 1)));
    assertThat(spec.listening()).isEqualTo(new Listening(3, 1));
    assertThat(spec.target()).isEqualTo(new Target(2.83, 40, 200, 2));
    assertThat(spec.amplifier()).isEqualTo(new Amplifier(28, 3));
  }

  @Test
  void digestIsThatOfTheBytes() {
    ReadSpec read = SpecReader.read(GOOD.getBytes(StandardCharsets.UTF_8), "range.yaml");
    assertThat(read.digest()).matches("[0-9a-f]{64}");
    assertThat(read.fileName()).isEqualTo("range.yaml");
    // FIPS 180-4, example of the message "abc".
    assertThat(Sha256.hex("abc".getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(read.digest()).isEqualTo(Sha256.hex(GOOD.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void leftOutValuesFollowFromTheSize() {
    WooferBrief woofer =
        spec(GOOD.replaceAll("(?m)^  range:\\R(    .*\\R)+", "")
                .replace("voltage: 2.83 V, ", "")
                .replace("corridor: 2 dB, ", ""))
            .woofer();
    assertThat(woofer.mechanicalQ()).isEqualTo(5);
    assertThat(woofer.statedInductanceH()).isEmpty();
    assertThat(woofer.powerW()).isEqualTo(150);
    CoilBrief coil = woofer.coil();
    assertThat(coil.resistanceOhm()).isEqualTo(Range.pinned(5.6));
    assertThat(coil.fluxT()).isEqualTo(new Range(0.4, 1));
    assertThat(coil.gapHeightsM()).containsExactly(0.006, 0.008, 0.010);
    assertThat(coil.formersM()).containsExactly(0.038, 0.050, 0.065);
    assertThat(coil.wires()).containsExactly(ConductorMaterial.COPPER);
    assertThat(coil.magnet()).isEqualTo(MagnetMaterial.FERRITE);
    assertThat(woofer.totalQ()).isEqualTo(new Range(0.3, 1.5));
    // Total moving mass of 300 mm woofers 40 g to 120 g (common practice), less the air of a free
    // disc of 130 mm radius: 8/3 x 1.2041 x 0.13^3 kg = 7.05 g (Lamb, Hydrodynamics, art. 102).
    assertThat(woofer.bareMassKg().lower()).isCloseTo(0.040 - 0.00705, within(1e-5));
    assertThat(woofer.bareMassKg().upper()).isCloseTo(0.120 - 0.00705, within(1e-5));
  }

  @ParameterizedTest
  @CsvSource({"165, 0.5", "200, 0.6", "250, 0.75", "300, 0.9", "380, 1.2", "460, 1.5", "530, 1.8"})
  void everySizeHasConsistentDefaults(double nominalMm, double inductanceMh) {
    double nominal = nominalMm / 1000;
    double effective = 0.85 * nominal;
    SizeDefaults usual = SizeDefaults.of(nominal, effective);
    assertThat(usual.inductanceH()).isCloseTo(inductanceMh * 1e-3, within(1e-12));
    double air = Mounting.FREE_AIR.airMassKg(effective / 2, Air.standard());
    assertThat(usual.bareMassKg().lower()).isGreaterThan(air / 2);
    assertThat(usual.bareMassKg().upper()).isGreaterThan(usual.bareMassKg().lower());
    assertThat(SizeDefaults.nominalForArea(Math.PI / 4 * effective * effective)).isEqualTo(nominal);
  }

  private static String withCoil(String keys) {
    return GOOD.replaceFirst("  range:", keys + "  range:");
  }

  @Test
  void coilAndMotorAreRead() {
    CoilBrief coil =
        spec(withCoil(
                """
                  re: 5.2 ohm .. 6.4 ohm
                  flux: 0.9 T .. 1.4 T
                  gap-height: 7 mm .. 12 mm
                  magnet: neodymium
                  wire: [copper-clad, copper]
                  former: [65 mm, 50 mm]
                """))
            .woofer()
            .coil();
    assertThat(coil.resistanceOhm()).isEqualTo(new Range(5.2, 6.4));
    assertThat(coil.fluxT()).isEqualTo(new Range(0.9, 1.4));
    assertThat(coil.gapHeightsM()).containsExactly(0.008, 0.010, 0.012);
    assertThat(coil.magnet()).isEqualTo(MagnetMaterial.NEODYMIUM);
    assertThat(coil.wires())
        .containsExactly(ConductorMaterial.COPPER_CLAD_ALUMINIUM, ConductorMaterial.COPPER);
    assertThat(coil.formersM()).containsExactly(0.05, 0.065);
    CoilBrief other =
        spec(withCoil("  gap-height: [9 mm, 7 mm]\n  wire: aluminium\n  former: 50 mm\n"))
            .woofer()
            .coil();
    assertThat(other.gapHeightsM()).containsExactly(0.007, 0.009);
    assertThat(other.wires()).containsExactly(ConductorMaterial.ALUMINIUM);
    assertThat(other.formersM()).containsExactly(0.05);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "wire: coper | woofer.wire | copper, aluminium, copper-clad | write wire: copper",
        "wire: [copper, silver] | woofer.wire | copper, aluminium, copper-clad | write wire: copper",
        "magnet: feritte | woofer.magnet | ferrite, neodymium | write magnet: ferrite",
        "magnet: [ferrite, neodymium] | woofer.magnet | ferrite, neodymium | write magnet: ferrite",
        "former: 40 mm .. 50 mm | woofer.former | one value or a list, not a range | write former: 50 mm",
        "former: [] | woofer.former | one value or more | leave former out",
        "former: 50 | woofer.former | 13 mm .. 150 mm | write 50 mm",
        "gap-height: [8 mm, 90 mm] | woofer.gap-height | 1 mm .. 50 mm | write gap-height: 8 mm",
        "gap-height: 8.1 mm .. 8.2 mm | woofer.gap-height | 3, 4, 5, 6, 8, 10, 12, 14, 15, 16 mm and"
            + " so on within the range | widen the range, or write one value",
        "gap-hight: 8 mm | woofer.gap-hight | nominal, effective-diameter, range, re, le, qms, power,"
            + " flux, gap-height, magnet, wire, former | did you mean gap-height?"
      })
  void coilKeysThatAreWrong(String keys, String key, String allowed, String hint) {
    assertThatThrownBy(() -> spec(withCoil("  " + keys + "\n")))
        .isInstanceOfSatisfying(
            InvalidInputException.class,
            e -> {
              assertThat(e.faults()).hasSize(1);
              assertThat(e.faults().get(0).key()).isEqualTo(key);
              assertThat(e.faults().get(0).allowed()).isEqualTo(allowed);
              assertThat(e.faults().get(0).hint()).isEqualTo(hint);
            });
  }

  /** The figures of the hint work when they are followed. */
  @Test
  void whereNoCoilCanBeWoundTheLimitToWidenIsNamed() {
    String keys = "  former: 50 mm\n  gap-height: 8 mm\n  re: 6.000 ohm .. 6.002 ohm\n";
    String narrow = withCoil(keys).replace("4 mm .. 14 mm", "8.20 mm .. 8.22 mm");
    assertThatThrownBy(() -> spec(narrow))
        .isInstanceOfSatisfying(
            InvalidInputException.class,
            e -> {
              assertThat(e.faults()).hasSize(1);
              InputFault fault = e.faults().get(0);
              assertThat(fault.key()).isEqualTo("woofer.re");
              assertThat(fault.problem())
                  .startsWith("no coil of stock wire has both 6 to 6.002 ohm and a travel of 8.2");
              Matcher figures =
                  Pattern.compile("widen re to (.*) ohm, or range.travel to (.*) mm, or allow")
                      .matcher(fault.hint());
              assertThat(figures.find()).as(fault.hint()).isTrue();
              double ohm = Double.parseDouble(figures.group(1));
              double mm = Double.parseDouble(figures.group(2));
              String wideRe =
                  Math.min(6.0, ohm - 0.001) + " ohm .. " + Math.max(6.002, ohm + 0.001) + " ohm";
              spec(narrow.replace("6.000 ohm .. 6.002 ohm", wideRe));
              String wideTravel =
                  Math.min(8.2, mm - 0.001) + " mm .. " + Math.max(8.22, mm + 0.001) + " mm";
              spec(narrow.replace("8.20 mm .. 8.22 mm", wideTravel));
            });
  }

  @Test
  void targetVoltageAndCorridorHaveDefaults() {
    Target target =
        spec(GOOD.replace("voltage: 2.83 V, ", "").replace("corridor: 2 dB, ", "")).target();
    assertThat(target.voltageV()).isEqualTo(2.83);
    assertThat(target.corridorDb()).isEqualTo(2);
  }

  @Test
  void otherUnitsGiveTheSameSpec() {
    assertThat(
            spec(
                GOOD.replace("width: 44 cm", "width: 440 mm")
                    .replace("28 V", "0.028 kV")
                    .replace("3 ohm", "3 \u03a9")
                    .replace("20 Hz .. 45 Hz", "0.02 kHz .. 0.045 kHz")))
        .isEqualTo(spec(GOOD));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "wiring: parallel | 2 | 1",
        "wiring: series | 1 | 2",
        "'wiring: {strings: 2}' | 2 | 1",
        "'wiring: {strings: 1}' | 1 | 2",
      })
  void wiringIsReadInOwnWords(String text, int strings, int inSeries) {
    assertThat(spec(GOOD.replace("wiring: parallel", text)).stacks().get(1).wiring())
        .isEqualTo(Optional.of(new Wiring(strings, inSeries)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"village-hall.yaml", "flat.yaml", "one-stack.yaml"})
  void examplesAreGood(String name) {
    ReadSpec read = SpecReader.read(Path.of("specs", name));
    assertThat(read.spec().stacks()).isNotEmpty();
    assertThat(read.digest()).hasSize(64);
  }

  @Test
  void byteOrderMarkAndWindowsLineEndsDoNotMatter() {
    assertThat(spec("\uFEFF" + GOOD.replace("\n", "\r\n"))).isEqualTo(spec(GOOD));
  }

  // ---- one fault at a time: what is changed, then line, key, problem, allowed, hint

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // units and numbers
        "width: 44 cm, height: 110 | width: 44, height: 110 | 12 | stacks[0].panel.width"
            + " | the unit is missing | 5 cm .. 10 m | write 44 cm",
        "nominal: 300 mm | nominal: 300 | 3 | woofer.nominal | the unit is missing"
            + " | 10 cm .. 60 cm | write 300 mm",
        "clearance: 4 cm | clearance: -4 cm | 12 | stacks[0].panel.clearance | out of range"
            + " | 0 cm .. 5 m | write clearance: 4 cm",
        "voltage: 28 V | voltage: NaN V | 22 | amplifier.voltage | the number must be finite"
            + " | 0.5 V .. 200 V | write voltage: 28 V",
        "voltage: 28 V | voltage: -28 V | 22 | amplifier.voltage | below zero"
            + " | 0.5 V .. 200 V | write voltage: 28 V",
        "voltage: 28 V | voltage: .inf | 22 | amplifier.voltage | the number must be finite"
            + " | 0.5 V .. 200 V | write voltage: 28 V",
        "voltage: 28 V | voltage: 1e99 V | 22 | amplifier.voltage | the exponent 99 is absurd"
            + " | 0.5 V .. 200 V | write voltage: 28 V",
        "lowest-load: 3 ohm | lowest-load: 3 Hz | 22 | amplifier.lowest-load"
            + " | Hz is a unit of frequency, not of resistance | 0.5 ohm .. 64 ohm"
            + " | write lowest-load: 3 ohm",
        "height: 110 cm | height: 110 m | 12 | stacks[0].panel.height | out of range"
            + " | 5 cm .. 10 m | write height: 110 cm",
        "fs: 20 Hz .. 45 Hz | fs: 45 Hz .. 20 Hz | 6 | woofer.range.fs | the range is reversed"
            + " | 5 Hz .. 500 Hz | write the lower end first: 20 Hz .. 45 Hz",
        "fs: 20 Hz .. 45 Hz | fs: 20 .. 45 Hz | 6 | woofer.range.fs | the lower end has no unit"
            + " | 5 Hz .. 500 Hz | write 20 Hz .. 45 Hz",
        "fs: 20 Hz .. 45 Hz | fs: 2 Hz .. 45 Hz | 6 | woofer.range.fs | out of range"
            + " | 5 Hz .. 500 Hz | write fs: 20 Hz .. 45 Hz",
        "qts: 0.3 .. 1.5 | qts: 0.3 .. 5.5 | 7 | woofer.range.qts | Qts may reach 5.5"
            + " | below Qms | lower the upper end of range.qts, or raise qms",
        "nominal: 300 mm | nominal: 240 mm | 4 | woofer.effective-diameter"
            + " | larger than the nominal size, by 2 cm | 12 cm .. 24 cm | radiating piston",
        "effective-diameter: 260 mm | effective-diameter: 130 mm | 4 | woofer.effective-diameter"
            + " | less than half the nominal size | 15 cm .. 30 cm | not its radius",
        // keys
        "height: 110 cm | hight: 110 cm | 12 | stacks[0].panel.hight | unknown key"
            + " | width, height, clearance | did you mean height?",
        "lowest-load: | lowest_load: | 22 | amplifier.lowest_load | unknown key"
            + " | voltage, lowest-load | did you mean lowest-load?",
        "voltage: 28 V | voltage: 28 V, zebracrossing: 1 | 22 | amplifier.zebracrossing | unknown key | voltage, lowest-load"
            + " | leave it out",
        ", lowest-load: 3 ohm | | 22 | amplifier.lowest-load | the key is missing"
            + " | 0.5 ohm .. 64 ohm | write lowest-load: 3 ohm",
        "title: Reading-room range | # none | 2 | title | the key is missing | a short text"
            + " | write title: Reading-room range",
        "voltage: 28 V | voltage: 28 V, voltage: 30 V | 22 | amplifier.voltage"
            + " | twice, first in line 22 | each key once | leave one of them out",
        "title: Reading-room range | title: | 1 | title | a short text is needed"
            + " | 1 to 80 visible characters | write title: Reading-room range",
        "title: Reading-room range | title: \"a\\e[31mb\" | 1 | title | a short text is needed"
            + " | 1 to 80 visible characters | write title: Reading-room range",
        // node types
        "{voltage: 28 V, lowest-load: 3 ohm} | 28 V | 22 | amplifier"
            + " | keys with values are needed here | voltage, lowest-load"
            + " | write amplifier: {voltage: 28 V, lowest-load: 3 ohm}",
        "voltage: 28 V | voltage: [28 V] | 22 | amplifier.voltage | a single value is needed"
            + " | 0.5 V .. 200 V | write voltage: 28 V",
        "woofers: [{x: 0 cm, y: -25 cm}] | woofers: {x: 0 cm, y: -25 cm} | 13 | stacks[0].woofers"
            + " | a list is needed | a list of 1 to 16 | write woofers: [{x: 0 cm, y: -25 cm}]",
        "woofers: [{x: 0 cm, y: -25 cm}] | woofers: [] | 13 | stacks[0].woofers"
            + " | the list is empty | a list of 1 to 16 | write woofers: [{x: 0 cm, y: -25 cm}]",
        "woofers: [{x: 0 cm, y: -25 cm}] | woofers: [0 cm] | 13 | stacks[0].woofers[0]"
            + " | keys with values are needed here | x, y | write {x: 0 cm, y: -25 cm}",
        "y: -25 cm | y: 0 | 13 | stacks[0].woofers[0].y | the unit is missing | -5 m .. 5 m"
            + " | write 0 cm",
        // geometry
        "y: -25 cm | y: -42.5 cm | 13 | stacks[0].woofers[0]"
            + " | woofer 1 of stack \"single\" reaches over the panel's rim by 0.5 cm"
            + " | at least 13 cm inside the rim | move the woofer or enlarge the panel",
        "x: 0 cm, y: -25 cm | x: 30 cm, y: -25 cm | 13 | stacks[0].woofers[0]"
            + " | reaches over the panel's rim by 21 cm | at least 13 cm inside the rim | move",
        "y: -45 cm | y: 22 cm | 16 | stacks[1].woofers[1]"
            + " | woofers 1 and 2 of stack \"pair\" overlap by 3 cm"
            + " | centres at least 26 cm apart | move one of them",
        "{width: 44 cm, height: 110 cm, clearance: 4 cm} | {outline: oval, diameter: 60 cm}"
            + " | 12 | stacks[0].panel.outline | unknown outline | round, or a list of corners"
            + " | write outline: round with diameter: 60 cm",
        "distance: 3 m, height: 1 m | distance: 50 cm, height: 1.6 m | 19 | listening.height"
            + " | sees the panel of stack \"single\" from more than 60 degrees above"
            + " | 86.6 cm at most above or below the panel's centre, which is 59 cm high"
            + " | move the point",
        "distance: 3 m | distance: 1 cm | 19 | listening.distance | out of range | 30 cm .. 30 m"
            + " | write distance: 3 m",
        // levels, corners, wiring, names
        "low-corner: 40 Hz | low-corner: 300 Hz | 20 | target.upper-corner"
            + " | must lie above the low corner | above 300 Hz | exchange the two",
        "level: 78 dB, | | 11 | stacks[0].level | neither this stack nor the target states level"
            + " | 30 dB .. 130 dB | write level: 78 dB here or in target",
        "loudest: 95 dB | loudest: 80 dB | 14 | stacks[1].loudest"
            + " | the loudest level, 80 dB, lies below the level asked for | at least 84 dB"
            + " | raise loudest or lower level",
        "voltage: 28 V | voltage: 2 V | 22 | amplifier.voltage"
            + " | cannot give the target's voltage of 2.83 V | at least 2.83 V"
            + " | raise it, or lower target.voltage",
        "wiring: parallel | wiring: star | 18 | stacks[1].wiring | unknown wiring"
            + " | parallel, series, or {strings: 2} | write wiring: parallel",
        "wiring: parallel | wiring: {strings: 3} | 18 | stacks[1].wiring.strings"
            + " | do not divide into that many equal strings | 1, 2 | write strings: 2",
        "name: pair | name: single | 14 | stacks[1].name | another stack has this name, in line 11"
            + " | a name of its own | write another name",
      })
  void faultSaysWhereAndWhatToWrite(
      String from, String to, int line, String key, String problem, String allowed, String hint) {
    String text = GOOD.replaceFirst(java.util.regex.Pattern.quote(from), quoteOrNone(to));
    assertThat(text).as("the example changed").isNotEqualTo(GOOD);
    List<InputFault> faults = faults(text);
    assertThat(faults).as(lines(faults)).hasSize(1);
    InputFault fault = faults.get(0);
    assertThat(fault.file()).isEqualTo("range.yaml");
    assertThat(fault.line()).as(lines(faults)).isEqualTo(line);
    assertThat(fault.key()).isEqualTo(key);
    assertThat(fault.problem()).contains(problem);
    assertThat(fault.allowed()).contains(allowed);
    assertThat(fault.hint()).contains(hint);
  }

  @Test
  void commaWithinBracesIsExplained() {
    List<InputFault> faults = faults(GOOD.replace("distance: 3 m", "distance: 3,5 m"));
    assertThat(faults)
        .extracting(InputFault::key)
        .containsExactly("listening.5 m", "listening.distance");
    assertThat(faults.get(0).hint()).contains("decimal point");
    assertThat(faults.get(1).problem()).isEqualTo("the unit is missing");
  }

  @Test
  void defaultQtsRangeMustStayBelowAGivenQms() {
    List<InputFault> faults =
        faults(
            GOOD.replace("    qts: 0.3 .. 1.5\n", "").replace("  range:", "  qms: 1.2\n  range:"));
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).line()).isEqualTo(5);
    assertThat(faults.get(0).key()).isEqualTo("woofer.qms");
    assertThat(faults.get(0).problem()).contains("Qts may reach 1.5").contains("Qms 1.2");
  }

  @Test
  void severalWoofersOverlapPairByPair() {
    List<InputFault> faults =
        faults(
            GOOD.replace(
                "[{x: 0 cm, y: -45 cm}, {x: 0 cm, y: 45 cm}]",
                "[{x: 0 cm, y: -20 cm}, {x: 0 cm, y: 0 cm}, {x: 0 cm, y: 20 cm}]"));
    assertThat(faults)
        .extracting(InputFault::problem)
        .containsExactly(
            "woofers 1 and 2 of stack \"pair\" overlap by 6 cm",
            "woofers 2 and 3 of stack \"pair\" overlap by 6 cm");
  }

  @Test
  void roundAndPolygonPanels() {
    DesignSpec spec =
        spec(
            GOOD.replace(
                    "{width: 44 cm, height: 110 cm, clearance: 4 cm}",
                    "{outline: round, diameter: 90 cm, clearance: 4 cm}")
                .replace(
                    "{width: 44 cm, height: 150 cm}",
                    "{outline: [[-22 cm, -75 cm], [22 cm, -75 cm], [18 cm, 75 cm], [-18 cm, 75"
                        + " cm]]}"));
    assertThat(spec.stacks().get(0).panel().outline()).isEqualTo(new RoundOutline(0.9));
    assertThat(spec.stacks().get(1).panel().outline())
        .isEqualTo(
            new PolygonOutline(
                List.of(
                    new Corner(-0.22, -0.75),
                    new Corner(0.22, -0.75),
                    new Corner(0.18, 0.75),
                    new Corner(-0.18, 0.75))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{outline: oval, diameter: 60 cm} | outline | unknown outline",
        "{outline: round} | diameter | missing",
        "{outline: round, diameter: 90 cm, width: 44 cm} | width | takes no width",
        "{diameter: 90 cm} | diameter | belongs to a round panel",
        "{outline: [[0 cm, 0 cm], [50 cm, 0 cm]]} | outline | 2 corners",
        "{outline: [[0 cm, 0 cm], [50 cm, 0 cm], 7]} | outline[2] | pair of lengths",
        "{outline: [[0 cm, 0 cm], [50, 0 cm], [25 cm, 90 cm]]} | outline[1] | unit",
        "{outline: [[-40 cm, -60 cm], [40 cm, 60 cm], [40 cm, -60 cm], [-40 cm, 60 cm]]}"
            + " | outline | cross"
      })
  void outlineFaults(String panel, String key, String problem) {
    List<InputFault> faults =
        faults(GOOD.replace("{width: 44 cm, height: 110 cm, clearance: 4 cm}", panel));
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).key()).isEqualTo("stacks[0].panel." + key);
    assertThat(faults.get(0).problem()).contains(problem);
  }

  /** The pistons decide; frames that do not fit are a caution in the report. */
  @Test
  void pistonsMayTouchEachOtherAndTheRim() {
    DesignSpec spec =
        spec(
            GOOD.replace("width: 44 cm, height: 150 cm", "width: 26 cm, height: 52 cm")
                .replace("y: -45 cm", "y: -13 cm")
                .replace("y: 45 cm", "y: 13 cm"));
    assertThat(spec.stacks().get(1).pistons()).hasSize(2);
  }

  @Test
  void allFaultsOfAFileComeAtOnceInItsOrder() {
    String text =
        """
        titel: Reading-room range
        woofer:
          nominal: 300
          effective-diameter: 310 mm
          range:
            fs: 45 Hz .. 20 Hz
            qts: low
        stacks:
          - name: single
            panel: {width: 44, height: 110 cm, clearance: -4 cm}
            woofers: [{x: 0 cm}]
          - name: single
            panel: {width: 44 cm, height: 150 cm}
            woofers: [{x: 0 cm, y: -45 cm}, {x: 0 cm, y: NaN cm}]
            wiring: sideways
        listening: 3 m
        target: {level: 78 dB, low-corner: 400 Hz, upper-corner: 200 Hz, loudest: 1,5 dB}
        amplifier: {voltage: 28 V, voltage: 28 V}
        """;
    List<InputFault> faults = faults(text);
    assertThat(faults)
        .as(lines(faults))
        .extracting(fault -> fault.line() + " " + fault.key())
        .containsExactly(
            "1 titel",
            "3 woofer.nominal",
            "6 woofer.range.fs",
            "7 woofer.range.qts",
            "10 stacks[0].panel.clearance",
            "10 stacks[0].panel.width",
            "11 stacks[0].woofers[0].y",
            "12 stacks[1].name",
            "14 stacks[1].woofers[1].y",
            "15 stacks[1].wiring",
            "16 listening",
            "17 target.5 dB",
            "17 target.loudest",
            "17 target.upper-corner",
            "18 amplifier.voltage",
            "18 amplifier.lowest-load");
    assertThat(faults).allSatisfy(fault -> assertThat(fault.hint()).isNotBlank());
  }

  @Test
  void geometryIsJudgedBesideOtherFaults() {
    String text =
        GOOD.replace("qts: 0.3 .. 1.5", "qtz: 0.3 .. 1.5")
            .replace("y: -45 cm", "y: 20 cm")
            .replace("y: -25 cm", "y: -50 cm");
    assertThat(faults(text))
        .extracting(InputFault::key)
        .containsExactly("woofer.range.qtz", "stacks[0].woofers[0]", "stacks[1].woofers[1]");
  }

  @Test
  void withoutAFrameSizeThePistonsAreJudged() {
    String text = GOOD.replace("nominal: 300 mm", "nominal: 300").replace("y: -45 cm", "y: 20 cm");
    List<InputFault> faults = faults(text);
    assertThat(faults)
        .extracting(InputFault::key)
        .containsExactly("woofer.nominal", "stacks[1].woofers[1]");
    assertThat(faults.get(1).problem()).contains("overlap by 1 cm");
  }

  @Test
  void oneLineHoldsEverythingAPersonNeeds() {
    assertThat(faults(GOOD.replace("width: 44 cm, height: 150", "width: 44, height: 150")))
        .extracting(InputFault::oneLine)
        .containsExactly(
            "range.yaml:15: stacks[1].panel.width: the unit is missing (found 44); allowed: 5 cm .."
                + " 10 m; write 44 cm");
  }

  private static DesignSpec spec(String text) {
    return SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "range.yaml").spec();
  }

  private static List<InputFault> faults(String text) {
    return catchThrowableOfType(InvalidInputException.class, () -> spec(text)).faults();
  }

  private static String quoteOrNone(String text) {
    return text == null ? "" : java.util.regex.Matcher.quoteReplacement(text);
  }

  private static String lines(List<InputFault> faults) {
    return faults.stream().map(InputFault::oneLine).collect(Collectors.joining("\n"));
  }
}
