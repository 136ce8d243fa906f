package nullplane.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.assertj.core.data.Offset.offset;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {
  @Nested
  class Ranges {
    @Test
    void endsBelong() {
      Range range = new Range(20, 45);
      assertThat(range.contains(20)).isTrue();
      assertThat(range.contains(45)).isTrue();
      assertThat(range.contains(45.0001)).isFalse();
      assertThat(range.contains(Double.NaN)).isFalse();
      assertThat(range.at(0)).isEqualTo(20);
      assertThat(range.at(1)).isEqualTo(45);
      assertThat(range.at(0.5)).isEqualTo(32.5);
      assertThat(range.isPinned()).isFalse();
    }

    @Test
    void pinnedHoldsOneValue() {
      Range pinned = Range.pinned(0.1);
      assertThat(pinned.isPinned()).isTrue();
      assertThat(pinned.at(0.7)).isEqualTo(0.1);
    }

    @Test
    void rejectsDisorderAndNonNumbers() {
      assertThatThrownBy(() -> new Range(2, 1)).hasMessageContaining("lower end first");
      assertThatThrownBy(() -> new Range(Double.NaN, 1)).hasMessageContaining("finite");
      assertThatThrownBy(() -> new Range(0, Double.POSITIVE_INFINITY))
          .hasMessageContaining("finite");
    }
  }

  @Nested
  class Curves {
    @Test
    void keepsItsOwnCopy() {
      double[] source = {1, 2, 3};
      Curve curve = Curve.of(source);
      source[0] = 9;
      curve.toArray()[1] = 9;
      assertThat(curve.toArray()).containsExactly(1, 2, 3);
      assertThat(curve.size()).isEqualTo(3);
      assertThat(curve.at(2)).isEqualTo(3);
      assertThat(curve.stream().sum()).isEqualTo(6);
    }

    @Test
    void equalByValue() {
      assertThat(Curve.of(1, 2)).isEqualTo(Curve.of(1, 2)).hasSameHashCodeAs(Curve.of(1, 2));
      assertThat(Curve.of(1, 2)).isNotEqualTo(Curve.of(2, 1)).isNotEqualTo("[1.0, 2.0]");
      assertThat(Curve.of(1, 2)).doesNotHaveSameHashCodeAs(Curve.of(2, 1));
      assertThat(Curve.of(1, 2)).hasToString("[1.0, 2.0]");
    }

    @Test
    void logSpacedHasEqualRatiosAndExactEnds() {
      Curve curve = Curve.logSpaced(20, 1_000, 40);
      assertThat(curve.at(0)).isEqualTo(20);
      assertThat(curve.at(39)).isEqualTo(1_000);
      assertThat(Curve.logSpaced(20, 1_000, 2).toArray()).containsExactly(20, 1_000);
      double ratio = Math.pow(50, 1.0 / 39);
      for (int i = 1; i < 40; i++) {
        assertThat(curve.at(i) / curve.at(i - 1)).isEqualTo(ratio, offset(1e-12));
      }
    }

    @Test
    void rejectsSpacingThatIsNone() {
      assertThatThrownBy(() -> Curve.logSpaced(0, 1, 5)).hasMessageContaining("log spacing");
      assertThatThrownBy(() -> Curve.logSpaced(2, 1, 5)).hasMessageContaining("log spacing");
      assertThatThrownBy(() -> Curve.logSpaced(2, 2, 5)).hasMessageContaining("log spacing");
      assertThatThrownBy(() -> Curve.logSpaced(1, 2, 1)).hasMessageContaining("1 points");
      assertThatThrownBy(() -> Curve.logSpaced(Double.NaN, 2, 5)).hasMessageContaining("NaN");
    }
  }

  @Nested
  class ArgumentChecks {
    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void positiveRejects(double value) {
      assertThatThrownBy(() -> Checks.positive(value, "width", "m"))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("width is " + value + " m; allowed: finite and above 0 m");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-300, Double.NaN, Double.POSITIVE_INFINITY})
    void notNegativeRejects(double value) {
      assertThatThrownBy(() -> Checks.notNegative(value, "Le", "H"))
          .hasMessageContaining("Le is " + value + " H");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY})
    void finiteRejects(double value) {
      assertThatThrownBy(() -> Checks.finite(value, "level", "dB"))
          .hasMessageContaining("level is");
    }

    @Test
    void passValuesOn() {
      assertThat(Checks.positive(Double.MIN_VALUE, "x", "m")).isEqualTo(Double.MIN_VALUE);
      assertThat(Checks.notNegative(0, "x", "m")).isZero();
      assertThat(Checks.notNegative(2.5, "x", "m")).isEqualTo(2.5);
      assertThat(Checks.finite(-3, "x", "m")).isEqualTo(-3);
    }
  }

  @Nested
  class DecibelLevels {
    /** ISO 1683: 1 Pa is 93.979 dB re 20 uPa. */
    @Test
    void onePascal() {
      assertThat(Levels.soundPressureLevel(1)).isEqualTo(93.979, offset(0.001));
      assertThat(Levels.soundPressureLevel(20e-6)).isZero();
    }

    @Test
    void ratios() {
      assertThat(Levels.ofAmplitudeRatio(10)).isEqualTo(20);
      assertThat(Levels.ofPowerRatio(10)).isEqualTo(10);
      assertThat(Levels.ofAmplitudeRatio(3)).isEqualTo(Levels.ofPowerRatio(9), offset(1e-12));
      // ISO 80000-8: 20 dB is a factor of ten in amplitude, 6 dB nearly two
      assertThat(Levels.amplitudeRatio(20)).isEqualTo(10, offset(1e-12));
      assertThat(Levels.amplitudeRatio(-6)).isEqualTo(0.5012, offset(5e-5));
    }
  }

  @Nested
  class Conductors {
    /** IEC 60028: 58 m/(ohm mm2) at 20 degrees C. */
    @Test
    void copperIsOneOverFiftyEight() {
      assertThat(ConductorMaterial.COPPER.resistivityOhmM()).isEqualTo(1e-6 / 58, offset(1e-12));
      assertThat(ConductorMaterial.COPPER.word()).isEqualTo("copper");
    }

    /**
     * Density and temperature coefficient of the pure metals in tables of elements: copper 8960
     * kg/m3 and 0.0039 per K, aluminium 2700 kg/m3 and 0.0040 per K; the wire standards lie within
     * 1 % of both.
     */
    @Test
    void metalsAreThoseOfTheTables() {
      assertThat(ConductorMaterial.COPPER.densityKgPerM3()).isCloseTo(8960, withinPercentage(1));
      assertThat(ConductorMaterial.ALUMINIUM.densityKgPerM3()).isCloseTo(2700, withinPercentage(1));
      assertThat(ConductorMaterial.COPPER.temperatureCoefficientPerK())
          .isCloseTo(0.0039, withinPercentage(1));
      assertThat(ConductorMaterial.ALUMINIUM.temperatureCoefficientPerK())
          .isCloseTo(0.0040, withinPercentage(1));
    }

    /** 15 % copper by volume: density by volume, coefficient by conductance, both by the metals. */
    @Test
    void cladWireLiesBetweenItsMetals() {
      ConductorMaterial copper = ConductorMaterial.COPPER;
      ConductorMaterial aluminium = ConductorMaterial.ALUMINIUM;
      ConductorMaterial clad = ConductorMaterial.COPPER_CLAD_ALUMINIUM;
      assertThat(clad.densityKgPerM3())
          .isEqualTo(
              0.15 * copper.densityKgPerM3() + 0.85 * aluminium.densityKgPerM3(), offset(2.0));
      double throughCopper = 0.15 / copper.resistivityOhmM();
      double throughAluminium = 0.85 / aluminium.resistivityOhmM();
      double ofMetals = 1 / (throughCopper + throughAluminium);
      // sold wire conducts a little worse than its metals side by side
      assertThat(clad.resistivityOhmM() / ofMetals).isBetween(1.0, 1.04);
      assertThat(clad.temperatureCoefficientPerK())
          .isEqualTo(
              (throughCopper * copper.temperatureCoefficientPerK()
                      + throughAluminium * aluminium.temperatureCoefficientPerK())
                  / (throughCopper + throughAluminium),
              offset(5e-6));
    }
  }
}
