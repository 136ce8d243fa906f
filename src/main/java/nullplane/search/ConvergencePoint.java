package nullplane.search;

import nullplane.units.Curve;

/**
 * How far a search was after a generation.
 *
 * @param generation the generation, counted from 1
 * @param evaluations candidates evaluated so far
 * @param restarts fresh populations so far, without the first
 * @param violation least violation found so far, 0 when something is feasible
 * @param hypervolume volume between the front and the problem's reference (product of the
 *     objectives' units)
 * @param bests least value of each objective on the front, each in its unit; what was stated for
 *     the least violating candidate while nothing is feasible
 * @param frontSize candidates kept as the front
 */
public record ConvergencePoint(
    long generation,
    long evaluations,
    int restarts,
    double violation,
    double hypervolume,
    Curve bests,
    int frontSize) {

  /** Returns the least cost by the priorities (dB), the last of the objectives of a family. */
  public double bestCostDb() {
    return bests.at(bests.size() - 1);
  }
}
