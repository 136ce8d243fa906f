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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
  private final WindingCatalogue catalogue = WindingCatalogue.of(BRIEF, TRAVEL);

  /** Counted by the formulas alone, over every number of turns. */
  @ParameterizedTest
  @CsvSource({"0.004, 0.014", "0.024, 0.040"})
  void holdsEveryWindingThereIs(double leastTravel, double mostTravel) {
    List<Winding> windings =
        WindingCatalogue.of(BRIEF, new Range(leastTravel, mostTravel)).windings();
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
                    && travel >= leastTravel
                    && travel <= mostTravel) {
                  count++;
                }
              }
            }
          }
        }
      }
    }
    assertThat(count).isGreaterThan(20);
    assertThat(windings).hasSize(count);
    assertThat(new HashSet<>(windings)).hasSize(count);
    assertThat(catalogue.windings()).anyMatch(w -> !w.overhung());
  }

  @Test
  void isInOrderOfTravelAndStrength() {
    assertThat(catalogue.firstOfClass().get(0)).isZero();
    // 4 to 14 mm in steps of 0.25 mm
    assertThat(catalogue.classes()).isBetween(30, 41);
    double before = 0;
    for (int c = 0; c < catalogue.classes(); c++) {
      List<Winding> windings = catalogue.ofClass(c);
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
    for (Winding winding : catalogue.windings()) {
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
    for (Winding winding : catalogue.windings()) {
      assertThat(catalogue.matching(winding.resistanceOhm(), winding.travelM())).contains(winding);
      assertThat(catalogue.matching(winding.resistanceOhm() * 1.1, winding.travelM())).isEmpty();
      for (double off : new double[] {1 - 9e-6, 1 + 9e-6}) { // across the edges of classes too
        assertThat(catalogue.matching(winding.resistanceOhm(), winding.travelM() * off))
            .isNotEmpty();
      }
    }
  }

  /** A travel of 4 mm is an edge of a class: found from either side of it. */
  @Test
  void theEdgeOfAClassHidesNoWinding() {
    StockWire wire = StockWire.all().get(6);
    for (double travelM : new double[] {0.004 * (1 - 5e-6), 0.004 * (1 + 5e-6)}) {
      Winding winding =
          Winding.of(
              Former.ofNominal(0.05),
              wire,
              Insulation.GRADE_1,
              ConductorMaterial.COPPER,
              2,
              100,
              100 * wire.gradeOneM() - 2 * travelM);
      WindingCatalogue one = new WindingCatalogue(List.of(winding), List.of(0, 1));
      for (double off : new double[] {1 - 9e-6, 1, 1 + 9e-6}) {
        assertThat(one.matching(winding.resistanceOhm(), winding.travelM() * off))
            .contains(winding);
      }
    }
  }

  /** Counted out by the formulas alone: each limit kept, the other missed by least. */
  @Test
  void tellsWhatStandsNearest() {
    CoilBrief narrow = copperOf(new Range(5.6, 5.601));
    Range travel = new Range(0.00651, 0.00652);
    assertThat(WindingCatalogue.of(narrow, travel).windings()).isEmpty();
    double ohm = Double.POSITIVE_INFINITY;
    double metres = Double.POSITIVE_INFINITY;
    for (int layers : CoilBrief.USUAL_LAYERS) {
      for (StockWire wire : StockWire.all()) {
        for (int turns = 1; turns <= 0.080 / wire.gradeOneM(); turns++) {
          double mean = 0.0503 + layers * wire.gradeOneM();
          double re = 4 * 1.7241e-8 * mean * layers * turns / (wire.bareM() * wire.bareM());
          double x = Math.abs(turns * wire.gradeOneM() - 0.008) / 2;
          boolean tall = turns * wire.gradeOneM() >= 0.006;
          if (tall && x >= 0.00651 && x <= 0.00652 && away(re, 5.6005) < away(ohm, 5.6005)) {
            ohm = re;
          }
          if (tall && re >= 5.6 && re <= 5.601 && away(x, 0.006515) < away(metres, 0.006515)) {
            metres = x;
          }
        }
      }
    }
    WindingCatalogue.Nearest nearest = WindingCatalogue.nearest(narrow, travel);
    assertThat(nearest.resistanceOhm().orElseThrow()).isCloseTo(ohm, within(1e-9));
    assertThat(nearest.travelM().orElseThrow()).isCloseTo(metres, within(1e-12));
  }

  private static CoilBrief copperOf(Range resistanceOhm) {
    return new CoilBrief(
        resistanceOhm,
        BRIEF.fluxT(),
        List.of(0.008),
        List.of(0.050),
        List.of(ConductorMaterial.COPPER),
        CoilBrief.USUAL_LAYERS,
        MagnetMaterial.FERRITE);
  }

  private static double away(double value, double middle) {
    return Math.abs(value - middle);
  }

  /** Fifty turns of 0.16 mm fill a gap of 8 mm: no travel, so not the nearest to a small one. */
  @Test
  void aCoilAsTallAsItsGapIsNone() {
    StockWire wire = StockWire.all().get(6);
    Former former = Former.ofNominal(0.05);
    Winding level =
        Winding.of(former, wire, Insulation.GRADE_1, ConductorMaterial.COPPER, 2, 50, 0.008);
    assertThat(level.travelM()).isZero();
    assertThat(level.overhung()).isFalse();
    CoilBrief its = copperOf(new Range(level.resistanceOhm() - 1e-6, level.resistanceOhm() + 1e-6));
    Range tiny = new Range(1e-9, 2e-9);
    assertThat(WindingCatalogue.nearest(its, tiny).travelM()).isEmpty();
    assertThat(WindingCatalogue.nearest(its, tiny).resistanceOhm()).isEmpty();
  }

  @Test
  void massesAddUpAndAgreeWithTheRuleForAnUnknownCoil() {
    for (Winding winding : catalogue.windings()) {
      MassBudget masses = MassBudget.of(0.06, 0.0505, winding);
      assertThat(masses.bareMassKg()).isCloseTo(0.06, within(1e-15));
      CoilBudget budget = masses.coilBudget(winding.coil().windingHeightM());
      assertThat(budget.remainderKg() + budget.coilMassKg()).isCloseTo(0.06, within(1e-15));
      // a 300 mm woofer's former is 0.8 to 3 g; the rule for an unknown coil is within a tenth
      assertThat(budget.leastRemainderKg())
          .isCloseTo(CoilBudget.leastRemainderForArea(0.0505), within(0.1 * 0.45 * 0.0505));
    }
    Winding heavy = catalogue.windings().get(catalogue.windings().size() - 1);
    assertThat(MassBudget.of(0.02, 0.0505, heavy).coilBudget(0.02).shortfall()).isPositive();
  }

  /** No cliff: the distance is 0 at a limit and grows from there in proportion. */
  @Test
  void fluxAndSteelAreDistances() {
    Winding winding = catalogue.windings().get(0);
    Range allowed = new Range(0.4, 1.2);
    assertThat(motor(winding, 0.4).fluxShortfall(allowed)).isZero();
    assertThat(motor(winding, 1.2).fluxShortfall(allowed)).isZero();
    assertThat(motor(winding, 1.32).fluxShortfall(allowed)).isCloseTo(0.1, within(1e-12));
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
    RoundWireCoil coil = catalogue.windings().get(0).coil();
    double air = InductanceEstimate.inAirH(coil);
    // 1.2 times the coil in air without a ring, 0.5 times with one, a fifth in hand of either
    assertThat(Ring.neededFor(0.97 * air, coil)).isEqualTo(Ring.NONE);
    assertThat(Ring.neededFor(0.95 * air, coil)).isEqualTo(Ring.PARTIAL);
    assertThat(Ring.neededFor(0.61 * air, coil)).isEqualTo(Ring.PARTIAL);
    assertThat(Ring.neededFor(0.59 * air, coil)).isEqualTo(Ring.WHOLE);
    assertThat(Ring.neededFor(0.41 * air, coil)).isEqualTo(Ring.WHOLE);
    assertThat(Ring.neededFor(0.39 * air, coil)).isEqualTo(Ring.DOUBTFUL);
  }
}
