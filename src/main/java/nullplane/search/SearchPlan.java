package nullplane.search;

import java.util.ArrayList;
import java.util.List;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.motor.WindingCatalogue;
import nullplane.scoring.WooferBrief;
import nullplane.units.Air;

/**
 * What is evolved: fs, Qts and bare moving mass, each as a share of its range, and the winding, by
 * two genes: the class of travel, and the place within the class. Everything else in a woofer
 * follows from these and the brief.
 *
 * @param brief what the search may choose, and what is fixed
 * @param windings the windings to choose from, one or more
 * @param air the air the figures hold in
 */
public record SearchPlan(WooferBrief brief, WindingCatalogue windings, Air air) {
  /** Number of genes of a woofer; those of the networks follow. */
  static final int GENES = 5;

  /** How many classes of travel either way count as near: 1 mm. */
  private static final int NEAR = 4;

  private static final int TRAVEL = 3;
  private static final int PLACE = 4;

  /** Checks that there is a winding. */
  public SearchPlan {
    if (windings.windings().isEmpty()) {
      throw new IllegalArgumentException("a search needs at least one winding");
    }
  }

  /**
   * Returns the woofer of a set of genes.
   *
   * @param genes shares of the ranges (1), 0 to 1, in the order fs, Qts, bare moving mass, class of
   *     travel, place in the class
   */
  Woofer woofer(double[] genes) {
    return brief.woofer(
        "candidate",
        brief.resonanceHz().at(genes[0]),
        brief.totalQ().at(genes[1]),
        brief.bareMassKg().at(genes[2]),
        winding(genes),
        air);
  }

  /** Returns the winding of a set of genes. */
  Winding winding(double[] genes) {
    List<Winding> travelClass = windings.ofClass(travelClass(genes));
    return travelClass.get(index(genes[PLACE], travelClass.size()));
  }

  /**
   * Returns how many values a gene has, 0 for one that may take any share.
   *
   * @param gene which gene
   */
  int choices(int gene) {
    return gene == TRAVEL ? windings.classes() : 0;
  }

  /** Returns whether a gene has any say. */
  boolean isFree(int gene) {
    return switch (gene) {
      case 0 -> !brief.resonanceHz().isPinned();
      case 1 -> !brief.totalQ().isPinned();
      case 2 -> !brief.bareMassKg().isPinned();
      case TRAVEL -> windings.classes() > 1;
      case PLACE -> windings.windings().size() > windings.classes();
      default -> throw new IllegalArgumentException("gene " + gene);
    };
  }

  /**
   * Returns a gene moved by a step, kept within 0 to 1. A gene that counts moves by one place at
   * least, to the middle of its place.
   *
   * @param genes the genes
   * @param gene which of them
   * @param step how far, either way (1)
   */
  double moved(double[] genes, int gene, double step) {
    double moved = Math.min(1, Math.max(0, genes[gene] + step));
    if (gene < TRAVEL) {
      return moved;
    }
    int count = gene == TRAVEL ? windings.classes() : windings.ofClass(travelClass(genes)).size();
    int from = index(genes[gene], count);
    int to = index(moved, count);
    if (to == from) {
      to = Math.min(count - 1, Math.max(0, from + (step > 0 ? 1 : -1)));
    }
    return middle(to, count);
  }

  /**
   * Returns the same woofer with every winding of about the same travel, within {@link #NEAR}
   * classes.
   *
   * @param genes the genes to keep in all else
   */
  List<double[]> rewound(double[] genes) {
    List<double[]> all = new ArrayList<>();
    int here = travelClass(genes);
    int classes = windings.classes();
    for (int c = Math.max(0, here - NEAR); c <= Math.min(classes - 1, here + NEAR); c++) {
      int count = windings.ofClass(c).size();
      for (int i = 0; i < count; i++) {
        double[] other = genes.clone();
        other[TRAVEL] = middle(c, classes);
        other[PLACE] = middle(i, count);
        all.add(other);
      }
    }
    return all;
  }

  private int travelClass(double[] genes) {
    return index(genes[TRAVEL], windings.classes());
  }

  private static int index(double share, int count) {
    return Math.min(count - 1, (int) (share * count));
  }

  private static double middle(int index, int count) {
    return (index + 0.5) / count;
  }
}
