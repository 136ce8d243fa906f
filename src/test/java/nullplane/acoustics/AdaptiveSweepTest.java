package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.function.DoubleFunction;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;

class AdaptiveSweepTest {
  private static final Air AIR = Air.standard();
  private static final double TOLERANCE = 0.02;

  private static AdaptiveSweep finish(AdaptiveSweep sweep, DoubleFunction<PanelSolution> solver) {
    List<Double> wanted = sweep.wanted();
    while (!wanted.isEmpty()) {
      sweep.accept(wanted.stream().map(solver::apply).toList());
      wanted = sweep.wanted();
    }
    return sweep;
  }

  /**
   * Between solved frequencies the interpolated response is the solved one, far within the sweep's
   * tolerance: the error that was let pass is that of an interval twice as wide.
   */
  @Test
  void interpolatesWithinATenthOfItsTolerance() {
    Panel panel = Panel.overFloor(0.44, 1.5, 0.04);
    List<Piston> pistons = List.of(new Piston(0, -0.45, 0.13), new Piston(0, 0.45, 0.13));
    List<FieldPoint> ear = List.of(new FieldPoint(0, 0.21, 3));
    List<Direction> directions = List.of(Direction.ofDegrees(0, 0), Direction.ofDegrees(40, 0));
    DoubleFunction<PanelSolution> solver =
        new PanelSolver(panel, pistons, AIR).upTo(1000, ear, directions);
    AdaptiveSweep sweep =
        finish(new AdaptiveSweep(20, 1000, TOLERANCE, ear, AIR.speedOfSoundMPerS()), solver);
    assertThat(sweep.largestMiss()).isLessThanOrEqualTo(TOLERANCE);
    assertThat(sweep.solutions()).hasSizeBetween(17, 80);
    Curve between = Curve.logSpaced(20.7, 990, 23);
    PanelResponse response = sweep.on(between);
    for (int i = 0; i < between.size(); i++) {
      PanelSolution solved = solver.apply(between.at(i));
      assertThat(response.solutions().get(i).largestDifference(solved))
          .as("at %.1f Hz", between.at(i))
          .isLessThan(TOLERANCE / 10);
    }
  }

  @Test
  void givesSolvedFrequenciesBackAsTheyAre() {
    List<FieldPoint> ear = List.of(new FieldPoint(0, 0, 2));
    DoubleFunction<PanelSolution> solver =
        new PanelSolver(Panel.inFreeSpace(0.4, 0.4), List.of(new Piston(0, 0, 0.1)), AIR)
            .upTo(300, ear, List.of());
    AdaptiveSweep sweep =
        finish(new AdaptiveSweep(30, 300, TOLERANCE, ear, AIR.speedOfSoundMPerS()), solver);
    PanelResponse response = sweep.on(Curve.of(30, 300));
    assertThat(response.solutions().get(0)).isEqualTo(solver.apply(30));
    assertThat(response.solutions().get(1)).isEqualTo(solver.apply(300));
    AdaptiveSweep again = AdaptiveSweep.finished(sweep.solutions(), ear, AIR.speedOfSoundMPerS());
    Curve axis = Curve.logSpaced(31, 290, 7);
    assertThat(again.on(axis)).isEqualTo(sweep.on(axis));
  }

  @Test
  void refusesWrongUse() {
    AdaptiveSweep sweep = new AdaptiveSweep(30, 300, TOLERANCE, List.of(), 343.2);
    assertThatThrownBy(() -> sweep.on(Curve.of(50))).hasMessageContaining("still wants 9");
    assertThatThrownBy(() -> sweep.accept(List.of())).hasMessageContaining("9 solutions wanted");
    assertThatThrownBy(() -> AdaptiveSweep.finished(List.of(), List.of(), 343.2))
        .hasMessageContaining("sweep of 0");
  }
}
