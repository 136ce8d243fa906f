package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import nullplane.faults.InvalidInputException;
import nullplane.fit.ImpedanceSweep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class SweepReaderTest {
  private static final String FIRST = "20 Hz: 6.5 ohm, 30 deg";

  /** Files that all say: 20 Hz 6.5 ohm 30 degrees; 1000 Hz 12.25 ohm -45 degrees. */
  static Stream<Arguments> goodFiles() {
    return Stream.of(
        Arguments.of("commas", "20,6.5,30\n1000,12.25,-45\n"),
        Arguments.of("commas and blanks", "20, 6.5, 30\n1000, 12.25, -45\n"),
        Arguments.of("semicolons", "20;6.5;30\r\n1000;12.25;-45\r\n"),
        Arguments.of("tabs", "20\t6.5\t30\n1000\t12.25\t-45\n"),
        Arguments.of("blanks", "  20   6.5  30\n1000 12.25 -45\n"),
        Arguments.of("decimal commas, semicolons", "20,0;6,5;30\n1000;12,25;-45\n"),
        Arguments.of("decimal commas, tabs", "20,0\t6,5\t30,0\n1000,0\t12,25\t-45,0\n"),
        Arguments.of("decimal commas, blanks", "20,0 6,5 30\n1000,0 12,25 -45\n"),
        Arguments.of("exponents", "2.0e1 6.5E0 3e+1\n1.e3 1.225e1 -4.5e1"),
        Arguments.of("a separator at each end", "20;6.5;30;\n1000;12.25;-45;\n"),
        Arguments.of("quotes", "\"20\",\"6.5\",\"30\"\n\"1000\",\"12.25\",\"-45\"\n"),
        Arguments.of("comments", "# bench\n* noon\n// warm\n20 6.5 30\n# middle\n1000 12.25 -45\n"),
        Arguments.of(
            "units",
            "f [kHz], |Z| [mohm], phase [rad]\n"
                + "0.02,6500,0.5235987755982988\n1,12250,-0.7853981633974483\n"),
        Arguments.of(
            "units in words",
            "Frequency (Hz) Impedance (Ohms) Phase (degrees)\n" + "20 6.5 30\n1000 12.25 -45\n"),
        Arguments.of(
            "units after strokes", "f/Hz\tZ/\u2126\tphi/\u00b0\n20\t6.5\t30\n1000\t12.25\t-45\n"),
        Arguments.of(
            "names in a comment", "# phase deg; f Hz; Z(f) ohm\n30;20;6.5\n-45;1000;12.25\n"),
        Arguments.of(
            "title above names",
            "Sample 12A, cone up\nfreq [Hz]; mag [ohm]; phase [deg]\n"
                + "20;6.5;30\n1000;12.25;-45\n"),
        Arguments.of(
            "real and imaginary",
            "f [Hz]; Re(Z) [ohm]; Im(Z) [ohm]\n"
                + "20;5.629165124598851;3.25\n1000;8.662058069535207;-8.662058069535207\n"),
        Arguments.of(
            "another column",
            "f [Hz]; |Z| [ohm]; phase [deg]; level\n" + "20;6.5;30;1\n1000;12.25;-45;2\n"),
        Arguments.of("falling", "1000 12.25 -45\n20 6.5 30\n"),
        Arguments.of("0 Hz and a gap", "0 5.5 0\n20 6.5 30\n30 NaN NaN\n1000 12.25 -45\n"),
        Arguments.of("repeated rows", "20 6.5 30\n1000 12.25 -45\n20 6.5 30\n"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("goodFiles")
  void readsTheSamePoints(String name, String text) {
    ImpedanceSweep sweep = read(text).sweep();
    assertThat(sweep.size()).as(FIRST).isEqualTo(2);
    assertThat(sweep.frequencyHz().at(0)).isCloseTo(20, within(1e-9));
    assertThat(sweep.magnitudeOhm().at(0)).isCloseTo(6.5, within(1e-9));
    assertThat(Math.toDegrees(sweep.phaseRad().orElseThrow().at(0))).isCloseTo(30, within(1e-9));
    assertThat(sweep.frequencyHz().at(1)).isCloseTo(1000, within(1e-9));
    assertThat(sweep.magnitudeOhm().at(1)).isCloseTo(12.25, within(1e-9));
    assertThat(Math.toDegrees(sweep.phaseRad().orElseThrow().at(1))).isCloseTo(-45, within(1e-9));
  }

  static Stream<Arguments> badFiles() {
    return Stream.of(
        Arguments.of("", "the file is empty"),
        Arguments.of("nothing but words\nand more\n", "no row of numbers was found"),
        Arguments.of("20\n30\n", "sweep.txt:1: there is no line of names, and 1 columns"),
        Arguments.of("20 6 1 5\n30 6 1 5\n", "4 columns"),
        Arguments.of("20,6,1,5\n30,6,1,5\n", "commas may part columns or be decimal marks"),
        Arguments.of("20;6.5;30\n1.000;12,25;-45\n", "sweep.txt:2: points and commas are mixed"),
        Arguments.of("20 6.5 30\n30 6.5\n", "sweep.txt:2: the row has 2 columns, the first has 3"),
        Arguments.of("20 6.5 30\n30 six 30\n", "sweep.txt:2: this is not a number (found six)"),
        Arguments.of("20 6.5 30\nthe end\n", "sweep.txt:2: this is not a row of numbers"),
        Arguments.of("-20 6.5 30\n", "sweep.txt:1: frequency: the frequency is out of range"),
        Arguments.of("20 -6.5 30\n", "sweep.txt:1: impedance: the impedance is out of range"),
        Arguments.of("f [Hz]; Z [dB]\n20;6.5\n", "magnitude in a unit that is not read"),
        Arguments.of("f [MHz]; Z [ohm]\n20;6.5\n", "frequency in a unit that is not read"),
        Arguments.of("f [Hz]; Z [Hz]\n20;6.5\n", "magnitude in a unit that is not read"),
        Arguments.of("f [Hz]; SPL\n20;6.5\n", "the columns name no impedance"),
        Arguments.of("f [Hz]; Re [ohm]\n20;6.5\n", "the columns name no impedance"),
        Arguments.of("f [Hz]; Z [ohm]; mag [ohm]\n20;6;6\n", "two columns hold the magnitude"),
        Arguments.of("f [Hz]; Z [ohm]\n20;6;6\n", "names 2 columns, the rows have 3"),
        Arguments.of("NaN 6 6\n0 6 6\n0 5 5\n", "no row"),
        Arguments.of("20 1\u0000 30\n", "control character"),
        Arguments.of("1 2\n".repeat(60_000), "the file has too many lines"),
        Arguments.of("1 2\n".repeat(300_000), "the file is too large"));
  }

  @ParameterizedTest
  @MethodSource("badFiles")
  void saysWhyAFileIsNoSweep(String text, String reason) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(InvalidInputException.class)
        .hasMessageContaining(reason)
        .hasMessageContaining("sweep.txt");
  }

  @Test
  void everyFaultOfAFileIsTold() {
    assertThatThrownBy(() -> read("20 6 1\n30 x 1\n40 6\n50 6 1\nend\n"))
        .isInstanceOfSatisfying(
            InvalidInputException.class,
            e -> assertThat(e.faults()).extracting(f -> f.line()).containsExactly(2, 3, 5));
  }

  @Test
  void whatWasAssumedOrRepairedIsTold() {
    assertThat(read("30 6 1\n20 6 1\n25 6 1\n").warnings())
        .anyMatch(w -> w.contains("no line names the columns"))
        .anyMatch(w -> w.contains("sorted"))
        .anyMatch(w -> w.contains("radians"));
    ReadSweep twice = read("f Hz; Z ohm\n20;6\n30;8\n30;9\n0;5\n");
    assertThat(twice.warnings())
        .anyMatch(w -> w.contains("1 rows repeat a frequency") && w.contains("13 %"))
        .anyMatch(w -> w.contains("1 rows without a number or at 0 Hz"));
    assertThat(twice.sweep().magnitudeOhm().at(1)).isCloseTo(8.5, within(1e-12));
    assertThat(twice.sweep().phaseRad()).isEmpty();
    assertThat(read("f [Hz]; |Z| [ohm]; phase [deg]\n20;6;10\n30;7;8\n").warnings()).isEmpty();
  }

  @Test
  void oldCharacterSetsAreRead() {
    byte[] bytes = "f Hz; Z ohm; phi \u00b0\n20;6;10\n".getBytes(StandardCharsets.ISO_8859_1);
    ReadSweep sweep = SweepReader.of(bytes, "sweep.txt");
    assertThat(sweep.warnings())
        .containsExactly("the file is not UTF-8 text; it was read as ISO 8859-1");
    assertThat(sweep.sweep().phaseRad().orElseThrow().at(0))
        .isCloseTo(Math.toRadians(10), within(1e-12));
  }

  @Test
  void missingFilesAndFoldersAreTold(@TempDir Path folder) {
    assertThatThrownBy(() -> SweepReader.read(folder)).hasMessageContaining("this is a folder");
    assertThatThrownBy(() -> SweepReader.read(folder.resolve("none.txt")))
        .hasMessageContaining("there is no such file");
  }

  private static ReadSweep read(String text) {
    return SweepReader.of(text.getBytes(StandardCharsets.UTF_8), "sweep.txt");
  }
}
