package nullplane.search;

import java.util.List;
import nullplane.units.Curve;

/** What is searched when several objectives count: genes in, merits out. */
public interface ParetoProblem {
  /** Returns the number of genes, 1 or more. */
  int genes();

  /**
   * Returns how many values a gene has. A gene that counts holds value i of n as the share (i +
   * 0.5) / n; see {@link #choice}.
   *
   * @param gene which gene, counted from 0
   * @return 0 for a gene that may take any share from 0 to 1; otherwise the number of values, 1 or
   *     more
   */
  default int choices(int gene) {
    return 0;
  }

  /** Returns the number of objectives, 1 or more. All are made small. */
  int objectives();

  /**
   * Returns the worst values still worth having, one per objective, each in its objective's unit.
   * Progress is the volume between the front and this point, so a candidate beyond it in any
   * objective does not count as progress. It does not steer what is selected.
   */
  Curve reference();

  /**
   * Returns a text that differs whenever the same genes may get other merits. A kept state is only
   * resumed for the same digest.
   */
  String digest();

  /**
   * Evaluates candidates; on as many threads as it likes, for a merit must depend on its candidate
   * alone.
   *
   * @param batch genes of each candidate, shares from 0 to 1
   * @return their merits, in the same order
   */
  List<Merit> evaluate(List<double[]> batch);

  /**
   * Returns which of the values a share stands for.
   *
   * @param share the gene, 0 to 1
   * @param choices number of values, 1 or more
   * @return the value, 0 to choices - 1
   */
  static int choice(double share, int choices) {
    return Math.min(choices - 1, (int) (share * choices));
  }

  /**
   * Returns the share that stands for a value.
   *
   * @param choice the value, 0 to choices - 1
   * @param choices number of values, 1 or more
   * @return the middle of the value's part of 0 to 1
   */
  static double share(int choice, int choices) {
    return (choice + 0.5) / choices;
  }
}
