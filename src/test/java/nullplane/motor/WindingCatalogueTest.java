package nullplane.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import nullplane.driver.CoilBudget;
import nullplane.driver.OverhungCoil;
import nullplane.driver.RoundWireCoil;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;
import org.junit.jupiter.api.Test;

class WindingCatalogueTest {
  private static final CoilBrief BRIEF =
      new CoilBrief(
          Range.pinned(5.6),
          CoilBrief.fluxUpTo(1),
          List.of(0.006, 0.008, 0.010, 0.030),
          List.of(0.038, 0.050),
          List.of(ConductorMaterial.COPPER, ConductorMaterial.ALUMINIUM),
          List.of(1, 2, 4, 6),
          MagnetMaterial.FERRITE);
  private static final Range TRAVEL = new Range(0.004, 0.014);
  private static final WindingCatalogue CATALOGUE = WindingCatalogue.of(BRIEF, TRAVEL);

  /** Counted by the formulas alone, over every number of turns. */
  @Test
  void holdsEveryWindingThereIs() {
    int count = 0;
    for (double former : new double[] {0.038, 0.050}) {
      for (double resistivity : new double[] {1.7241e-8, 2.8264e-8}) {
        for (int layers : new int[] {1, 2, 4, 6}) {
          for (StockWire wire : StockWire.all()) {
            for (int turns = 1; turns < 1000; turns++) {
              double mean = former + 0.3e-3 + layers * wire.gradeOneM();
              double ohm = 4 * resistivity * mean * layers * turns / (wire.bareM() * wire.bareM());
              double height = turns * wire.gradeOneM();
              for (double gap : BRIEF.gapHeightsM()) {
                double travel = Math.abs(height - gap) / 2;
                if (ohm >= 5.6 * 0.97
                    && ohm <= 5.6 * 1.03
                    && height >= 0.006
                    && height <= 0.080
                    && travel >= 0.004
                    && travel <= 0.014) {
                  count++;
                }
              }
            }
          }
        }
      }
    }
    assertThat(count).isGreaterThan(100);
    assertThat(CATALOGUE.windings()).hasSize(count);
    assertThat(new HashSet<>(CATALOGUE.windings())).hasSize(count);
    assertThat(CATALOGUE.windings()).anyMatch(w -> !w.overhung());
  }

  @Test
  void isInOrderOfTravelAndStrength() {
    assertThat(CATALOGUE.firstOfClass().get(0)).isZero();
    double before = 0;
    for (int c = 0; c < CATALOGUE.classes(); c++) {
      List<Winding> windings = CATALOGUE.ofClass(c);
      double most = windings.stream().mapToDouble(Winding::travelM).max().orElseThrow();
      double least = windings.stream().mapToDouble(Winding::travelM).min().orElseThrow();
      assertThat(most - least).isLessThan(WindingCatalogue.CLASS_WIDTH_M);
      assertThat(least).isGreaterThan(before);
      before = most;
      for (int i = 1; i < windings.size(); i++) {
        assertThat(windings.get(i).strengthPerSquaredTesla())
            .isGreaterThanOrEqualTo(windings.get(i - 1).strengthPerSquaredTesla());
      }
    }
  }

  /** Wire mass by the continuous rule of an overhung coil: neither turns nor layers matter. */
  @Test
  void everyWindingObeysTheRuleOfWireMass() {
    for (Winding winding : CATALOGUE.windings()) {
      RoundWireCoil coil = winding.coil();
      if (winding.overhung()) {
        double mass =
            OverhungCoil.massKg(
                winding.strengthPerSquaredTesla(),
                coil.windingHeightM(),
                winding.gapHeightM(),
                1,
                coil.material());
        assertThat(mass / coil.massKg()).isCloseTo(1, within(1e-12));
      }
      assertThat(coil.turnsPerLayer() * coil.insulatedDiameterM())
          .isCloseTo(coil.windingHeightM(), within(1e-12));
    }
  }

  @Test
  void findsItsOwnWindingsAgain() {
    for (Winding winding : CATALOGUE.windings()) {
      assertThat(CATALOGUE.matching(winding.resistanceOhm(), winding.travelM())).contains(winding);
      assertThat(CATALOGUE.matching(winding.resistanceOhm() * 1.1, winding.travelM())).isEmpty();
    }
  }

  /** At the nearest values that are told, there is a winding. */
  @Test
  void tellsWhatStandsNearest() {
    CoilBrief narrow =
        new CoilBrief(
            new Range(5.6, 5.601),
            BRIEF.fluxT(),
            List.of(0.008),
            List.of(0.050),
            List.of(ConductorMaterial.COPPER),
            CoilBrief.USUAL_LAYERS,
            MagnetMaterial.FERRITE);
    Range travel = new Range(0.00651, 0.00652);
    assertThat(WindingCatalogue.of(narrow, travel).windings()).isEmpty();
    WindingCatalogue.Nearest nearest = WindingCatalogue.nearest(narrow, travel);
    double found = nearest.travelM().orElseThrow();
    assertThat(WindingCatalogue.of(narrow, Range.pinned(found)).windings()).isNotEmpty();
    for (Winding winding : WindingCatalogue.of(narrow, new Range(0.0001, 0.03)).windings()) {
      assertThat(Math.abs(winding.travelM() - 0.006515))
          .isGreaterThanOrEqualTo(Math.abs(found - 0.006515) - 1e-5);
    }
  }

  @Test
  void massesAddUpAndAgreeWithTheRuleForAnUnknownCoil() {
    for (Winding winding : CATALOGUE.windings()) {
      MassBudget masses = MassBudget.of(0.06, 0.0505, winding);
      assertThat(masses.bareMassKg()).isCloseTo(0.06, within(1e-15));
      CoilBudget budget = masses.coilBudget(winding.coil().windingHeightM());
      assertThat(budget.remainderKg() + budget.coilMassKg()).isCloseTo(0.06, within(1e-15));
      // a 300 mm woofer's former is 0.8 to 3 g; the rule for an unknown coil is within a tenth
      assertThat(budget.leastRemainderKg())
          .isCloseTo(CoilBudget.leastRemainderForArea(0.0505), within(0.1 * 0.45 * 0.0505));
    }
    Winding heavy = CATALOGUE.windings().get(CATALOGUE.windings().size() - 1);
    assertThat(MassBudget.of(0.02, 0.0505, heavy).coilBudget(0.02).shortfall()).isPositive();
  }

  /** No cliff: the distance is 0 at a limit and grows from there in proportion. */
  @Test
  void fluxAndSteelAreDistances() {
    Winding winding = CATALOGUE.windings().get(0);
    Range allowed = new Range(0.4, 1.0);
    assertThat(motor(winding, 0.4).fluxShortfall(allowed)).isZero();
    assertThat(motor(winding, 1.0).fluxShortfall(allowed)).isZero();
    assertThat(motor(winding, 1.1).fluxShortfall(allowed)).isCloseTo(0.1, within(1e-12));
    assertThat(motor(winding, 0.3).fluxShortfall(allowed)).isCloseTo(0.25, within(1e-12));
    double limit = MotorDesign.STEEL_LIMIT_T / motor(winding, 1).poleFluxT();
    assertThat(motor(winding, limit * 0.999999).steelShortfall()).isZero();
    assertThat(motor(winding, limit * 1.2).steelShortfall()).isCloseTo(0.2, within(1e-12));
  }

  private static MotorDesign motor(Winding winding, double fluxT) {
    return new MotorDesign(winding, fluxT, MagnetMaterial.FERRITE);
  }

  @Test
  void rareBuildsAreFlagged() {
    StockWire wire = StockWire.all().get(16);
    Former former = Former.ofNominal(0.05);
    for (int layers : new int[] {1, 6}) {
      Winding rare =
          Winding.of(former, wire, Insulation.GRADE_2, ConductorMaterial.COPPER, layers, 60, 0.008);
      assertThat(motor(rare, 0.8).remarks()).hasSize(1);
      assertThat(rare.coil().insulatedDiameterM()).isEqualTo(wire.gradeTwoM());
    }
    Winding usual =
        Winding.of(former, wire, Insulation.GRADE_1, ConductorMaterial.COPPER, 4, 60, 0.008);
    assertThat(motor(usual, 0.8).remarks()).isEmpty();
    Winding under =
        Winding.of(former, wire, Insulation.GRADE_1, ConductorMaterial.COPPER, 4, 30, 0.020);
    assertThat(motor(under, 2.4).remarks()).hasSize(3);
    assertThat(under.lengthInFieldM()).isEqualTo(under.coil().wireLengthM());
    assertThatThrownBy(() -> new Winding(Former.ofNominal(0.06), usual.coil(), 0.008))
        .hasMessageContaining("former's outside");
  }

  @Test
  void aStatedInductanceAsksForARingOrNone() {
    RoundWireCoil coil = CATALOGUE.windings().get(0).coil();
    double air = InductanceEstimate.inAirH(coil);
    assertThat(Ring.neededFor(1.3 * air, coil)).isEqualTo(Ring.NONE);
    assertThat(Ring.neededFor(0.8 * air, coil)).isEqualTo(Ring.PARTIAL);
    assertThat(Ring.neededFor(0.5 * air, coil)).isEqualTo(Ring.WHOLE);
    assertThat(Ring.neededFor(0.2 * air, coil)).isEqualTo(Ring.DOUBTFUL);
  }
}
