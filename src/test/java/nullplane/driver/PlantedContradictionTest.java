package nullplane.driver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Slips that printed sheets are known for, planted into sheets rounded to three digits. */
class PlantedContradictionTest {
  private static final Air AIR = Air.standard();
  private static final double NOMINAL_M = 0.3;
  private static final double DIAMETER_M = 0.26;

  /** What is wrong, what it does to the right value, and what should be found. */
  private record Slip(
      Parameter parameter, UnaryOperator<Double> slip, Cause.Kind kind, List<Parameter> without) {}

  private static Slip slip(
      Parameter parameter, UnaryOperator<Double> slip, Cause.Kind kind, Parameter... without) {
    return new Slip(parameter, slip, kind, List.of(without));
  }

  /** The air of a free disc of 26 cm, 8/3 rho a^3 (H. Lamb, Hydrodynamics, art. 102): 7.05 g. */
  private static final double DISC_AIR_KG = 8.0 / 3 * 1.2041 * 0.13 * 0.13 * 0.13;

  static Stream<Arguments> slips() {
    double reOhm = 5.6;
    double voltageDb = 10 * Math.log10(2.83 * 2.83 / reOhm);
    return Stream.of(
            slip(Parameter.LEVEL_ONE_WATT, v -> v + voltageDb, Cause.Kind.LEVELS_MIXED),
            slip(Parameter.LEVEL_VOLTAGE, v -> v - voltageDb, Cause.Kind.LEVELS_MIXED),
            slip(
                Parameter.LEVEL_VOLTAGE,
                v -> v - voltageDb,
                Cause.Kind.LEVELS_MIXED,
                Parameter.LEVEL_ONE_WATT),
            slip(Parameter.LEVEL_ONE_WATT, v -> v - 3.01, Cause.Kind.OTHER_SPACE),
            slip(Parameter.LEVEL_ONE_WATT, v -> v + 3.01, Cause.Kind.OTHER_SPACE),
            slip(Parameter.LEVEL_VOLTAGE, v -> v + 6.02, Cause.Kind.OTHER_SPACE),
            slip(Parameter.EFFICIENCY, v -> v / 2, Cause.Kind.OTHER_SPACE),
            slip(Parameter.DIAMETER, v -> v / 2, Cause.Kind.RADIUS, Parameter.AREA),
            slip(Parameter.DIAMETER, v -> 2 * v, Cause.Kind.RADIUS, Parameter.AREA),
            slip(Parameter.AREA, v -> v / 4, Cause.Kind.RADIUS, Parameter.DIAMETER),
            slip(Parameter.AREA, v -> 4 * v, Cause.Kind.RADIUS, Parameter.DIAMETER),
            slip(Parameter.COMPLIANCE, v -> v * 1000, Cause.Kind.DECIMAL_POINT),
            slip(
                Parameter.VOLUME,
                v -> v * Math.pow(NOMINAL_M / DIAMETER_M, 4),
                Cause.Kind.OTHER_AREA),
            slip(Parameter.VOLUME, v -> v * Math.pow(0.276 / 0.26, 4), Cause.Kind.OTHER_AREA),
            slip(Parameter.VOLUME, v -> v / 28.3168, Cause.Kind.OTHER_UNIT),
            slip(
                Parameter.AREA,
                v -> v * Math.pow(NOMINAL_M / DIAMETER_M, 2),
                Cause.Kind.OTHER_AREA,
                Parameter.DIAMETER),
            slip(Parameter.TRAVEL, v -> 2 * v, Cause.Kind.PEAK_TO_PEAK),
            slip(Parameter.TRAVEL, v -> 2 * v, Cause.Kind.PEAK_TO_PEAK, Parameter.DISPLACEMENT),
            slip(Parameter.DISPLACEMENT, v -> 2 * v, Cause.Kind.PEAK_TO_PEAK),
            slip(
                Parameter.MOVING_MASS,
                v -> v - DISC_AIR_KG,
                Cause.Kind.WITHOUT_AIR,
                Parameter.BARE_MASS),
            slip(
                Parameter.MOVING_MASS,
                v -> v + DISC_AIR_KG,
                Cause.Kind.OTHER_MOUNTING,
                Parameter.BARE_MASS),
            slip(
                Parameter.BARE_MASS,
                v -> v + DISC_AIR_KG,
                Cause.Kind.WITH_AIR,
                Parameter.MOVING_MASS),
            slip(
                Parameter.RESONANCE,
                v -> v * Math.sqrt(78.0 / (78 + 1e3 * DISC_AIR_KG)),
                Cause.Kind.OTHER_MOUNTING),
            slip(Parameter.TOTAL_Q, v -> 0.85, Cause.Kind.OTHER_Q),
            // 1/(1/5.2 + 1/(0.85 (5.6 + 1)/5.6)): a cable of 1 ohm counted in
            slip(
                Parameter.TOTAL_Q,
                v -> 1 / (1 / 5.2 + 5.6 / 0.85 / 6.6),
                Cause.Kind.SERIES_RESISTANCE),
            slip(Parameter.RESISTANCE, v -> 8.0, Cause.Kind.RATED_IMPEDANCE),
            slip(Parameter.COMPLIANCE, v -> v / 10, Cause.Kind.DECIMAL_POINT),
            slip(Parameter.FORCE_FACTOR, v -> v * 0.7, Cause.Kind.UNKNOWN))
        .map(slip -> Arguments.of(slip.parameter(), slip.kind(), slip));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("slips")
  void slipIsNamedOnceWithItsCause(Parameter parameter, Cause.Kind kind, Slip slip) {
    StatedSet clean = sheet(List.of());
    assertThat(Completion.of(clean, AIR).contradictions()).isEmpty();
    StatedSet sheet = sheet(slip.without());
    double right = clean.value(parameter).orElseThrow();
    CompletedSet completed =
        Completion.of(sheet.with(parameter, rounded(slip.slip().apply(right))), AIR);
    assertThat(completed.contradictions()).hasSize(1);
    Contradiction found = completed.contradictions().get(0);
    assertThat(found.parameter()).isEqualTo(parameter);
    assertThat(found.cause().kind()).as(found.cause().sentence()).isEqualTo(kind);
    assertThat(found.found().orElseThrow()).isCloseTo(right, withinPercentage(2));
    assertThat(found.against()).isNotEmpty().doesNotContain(parameter);
    assertThat(found.route().words()).isNotBlank();
    assertThat(completed.value(parameter).orElseThrow()).isCloseTo(right, withinPercentage(2));
  }

  private static String sentence(Parameter parameter, double value, Parameter... without) {
    List<Contradiction> found =
        Completion.of(sheet(List.of(without)).with(parameter, value), AIR).contradictions();
    assertThat(found).hasSize(1);
    return found.get(0).cause().sentence();
  }

  /** The figures in the sentences are those of the slips planted. */
  @Test
  void causesNameTheirFigures() {
    double volume = sheet(List.of()).value(Parameter.VOLUME).orElseThrow();
    assertThat(sentence(Parameter.VOLUME, volume * Math.pow(0.276 / 0.26, 4)))
        .contains("a piston of 276 mm, the sheet's is 260 mm");
    // 1/(1/5.2 + 1/(0.85 (5.6 + 1)/5.6)): a cable of 1 ohm counted in
    assertThat(sentence(Parameter.TOTAL_Q, 1 / (1 / 5.2 + 5.6 / 0.85 / 6.6)))
        .contains("a resistance of 1.0 ohm in series");
    double level = sheet(List.of()).value(Parameter.LEVEL_ONE_WATT).orElseThrow();
    assertThat(sentence(Parameter.LEVEL_ONE_WATT, level - 3.01)).contains("full space");
    assertThat(sentence(Parameter.LEVEL_ONE_WATT, level + 3.01)).contains("quarter of space");
    assertThat(sentence(Parameter.LEVEL_ONE_WATT, level + 6.02)).contains("at 0.5 m");
    double compliance = sheet(List.of()).value(Parameter.COMPLIANCE).orElseThrow();
    assertThat(sentence(Parameter.COMPLIANCE, compliance * 100)).contains("factor 100");
    assertThat(sentence(Parameter.COMPLIANCE, compliance / 1000)).contains("factor 1/1000");
    double mass = sheet(List.of()).value(Parameter.MOVING_MASS).orElseThrow();
    assertThat(sentence(Parameter.MOVING_MASS, mass + DISC_AIR_KG, Parameter.BARE_MASS))
        .contains("air of an infinite baffle, the rest holds for free air");
  }

  /** Two slips at once, neither touching the other, are both named; so are exchanged levels. */
  @Test
  void severalSlipsAreToldApart() {
    StatedSet sheet = sheet(List.of());
    double first = sheet.value(Parameter.LEVEL_ONE_WATT).orElseThrow();
    double second = sheet.value(Parameter.LEVEL_VOLTAGE).orElseThrow();
    CompletedSet exchanged =
        Completion.of(
            sheet.with(Parameter.LEVEL_ONE_WATT, second).with(Parameter.LEVEL_VOLTAGE, first), AIR);
    assertThat(exchanged.contradictions())
        .extracting(Contradiction::parameter, found -> found.cause().kind())
        .containsExactly(
            tuple(Parameter.LEVEL_ONE_WATT, Cause.Kind.LEVELS_MIXED),
            tuple(Parameter.LEVEL_VOLTAGE, Cause.Kind.LEVELS_MIXED));
    CompletedSet two =
        Completion.of(
            sheet
                .with(Parameter.TRAVEL, 2 * sheet.value(Parameter.TRAVEL).orElseThrow())
                .with(Parameter.VOLUME, 1.5 * sheet.value(Parameter.VOLUME).orElseThrow()),
            AIR);
    assertThat(two.contradictions())
        .extracting(Contradiction::parameter)
        .containsExactly(Parameter.VOLUME, Parameter.TRAVEL);
  }

  /** Whatever is wrong by a quarter or a third in a full sheet is found, and nothing else is. */
  @Test
  void grossErrorsAreFoundWhereverTheyAre() {
    Random random = new Random(31);
    List<Parameter> all = List.copyOf(sheet(List.of()).figures().keySet());
    for (Parameter parameter : all) {
      if (parameter == Parameter.GEOMETRIC_TRAVEL) {
        continue; // its leeway is half of itself, since travel has several definitions
      }
      double factor = random.nextBoolean() ? 1.33 : 0.75;
      StatedSet sheet = sheet(List.of());
      double right = sheet.value(parameter).orElseThrow();
      double wrong = parameter.level() ? right + 10 * Math.log10(factor) : right * factor;
      List<Contradiction> found = Completion.of(sheet.with(parameter, wrong), AIR).contradictions();
      assertThat(found).as("%s", parameter).hasSize(1);
      Parameter onlyWitness =
          switch (parameter) {
            case MECHANICAL_Q -> Parameter.LOSS;
            case TRAVEL -> Parameter.DISPLACEMENT;
            default -> parameter;
          };
      if (onlyWitness != parameter) {
        // one figure speaks against one other, so either may be wrong; both are named
        assertThat(found.get(0).against()).contains(parameter);
      }
      assertThat(found.get(0).parameter()).isEqualTo(onlyWitness);
    }
  }

  @Test
  void aTotalQAboveItsPartsIsImpossible() {
    StatedSet set =
        StatedSet.in(Mounting.FREE_AIR)
            .with(Parameter.MECHANICAL_Q, 5.2)
            .with(Parameter.TOTAL_Q, 5.4);
    CompletedSet completed = Completion.of(set, AIR);
    assertThat(completed.settled()).isFalse();
    Contradiction found = completed.contradictions().get(0);
    assertThat(found.parameter()).isEqualTo(Parameter.TOTAL_Q);
    assertThat(found.cause().kind()).isEqualTo(Cause.Kind.IMPOSSIBLE);
    assertThat(found.found()).hasValue(5.2);
  }

  /** What is missing is named with the easiest measurement first. */
  @Test
  void gapsNameTheCheapestAdditions() {
    assertThat(Completion.gaps(Set.of()))
        .extracting(Gap::cheapest)
        .containsExactly(
            Parameter.DIAMETER,
            Parameter.RESISTANCE,
            Parameter.RESONANCE,
            Parameter.MECHANICAL_Q,
            Parameter.ELECTRICAL_Q,
            Parameter.MOVING_MASS);
    List<Gap> one =
        Completion.gaps(
            Set.of(
                Parameter.AREA,
                Parameter.RESISTANCE,
                Parameter.RESONANCE,
                Parameter.MOVING_MASS,
                Parameter.MECHANICAL_Q));
    assertThat(one).hasSize(1);
    assertThat(one.get(0).cheapest()).isEqualTo(Parameter.ELECTRICAL_Q);
    assertThat(one.get(0).instead())
        .contains(Parameter.FORCE_FACTOR, Parameter.TOTAL_Q, Parameter.LEVEL_VOLTAGE)
        .doesNotContain(Parameter.LOSS, Parameter.VOLUME);
  }

  /** A full sheet of one woofer, printed to three digits. */
  private static StatedSet sheet(List<Parameter> without) {
    StatedSet few =
        StatedSet.in(Mounting.FREE_AIR)
            .with(Parameter.DIAMETER, DIAMETER_M)
            .with(Parameter.RESISTANCE, 5.6)
            .with(Parameter.RESONANCE, 31)
            .with(Parameter.MECHANICAL_Q, 5.2)
            .with(Parameter.ELECTRICAL_Q, 0.85)
            .with(Parameter.MOVING_MASS, 0.078)
            .with(Parameter.TRAVEL, 0.008);
    StatedSet sheet = StatedSet.in(Mounting.FREE_AIR).withNominal(NOMINAL_M);
    for (CompletedValue value : Completion.of(few, AIR).values().values()) {
      if (!without.contains(value.parameter())) {
        sheet = sheet.with(value.parameter(), rounded(value.value()));
      }
    }
    return sheet;
  }

  private static double rounded(double value) {
    return BigDecimal.valueOf(value).round(new MathContext(3)).doubleValue();
  }
}
