package nullplane.scoring;

import java.util.List;
import java.util.Optional;
import nullplane.network.OwnerKit;
import nullplane.network.StackNetwork;
import nullplane.network.StackParts;
import nullplane.network.SwapList;

/**
 * The parts of a whole family: what each stack needs, what is swapped when one becomes another,
 * what an owner keeps in the drawer, and what it costs to swap less.
 *
 * @param networks network of each stack, in the spec's order
 * @param stacks parts of each stack with their ratings, in the spec's order
 * @param swaps what is swapped, for each pair of stacks
 * @param kit every part with which each stack can be built
 * @param shared what sharing parts costs, for each pair of stacks; empty where it was not worked
 *     out, and for filters
 */
public record FamilyParts(
    List<StackNetwork> networks,
    List<StackParts> stacks,
    List<SwapList> swaps,
    OwnerKit kit,
    List<SharedParts> shared) {
  /** Copies the lists. */
  public FamilyParts {
    networks = List.copyOf(networks);
    stacks = List.copyOf(stacks);
    swaps = List.copyOf(swaps);
    shared = List.copyOf(shared);
  }

  /**
   * Returns the parts of a family without what sharing costs.
   *
   * @param spec the spec
   * @param assessment the woofer with its wirings and networks
   */
  public static FamilyParts of(DesignSpec spec, Assessment assessment) {
    return of(spec, assessment, List.of());
  }

  /**
   * Returns the parts of a family, with what sharing costs.
   *
   * @param scorer the scorer that assessed the woofer
   * @param assessment the woofer with its wirings and networks
   */
  public static FamilyParts of(SystemScorer scorer, Assessment assessment) {
    return of(scorer.spec(), assessment, scorer.sharedParts(assessment));
  }

  private static FamilyParts of(DesignSpec spec, Assessment assessment, List<SharedParts> shared) {
    List<StackParts> stacks =
        assessment.stacks().stream()
            .map(stack -> StackRatings.of(spec.amplifier(), stack))
            .toList();
    return new FamilyParts(
        assessment.stacks().stream().map(StackAssessment::network).toList(),
        stacks,
        SwapList.ofPairs(stacks),
        OwnerKit.of(stacks),
        shared);
  }

  /**
   * Returns the network of a stack.
   *
   * @param stack the stack's name
   * @throws IllegalArgumentException if there is no such stack
   */
  public StackNetwork network(String stack) {
    for (int s = 0; s < stacks.size(); s++) {
      if (stacks.get(s).stack().equals(stack)) {
        return networks.get(s);
      }
    }
    throw new IllegalArgumentException("no stack " + stack);
  }

  /** Returns what sharing costs between the stacks of a swap list, if it was worked out. */
  public Optional<SharedParts> shared(SwapList list) {
    return shared.stream()
        .filter(pair -> pair.from().equals(list.from()) && pair.to().equals(list.to()))
        .findFirst();
  }
}
