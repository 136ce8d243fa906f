package nullplane.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.network.ComplexCurve;
import nullplane.network.OfferRows;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.ScoringAxis;
import nullplane.units.Curve;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Values at and near the ends of what is allowed: the spec they make can be worked with. */
class SpecExtremesProperties {
  private static final List<String> SHAPES =
      List.of(
          "butterworth-1",
          "butterworth-2",
          "butterworth-3",
          "butterworth-4",
          "linkwitz-riley-2",
          "linkwitz-riley-4");

  static Stream<String> specs() {
    Random random = new Random(20261125);
    return IntStream.range(0, 60).mapToObj(i -> text(random));
  }

  private static String text(Random random) {
    boolean main = random.nextBoolean();
    return "title: x\nwoofer: {nominal: 300 mm, effective-diameter: 260 mm}\nstacks:\n"
        + stack("a", random)
        + stack("b", random)
        + stack("c", random)
        + "listening: {distance: "
        + either(random, "30 cm", "30 m")
        + ", height: 59 cm}\ntarget: {level: 78 dB, loudest: 95 dB, voltage: "
        + either(random, "0.1 V", "2.83 V")
        + ", low-corner: "
        + either(random, "20 Hz", "29.9 Hz", "29.998 Hz")
        + ", upper-corner: "
        + either(random, "30 Hz", "30.0004 Hz", "500 Hz", "999.9996 Hz", "1 kHz")
        + (main ? "" : ", upper-slope: " + either(random, "6 dB/oct", "24 dB/oct"))
        + "}\namplifier: {voltage: 28 V, lowest-load: 3 ohm}\n"
        + either(random, passive(random), active(random), "crossover: {kind: none}\n")
        + (main ? main(random) : "")
        + "priorities: {shape: "
        + either(random, "0", "10")
        + ", output: 1e-9, correction: "
        + either(random, "0", "10")
        + ", worst-stack: "
        + either(random, "0", "1")
        + "}\n";
  }

  private static String stack(String name, Random random) {
    return "  - {name: "
        + name
        + ", panel: {width: 44 cm, height: 110 cm, clearance: 4 cm}, woofers: [{x: 0 cm, y: 0 cm}]"
        + either(
            random,
            "",
            ", upper-corner: 30 Hz",
            ", upper-corner: 30.001 Hz",
            ", upper-corner: 499.9999999 Hz",
            ", upper-corner: 1000 Hz")
        + "}\n";
  }

  private static String passive(Random random) {
    return "crossover: {kind: passive, most-parts: "
        + (1 + random.nextInt(4))
        + ", coils: "
        + either(
            random,
            "{range: 0.01 mH .. 200 mH, wire: 0.2 mm}",
            "{series: E6, range: 0.01 mH .. 200 mH, wire: 4 mm}",
            "{series: E6, range: 150 mH .. 200 mH, resistance: 10 ohm/mH}",
            "{range: 0.01 mH, resistance: 0 ohm/mH}",
            "none")
        + ", capacitors: "
        + either(random, "{range: 0.1 uF .. 10000 uF}", "{range: 0.1 uF}", "none")
        + ", resistors: "
        + either(random, "{range: 0.01 ohm}", "{range: 100 ohm}", "{series: E24}")
        + ", damping: "
        + either(random, "{series: E24, range: 0.01 ohm .. 100 ohm}", "none")
        + "}\n";
  }

  private static String active(Random random) {
    return "crossover: {kind: active, gain: "
        + either(random, "-40 dB", "20 dB", "-40 dB .. 20 dB")
        + ", shapes: "
        + either(random, "none", SHAPES.get(random.nextInt(6)), SHAPES.toString())
        + ", corner: "
        + either(random, "20 Hz", "20 Hz .. 5000 Hz", "99.9999999999 Hz .. 100 Hz")
        + ", correction: "
        + either(
            random,
            "none",
            "{frequency: 10 Hz, q: 0.1, gain: -24 dB}",
            "{frequency: 5000 Hz, q: 20, gain: 24 dB}",
            "{frequency: 10 Hz .. 5 kHz, q: 20, gain: -24 dB .. 24 dB}")
        + "}\n";
  }

  private static String main(Random random) {
    return "main-driver: {high-pass: {shape: "
        + SHAPES.get(random.nextInt(6))
        + either(random, "", ", corner: 20 Hz", ", corner: 5000 Hz")
        + "}, behind: "
        + either(random, "-20 cm", "5 m")
        + either(random, "", ", level: 30 dB", ", level: 130 dB")
        + ", polarity: "
        + either(random, "normal", "inverted")
        + "}\n";
  }

  private static String either(Random random, String... choices) {
    return choices[random.nextInt(choices.length)];
  }

  @ParameterizedTest
  @MethodSource("specs")
  void extremeValuesMakeAUsableSpec(String text) {
    DesignSpec spec;
    try {
      spec = SpecReader.read(text.getBytes(StandardCharsets.UTF_8), "x.yaml").spec();
    } catch (InvalidInputException e) {
      // the one thing that extremes together may be: more than can be tried
      assertThat(e.faults())
          .extracting(InputFault::problem)
          .allMatch(problem -> problem.contains("networks") && problem.contains("too many"));
      return;
    }
    ScoringAxis axis = ScoringAxis.of(spec);
    Curve hz = axis.frequencyHz();
    for (int f = 1; f < hz.size(); f++) {
      assertThat(hz.at(f)).as(text).isGreaterThan(hz.at(f - 1));
    }
    assertThat(axis.bandWeights().stream().sum())
        .isCloseTo(1, org.assertj.core.data.Offset.offset(1e-9));
    assertThat(spec.upperCornersHz())
        .allSatisfy(
            corner ->
                assertThat(hz.stream().map(f -> Math.abs(f / corner - 1)).min().orElseThrow())
                    .isLessThan(1e-12));
    Curve few = Curve.of(hz.at(0), 100, hz.at(hz.size() - 1));
    OfferRows offer = spec.networks().rows(few);
    assertThat(offer.count()).isBetween(1, 200_000);
    assertGenesNameNetworks(offer, text);
    for (int n : new int[] {0, offer.count() / 2, offer.count() - 1}) {
      assertThat(offer.network(n, offer.gain().lower())).isNotNull();
    }
    spec.stacks()
        .forEach(
            stack ->
                stack
                    .main()
                    .ifPresent(
                        main -> {
                          ComplexCurve heard = main.pressurePerVolt(axis.bandHz());
                          for (int f = 0; f < heard.size(); f++) {
                            assertThat(heard.modulus(f)).isFinite().isPositive();
                          }
                        }));
    double cost = spec.weights().perDbDeviation() + spec.weights().perDbOutputLack();
    assertThat(cost).as(String.format(Locale.ROOT, "%g", cost)).isPositive();
  }

  /** Genes at one end name no network, those at the other one there is; few genes name them all. */
  private static void assertGenesNameNetworks(OfferRows offer, String text) {
    double[] genes = new double[offer.genes()];
    assertThat(offer.at(genes, 0)).as(text).isZero();
    Arrays.fill(genes, Math.nextDown(1));
    assertThat(offer.at(genes, 0)).as(text).isBetween(0, offer.count() - 1);
    long strings = 1;
    for (int g = 0; g < genes.length; g++) {
      strings *= offer.choices(g);
    }
    if (strings > 5000) {
      return;
    }
    BitSet named = new BitSet();
    for (int s = 0; s < strings; s++) {
      int rest = s;
      for (int g = 0; g < genes.length; g++) {
        genes[g] = (rest % offer.choices(g) + 0.5) / offer.choices(g);
        rest /= offer.choices(g);
      }
      named.set(offer.at(genes, 0));
    }
    assertThat(named.cardinality()).as(text).isEqualTo(offer.count());
  }
}
