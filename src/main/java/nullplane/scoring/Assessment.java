package nullplane.scoring;

import java.util.List;
import nullplane.driver.CoilBudget;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;

/**
 * Everything that is known of one woofer on one spec.
 *
 * @param woofer the woofer
 * @param freeAir its small-signal set in free air
 * @param budget the coil it needs and the mass that leaves
 * @param stacks one entry per stack, in the spec's order
 * @param grade the figure it is ordered by
 * @param parts the grade's terms: the objectives, worst stack counted
 * @param violations sentences that name each constraint broken and by how much; empty when feasible
 */
public record Assessment(
    Woofer woofer,
    SmallSignal freeAir,
    CoilBudget budget,
    List<StackAssessment> stacks,
    Grade grade,
    List<GradePart> parts,
    List<String> violations) {
  /** Copies the lists. */
  public Assessment {
    stacks = List.copyOf(stacks);
    parts = List.copyOf(parts);
    violations = List.copyOf(violations);
  }
}
