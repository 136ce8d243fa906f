package nullplane.search;

import nullplane.units.Curve;

/**
 * How good a candidate is when several objectives count: the objectives, all to be made small, and
 * the distance to the feasible set.
 *
 * @param violation distance to the feasible set (unit of the problem's choosing), 0 when feasible
 * @param objectives the objectives in the problem's order, each in its own unit; those of an
 *     infeasible candidate are never compared
 */
public record Merit(double violation, Curve objectives) implements Comparable<Merit> {
  /**
   * Checks that all numbers are finite, the violation is not negative and an objective is there.
   */
  public Merit {
    if (!(violation >= 0) || violation == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException(
          "violation " + violation + "; allowed: 0 or more, and finite");
    }
    if (objectives.size() == 0) {
      throw new IllegalArgumentException("a merit needs at least one objective");
    }
    for (int i = 0; i < objectives.size(); i++) {
      if (!Double.isFinite(objectives.at(i))) {
        throw new IllegalArgumentException(
            "objective " + i + " is " + objectives.at(i) + "; allowed: finite numbers");
      }
    }
  }

  /**
   * Returns the merit of a feasible candidate.
   *
   * @param objectives the objectives, each in its own unit
   */
  public static Merit feasible(double... objectives) {
    return new Merit(0, Curve.of(objectives));
  }

  /**
   * Returns the merit of a candidate whose objectives were not computed because it is infeasible.
   *
   * @param violation distance to the feasible set, above 0
   * @param objectives how many objectives there are
   * @throws IllegalArgumentException if the violation is not above 0
   */
  public static Merit infeasible(double violation, int objectives) {
    if (!(violation > 0)) {
      throw new IllegalArgumentException(
          "violation " + violation + " of an infeasible candidate; allowed: above 0");
    }
    return new Merit(violation, Curve.of(new double[objectives]));
  }

  /** Returns whether every constraint is met. */
  public boolean isFeasible() {
    return violation == 0;
  }

  /**
   * Compares by constrained domination: a feasible candidate dominates an infeasible one, of two
   * infeasible ones the one that violates less dominates, of two feasible ones the one that is
   * nowhere worse and somewhere better.
   *
   * <p>Source: K. Deb, A. Pratap, S. Agarwal, T. Meyarivan, A fast and elitist multiobjective
   * genetic algorithm: NSGA-II, IEEE Trans. Evol. Comput. 6 (2002) 182, definition 1 of section VI.
   *
   * @return 1 if this one dominates, -1 if the other one does, 0 if neither
   */
  public int dominance(Merit other) {
    if (violation != other.violation) {
      return violation < other.violation ? 1 : -1;
    }
    if (violation > 0) {
      return 0;
    }
    boolean better = false;
    boolean worse = false;
    for (int i = 0; i < objectives.size(); i++) {
      double mine = objectives.at(i);
      double theirs = other.objectives.at(i);
      better |= mine < theirs;
      worse |= mine > theirs;
      if (better && worse) {
        return 0;
      }
    }
    return better ? 1 : worse ? -1 : 0;
  }

  /** Orders by violation, then by the objectives in turn; a fixed order, not one of preference. */
  @Override
  public int compareTo(Merit other) {
    int order = Double.compare(violation, other.violation);
    for (int i = 0; order == 0 && i < objectives.size() && i < other.objectives.size(); i++) {
      order = Double.compare(objectives.at(i), other.objectives.at(i));
    }
    return order != 0 ? order : Integer.compare(objectives.size(), other.objectives.size());
  }
}
