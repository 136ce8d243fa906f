package nullplane.network;

import java.util.ArrayList;
import java.util.List;

/**
 * Every part with which an owner builds each stack of a family, one at a time: what is the same in
 * two stacks is bought once, rated for both.
 *
 * @param items the parts, in the order of {@link PartPlace}, then of first use
 */
public record OwnerKit(List<Item> items) {
  /** Copies the list. */
  public OwnerKit {
    items = List.copyOf(items);
  }

  /**
   * A part of the kit.
   *
   * @param part the part, with the rating that serves all its stacks
   * @param stacks names of the stacks that use it
   */
  public record Item(RatedPart part, List<String> stacks) {
    /** Copies the list. */
    public Item {
      stacks = List.copyOf(stacks);
    }
  }

  /**
   * Returns the kit of a family.
   *
   * @param stacks the stacks in the order an owner grows through them
   */
  public static OwnerKit of(List<StackParts> stacks) {
    List<Item> items = new ArrayList<>();
    for (PartPlace place : PartPlace.values()) {
      List<Item> here = new ArrayList<>();
      for (StackParts stack : stacks) {
        stack.at(place).ifPresent(part -> add(here, part, stack.stack()));
      }
      items.addAll(here);
    }
    return new OwnerKit(items);
  }

  private static void add(List<Item> items, RatedPart part, String stack) {
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      if (item.part.part().equals(part.part())) {
        List<String> stacks = new ArrayList<>(item.stacks);
        stacks.add(stack);
        PartRating rating = item.part.rating().orMore(part.rating(), part.part().kind());
        items.set(i, new Item(new RatedPart(part.placed(), rating), stacks));
        return;
      }
    }
    items.add(new Item(part, List.of(stack)));
  }
}
