package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import nullplane.units.Air;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Closed forms and conservation laws that hold for any thin rigid panel. */
@Tag("reference")
class PanelPhysicsReference {
  private static final Air AIR = Air.standard();

  /**
   * Re(u* Z u)/2 is the power that leaves, INT |r p|^2/(2 rho c) over the sphere. Source:
   * conservation of energy.
   */
  @ParameterizedTest
  @ValueSource(doubles = {40, 150, 450})
  void radiationResistanceIsTheFarFieldPower(double frequencyHz) {
    List<Piston> pistons = List.of(new Piston(0.03, -0.2, 0.1), new Piston(-0.02, 0.17, 0.1));
    GaussRule rule = GaussRule.of(24);
    int turns = 48;
    List<Direction> directions = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (int g = 0; g < rule.size(); g++) {
      double cos = rule.point(g);
      double sin = Math.sqrt(1 - cos * cos);
      for (int t = 0; t < turns; t++) {
        double phi = 2 * Math.PI * (t + 0.5) / turns;
        double x = sin * Math.cos(phi);
        double y = sin * Math.sin(phi);
        directions.add(new Direction(Math.atan2(x, cos), Math.asin(y)));
        // both half spaces radiate alike
        weights.add(2 * rule.weight(g) * 2 * Math.PI / turns);
      }
    }
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(0.44, 0.8), pistons, AIR)
            .solve(frequencyHz, List.of(), directions);
    double power = 0;
    for (int d = 0; d < directions.size(); d++) {
      double re = solution.farField().re(d, 0) + solution.farField().re(d, 1);
      double im = solution.farField().im(d, 0) + solution.farField().im(d, 1);
      power +=
          weights.get(d)
              * (re * re + im * im)
              / (2 * AIR.densityKgPerM3() * AIR.speedOfSoundMPerS());
    }
    double resistance = 0;
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        resistance += solution.impedance().re(i, j);
      }
    }
    Validation.check(
            "power of the far field over that of the pistons, " + (int) frequencyHz + " Hz",
            "Conservation of energy.")
        .expected(1, "")
        .computed(power / (resistance / 2))
        .coarse(4, 1e-5)
        .within(0.001);
  }

  /** Z is symmetric. Source: reciprocity (Rayleigh). */
  @Test
  void impedanceIsSymmetricOverAFloorToo() {
    List<Piston> pistons =
        List.of(
            new Piston(0.05, -0.4, 0.13), new Piston(-0.06, 0.02, 0.1), new Piston(0, 0.4, 0.12));
    Panel panel = Panel.overFloor(0.44, 1.2, 0.05);
    GridSetup setup =
        new GridSetup(PosedPanel.of(panel, pistons), new UniformGrid(panel.outline(), 16, 40));
    ComplexMatrix z = new GridSolution(panel, setup, AIR, 120, 1e-11).impedance();
    Check symmetric =
        Validation.check(
                "impedance of piston i by j against j by i, three over a floor",
                "Reciprocity (Rayleigh).")
            .in("N s/m");
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < i; j++) {
        symmetric.add(z.re(i, j), z.im(i, j), z.re(j, i), z.im(j, i));
      }
    }
    symmetric.withinPercent(1e-7);
  }

  /**
   * In a large panel each side of a piston sees R1 + j X1 of an infinite baffle. Source: L. E.
   * Kinsler and A. R. Frey, Fundamentals of Acoustics, table of piston functions. The wave that the
   * rim sends back dies away only slowly: with a piston of 0.1 m off the centre of a panel of 3 m x
   * 4.1 m it still moves the impedance by about 1.3 % at ka = 0.5, which sets the tolerance.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.1199, 0.3969", "1.0, 0.4233, 0.6468"})
  void aLargePanelIsAnInfiniteBaffle(double ka, double resistance, double reactance) {
    double radius = 0.1;
    double frequencyHz = ka / radius * AIR.speedOfSoundMPerS() / (2 * Math.PI);
    PanelSolution solution =
        new PanelSolver(
                Panel.inFreeSpace(3, 4.1),
                List.of(new Piston(0.33, 0.287, radius)),
                AIR,
                Accuracy.USUAL,
                1e-6)
            .solve(frequencyHz, List.of(), List.of());
    double bothSides =
        2 * AIR.densityKgPerM3() * AIR.speedOfSoundMPerS() * Math.PI * radius * radius;
    Validation.check(
            "piston in a panel of 3 x 4.1 m, ka " + ka + ": impedance per side over rho c pi a^2",
            "L. E. Kinsler and A. R. Frey, Fundamentals of Acoustics, piston functions of an"
                + " infinite baffle.")
        .expected(resistance, reactance, "")
        .computed(
            solution.impedance().re(0, 0) / bothSides, solution.impedance().im(0, 0) / bothSides)
        .coarse(4, 1e-5)
        .withinPercent(1.5);
  }

  /**
   * A long strip of width W with a source on its centre line is a dipole of length W; the mean of 2
   * sqrt((W/2)^2 - x^2) over a disc of radius a is W (1 - a^2/(2 W^2)) to second order. Source:
   * potential flow past a plate (H. Lamb, Hydrodynamics (1932), art. 71) with reciprocity. A strip
   * 40 times as long as wide falls short of an endless one by about 0.1 %.
   */
  @Test
  void aLongStripIsADipoleOfItsWidth() {
    double width = 0.3;
    double radius = 0.05;
    double frequencyHz = 1;
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(width, 12), List.of(new Piston(0, 0, radius)), AIR)
            .solve(frequencyHz, List.of(), List.of(Direction.ofDegrees(0, 0)));
    double monopole =
        2 * Math.PI * frequencyHz * AIR.densityKgPerM3() * radius * radius / 4; // r p per velocity
    double length = solution.farField().modulus(0, 0) / monopole / AIR.waveNumber(frequencyHz);
    double expected = width * (1 - radius * radius / (2 * width * width));
    Validation.check(
            "path length of a piston on the centre line of a strip of 0.3 x 12 m",
            "Potential flow past a plate (H. Lamb, Hydrodynamics, 1932, art. 71) with reciprocity.")
        .expected(expected, "m")
        .computed(length)
        .coarse(4, 1e-5)
        .withinPercent(0.3);
  }

  /** In the panel's own plane front and rear cancel. Source: antisymmetry. */
  @Test
  void nothingIsHeardInThePanelsPlane() {
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(0.44, 0.8), List.of(new Piston(0.05, 0.1, 0.1)), AIR)
            .solve(200, List.of(), List.of(Direction.ofDegrees(0, 0), Direction.ofDegrees(90, 0)));
    assertThat(solution.farField().modulus(1, 0) / solution.farField().modulus(0, 0))
        .isLessThan(1e-12);
  }

  /**
   * Far away the pressure at a point is the far field over the distance. Source: definition. The
   * piston's centre is 0.05 m nearer to the point's side than the panel's, 7e-5 of 400 m, which
   * sets the tolerance.
   */
  @Test
  void aDistantPointHearsTheFarField() {
    double distance = 400;
    double frequencyHz = 120;
    Direction direction = Direction.ofDegrees(35, 0);
    FieldPoint point =
        new FieldPoint(
            distance * Math.sin(Math.toRadians(35)), 0, distance * Math.cos(Math.toRadians(35)));
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(0.44, 0.8), List.of(new Piston(0.05, 0.1, 0.1)), AIR)
            .solve(frequencyHz, List.of(point), List.of(direction));
    Validation.check("pressure at 400 m times distance over far field", "Definition.")
        .expected(1, "")
        .computed(solution.pressure().modulus(0, 0) * distance / solution.farField().modulus(0, 0))
        .within(2e-4);
    double turned =
        Math.atan2(solution.pressure().im(0, 0), solution.pressure().re(0, 0))
            + AIR.waveNumber(frequencyHz) * distance
            - Math.atan2(solution.farField().im(0, 0), solution.farField().re(0, 0));
    assertThat(Math.IEEEremainder(turned, 2 * Math.PI)).isCloseTo(0, within(2e-3));
  }

  /**
   * A panel over a floor is half of a pair of panels that mirror each other. The pair is solved
   * here as one dense system on a common grid, by a general-purpose LU decomposition. Source: image
   * principle; the two solutions share table entries only.
   */
  @Test
  void aFloorIsAMirroredPanel() {
    int cells = 8;
    double side = 0.4;
    UniformGrid grid = new UniformGrid(side, side, cells, cells);
    double step = grid.stepY();
    int gapCells = 1;
    double clearance = (gapCells + 2 * UniformGrid.RIM_OFFSET) * step / 2;
    double frequencyHz = 180;
    double k = AIR.waveNumber(frequencyHz);
    Piston piston = new Piston(0.02, -0.05, 0.12);
    double[] load = grid.loadOf(piston);
    Panel panel = Panel.overFloor(side, side, clearance);
    GridSolution image =
        new GridSolution(
            panel, new GridSetup(grid, panel.outline(), List.of(load)), AIR, frequencyHz, 1e-12);

    int rows = 2 * cells + gapCells;
    UniformGrid tall =
        new UniformGrid(side, step * (rows - 2 * UniformGrid.RIM_OFFSET), cells, rows);
    assertThat(tall.stepY()).isCloseTo(step, within(1e-12));
    KernelTable table = KernelTable.direct(tall, k);
    int n = grid.unknowns();
    int[] rowOf = new int[2 * n];
    int[] columnOf = new int[2 * n];
    double[] pairLoad = new double[2 * n];
    for (int i = 0; i < n; i++) {
      int row = i / grid.nodesX();
      columnOf[i] = i % grid.nodesX();
      columnOf[n + i] = columnOf[i];
      rowOf[i] = cells + gapCells + row;
      rowOf[n + i] = cells - 2 - row;
      pairLoad[i] = load[i];
      pairLoad[n + i] = load[i];
    }
    RealVector jump = solveDense(table, rowOf, columnOf, pairLoad);
    double forceRe = 0;
    double forceIm = 0;
    for (int i = 0; i < n; i++) {
      forceRe += load[i] * jump.getEntry(i);
      forceIm += load[i] * jump.getEntry(2 * n + i);
    }
    double omegaRho = 2 * Math.PI * frequencyHz * AIR.densityKgPerM3();
    ComplexMatrix impedance = image.impedance();
    String pair = "Image principle; the pair of panels solved by a dense LU decomposition.";
    Validation.check("panel over a floor against a mirrored pair: resistance", pair)
        .expected(-omegaRho * forceIm, "N s/m")
        .computed(impedance.re(0, 0))
        .within(1e-7);
    Validation.check("panel over a floor over a mirrored pair: reactance", pair)
        .expected(1, "")
        .computed(impedance.im(0, 0) / (omegaRho * forceRe))
        .within(1e-7);
  }

  /** Solves the complex system as a real one of twice the size; real parts first. */
  private static RealVector solveDense(
      KernelTable table, int[] rowOf, int[] columnOf, double[] load) {
    int n = load.length;
    RealMatrix matrix = new Array2DRowRealMatrix(2 * n, 2 * n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        int dx = Math.abs(columnOf[i] - columnOf[j]);
        int dy = Math.abs(rowOf[i] - rowOf[j]);
        matrix.setEntry(i, j, table.re(dx, dy));
        matrix.setEntry(n + i, n + j, table.re(dx, dy));
        matrix.setEntry(i, n + j, -table.im(dx, dy));
        matrix.setEntry(n + i, j, table.im(dx, dy));
      }
    }
    RealVector right = new ArrayRealVector(2 * n);
    for (int i = 0; i < n; i++) {
      right.setEntry(i, load[i]);
    }
    return new LUDecomposition(matrix).getSolver().solve(right);
  }

  /**
   * A panel standing on the floor is half of a free panel of twice the height whose mirrored
   * woofers move along. Source: image principle.
   */
  @Test
  void aStandingPanelIsHalfAFreeOne() {
    FieldPoint ear = new FieldPoint(0, 0.3, 2.5);
    PanelSolution standing =
        new PanelSolver(
                Panel.overFloor(0.44, 0.8, 0),
                List.of(new Piston(0, -0.1, 0.13)),
                AIR,
                Accuracy.USUAL,
                1e-10)
            .solve(90, List.of(ear), List.of());
    PanelSolution pair =
        new PanelSolver(
                Panel.inFreeSpace(0.44, 1.6),
                List.of(new Piston(0, 0.3, 0.13), new Piston(0, -0.3, 0.13)),
                AIR,
                Accuracy.USUAL,
                1e-10)
            .solve(90, List.of(new FieldPoint(0, 0.7, 2.5)), List.of());
    Validation.check(
            "panel standing on the floor against half a free one: reactance", "Image principle.")
        .expected(pair.impedance().im(0, 0) + pair.impedance().im(0, 1), "N s/m")
        .computed(standing.impedance().im(0, 0))
        .within(1e-6);
    Validation.check(
            "panel standing on the floor against half a free one: pressure", "Image principle.")
        .expected(pair.pressure().re(0, 0) + pair.pressure().re(0, 1), "Pa s/m")
        .computed(standing.pressure().re(0, 0))
        .within(1e-6);
  }

  /**
   * Raising a panel far above the floor leaves the free panel's impedance. Source: the image's
   * pressure falls with distance; at 30 m its share is below 1e-4.
   */
  @Test
  void aFarFloorChangesNoImpedance() {
    List<Piston> pistons = List.of(new Piston(0, 0.1, 0.13));
    PanelSolution free =
        new PanelSolver(Panel.inFreeSpace(0.44, 0.8), pistons, AIR).solve(60, List.of(), List.of());
    PanelSolution high =
        new PanelSolver(Panel.overFloor(0.44, 0.8, 30), pistons, AIR)
            .solve(60, List.of(), List.of());
    Validation.check(
            "reactance with a floor 30 m below over that in free space",
            "Image principle: the image's share is below 1e-4.")
        .expected(1, "")
        .computed(high.impedance().im(0, 0) / free.impedance().im(0, 0))
        .within(1e-4);
  }
}
