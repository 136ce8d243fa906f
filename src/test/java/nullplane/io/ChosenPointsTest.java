package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import nullplane.faults.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChosenPointsTest {
  @Test
  void readsFrequenciesInTheOrderWritten() {
    assertThat(ChosenPoints.frequencies("63 Hz, 31.5 Hz,1 kHz", "--frequencies"))
        .containsExactly(63.0, 31.5, 1000.0);
  }

  @Test
  void readsAnglesWithAndWithoutDegreeSigns() {
    assertThat(ChosenPoints.angles("0/0, 30/0, -60 / 10.5, 0\u00b0/\u221290\u00b0", "--angles"))
        .containsExactly(
            new AnglePair(0, 0),
            new AnglePair(30, 0),
            new AnglePair(-60, 10.5),
            new AnglePair(0, -90));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "63|the unit is missing (found 63)|write 63 Hz",
        "63 cm|cm is a unit of length, not of frequency|5 Hz",
        "63,5 Hz|the unit is missing (found 63)|write 63 Hz",
        "0.5 Hz|out of range (found 0.5 Hz)|allowed: 1 Hz .. 20 kHz",
        "-5 Hz|below zero has no meaning|5 Hz",
        "nan Hz|must be finite|5 Hz",
        "63 Hz,|the value is missing|5 Hz",
        "20 Hz .. 45 Hz|one value is needed, not a range|5 Hz"
      })
  void saysWhatIsWrongWithFrequencies(String text, String problem, String hint) {
    assertThatThrownBy(() -> ChosenPoints.frequencies(text, "--frequencies"))
        .isInstanceOf(InvalidInputException.class)
        .hasMessageStartingWith("--frequencies: ")
        .hasMessageContaining(problem)
        .hasMessageContaining(hint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "30|not a direction (found 30)",
        "30/|not a direction",
        "a/b|not a direction (found a/b)",
        "30/0,|a direction is missing",
        "181/0|out of range (found 181/0)",
        "0/91|out of range",
        "1e9/0|not a direction"
      })
  void saysWhatIsWrongWithAngles(String text, String problem) {
    assertThatThrownBy(() -> ChosenPoints.angles(text, "--angles"))
        .isInstanceOf(InvalidInputException.class)
        .hasMessageStartingWith("--angles: ")
        .hasMessageContaining(problem)
        .hasMessageContaining("such as 30/0");
  }

  @Test
  void tellsEveryFaultAtOnce() {
    assertThatThrownBy(() -> ChosenPoints.frequencies("63, 31.5 Hz, x", "--frequencies"))
        .isInstanceOfSatisfying(
            InvalidInputException.class,
            fault -> {
              assertThat(fault.faults()).hasSize(2);
              assertThat(fault.exitCode()).isEqualTo(2);
            });
  }

  @Test
  void refusesEndlessLists() {
    assertThatThrownBy(() -> ChosenPoints.angles("0/0,".repeat(300) + "0/0", "--angles"))
        .hasMessageContaining("200 values at most");
  }
}
