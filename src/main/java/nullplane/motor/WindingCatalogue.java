package nullplane.motor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import nullplane.units.ConductorMaterial;
import nullplane.units.Range;

/**
 * Every winding that a brief admits, in one order that never changes: by classes of travel, and
 * within a class by the strength a motor has per squared flux density. So a step along the classes
 * changes the travel a little, and a step within one changes the flux a motor needs a little.
 *
 * @param windings the windings, in order
 * @param firstOfClass index of the first winding of each class, ascending, then the number of all
 */
public record WindingCatalogue(List<Winding> windings, List<Integer> firstOfClass) {
  /** Width of a class of travel (m): less than the spread of coil rest positions in production. */
  public static final double CLASS_WIDTH_M = 0.25e-3;

  /** Lowest and tallest coil that is wound for a woofer (m). Common practice. */
  public static final Range WINDING_HEIGHT_M = new Range(6e-3, 80e-3);

  /** Relative deviation in Re and travel within which a woofer has a winding's (1). */
  private static final double SAME = 1e-5;

  private static final Comparator<Winding> ORDER =
      Comparator.<Winding>comparingInt(WindingCatalogue::travelClass)
          .thenComparingDouble(Winding::strengthPerSquaredTesla)
          .thenComparingDouble(Winding::travelM)
          .thenComparingDouble(Winding::resistanceOhm);

  /** Copies the lists. */
  public WindingCatalogue {
    windings = List.copyOf(windings);
    firstOfClass = List.copyOf(firstOfClass);
  }

  /**
   * Returns every winding whose resistance and travel a brief admits; none if there is none.
   *
   * @param brief what may be used
   * @param travelM one-way travel asked for (m); a single value is widened as Re is
   */
  public static WindingCatalogue of(CoilBrief brief, Range travelM) {
    Range resistance = CoilBrief.windowOf(brief.resistanceOhm());
    Range travel = CoilBrief.windowOf(travelM);
    List<Winding> found = new ArrayList<>();
    forEach(
        brief,
        resistance,
        winding -> {
          if (travel.contains(winding.travelM())) {
            found.add(winding);
          }
        });
    found.sort(ORDER);
    List<Integer> firsts = new ArrayList<>();
    int last = -1;
    for (int i = 0; i < found.size(); i++) {
      int travelClass = travelClass(found.get(i));
      if (travelClass != last) {
        firsts.add(i);
        last = travelClass;
      }
    }
    firsts.add(found.size());
    return new WindingCatalogue(found, firsts);
  }

  /** Returns the number of classes of travel that hold a winding. */
  public int classes() {
    return firstOfClass.size() - 1;
  }

  /**
   * Returns the windings of a class, in order.
   *
   * @param index the class, from 0
   */
  public List<Winding> ofClass(int index) {
    return windings.subList(firstOfClass.get(index), firstOfClass.get(index + 1));
  }

  /**
   * Returns the winding that a woofer of this resistance and travel has, if one agrees in both to
   * five digits.
   *
   * @param resistanceOhm Re (ohm)
   * @param travelM travel, one way (m)
   */
  public Optional<Winding> matching(double resistanceOhm, double travelM) {
    Optional<Winding> best = Optional.empty();
    double least = Double.POSITIVE_INFINITY;
    int last = (int) Math.floor(travelM * (1 + 2 * SAME) / CLASS_WIDTH_M);
    for (int c = classAtOrAbove((int) Math.floor(travelM * (1 - 2 * SAME) / CLASS_WIDTH_M));
        c < classes() && travelClass(windings.get(firstOfClass.get(c))) <= last;
        c++) {
      for (Winding winding : ofClass(c)) {
        double deviation =
            Math.max(
                Math.abs(winding.travelM() / travelM - 1),
                Math.abs(winding.resistanceOhm() / resistanceOhm - 1));
        if (deviation <= SAME && deviation < least) {
          best = Optional.of(winding);
          least = deviation;
        }
      }
    }
    return best;
  }

  private int classAtOrAbove(int travelClass) {
    int low = 0;
    int high = classes();
    while (low < high) {
      int middle = (low + high) / 2;
      if (travelClass(windings.get(firstOfClass.get(middle))) < travelClass) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /**
   * What stands nearest to a brief that admits no winding.
   *
   * @param resistanceOhm nearest Re of a winding with a travel that is allowed (ohm), if any
   * @param travelM nearest travel of a winding with a resistance that is allowed (m), if any
   */
  public record Nearest(OptionalDouble resistanceOhm, OptionalDouble travelM) {}

  /**
   * Returns what stands nearest to a brief, each figure with the other limit kept.
   *
   * @param brief what may be used
   * @param travelM one-way travel asked for (m)
   */
  public static Nearest nearest(CoilBrief brief, Range travelM) {
    Range resistance = CoilBrief.windowOf(brief.resistanceOhm());
    Range travel = CoilBrief.windowOf(travelM);
    double[] nearestOhm = {Double.NaN};
    double[] nearestM = {Double.NaN};
    forEach(
        brief,
        new Range(0, Double.MAX_VALUE),
        winding -> {
          if (travel.contains(winding.travelM())) {
            nearestOhm[0] = nearer(nearestOhm[0], winding.resistanceOhm(), resistance);
          }
          if (resistance.contains(winding.resistanceOhm())) {
            nearestM[0] = nearer(nearestM[0], winding.travelM(), travel);
          }
        });
    return new Nearest(ifAny(nearestOhm[0]), ifAny(nearestM[0]));
  }

  private static OptionalDouble ifAny(double value) {
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private static double nearer(double known, double trial, Range wanted) {
    return Double.isNaN(known) || distance(trial, wanted) < distance(known, wanted) ? trial : known;
  }

  private static double distance(double value, Range wanted) {
    return Math.max(0, Math.max(wanted.lower() - value, value - wanted.upper()));
  }

  /** Visits every winding of a resistance, whatever its travel. */
  private static void forEach(CoilBrief brief, Range resistance, Consumer<Winding> visitor) {
    for (double formerM : brief.formersM()) {
      Former former = Former.ofNominal(formerM);
      for (ConductorMaterial material : brief.wires()) {
        for (int layers : brief.layers()) {
          for (StockWire wire : StockWire.all()) {
            forEachTurns(brief, former, material, layers, wire, resistance, visitor);
          }
        }
      }
    }
  }

  private static void forEachTurns(
      CoilBrief brief,
      Former former,
      ConductorMaterial material,
      int layers,
      StockWire wire,
      Range resistance,
      Consumer<Winding> visitor) {
    double pitch = wire.insulatedM(Insulation.GRADE_1);
    int fewest = (int) Math.ceil(WINDING_HEIGHT_M.lower() / pitch);
    int most = (int) Math.floor(WINDING_HEIGHT_M.upper() / pitch);
    for (int turns = fewest; turns <= most; turns++) {
      for (double gapM : brief.gapHeightsM()) {
        Winding winding =
            Winding.of(former, wire, Insulation.GRADE_1, material, layers, turns, gapM);
        if (winding.resistanceOhm() > resistance.upper()) {
          return;
        }
        if (resistance.contains(winding.resistanceOhm()) && winding.travelM() > 0) {
          visitor.accept(winding);
        }
      }
    }
  }

  private static int travelClass(Winding winding) {
    return (int) Math.floor(winding.travelM() / CLASS_WIDTH_M);
  }
}
