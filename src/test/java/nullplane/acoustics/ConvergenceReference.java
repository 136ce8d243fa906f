package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import nullplane.units.Air;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The order in which the error of one grid falls with its cell, for rims along the grid, round ones
 * and ones that cross it askew. A plain staircase would be of first order.
 *
 * <p>How a rim happens to cut cells makes part of the error change from grid to grid. Each point is
 * therefore the root mean square over a few neighbouring grids, each scaled to the first one's
 * cell, and the order is the slope of a straight line through four points.
 */
@Tag("reference")
class ConvergenceReference {
  private static final Air AIR = Air.standard();
  private static final int[] CELLS = {16, 24, 36, 54};
  private static final double LEAST_ORDER = 1.8;

  /** An outline, its piston and the reactance it is known to have. */
  record Case(String name, Outline outline, Piston piston, double frequencyHz, double exact) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> cases() {
    Piston piston = new Piston(0, 0, 0.1);
    Outline square = new RectangularOutline(0.4, 0.4);
    // a square is the same however it is turned; its limit from two fine grids along its sides
    double coarse = reactance(square, 64, piston, 100);
    double fine = reactance(square, 96, piston, 100);
    double limit = fine + (fine - coarse) * GridChoice.EXTRAPOLATION;
    double radius = 0.12;
    double ka = 0.1;
    double frequencyHz = ka / radius * AIR.speedOfSoundMPerS() / (2 * Math.PI);
    double unit = AIR.densityKgPerM3() * AIR.speedOfSoundMPerS() * Math.PI * radius * radius;
    return Stream.of(
        new Case("rectangle", square, piston, 100, limit),
        // reference/round_panel.csv: piston in a finite baffle, b/a 2, ka 0.1
        new Case(
            "round",
            new RoundOutline(4 * radius),
            new Piston(0, 0, radius),
            frequencyHz,
            1.372893229226e-1 * unit),
        new Case("polygon turned by 20 degrees", turned(20), piston, 100, limit),
        new Case("polygon turned by 30 degrees", turned(30), piston, 100, limit));
  }

  private static Outline turned(double degrees) {
    double cos = 0.2 * Math.cos(Math.toRadians(degrees));
    double sin = 0.2 * Math.sin(Math.toRadians(degrees));
    return new PolygonOutline(
        List.of(
            new Corner(cos - sin, sin + cos),
            new Corner(-cos - sin, -sin + cos),
            new Corner(-cos + sin, -sin - cos),
            new Corner(cos + sin, sin - cos)));
  }

  private static double reactance(Outline outline, int cells, Piston piston, double frequencyHz) {
    Panel panel = new Panel(outline, OptionalDouble.empty());
    GridSetup setup =
        new GridSetup(
            PosedPanel.of(panel, List.of(piston)), new UniformGrid(outline, cells, cells));
    return new GridSolution(panel, setup, AIR, frequencyHz, 1e-7).impedance().im(0, 0);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void errorFallsNearlyAsTheSquareOfTheCell(Case of) {
    double[] logError = new double[CELLS.length];
    StringBuilder seen = new StringBuilder();
    for (int i = 0; i < CELLS.length; i++) {
      int first = CELLS[i];
      double sum = 0;
      int count = 0;
      for (int cells = first; cells < first + first / 4; cells += first / 8) {
        double error =
            reactance(of.outline(), cells, of.piston(), of.frequencyHz()) / of.exact() - 1;
        double scaled = error * cells * cells / first / first;
        sum += scaled * scaled;
        count++;
      }
      logError[i] = 0.5 * Math.log(sum / count);
      seen.append(String.format(Locale.ROOT, " %d cells %.2e;", first, Math.exp(logError[i])));
    }
    double order = -slope(logError);
    assertThat(order)
        .as("%s: observed order %.2f, expected about 2;%s", of.name(), order, seen)
        .isGreaterThan(LEAST_ORDER);
    Validation.check(
            "order in which the error falls with the cell, " + of.name(),
            "Theory of the method: second order with a rim that lies where it acts; a plain"
                + " staircase has order 1.")
        .expected(2, "")
        .computed(order)
        .coarse(2, 1e-2)
        .atLeast(LEAST_ORDER);
  }

  /** Slope of the straight line through the errors' logarithms against the cells'. */
  private static double slope(double[] logError) {
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < CELLS.length; i++) {
      meanX += Math.log(CELLS[i]) / CELLS.length;
      meanY += logError[i] / CELLS.length;
    }
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < CELLS.length; i++) {
      double x = Math.log(CELLS[i]) - meanX;
      xy += x * (logError[i] - meanY);
      xx += x * x;
    }
    return xy / xx;
  }
}
