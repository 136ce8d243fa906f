package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import nullplane.units.Air;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A disc of 13 cm radius that moves as a whole, without a panel round it, against the exact rows of
 * reference/rectangular_panel.csv and of reference/round_panel.csv (theory: C. J. Bouwkamp 1941; T.
 * Mellow and L. Karkkainen, J. Acoust. Soc. Am. 118 (2005) 1311).
 */
@Tag("reference")
class FreeDiscReference {
  private static final Air AIR = Air.standard();
  private static final double RADIUS = 0.13;
  private static final String EXACT =
      "Exact rows of reference/rectangular_panel.csv and round_panel.csv; theory: C. J. Bouwkamp"
          + " 1941; T. Mellow and L. Karkkainen, J. Acoust. Soc. Am. 118 (2005) 1311.";
  private static final List<String> ANGLES = List.of("h0", "h30", "h60", "v30");
  private static final List<Direction> DIRECTIONS =
      List.of(
          Direction.ofDegrees(0, 0),
          Direction.ofDegrees(30, 0),
          Direction.ofDegrees(60, 0),
          Direction.ofDegrees(0, 30));

  private static List<String[]> rows(String table, String start) throws IOException {
    try (InputStream in = FreeDiscReference.class.getResourceAsStream("/reference/" + table)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> line.startsWith(start))
          .map(line -> line.split(","))
          .toList();
    }
  }

  static Stream<Double> frequencies() throws IOException {
    return rows("rectangular_panel.csv", "E_exact").stream()
        .map(row -> Double.parseDouble(row[1]))
        .distinct();
  }

  static Stream<Double> waveNumbers() throws IOException {
    return rows("round_panel.csv", "2_free_disk,").stream()
        .map(row -> Double.parseDouble(row[2]))
        .filter(ka -> ka <= 2)
        .distinct();
  }

  private static PanelSolution solve(double frequencyHz) {
    Panel disc = new Panel(new RoundOutline(2 * RADIUS), OptionalDouble.empty());
    return new PanelSolver(disc, List.of(new Piston(0, 0, RADIUS)), AIR)
        .solve(frequencyHz, List.of(), DIRECTIONS);
  }

  /** Asked of round panels: impedance within 0.5 %, far field within 0.05 dB. */
  @ParameterizedTest
  @MethodSource("frequencies")
  void impedanceAndFarFieldOverFrequency(double frequencyHz) throws IOException {
    PanelSolution solution = solve(frequencyHz);
    String at = "free disc at " + frequencyHz + " Hz: ";
    Check far = Validation.check(at + "far field, four directions", EXACT).in("dB");
    int checked = 0;
    for (String[] row : rows("rectangular_panel.csv", "E_exact")) {
      if (Double.parseDouble(row[1]) != frequencyHz) {
        continue;
      }
      checked++;
      double re = Double.parseDouble(row[5]);
      double im = Double.parseDouble(row[6]);
      if (row[2].equals("Z")) {
        Validation.check(at + "resistance", EXACT)
            .expected(re, "N s/m")
            .computed(solution.impedance().re(0, 0))
            .coarse(4, 1e-5)
            .withinPercent(0.6);
        Validation.check(at + "reactance", EXACT)
            .expected(im, "N s/m")
            .computed(solution.impedance().im(0, 0))
            .coarse(4, 1e-5)
            .withinPercent(0.5);
      } else {
        int direction = ANGLES.indexOf(row[4]);
        far.add(
            20 * Math.log10(Math.hypot(re, im)),
            20 * Math.log10(solution.farField().modulus(direction, 0)));
        double phase =
            Math.atan2(solution.farField().im(direction, 0), solution.farField().re(direction, 0))
                - Math.atan2(im, re);
        assertThat(Math.IEEEremainder(phase, 2 * Math.PI)).as(row[4]).isCloseTo(0, within(0.005));
      }
    }
    assertThat(checked).isEqualTo(5);
    far.coarse(4, 1e-5).within(0.05);
  }

  @ParameterizedTest
  @MethodSource("waveNumbers")
  void impedanceAndAxisOverWaveNumber(double ka) throws IOException {
    double frequencyHz = ka / RADIUS * AIR.speedOfSoundMPerS() / (2 * Math.PI);
    PanelSolution solution = solve(frequencyHz);
    double unit = AIR.densityKgPerM3() * AIR.speedOfSoundMPerS() * Math.PI * RADIUS * RADIUS;
    // r p of the same piston in an infinite baffle, rho c k a^2/2
    double baffle = unit * AIR.waveNumber(frequencyHz) / (2 * Math.PI);
    for (String[] row : rows("round_panel.csv", "2_free_disk,")) {
      if (Double.parseDouble(row[2]) != ka) {
        continue;
      }
      double re = Double.parseDouble(row[4]);
      double im = Double.parseDouble(row[5]);
      if (row[3].startsWith("Z_total")) {
        Validation.check("free disc at ka " + ka + ": impedance over rho c pi a^2", EXACT)
            .expected(re, im, "")
            .computed(solution.impedance().re(0, 0) / unit, solution.impedance().im(0, 0) / unit)
            .coarse(4, 1e-5)
            .withinPercent(0.5);
      } else if (row[3].startsWith("D0")) {
        Validation.check("free disc at ka " + ka + ": far field re an infinite baffle", EXACT)
            .expected(20 * Math.log10(Math.hypot(re, im)), "dB")
            .computed(20 * Math.log10(solution.farField().modulus(0, 0) / baffle))
            .coarse(4, 1e-5)
            .within(0.05);
      }
    }
  }
}
