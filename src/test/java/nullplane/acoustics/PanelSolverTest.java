package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import nullplane.faults.ModelRangeException;
import nullplane.units.Air;
import org.junit.jupiter.api.Test;

class PanelSolverTest {
  private static final Air AIR = Air.standard();
  private static final Panel PANEL = Panel.inFreeSpace(0.44, 0.8);

  @Test
  void refusesPistonsThatCrossTheRimOrEachOther() {
    assertThatThrownBy(() -> new PanelSolver(PANEL, List.of(), AIR))
        .hasMessageContaining("at least one piston");
    assertThatThrownBy(() -> new PanelSolver(PANEL, List.of(new Piston(0.2, 0, 0.1)), AIR))
        .hasMessageContaining("crosses the panel's rim by 0.08");
    assertThatThrownBy(
            () ->
                new PanelSolver(
                    PANEL, List.of(new Piston(0, 0, 0.1), new Piston(0, 0.15, 0.1)), AIR))
        .hasMessageContaining("pistons 1 and 2 overlap by 0.05");
  }

  @Test
  void acceptsAPistonThatTouchesTheRim() {
    PanelSolution solution =
        new PanelSolver(PANEL, List.of(new Piston(0.12, 0.3, 0.1)), AIR)
            .solve(100, List.of(), List.of());
    assertThat(solution.impedance().re(0, 0)).isPositive();
  }

  @Test
  void refusesWhatNeedsTooManyUnknowns() {
    PanelSolver solver =
        new PanelSolver(Panel.inFreeSpace(6, 6), List.of(new Piston(0, 0, 0.01)), AIR);
    assertThatThrownBy(() -> solver.solve(100, List.of(), List.of()))
        .isInstanceOf(ModelRangeException.class)
        .hasMessageContaining("use a smaller panel");
  }

  @Test
  void aMirroredStackHasEqualWoofers() {
    PanelSolution solution =
        new PanelSolver(
                PANEL,
                List.of(new Piston(0, -0.2, 0.13), new Piston(0, 0.2, 0.13)),
                AIR,
                Accuracy.USUAL,
                1e-11)
            .solve(80, List.of(), List.of());
    ComplexMatrix z = solution.impedance();
    assertThat(Math.abs(z.im(0, 0) - z.im(1, 1)) / z.im(0, 0)).isLessThan(1e-9);
  }

  @Test
  void distanceToRimIsSigned() {
    Outline outline = new RectangularOutline(0.4, 1);
    assertThat(outline.distanceToRim(0, 0)).isEqualTo(0.2);
    assertThat(outline.distanceToRim(0.1, 0.45)).isBetween(0.0499999, 0.0500001);
    assertThat(outline.distanceToRim(0.5, 0)).isBetween(-0.3000001, -0.2999999);
    assertThat(outline.distanceToRim(0.23, 0.54)).isBetween(-0.0500001, -0.0499999);
    assertThat(outline.areaM2()).isEqualTo(0.4);
  }
}
