package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("reference")
class BatchSpreadReference {
  private static final BriefValue FS =
      new BriefValue(
          BriefValue.Section.TARGET,
          "fs",
          "fs",
          "resonance",
          BriefUnit.HERTZ,
          OptionalDouble.of(32),
          "",
          BriefWindow.between(28.8, 35.2, "usual"),
          "free air",
          "");

  /**
   * Two-sided critical values at 5 %, which are one-sided ones at 2.5 %: F. E. Grubbs and G. Beck,
   * Technometrics 14 (1972) 847, table I; printed to three decimals, the last of which is one too
   * many for 3 (see below) and for 20 values, hence a unit of it.
   */
  @ParameterizedTest
  @CsvSource({"3, 1.155", "4, 1.481", "5, 1.715", "6, 1.887", "7, 2.020", "10, 2.290", "20, 2.709"})
  void criticalDistances(int count, double expected) {
    Validation.check(
            "critical distance of an outlier among " + count,
            "F. E. Grubbs and G. Beck, Technometrics 14 (1972) 847, table I.")
        .expected(expected, "std. dev.")
        .computed(BatchSpread.grubbs(count))
        .within(1e-3);
  }

  /**
   * Exact for three values: their residuals point anywhere on a circle, so that one is longer than
   * g with probability 6 arccos(g sqrt(3)/2)/pi.
   */
  @Test
  void criticalDistanceOfThreeIsExact() {
    double exact = 2 / Math.sqrt(3) * Math.cos(0.05 * Math.PI / 6);
    Validation.check(
            "critical distance of an outlier among three, exact",
            "Closed form: residuals of three values lie on a circle.")
        .expected(exact, "std. dev.")
        .computed(BatchSpread.grubbs(3))
        .within(1e-9);
  }

  /** By hand: mean 32, s = 1, least room 3.2, Cpk = 3.2/3; Bissell's interval from that. */
  @Test
  void capabilityByHand() {
    double step = 1 / Math.sqrt(2.5);
    List<Double> values = List.of(32 - 2 * step, 32 - step, 32.0, 32 + step, 32 + 2 * step);
    BatchSpread spread = BatchSpread.of(FS, List.of("A", "B", "C", "D", "E"), values);
    String byHand = "By hand: five values with mean 32 and standard deviation 1.";
    Validation.check("mean and standard deviation of five samples", byHand)
        .in("Hz")
        .add(32, spread.mean())
        .add(1, spread.deviation())
        .within(1e-12);
    Validation.check("capability Cpk", byHand)
        .expected(3.2 / 3, "")
        .computed(spread.capability().orElseThrow())
        .within(1e-12);
    double reach = 1.959964 * Math.sqrt(1 / 45.0 + 3.2 * 3.2 / 9 / 8);
    Validation.check("lower limit of the capability, 95 %", "Bissell's interval, by hand.")
        .expected(3.2 / 3 - reach, "")
        .computed(spread.capabilityLower().orElseThrow())
        .within(1e-6);
    assertThat(spread.outlier()).isEmpty();
  }

  @Test
  void fewSamplesHaveNoCapabilityAndOneApartIsNamed() {
    assertThat(BatchSpread.of(FS, List.of("A", "B"), List.of(31.0, 32.0)).capability()).isEmpty();
    assertThat(
            BatchSpread.of(
                    FS, List.of("A", "B", "C", "D", "E"), List.of(32.0, 32.1, 31.9, 32.05, 35.0))
                .outlier())
        .hasValue("E");
  }
}
