package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import nullplane.fit.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class DecisionTest {
  private static final BriefWindow CLOSED = BriefWindow.between(30, 34, "usual");
  private static final BriefWindow ABOVE = BriefWindow.atLeast(30, "usual");
  private static final BriefWindow BELOW = BriefWindow.atMost(34, "usual");

  /** JCGM 106:2012, figures 8 to 10: intervals that lie inside, outside, and across a limit. */
  static Stream<Arguments> cases() {
    return Stream.of(
        Arguments.of(CLOSED, 31.0, 33.0, Decision.PASS),
        Arguments.of(CLOSED, 30.0, 34.0, Decision.PASS),
        Arguments.of(CLOSED, 29.99, 31.0, Decision.CANNOT_TELL),
        Arguments.of(CLOSED, 33.0, 34.01, Decision.CANNOT_TELL),
        Arguments.of(CLOSED, 29.0, 35.0, Decision.CANNOT_TELL),
        Arguments.of(CLOSED, 28.0, 30.0, Decision.CANNOT_TELL),
        Arguments.of(CLOSED, 28.0, 29.99, Decision.FAIL),
        Arguments.of(CLOSED, 34.01, 36.0, Decision.FAIL),
        Arguments.of(ABOVE, 30.0, 99.0, Decision.PASS),
        Arguments.of(ABOVE, 29.9, 99.0, Decision.CANNOT_TELL),
        Arguments.of(ABOVE, 20.0, 29.9, Decision.FAIL),
        Arguments.of(BELOW, 1.0, 34.0, Decision.PASS),
        Arguments.of(BELOW, 34.1, 35.0, Decision.FAIL),
        Arguments.of(BriefWindow.NONE, -1e9, 1e9, Decision.PASS));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void guardBandDecides(BriefWindow window, double lower, double upper, Decision expected) {
    double middle = (lower + upper) / 2;
    Finding finding = new Finding.Estimate(middle, (upper - lower) / 4, lower, upper);
    assertThat(Decision.of(window, finding)).isEqualTo(expected);
  }

  @Test
  void whatIsNotDeterminedCannotBeTold() {
    Finding none = new Finding.NotDetermined("no phase");
    assertThat(Decision.of(CLOSED, none)).isEqualTo(Decision.CANNOT_TELL);
    assertThat(Decision.of(BriefWindow.NONE, none)).isEqualTo(Decision.PASS);
  }

  @Test
  void oneFailureDecidesThenOneDoubt() {
    for (Decision a : Decision.values()) {
      for (Decision b : Decision.values()) {
        Decision expected =
            a == Decision.FAIL || b == Decision.FAIL
                ? Decision.FAIL
                : a == b ? a : Decision.CANNOT_TELL;
        assertThat(a.and(b)).isEqualTo(expected);
      }
    }
  }
}
