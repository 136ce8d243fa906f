package nullplane.sample;

import static nullplane.sample.MakerBriefs.WINDING;
import static nullplane.sample.MakerBriefs.WOOFER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import nullplane.driver.Woofer;
import nullplane.motor.Former;
import nullplane.motor.Insulation;
import nullplane.motor.StockWire;
import nullplane.motor.Winding;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;

/**
 * A coil of two layers on a former of 38 mm with a wall of 0.15 mm in a gap of 8 mm, wound anew:
 * from 70 turns a layer of 0.28 mm wire, 0.312 mm with its enamel, to 64 turns of 0.3 mm, 0.334 mm.
 */
class ChangeTest {
  private static final Winding TO =
      Winding.of(
          Former.ofNominal(0.038),
          StockWire.all().stream().filter(w -> w.bareM() == 300 / 1e6).findFirst().orElseThrow(),
          Insulation.GRADE_1,
          ConductorMaterial.COPPER,
          2,
          64,
          0.008);

  /** Mean diameters: 38.3 mm and two pitches (mm). */
  private static final double FROM_MM = 38.924;

  private static final double TO_MM = 38.968;

  /** Re goes with length over section, the length in the gap with the diameter over the pitch. */
  private static final double RESISTANCE =
      TO_MM * 64 / (0.3 * 0.3) / (FROM_MM * 70 / (0.28 * 0.28));

  private static final double FORCE = TO_MM / 0.334 / (FROM_MM / 0.312);

  private static final double INDUCTANCE =
      wheeler(TO_MM / 2, 64 * 0.334, 2 * 0.334, 2 * 64)
          / wheeler(FROM_MM / 2, 70 * 0.312, 2 * 0.312, 2 * 70);

  /** (64 x 0.334 - 70 x 0.312)/2 mm. */
  private static final double TRAVEL_M = -0.232e-3;

  /** H. A. Wheeler, Proc. IRE 16 (1928) 1398, but for a constant factor. */
  private static double wheeler(double radius, double height, double depth, int turns) {
    return radius * radius * turns * turns / (6 * radius + 9 * height + 10 * depth);
  }

  /** Copper, enamel of 1400 kg/m3, and a tube of 1800 kg/m3 beside coil, travel and 15 mm. */
  private static double massKg(double meanMm, int turns, double bareMm, double pitchMm) {
    double copper = ConductorMaterial.COPPER.densityKgPerM3() * bareMm * bareMm;
    double enamel = 1400 * (pitchMm * pitchMm - bareMm * bareMm);
    double wire = Math.PI / 4 * (copper + enamel) * Math.PI * meanMm * 2 * turns * 1e-9;
    double height = turns * pitchMm;
    double tube = Math.PI * 38.15 * 0.15 * (height + (height - 8) / 2 + 15) * 1800e-9;
    return wire + tube;
  }

  private static final double MASS_KG =
      massKg(TO_MM, 64, 0.3, 0.334) - massKg(FROM_MM, 70, 0.28, 0.312);

  @Test
  void newWindingActsByItsWireAndItsTurns() {
    Change.Rewound rewound = new Change.Rewound(WINDING, TO);
    assertThat(rewound.resistanceRatio()).isCloseTo(RESISTANCE, within(1e-12));
    assertThat(rewound.forceRatio()).isCloseTo(FORCE, within(1e-12));
    assertThat(rewound.inductanceRatio()).isCloseTo(INDUCTANCE, within(1e-12));
    assertThat(rewound.travelM()).isCloseTo(TRAVEL_M, within(1e-12));
    assertThat(rewound.massKg()).isCloseTo(MASS_KG, within(1e-12));
  }

  /** A quarter of a ratio is its fourth root, of a mass or a length a quarter. */
  @Test
  void partOfAWindingGoesByLogarithms() {
    Change.Rewound part = new Change.Rewound(WINDING, TO).inPart(0.25);
    assertThat(part.resistanceRatio()).isCloseTo(Math.sqrt(Math.sqrt(RESISTANCE)), within(1e-12));
    assertThat(part.forceRatio()).isCloseTo(Math.sqrt(Math.sqrt(FORCE)), within(1e-12));
    assertThat(part.inductanceRatio()).isCloseTo(Math.sqrt(Math.sqrt(INDUCTANCE)), within(1e-12));
    assertThat(part.travelM()).isCloseTo(TRAVEL_M / 4, within(1e-12));
    assertThat(part.massKg()).isCloseTo(MASS_KG / 4, within(1e-12));
    assertThatThrownBy(() -> part.inPart(0)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void everyLeverMovesItsOwnPart() {
    Change change =
        new Change(0.004, -0.2, 0.1, Optional.of(new Change.Rewound(WINDING, TO)), -0.7e-3, 0.5e-3);
    Woofer after = change.applyTo(WOOFER);
    assertThat(after.bareMassKg()).isCloseTo(0.06 + 0.004 + MASS_KG, within(1e-12));
    assertThat(after.stiffnessNPerM() / WOOFER.stiffnessNPerM()).isCloseTo(0.8, within(1e-12));
    assertThat(after.forceFactorTm() / WOOFER.forceFactorTm())
        .isCloseTo(1.1 * FORCE, within(1e-12));
    assertThat(after.resistanceOhm() / WOOFER.resistanceOhm()).isCloseTo(RESISTANCE, within(1e-12));
    assertThat(after.inductanceH()).isCloseTo(0.9e-3 * INDUCTANCE, within(1e-12));
    assertThat(after.travelM() - WOOFER.travelM()).isCloseTo(0.5e-3 + TRAVEL_M, within(1e-12));
    assertThat(after.lossNsPerM()).isEqualTo(WOOFER.lossNsPerM());
    assertThat(change.levers()).containsExactly(Lever.values());
    for (Lever lever : Lever.values()) {
      Change only = change.only(lever);
      assertThat(only.levers()).containsExactly(lever);
      assertThat(only.travelGainM()).isEqualTo(lever == Lever.REST_POSITION ? 0.5e-3 : 0);
    }
    assertThat(change.only(Lever.MASS).massKg()).isEqualTo(0.004);
    assertThat(change.only(Lever.STIFFNESS).stiffnessShare()).isEqualTo(-0.2);
    assertThat(change.only(Lever.FLUX).fluxShare()).isEqualTo(0.1);
    assertThat(change.only(Lever.WINDING).winding()).isEqualTo(change.winding());
    assertThat(change.only(Lever.REST_POSITION).restMoveM()).isEqualTo(-0.7e-3);
    assertThat(Change.NONE.levers()).isEmpty();
    // what was asked for keeps the same measures
    AskedChange asked = AskedChange.of(change);
    assertThat(asked.amount(Lever.MASS)).isEqualTo(0.004);
    assertThat(asked.amount(Lever.STIFFNESS)).isEqualTo(-0.2);
    assertThat(asked.amount(Lever.FLUX)).isEqualTo(0.1);
    assertThat(asked.amount(Lever.WINDING)).isCloseTo(RESISTANCE - 1, within(1e-12));
    assertThat(asked.amount(Lever.REST_POSITION)).isEqualTo(-0.7e-3);
    assertThat(asked.winding().orElseThrow().massKg()).isCloseTo(MASS_KG, within(1e-12));
    assertThat(asked.winding().orElseThrow().forceRatio()).isCloseTo(FORCE, within(1e-12));
    assertThat(asked.levers()).containsExactly(Lever.values());
  }

  /** Stiffness and flux cannot fall to nothing, and a winding that keeps Re is no other Re. */
  @Test
  void nothingIsNoSuspensionAndNoMagnet() {
    assertThatThrownBy(() -> new Change(0, -1, 0, Optional.empty(), 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Change(0, 0, -1, Optional.empty(), 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    AskedChange kept =
        new AskedChange(0, 0, 0, Optional.of(new AskedChange.WindingStep(0.001, 1, 1.1)), 0);
    assertThat(kept.levers()).isEmpty();
  }
}
