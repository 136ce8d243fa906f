package nullplane.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an owner does to the network when one stack becomes another: a line for each place that has
 * a part before or after, in the order of {@link PartPlace}.
 *
 * @param from name of the stack before
 * @param to name of the stack after
 * @param swaps the lines
 */
public record SwapList(String from, String to, List<Swap> swaps) {
  /** Copies the list. */
  public SwapList {
    swaps = List.copyOf(swaps);
  }

  /**
   * Returns the list from one stack to another.
   *
   * @param from the stack before
   * @param to the stack after
   */
  public static SwapList between(StackParts from, StackParts to) {
    List<Swap> swaps = new ArrayList<>();
    for (PartPlace place : PartPlace.values()) {
      Optional<RatedPart> old = from.at(place);
      Optional<RatedPart> fresh = to.at(place);
      if (old.isPresent() && fresh.isPresent()) {
        swaps.add(both(old.get(), fresh.get()));
      } else {
        old.ifPresent(part -> swaps.add(new Swap.Goes(part)));
        fresh.ifPresent(part -> swaps.add(new Swap.Comes(part)));
      }
    }
    return new SwapList(from.stack(), to.stack(), swaps);
  }

  private static Swap both(RatedPart old, RatedPart fresh) {
    return old.part().equals(fresh.part())
        ? new Swap.Stays(
            new RatedPart(old.placed(), old.rating().orMore(fresh.rating(), old.part().kind())))
        : new Swap.Changes(old, fresh);
  }

  /**
   * Returns the list of each pair of stacks, from the earlier to the later one.
   *
   * @param stacks the stacks in the order an owner grows through them
   */
  public static List<SwapList> ofPairs(List<StackParts> stacks) {
    List<SwapList> lists = new ArrayList<>();
    for (int i = 0; i < stacks.size(); i++) {
      for (int j = i + 1; j < stacks.size(); j++) {
        lists.add(between(stacks.get(i), stacks.get(j)));
      }
    }
    return List.copyOf(lists);
  }

  /** Returns the parts to buy: those that come, or take another's place. */
  public List<RatedPart> toBuy() {
    List<RatedPart> parts = new ArrayList<>();
    for (Swap swap : swaps) {
      if (swap instanceof Swap.Comes comes) {
        parts.add(comes.part());
      } else if (swap instanceof Swap.Changes changes) {
        parts.add(changes.fresh());
      }
    }
    return List.copyOf(parts);
  }

  /** Returns the parts that stay, with the ratings that serve both stacks. */
  public List<RatedPart> kept() {
    List<RatedPart> parts = new ArrayList<>();
    for (Swap swap : swaps) {
      if (swap instanceof Swap.Stays stays) {
        parts.add(stays.part());
      }
    }
    return List.copyOf(parts);
  }
}
