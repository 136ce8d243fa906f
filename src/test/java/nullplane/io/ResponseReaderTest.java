package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ResponseReaderTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "20 61.5 90\n1000 80 -45\n",
        "# Freq(Hz) SPL(dB) Phase(degrees)\n20 61.5 90\n1000 80 -45\n",
        "* taken on a spring day\nf [Hz]; level [dB]; phase [deg]\n20,0; 61,5; 90\n1000; 80,0; -45\n",
        "phase [°],f [kHz],SPL [dB]\n90,0.02,61.5\n-45,1,80\n",
        "\"phase [rad]\"\t\"level\"\t\"f\"\n1.5707963267948966\t61.5\t20\n-0.7853981633974483\t80\t1000\n",
        "frequency; magnitude [dB]; phase; coherence\n20; 61.5; 90; 1\n1000; 80; -45; 0.9\n",
      })
  void columnsAreFoundByTheirNames(String text) {
    ResponseReader.Response response = read(text);
    assertThat(response.frequencyHz()).isEqualTo(Curve.of(20, 1000));
    assertThat(response.levelDb()).isEqualTo(Curve.of(61.5, 80));
    assertThat(response.phaseRad().at(0)).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(response.phaseRad().at(1)).isCloseTo(-Math.PI / 4, within(1e-12));
  }

  @Test
  void theDigestIsThatOfTheBytes() {
    String text = "20 60 0\n30 60 0\n";
    assertThat(read(text).digest()).isEqualTo(Sha256.hex(text.getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20 60 0%20 61 0 | 2 | does not rise",
        "20 60 0%30 -300 0 | 2 | the level is out of range",
        "20 60 0%30 nan 0 | 2 | the level is out of range",
        "20 60 0%30 60 nan | 2 | the phase is out of range",
        "-20 60 0%30 60 0 | 1 | the frequency is out of range",
        "20 60 0 | 1 | one row is no response",
        "20 60%30 60 | 1 | there is no line of names",
        "f [Hz]; level [dB]%20; 60%30; 60 | 1 | no column holds the phase",
        "f [Hz]; pressure [Pa]; phase [deg]%20; 60; 0%30; 60; 0 | 1 | no column holds the level",
        "f [Hz]; magnitude [Pa]; phase [deg]%20; 60; 0%30; 60; 0 | 1 | a unit that is not read",
        "f [Hz]; level [dB]; level [dB]%20; 60; 0%30; 60; 0 | 1 | two columns hold the level",
        "f; level; phase; x%20; 60; 0%30; 60; 0 | 1 | does not name as many columns",
        "20 60 zero%30 60 0 | 1 | this is not a number",
      })
  void faultsNameTheirLine(String text, int line, String problem) {
    InputFault fault =
        catchThrowableOfType(
                InvalidInputException.class, () -> read(text.replace('%', '\n') + "\n"))
            .faults()
            .get(0);
    assertThat(fault.file()).isEqualTo("main.txt");
    assertThat(fault.line()).isEqualTo(line);
    assertThat(fault.problem()).contains(problem);
    assertThat(fault.hint()).isNotBlank();
  }

  private static ResponseReader.Response read(String text) {
    return ResponseReader.of(text.getBytes(StandardCharsets.UTF_8), "main.txt");
  }
}
