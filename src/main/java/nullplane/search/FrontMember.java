package nullplane.search;

import java.util.List;
import java.util.OptionalInt;
import nullplane.driver.Woofer;
import nullplane.motor.Winding;
import nullplane.network.StackNetwork;
import nullplane.scoring.FamilyScore;
import nullplane.scoring.Wiring;

/**
 * One of the best compromises that a search found.
 *
 * @param woofer the woofer
 * @param winding its winding
 * @param wirings wiring of each stack, in the spec's order
 * @param networks network of each stack, in the spec's order
 * @param score what it is worth in each objective
 * @param corridorYield share of a production run that stays in the corridor in every stack without
 *     windows (1)
 * @param rank its rank from 1 if it is one of the ranked woofers
 */
public record FrontMember(
    Woofer woofer,
    Winding winding,
    List<Wiring> wirings,
    List<StackNetwork> networks,
    FamilyScore score,
    double corridorYield,
    OptionalInt rank) {
  /** Copies the lists. */
  public FrontMember {
    wirings = List.copyOf(wirings);
    networks = List.copyOf(networks);
  }

  /** Returns the same member with its yield. */
  FrontMember withCorridorYield(double share) {
    return new FrontMember(woofer, winding, wirings, networks, score, share, rank);
  }
}
