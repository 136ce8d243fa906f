package nullplane.network;

import java.util.List;
import java.util.Optional;

/**
 * The passive parts of one stack with what they must stand.
 *
 * @param stack the stack's name
 * @param parts the parts, one for each place at most; empty if the stack needs none
 */
public record StackParts(String stack, List<RatedPart> parts) {
  /** Copies the list and checks that no place is taken twice. */
  public StackParts {
    parts = List.copyOf(parts);
    if (parts.stream().map(RatedPart::place).distinct().count() != parts.size()) {
      throw new IllegalArgumentException(
          "stack " + stack + " has two parts in one place; allowed: one");
    }
  }

  /** Returns the part in a place. */
  public Optional<RatedPart> at(PartPlace place) {
    return parts.stream().filter(part -> part.place() == place).findFirst();
  }
}
