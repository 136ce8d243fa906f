package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A handful of whole numbers, worked out by hand. */
class BatchSpreadTest {
  private static final List<String> FIVE = List.of("A", "B", "C", "D", "E");

  private static BriefValue value(BriefWindow window) {
    return new BriefValue(
        BriefValue.Section.TARGET,
        "fs",
        "fs",
        "resonance",
        BriefUnit.HERTZ,
        OptionalDouble.empty(),
        "",
        window,
        "free air",
        "");
  }

  private static BatchSpread five(BriefWindow window) {
    return BatchSpread.of(value(window), FIVE, List.of(30.0, 31.0, 33.0, 34.0, 37.0));
  }

  /** Mean 33, squares 9 + 4 + 0 + 1 + 16 = 30, s^2 = 30/4. */
  @Test
  void meanScatterAndEnds() {
    BatchSpread spread = five(BriefWindow.between(20, 42, "usual"));
    assertThat(spread.count()).isEqualTo(5);
    assertThat(spread.mean()).isCloseTo(33, within(1e-12));
    assertThat(spread.deviation()).isCloseTo(Math.sqrt(7.5), within(1e-12));
    assertThat(spread.least()).isEqualTo(30);
    assertThat(spread.greatest()).isEqualTo(37);
  }

  /** Cpk by the nearer limit: (42 - 33)/(3 s) above, (33 - 27)/(3 s) below. */
  @Test
  void capabilityIsThatOfTheNearerLimit() {
    double s = Math.sqrt(7.5);
    assertCapability(five(BriefWindow.between(20, 42, "usual")), 9 / (3 * s));
    assertCapability(five(BriefWindow.between(27, 42, "usual")), 6 / (3 * s));
    assertCapability(five(BriefWindow.atLeast(27, "usual")), 6 / (3 * s));
    assertCapability(five(BriefWindow.atMost(42, "usual")), 9 / (3 * s));
    // beyond the limit it is below 0
    assertCapability(five(BriefWindow.atMost(32, "usual")), -1 / (3 * s));
    assertThat(five(BriefWindow.NONE).capability()).isEmpty();
    assertThat(
            BatchSpread.of(
                    value(BriefWindow.atMost(42, "usual")),
                    FIVE,
                    List.of(33.0, 33.0, 33.0, 33.0, 33.0))
                .capability())
        .isEmpty();
    assertThat(
            BatchSpread.of(
                    value(BriefWindow.atMost(42, "usual")),
                    FIVE.subList(0, 4),
                    List.of(33.0, 34.0, 33.0, 34.0))
                .capability())
        .isEmpty();
  }

  private static void assertCapability(BatchSpread spread, double expected) {
    assertThat(spread.capability().orElseThrow()).isCloseTo(expected, within(1e-12));
    // Bissell's variance 1/(9 n) + Cpk^2/(2 (n - 1)); 1.959964 is the normal 97.5 % point
    double reach = 1.959964 * Math.sqrt(1 / 45.0 + expected * expected / 8);
    assertThat(spread.capabilityLower().orElseThrow()).isCloseTo(expected - reach, within(1e-6));
  }

  /** Six deviations are 16.43. */
  @Test
  void sixDeviationsWiderThanTheWindowAreTooWide() {
    double six = 6 * Math.sqrt(7.5);
    assertThat(five(BriefWindow.between(30, 30 + six - 1e-9, "usual")).tooWide()).isTrue();
    assertThat(five(BriefWindow.between(30, 30 + six + 1e-9, "usual")).tooWide()).isFalse();
    assertThat(five(BriefWindow.atLeast(30, "usual")).tooWide()).isFalse();
    assertThat(five(BriefWindow.atMost(30, "usual")).tooWide()).isFalse();
  }

  /**
   * Critical values at 5 %, two-sided: 1.481 for four and 1.715 for five (F. E. Grubbs and G. Beck,
   * Technometrics 14 (1972) 847, table I). Of 0, 0, 0 and 1 the last is 3/2 deviations off.
   */
  @Test
  void theOneApartIsNamed() {
    BriefValue any = value(BriefWindow.NONE);
    List<String> four = FIVE.subList(0, 4);
    assertThat(BatchSpread.of(any, four, List.of(0.0, 1.0, 0.0, 0.0)).outlier()).hasValue("B");
    assertThat(BatchSpread.of(any, four, List.of(-1.0, 0.0, 0.0, 0.0)).outlier()).hasValue("A");
    // 0.24 more scatter among the others: 1.478 deviations
    assertThat(BatchSpread.of(any, four, List.of(0.0, 1.0, 0.1, -0.1)).outlier()).isEmpty();
    assertThat(BatchSpread.of(any, FIVE.subList(0, 3), List.of(0.0, 1.0, 0.0)).outlier()).isEmpty();
    // five of which 37 is 4/2.739 = 1.461 off
    assertThat(five(BriefWindow.NONE).outlier()).isEmpty();
    assertThat(BatchSpread.of(any, four, List.of(1.0, 1.0, 1.0, 1.0)).outlier()).isEmpty();
  }

  @Test
  void fewerThanTwoOrUnnamedAreRefused() {
    BriefValue any = value(BriefWindow.NONE);
    assertThat(BatchSpread.of(any, List.of("A", "B"), List.of(1.0, 2.0)).count()).isEqualTo(2);
    assertThatThrownBy(() -> BatchSpread.of(any, List.of("A"), List.of(1.0)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> BatchSpread.of(any, List.of("A"), List.of(1.0, 2.0)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
