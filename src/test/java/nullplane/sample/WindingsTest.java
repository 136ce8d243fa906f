package nullplane.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import nullplane.driver.RoundWireCoil;
import nullplane.motor.Former;
import nullplane.motor.Insulation;
import nullplane.motor.StockWire;
import nullplane.motor.Winding;
import nullplane.units.ConductorMaterial;
import org.junit.jupiter.api.Test;

/**
 * Windings on a former of 38.3 mm outside in a gap of 8 mm; wire and pitch in micrometres from the
 * table of stock wires. Re goes with (38.3 mm + layers x pitch) x layers x turns/wire^2, the travel
 * is (turns x pitch - 8 mm)/2.
 */
class WindingsTest {
  private static StockWire wire(int um) {
    return StockWire.all().stream().filter(w -> w.bareM() == um / 1e6).findFirst().orElseThrow();
  }

  private static Winding winding(int um, Insulation insulation, int layers, int turns) {
    return Winding.of(
        Former.ofNominal(0.038),
        wire(um),
        insulation,
        ConductorMaterial.COPPER,
        layers,
        turns,
        0.008);
  }

  private static long um(double metres) {
    return Math.round(metres * 1e6);
  }

  private static int turns(RoundWireCoil coil) {
    return (int) Math.round(coil.windingHeightM() / coil.insulatedDiameterM());
  }

  private static List<String> found(Winding from) {
    List<String> found = new ArrayList<>();
    for (Windings.Candidate candidate : Windings.near(from)) {
      RoundWireCoil coil = candidate.rewound().to().coil();
      found.add(
          um(coil.bareDiameterM())
              + "/"
              + um(coil.insulatedDiameterM())
              + " "
              + coil.layers()
              + "x"
              + turns(coil));
    }
    return found;
  }

  private static void add(List<String> all, String wire, int layers, int least, int most) {
    for (int turns = least; turns <= most; turns++) {
      all.add(wire + " " + layers + "x" + turns);
    }
  }

  /**
   * Two layers of 70 turns of 0.28 mm, travel 6.92 mm: 15 % are 10 turns either way, and 2 % less
   * travel is a coil of 21.563 mm, so at least 77, 73, 70, 65 and 62 turns of 0.281, 0.297, 0.312,
   * 0.334 and 0.349 mm. Re times 1.35 or over 1.35 leaves none of 0.25 mm, where 77 turns are 1.38,
   * and 66 or more of 0.315 mm, where 65 are 0.7351 and 66 are 0.7464. Four layers are 1.40 or
   * more.
   */
  @Test
  void twoWiresEitherWayThatKeepTravelAndResistance() {
    List<String> expected = new ArrayList<>();
    add(expected, "265/297", 2, 73, 80);
    add(expected, "280/312", 2, 71, 80);
    add(expected, "300/334", 2, 65, 80);
    add(expected, "315/349", 2, 66, 80);
    List<String> found = found(winding(280, Insulation.GRADE_1, 2, 70));
    assertThat(found).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(expected);
  }

  /** One turn more costs a step and what Re changes; each wire away a step, other layers three. */
  @Test
  void costIsTheChangeOfResistanceAndWhatElseIsOther() {
    Winding from = winding(280, Insulation.GRADE_1, 2, 70);
    double step = Math.log(1.05);
    cost(from, 280, 2, 72, 1 + Math.log(72 / 70.0) / step);
    double thinner = Math.log(38.894 / 38.924 * 75 / 70 * Math.pow(0.28 / 0.265, 2));
    cost(from, 265, 2, 75, 1 + thinner / step + 1);
    double thicker = -Math.log(38.998 / 38.924 * 70 / 70 * Math.pow(0.28 / 0.315, 2));
    cost(from, 315, 2, 70, 1 + thicker / step + 2);
    // six layers of 0.315 mm for four of 0.28 mm
    double layers =
        Math.log((38.3 + 6 * 0.349) / (38.3 + 4 * 0.312) * 6 / 4 * Math.pow(0.28 / 0.315, 2));
    cost(winding(280, Insulation.GRADE_1, 4, 70), 315, 6, 70, 1 + layers / step + 2 + 3);
  }

  private static void cost(Winding from, int wire, int layers, int turns, double expected) {
    Windings.Candidate one =
        Windings.near(from).stream()
            .filter(
                c ->
                    um(c.rewound().to().coil().bareDiameterM()) == wire
                        && c.rewound().to().coil().layers() == layers
                        && turns(c.rewound().to().coil()) == turns)
            .findFirst()
            .orElseThrow();
    assertThat(one.cost()).isCloseTo(expected, within(1e-9));
    assertThat(one.rewound().from()).isEqualTo(from);
    assertThat(one.rewound().to().gapHeightM()).isEqualTo(from.gapHeightM());
  }

  @Test
  void cheapestComesFirst() {
    assertThat(Windings.near(winding(280, Insulation.GRADE_1, 2, 70)))
        .isSortedAccordingTo(Comparator.comparingDouble(Windings.Candidate::cost));
  }

  /** Six layers for four, and two: 2/4 x (0.28/0.25)^2 x 1.15 is 0.72, less than 1/1.35. */
  @Test
  void layersGoByTwo() {
    TreeSet<Integer> layers = new TreeSet<>();
    for (Windings.Candidate one : Windings.near(winding(280, Insulation.GRADE_1, 4, 70))) {
      layers.add(one.rewound().to().coil().layers());
    }
    assertThat(layers).containsExactly(4, 6);
    // 4/6 x (0.315/0.28)^2 is 0.84, and 8/6 x (0.315/0.355)^2 is 1.05
    layers.clear();
    for (Windings.Candidate one : Windings.near(winding(315, Insulation.GRADE_1, 6, 66))) {
      layers.add(one.rewound().to().coil().layers());
    }
    assertThat(layers).containsExactly(4, 6, 8);
  }

  /** Neighbours keep the grade of the insulation; the table's ends have neighbours on one side. */
  @Test
  void neighboursComeFromTheTableInTheSameGrade() {
    assertThat(wires(winding(280, Insulation.GRADE_2, 2, 70)))
        .containsExactly("265/314", "280/329", "300/352", "315/367");
    // travel of 4.1 mm, so 138 turns of 0.117 mm and as tall a coil of the others
    assertThat(wires(winding(100, Insulation.GRADE_1, 2, 138)))
        .containsExactly("100/117", "106/123", "112/130");
    assertThat(wires(winding(600, Insulation.GRADE_1, 2, 30)))
        .containsExactly("560/606", "600/649");
    // a wire that is not in the table has no neighbours
    Winding from = winding(280, Insulation.GRADE_1, 2, 70);
    Winding odd =
        new Winding(
            from.former(),
            new RoundWireCoil(2, 0.03894, 70 * 0.32e-3, 0.287e-3, 0.32e-3, from.coil().material()),
            0.008);
    assertThat(wires(odd)).containsExactly("287/320");
  }

  private static TreeSet<String> wires(Winding from) {
    TreeSet<String> wires = new TreeSet<>();
    for (String one : found(from)) {
      wires.add(one.substring(0, one.indexOf(' ')));
    }
    return wires;
  }

  /** 15 % of five turns is less than one; one is tried all the same. */
  @Test
  void fewTurnsMayStillChangeByOne() {
    Winding few =
        Winding.of(
            Former.ofNominal(0.038),
            wire(280),
            Insulation.GRADE_1,
            ConductorMaterial.COPPER,
            2,
            5,
            0.001);
    assertThat(found(few)).contains("280/312 2x6").noneMatch(one -> one.endsWith("x7"));
  }
}
