package nullplane.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import nullplane.units.Air;
import nullplane.units.Curve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Acoustics between piston sizes, against solutions for the size itself. */
class PistonSizesTest {
  private static final Panel PANEL = Panel.overFloor(0.5, 1.2, 0.04);
  private static final Curve AXIS = Curve.of(40, 200, 500);

  private static PanelResponse solved(double radius) {
    return new PanelSolver(
            PANEL,
            List.of(new Piston(0, -0.3, radius), new Piston(0, 0.25, radius)),
            Air.standard(),
            new Accuracy(3e-4, 0.003))
        .respond(AXIS, List.of(new FieldPoint(0, 0.2, 3)), List.of(new Direction(30, 0)));
  }

  /**
   * From 200 mm to 460 mm woofers, radii 8 to 19 cm, in five sizes, all solved to 0.03 %: what is
   * left, 6e-5 when first measured, is below what the solutions themselves may be off by.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.087, 0.105, 0.13, 0.165})
  void aSizeInBetweenIsThatOfItsOwnSolution(double radius) {
    List<Double> radii = PistonSizes.radii(0.08, 0.19, 5);
    PistonSizes sizes =
        new PistonSizes(radii, radii.stream().map(PistonSizesTest::solved).toList());
    PanelResponse between = sizes.at(radius);
    PanelResponse own = solved(radius);
    for (int f = 0; f < AXIS.size(); f++) {
      assertThat(between.solutions().get(f).largestDifference(own.solutions().get(f)))
          .as("%.0f Hz", AXIS.at(f))
          .isLessThan(2e-4);
    }
  }

  @Test
  void aKnownSizeIsReturnedAsItIs() {
    List<Double> radii = PistonSizes.radii(0.1, 0.14, 2);
    List<PanelResponse> known = radii.stream().map(PistonSizesTest::solved).toList();
    assertThat(new PistonSizes(radii, known).at(0.14)).isSameAs(known.get(1));
    assertThatThrownBy(() -> new PistonSizes(radii, known).at(0.15))
        .hasMessageContaining("allowed: 0.1 to 0.14 m");
    assertThat(PistonSizes.radii(0.1, 0.1, 4)).containsExactly(0.1);
  }
}
