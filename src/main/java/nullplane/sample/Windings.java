package nullplane.sample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import nullplane.driver.RoundWireCoil;
import nullplane.motor.Insulation;
import nullplane.motor.StockWire;
import nullplane.motor.Winding;

/**
 * Windings near a given one on the same former and in a gap of the same height: up to two stock
 * wires thinner or thicker, two layers more or less, turns within 15 %, next to no travel lost.
 */
final class Windings {
  private static final double MOST_TURNS = 0.15;
  private static final int WIRES_AWAY = 2;
  private static final int LAYERS_AWAY = 2;

  /** Re of a candidate over that of the given winding, most and least (1). */
  private static final double MOST_RESISTANCE = 1.35;

  /** Share of the travel that a candidate may lose; less asks for no other gap (1). */
  private static final double MOST_TRAVEL_LOST = 0.02;

  /** What another number of layers costs beside the change of Re: the gap widens (usual steps). */
  private static final double PER_LAYERS = 3;

  /** What another wire costs beside the change of Re (usual steps). */
  private static final double PER_WIRE = 1;

  private Windings() {}

  /**
   * A winding that may replace the given one.
   *
   * @param rewound both
   * @param cost what the change costs (usual steps)
   */
  record Candidate(Change.Rewound rewound, double cost) {}

  /** Returns the windings near a given one, the cheapest change first. */
  static List<Candidate> near(Winding winding) {
    RoundWireCoil coil = winding.coil();
    List<Candidate> candidates = new ArrayList<>();
    int perLayer = (int) Math.round(coil.windingHeightM() / coil.insulatedDiameterM());
    int reach = Math.max(1, (int) Math.floor(MOST_TURNS * perLayer));
    for (Wire wire : wires(coil)) {
      for (int l = -LAYERS_AWAY; l <= LAYERS_AWAY; l += LAYERS_AWAY) {
        int layers = coil.layers() + l;
        // a thicker wire of as many turns is a taller coil: turns go with the height
        for (int turns = perLayer - reach; turns <= perLayer + reach; turns++) {
          boolean same = l == 0 && wire.away() == 0 && turns == perLayer;
          if (layers >= 1 && turns >= 1 && !same) {
            add(candidates, winding, wire, layers, turns);
          }
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(Candidate::cost));
    return candidates;
  }

  private record Wire(double bareM, double pitchM, int away) {}

  private static List<Wire> wires(RoundWireCoil coil) {
    List<Wire> wires = new ArrayList<>();
    wires.add(new Wire(coil.bareDiameterM(), coil.insulatedDiameterM(), 0));
    List<StockWire> stock = StockWire.all();
    for (int i = 0; i < stock.size(); i++) {
      if (Math.abs(stock.get(i).bareM() - coil.bareDiameterM()) > 1e-7) {
        continue;
      }
      Insulation insulation =
          Math.abs(stock.get(i).gradeOneM() - coil.insulatedDiameterM())
                  < Math.abs(stock.get(i).gradeTwoM() - coil.insulatedDiameterM())
              ? Insulation.GRADE_1
              : Insulation.GRADE_2;
      for (int j = i - WIRES_AWAY; j <= i + WIRES_AWAY; j++) {
        if (j != i && j >= 0 && j < stock.size()) {
          StockWire wire = stock.get(j);
          wires.add(new Wire(wire.bareM(), wire.insulatedM(insulation), Math.abs(j - i)));
        }
      }
    }
    return wires;
  }

  private static void add(
      List<Candidate> candidates, Winding from, Wire wire, int layers, int turns) {
    double outside = from.former().outsideDiameterM();
    Winding to =
        new Winding(
            from.former(),
            new RoundWireCoil(
                layers,
                outside + layers * wire.pitchM(),
                turns * wire.pitchM(),
                wire.bareM(),
                wire.pitchM(),
                from.coil().material()),
            from.gapHeightM());
    Change.Rewound rewound = new Change.Rewound(from, to);
    double ratio = rewound.resistanceRatio();
    boolean travels = to.overhung() && to.travelM() >= (1 - MOST_TRAVEL_LOST) * from.travelM();
    if (travels && ratio < MOST_RESISTANCE && ratio > 1 / MOST_RESISTANCE) {
      boolean otherLayers = layers != from.coil().layers();
      candidates.add(
          new Candidate(
              rewound,
              1
                  + Math.abs(Math.log(ratio)) / Lever.WINDING.step()
                  + PER_WIRE * wire.away()
                  + (otherLayers ? PER_LAYERS : 0)));
    }
  }
}
