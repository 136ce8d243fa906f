package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import nullplane.HandbookRow;
import nullplane.units.Air;
import nullplane.units.Levels;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("reference")
class PanelFiguresReference {
  private static final Air AIR = Air.standard();
  private static final List<Direction> AXIS = List.of(new Direction(0, 0));

  private static ComplexMatrix number(double re, double im) {
    return new ComplexMatrix(1, 1, new double[] {re}, new double[] {im});
  }

  /** Two opposite monopoles at distance D on the axis: r p = j rho w V/(4 pi) 2j sin(kD/2). */
  private static PanelFigures twoMonopoles(double hertz, double lengthM) {
    Piston piston = new Piston(0, 0, 0.1);
    double field =
        -2
            * Math.sin(AIR.waveNumber(hertz) * lengthM / 2)
            * PanelFigures.monopole(hertz, piston.areaM2(), AIR);
    return PanelFigures.of(
        new PanelSolution(hertz, number(1, 1), number(0, 0), number(field, 0), 0),
        0,
        List.of(piston),
        AIR);
  }

  /** DI04 of the handbook table: two-monopole dipole against one monopole on the axis. */
  @Test
  void twoMonopolesAgainstOne() {
    HandbookRow row = HandbookRow.of("DI04");
    double length = row.figure("0.5");
    double level0 =
        Levels.ofAmplitudeRatio(twoMonopoles(row.figure("114.4"), length).onAxisRatio());
    row.check("two opposite monopoles against one, at c/(6D)")
        .expected(0, "dB")
        .computed(level0)
        .within(0.01);
    double peak = Levels.ofAmplitudeRatio(twoMonopoles(row.figure("343.2"), length).onAxisRatio());
    row.check("two opposite monopoles against one, at c/(2D)")
        .expected(row.figure("6.02"), "dB")
        .computed(peak)
        .within(0.01);
    assertThat(twoMonopoles(row.figure("686.4"), length).onAxisRatio()).isLessThan(1e-9);
    double slope =
        Levels.ofAmplitudeRatio(
            twoMonopoles(10, length).onAxisRatio() / twoMonopoles(5, length).onAxisRatio());
    row.check("rise of two opposite monopoles over an octave, low frequency")
        .expected(6.02, "dB")
        .computed(slope)
        .within(0.01);
    // 2 sin(kD/2)/k = D (1 - (kD)^2/24 + ...)
    row.check("path length read off two opposite monopoles")
        .expected(length, "m")
        .computed(twoMonopoles(5, length).pathLengthM())
        .withinPercent(0.1);
  }

  /** DI05: the ideal eight radiates a third of a monopole's power at equal pressure on the axis. */
  @Test
  void directivityIndexOfTheIdealEight() {
    double third = HandbookRow.of("DI05").figure("-4.771");
    double hertz = 50;
    double field = 0.3;
    // power of r p = field cos(angle): 4 pi field^2/(3 rho c), for unit root-mean-square velocity
    double resistance =
        4 * Math.PI / 3 * field * field / (AIR.densityKgPerM3() * AIR.speedOfSoundMPerS());
    PanelFigures figures =
        PanelFigures.of(
            new PanelSolution(hertz, number(resistance, 1), number(0, 0), number(0, field), 0),
            0,
            List.of(new Piston(0, 0, 0.1)),
            AIR);
    HandbookRow.of("DI05")
        .check("directivity index of the ideal eight")
        .expected(-third, "dB")
        .computed(Levels.ofPowerRatio(figures.directivityFactor()))
        .within(0.001);
  }

  /** DI05 with the solver: a small panel is an ideal eight, 3 dB more with a floor's half space. */
  @Test
  void directivityIndexOfASmallPanel() {
    List<Piston> piston = List.of(new Piston(0, 0, 0.06));
    PanelSolution free =
        new PanelSolver(Panel.inFreeSpace(0.2, 0.2), piston, AIR).solve(40, List.of(), AXIS);
    double index = Levels.ofPowerRatio(PanelFigures.of(free, 0, piston, AIR).directivityFactor());
    // (kb)^2 = 0.005 with b = 0.1 m: 0.01 dB covers the panel's size and the solver's error
    HandbookRow.of("DI05")
        .check("directivity index of a panel of 20 cm at 40 Hz, free space")
        .expected(4.771, "dB")
        .computed(index)
        .coarse(4, 1e-5)
        .within(0.015);
    PanelSolution floor =
        new PanelSolver(Panel.overFloor(0.2, 0.2, 0.02), piston, AIR).solve(40, List.of(), AXIS);
    double onFloor =
        Levels.ofPowerRatio(PanelFigures.of(floor, 0, piston, AIR).directivityFactor());
    // the pair of panel and image is 0.44 m high: (kh)^2/10 of a decibel more at most
    HandbookRow.of("DI05")
        .check("directivity index of a panel of 20 cm at 40 Hz, over a floor")
        .expected(4.771 + 3.010, "dB")
        .computed(onFloor)
        .coarse(4, 1e-5)
        .within(0.05);
  }

  /**
   * A small source on the centre line of a long strip, D to W (Lamb, potential flow past a plate).
   * Between two closed forms: the ellipse inscribed in the panel (Lamb, Hydrodynamics, art. 114:
   * jump W/E(m) at its centre, m = 1 - W^2/H^2) and the endless strip. The jump grows with the
   * panel, so D lies between; both are averaged over the piston as 1 - r^2/(4 (W/2)^2), exact to
   * second order across the strip.
   */
  @Test
  void pathLengthOfALongStrip() {
    double width = 0.3;
    double height = 3;
    double radius = 0.03;
    List<Piston> piston = List.of(new Piston(0, 0, radius));
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(width, height), piston, AIR).solve(2, List.of(), AXIS);
    double path = PanelFigures.of(solution, 0, piston, AIR).pathLengthM();
    double average = 1 - radius * radius / (8 * width * width / 4);
    double ellipse = width / completeEllipticE(1 - width * width / (height * height)) * average;
    // 0.3 %: the accuracy the solver is held to
    Validation.check(
            "path length of a strip of 0.3 x 3 m, between an ellipse's and an endless strip's",
            "Potential flow past a plate (H. Lamb, Hydrodynamics, 1932, arts. 71 and 114).")
        .expected(width * average, "m")
        .computed(path)
        .coarse(4, 1e-5)
        .between(ellipse, width * average * 1.003);
    assertThat(width * average / ellipse).isLessThan(1.02);
  }

  /** Complete elliptic integral of the second kind, by the trapezium rule (spectrally exact). */
  private static double completeEllipticE(double m) {
    int steps = 400;
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      double sine = Math.sin(Math.PI / 2 * (i + 0.5) / steps);
      sum += Math.sqrt(1 - m * sine * sine);
    }
    return sum * Math.PI / 2 / steps;
  }

  /** PI03: an endless wall loads each side of a piston with (8/3) rho a^3. */
  @Test
  void endlessWallMass() {
    double a = 0.12;
    Validation.check(
            "air on both sides of a piston in an endless wall",
            "Closed form: (16/3) rho a^3 (Rayleigh).")
        .expected(2e3 * 8.0 / 3 * 1.2041 * a * a * a, "g")
        .computed(PanelFigures.infiniteBaffleMassKg(a, AIR) * 1e3)
        .within(1e-9);
    // DI01: both sides of a free disc together carry half of that
    double disc = HandbookRow.of("DI01").figure("5.549") * 1e-3;
    HandbookRow.of("DI01")
        .check("air on a free disc, half that of an endless wall")
        .expected(disc * 1e3, "g")
        .computed(PanelFigures.infiniteBaffleMassKg(a, AIR) / 2 * 1e3)
        .withinPercent(0.05);
  }

  @Test
  void anyPanelLoadsAPistonMoreThanNoneAndLessThanAnEndlessWall() {
    double radius = 0.1;
    List<Piston> piston = List.of(new Piston(0, 0, radius));
    PanelSolution solution =
        new PanelSolver(Panel.inFreeSpace(0.5, 0.9), piston, AIR).solve(20, List.of(), AXIS);
    double mass = PanelFigures.of(solution, 0, piston, AIR).stackMassKg();
    assertThat(mass)
        .isBetween(
            PointSources.freeDiscMassKg(radius, AIR),
            PanelFigures.infiniteBaffleMassKg(radius, AIR));
  }

  @Test
  void stackSumsItsWoofers() {
    List<Piston> pistons =
        List.of(new Piston(0, -0.4, 0.1), new Piston(0, 0.1, 0.1), new Piston(0, 0.35, 0.1));
    FieldPoint ear = new FieldPoint(0.2, 0.3, 2);
    PanelSolution s =
        new PanelSolver(Panel.overFloor(0.4, 1.1, 0.05), pistons, AIR)
            .solve(100, List.of(ear), AXIS);
    PanelFigures figures = PanelFigures.of(s, 0, pistons, AIR);
    double omega = 2 * Math.PI * 100;
    double mass = figures.addedMassKg().stream().sum();
    assertThat(figures.stackMassKg()).isCloseTo(mass, within(1e-12));
    double first = s.impedance().im(0, 0) + s.impedance().im(0, 1) + s.impedance().im(0, 2);
    assertThat(figures.addedMassKg().at(0)).isCloseTo(first / omega, within(1e-12));
    double re = IntStream.range(0, 3).mapToDouble(j -> s.farField().re(0, j)).sum();
    double im = IntStream.range(0, 3).mapToDouble(j -> s.farField().im(0, j)).sum();
    double volume = 3 * Math.PI * 0.01;
    assertThat(figures.onAxisPaSPerM2()).isCloseTo(Math.hypot(re, im) / volume, within(1e-9));
    assertThat(figures.pathLengthM())
        .isCloseTo(figures.onAxisRatio() / AIR.waveNumber(100), within(1e-12));
    double pRe = IntStream.range(0, 3).mapToDouble(j -> s.pressure().re(0, j)).sum();
    double pIm = IntStream.range(0, 3).mapToDouble(j -> s.pressure().im(0, j)).sum();
    assertThat(PanelFigures.pointRmsPa(s, 0, 5))
        .isCloseTo(5 * Math.hypot(pRe, pIm) / omega, within(1e-12));
    double distance = Math.sqrt(0.04 + 0.09 + 4);
    assertThat(PanelFigures.pointRatio(s, 0, ear, pistons, AIR))
        .isCloseTo(
            Math.hypot(pRe, pIm) * distance * 4 * Math.PI / (1.2041 * omega * volume),
            within(1e-9));
  }

  /** The free monopole against Small's formula for a displacement (J. Audio Eng. Soc. 21, 798). */
  @Test
  void monopoleAgreesWithTheDisplacementFormula() {
    double hertz = 40;
    double displacement = 5e-4;
    double rms = 2 * Math.PI * hertz * displacement / Math.sqrt(2);
    Validation.check(
            "free monopole by velocity and by displacement",
            "R. H. Small, J. Audio Eng. Soc. 21 (1973) 798.")
        .expected(PointSources.fullSpaceRmsPa(displacement, hertz, 1, AIR), "Pa")
        .computed(PanelFigures.monopole(hertz, rms, AIR))
        .within(1e-12);
  }

  @Test
  void refusesPistonsThatDoNotMatch() {
    PanelSolution one = new PanelSolution(50, number(1, 1), number(0, 0), number(1, 0), 0);
    assertThatThrownBy(
            () ->
                PanelFigures.of(one, 0, List.of(new Piston(0, 0, 0.1), new Piston(0, 1, 0.1)), AIR))
        .hasMessageContaining("2 pistons with a solution for 1");
  }
}
