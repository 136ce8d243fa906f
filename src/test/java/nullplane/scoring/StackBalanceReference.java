package nullplane.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import nullplane.acoustics.Corner;
import nullplane.acoustics.Outline;
import nullplane.acoustics.Panel;
import nullplane.acoustics.Piston;
import nullplane.acoustics.PolygonOutline;
import nullplane.acoustics.RectangularOutline;
import nullplane.acoustics.RoundOutline;
import nullplane.validation.Check;
import nullplane.validation.Validation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The balance of a standing stack against closed forms of statics. */
@Tag("reference")
class StackBalanceReference {
  private static StackBrief stack(
      Outline outline, OptionalDouble clearance, OptionalDouble massKg, Piston... pistons) {
    return new StackBrief(
        "one",
        new Panel(outline, clearance),
        List.of(pistons),
        74,
        86,
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        new PanelStand(massKg, OptionalDouble.empty()));
  }

  /** An even sheet balances at half its height; a round hole at its centre changes nothing. */
  @Test
  void anEvenPanelAloneBalancesAtHalfItsHeight() {
    StackBalance balance =
        StackBalance.of(
            stack(
                new RectangularOutline(0.44, 1.5),
                OptionalDouble.of(0.04),
                OptionalDouble.empty(),
                new Piston(0, 0, 0.13)),
            0);
    Validation.check("centre of gravity of an even panel", "Statics: half its height.")
        .expected(0.04 + 0.75, "m")
        .computed(balance.centreOfGravityM())
        .within(1e-12);
    assertThat(balance.massKg())
        .isCloseTo(12 * (0.44 * 1.5 - Math.PI * 0.13 * 0.13), within(1e-12));
    // 2 h tan 10 degrees, tan 10 degrees = 0.176327 (any table of functions)
    Validation.check("least base for a tilt by 10 degrees", "Geometry: 2 h tan 10 degrees.")
        .expected(2 * 0.79 * 0.176327, "m")
        .computed(balance.leastBaseDepthM())
        .within(1e-6);
    assertThat(Math.toDegrees(balance.tippingRad(balance.leastBaseDepthM())))
        .isCloseTo(10, within(1e-12));
    // an edge as far out as the weight is high: 45 degrees
    assertThat(Math.toDegrees(balance.tippingRad(2 * 0.79))).isCloseTo(45, within(1e-12));
  }

  /** Lever rule: a panel of 8 kg and a woofer of 4 kg a distance d above its centre: d/3. */
  @Test
  void aHeavyWooferDrawsTheBalanceByTheLever() {
    StackBalance balance =
        StackBalance.of(
            stack(
                new RectangularOutline(2, 4),
                OptionalDouble.empty(),
                OptionalDouble.of(8),
                new Piston(0, 1.2, 1e-6)),
            4);
    assertThat(balance.massKg()).isCloseTo(12, within(1e-12));
    Validation.check("panel with one heavy woofer", "Statics: rule of the lever.")
        .expected(2 + 1.2 / 3, "m")
        .computed(balance.centreOfGravityM())
        .within(1e-9);
  }

  /** A disc of R with a hole of r a distance e above its centre balances e r2/(R2 - r2) below. */
  @Test
  void aHoleDrawsTheBalanceAway() {
    StackBalance balance =
        StackBalance.of(
            stack(
                new RoundOutline(1.2),
                OptionalDouble.of(0),
                OptionalDouble.empty(),
                new Piston(0, 0.3, 0.2)),
            0);
    Validation.check("disc with a hole off its centre", "Statics: e r^2/(R^2 - r^2).")
        .expected(0.6 - 0.3 * 0.04 / (0.36 - 0.04), "m")
        .computed(balance.centreOfGravityM())
        .within(1e-12);
  }

  /** A triangle balances at a third of its height, whichever way round its corners are listed. */
  @Test
  void aTriangleBalancesAtAThird() {
    List<Corner> corners =
        List.of(new Corner(-0.3, -0.2), new Corner(0.5, -0.2), new Corner(0.1, 0.7));
    List<Corner> back = List.of(corners.get(2), corners.get(1), corners.get(0));
    Check triangle =
        Validation.check("triangle, either way round", "Statics: a third of its height.").in("m");
    for (List<Corner> order : List.of(corners, back)) {
      StackBalance balance =
          StackBalance.of(
              stack(
                  new PolygonOutline(order),
                  OptionalDouble.of(0.1),
                  OptionalDouble.empty(),
                  new Piston(0.1, 0, 1e-6)),
              0);
      triangle.add(0.1 + 0.3, balance.centreOfGravityM());
    }
    triangle.within(1e-9);
  }

  /** A piston that fills its panel leaves the woofers' weight alone. */
  @Test
  void aPanelThatIsOnlyAHoleStillHasABalance() {
    StackBalance balance =
        StackBalance.of(
            stack(
                new RoundOutline(0.26),
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                new Piston(0, 0, 0.13)),
            3);
    assertThat(balance.centreOfGravityM()).isCloseTo(0.63, within(1e-12));
  }
}
