package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import nullplane.units.Air;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The solver against an independent graded-mesh triangular Galerkin solution of two rectangular
 * panels (reference/rectangular_panel.csv, whose own error is estimated at 0.03 % and below).
 */
@Tag("reference")
class RectangularPanelReference {
  private static final List<String> ANGLES = List.of("h0", "h30", "h60", "v30");
  private static final List<Direction> DIRECTIONS =
      List.of(
          Direction.ofDegrees(0, 0),
          Direction.ofDegrees(30, 0),
          Direction.ofDegrees(60, 0),
          Direction.ofDegrees(0, 30));

  private static final String TABLE =
      "Graded-mesh triangular Galerkin boundary-element solution, independent of this one:"
          + " reference/rectangular_panel.csv. A is 0.45 x 0.45 m with one piston, B 0.45 x 0.90 m"
          + " with two, radius 0.13 m.";

  /** One case and frequency of the table. */
  record Case(String name, double frequencyHz, List<String[]> rows) {
    @Override
    public String toString() {
      return name + " at " + frequencyHz + " Hz";
    }
  }

  static Stream<Case> cases() throws IOException {
    List<String[]> rows = rows();
    return Stream.of("A", "B")
        .flatMap(
            name ->
                Stream.of(31.5, 63.0, 125.0, 250.0, 500.0)
                    .map(
                        f ->
                            new Case(
                                name,
                                f,
                                rows.stream()
                                    .filter(r -> r[0].equals(name) && Double.parseDouble(r[1]) == f)
                                    .toList())));
  }

  private static List<String[]> rows() throws IOException {
    try (InputStream in =
        RectangularPanelReference.class.getResourceAsStream("/reference/rectangular_panel.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.startsWith("case"))
          .map(line -> line.split(","))
          .toList();
    }
  }

  private static PanelSolution solve(Case of) {
    Panel panel =
        of.name().equals("A") ? Panel.inFreeSpace(0.45, 0.45) : Panel.inFreeSpace(0.45, 0.90);
    List<Piston> pistons =
        of.name().equals("A")
            ? List.of(new Piston(0, 0, 0.13))
            : List.of(new Piston(0, -0.225, 0.13), new Piston(0, 0.225, 0.13));
    return new PanelSolver(panel, pistons, Air.standard())
        .solve(of.frequencyHz(), List.of(), DIRECTIONS);
  }

  /** Measured when written: impedance 0.13 % and below, far field 0.003 dB and below. */
  @ParameterizedTest
  @MethodSource("cases")
  void impedanceWithinATenthsOfAPercentAndFarFieldWithinHundredthsOfADecibel(Case of) {
    PanelSolution solution = solve(of);
    assertThat(of.rows()).hasSizeGreaterThanOrEqualTo(5);
    String panel = "panel " + of + ": ";
    Check far = Validation.check(panel + "far field, all pistons and angles", TABLE).in("dB");
    for (String[] row : of.rows()) {
      double re = Double.parseDouble(row[5]);
      double im = Double.parseDouble(row[6]);
      double modulus = Math.hypot(re, im);
      int i = Integer.parseInt(row[3]) - 1;
      if (row[2].equals("Z")) {
        int j = Integer.parseInt(row[4]) - 1;
        Validation.check(panel + "impedance " + row[3] + row[4], TABLE)
            .expected(re, im, "N s/m")
            .computed(solution.impedance().re(i, j), solution.impedance().im(i, j))
            .coarse(4, 1e-5)
            .withinPercent(0.2);
        assertThat(solution.impedance().re(i, j) / re - 1)
            .as("Re Z %d %d", i, j)
            .isBetween(-0.002, 0.002);
      } else {
        int direction = ANGLES.indexOf(row[4]);
        far.add(
            20 * Math.log10(modulus), 20 * Math.log10(solution.farField().modulus(direction, i)));
        double phase =
            Math.atan2(solution.farField().im(direction, i), solution.farField().re(direction, i))
                - Math.atan2(im, re);
        assertThat(Math.IEEEremainder(phase, 2 * Math.PI)).isBetween(-0.005, 0.005);
      }
    }
    far.coarse(4, 1e-5).within(0.02);
  }

  /** The estimate is of the largest entry, so it is held against the largest entry's true error. */
  @ParameterizedTest
  @MethodSource("cases")
  void estimatedErrorBoundsTheTrueOne(Case of) {
    PanelSolution solution = solve(of);
    double largest = 0;
    for (String[] row : of.rows()) {
      if (row[2].equals("Z")) {
        int i = Integer.parseInt(row[3]) - 1;
        int j = Integer.parseInt(row[4]) - 1;
        largest =
            Math.max(
                largest,
                Math.hypot(
                    solution.impedance().re(i, j) - Double.parseDouble(row[5]),
                    solution.impedance().im(i, j) - Double.parseDouble(row[6])));
      }
    }
    double tableError = 3e-4;
    assertThat(largest / solution.impedance().largestModulus())
        .isLessThan(solution.estimatedError() + tableError);
  }
}
