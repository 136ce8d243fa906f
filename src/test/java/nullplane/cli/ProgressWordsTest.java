package nullplane.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The line of progress: an estimate from the pace so far, and never wider than it may be. */
class ProgressWordsTest {
  @Test
  void theTimeLeftIsThatOfTheRestAtThePaceSoFar() {
    // 100 of 400 in 2 s: 300 more take 6 s
    assertThat(ProgressWords.of("search", 100, 400, 0, 2, "", 79))
        .isEqualTo("search: 25 %, 100 of 400, about 6 s left");
    // 300 were done before the clock started: 50 in 2 s, so 50 more take 2 s
    assertThat(ProgressWords.of("search", 350, 400, 300, 2, "", 79)).endsWith("about 2 s left");
  }

  @ParameterizedTest
  @CsvSource({"100, 400, 0, 0.99", "0, 400, 0, 5", "400, 400, 0, 5", "300, 400, 300, 5"})
  void noEstimateWithoutGround(long done, long total, long before, double seconds) {
    assertThat(ProgressWords.of("search", done, total, before, seconds, "", 79))
        .doesNotContain("left")
        .contains(done + " of " + total);
  }

  @Test
  void atASteadyPaceEveryEstimateIsRight() {
    double all = 30;
    for (int done = 40; done < 1000; done += 10) {
      double elapsed = all * done / 1000;
      String line = ProgressWords.of("search", done, 1000, 0, elapsed, "", 79);
      double left = Double.parseDouble(line.replaceAll(".*about ([0-9]+) s left", "$1"));
      assertThat(Math.abs(left - (all - elapsed))).as(line).isLessThanOrEqualTo(2.5 + 1e-9);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.2, 1 s",
    "9.4, 9 s",
    "12, 10 s",
    "57, 55 s",
    "59, 1 min",
    "150, 3 min",
    "3500, 58 min",
    "3590, 1 h 0 min",
    "9000, 2 h 30 min"
  })
  void timesAreRoundedAsTheyDeserve(double seconds, String words) {
    assertThat(ProgressWords.duration(seconds)).isEqualTo(words);
  }

  @Test
  void itIsNeverWiderThanItMayBe() {
    for (int width = 0; width <= 100; width++) {
      String line =
          ProgressWords.of(
              "search", 123_456, 100_000_000, 0, 50, "cost of the best 1.23 dB", width);
      assertThat(line.length()).isLessThanOrEqualTo(width);
      assertThat(line).as("no number is cut off").matches("(.* %|.* left|.* dB)?");
    }
    assertThat(ProgressWords.of("search", 100, 400, 0, 2, "cost of the best 1.23 dB", 79))
        .endsWith("; cost of the best 1.23 dB");
  }

  @Test
  void aStepOfUnknownLengthHasItsNameOnly() {
    assertThat(ProgressWords.of("panels", 3, 0, 0, 9, "", 79)).isEqualTo("panels");
  }
}
