package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import nullplane.driver.CoilBudget;
import nullplane.driver.SmallSignal;
import nullplane.driver.Woofer;
import nullplane.motor.MassBudget;
import nullplane.motor.MotorDesign;

/**
 * Everything that is known of one woofer on one spec.
 *
 * @param woofer the woofer
 * @param freeAir its small-signal set in free air
 * @param budget the coil it needs or has, and the mass that leaves
 * @param motor the coil and motor that realise it; absent for a woofer whose coil is not known
 * @param stacks one entry per stack, in the spec's order
 * @param grade the figure it is ordered by
 * @param parts the grade's terms: the objectives, worst stack counted
 * @param violations sentences that name each constraint broken and by how much; empty when feasible
 */
public record Assessment(
    Woofer woofer,
    SmallSignal freeAir,
    CoilBudget budget,
    Optional<MotorDesign> motor,
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

  /** Returns what the moving mass is made of, if the coil is known. */
  public Optional<MassBudget> masses() {
    return motor.map(
        m -> MassBudget.of(woofer.bareMassKg(), woofer.effectiveAreaM2(), m.winding()));
  }
}
