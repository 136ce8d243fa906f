package nullplane.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class FiniteTextTest {
  @Test
  void numbersThatAreNotFiniteAreAFaultThatNamesTheText() {
    assertThat(FiniteText.of("%.1f dB in %s", 1.25, "hall")).isEqualTo("1.3 dB in hall");
    for (Object number :
        new Object[] {Double.NaN, Double.POSITIVE_INFINITY, Float.NaN, Float.NEGATIVE_INFINITY}) {
      assertThatThrownBy(() -> FiniteText.of("%s lacks %.1f dB", "hall", number))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining("lacks");
    }
  }
}
