package nullplane.scoring;

/**
 * The single figure a search orders woofers by: feasible ones first and by cost, infeasible ones by
 * their distance to the feasible set. Smaller is better.
 *
 * @param violation distance to the feasible set (1), 0 when feasible
 * @param costDb sum of the weighted objectives (dB)
 */
public record Grade(double violation, double costDb) implements Comparable<Grade> {
  /** Checks that both are numbers and the violation is not negative. */
  public Grade {
    if (!(violation >= 0) || Double.isNaN(costDb)) {
      throw new IllegalArgumentException("grade of violation " + violation + ", cost " + costDb);
    }
  }

  /** Returns whether every constraint is met. */
  public boolean feasible() {
    return violation == 0;
  }

  @Override
  public int compareTo(Grade other) {
    int byViolation = Double.compare(violation, other.violation);
    return byViolation != 0 ? byViolation : Double.compare(costDb, other.costDb);
  }
}
