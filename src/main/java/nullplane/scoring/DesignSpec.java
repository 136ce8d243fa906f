package nullplane.scoring;

import java.util.List;

/**
 * A panel system and what is wanted from it: the input of the whole program, units removed.
 *
 * @param title what people call the system
 * @param woofer what the search may choose
 * @param stacks the members of the family, one or more
 * @param listening where the listener is
 * @param target what every stack is held to
 * @param amplifier what drives a stack
 */
public record DesignSpec(
    String title,
    WooferBrief woofer,
    List<StackBrief> stacks,
    Listening listening,
    Target target,
    Amplifier amplifier) {
  /** Checks that there is a stack. */
  public DesignSpec {
    stacks = List.copyOf(stacks);
    if (stacks.isEmpty()) {
      throw new IllegalArgumentException("a spec needs at least one stack");
    }
  }

  /**
   * Returns the same spec for woofers of another piston size in the same places.
   *
   * @param radiusM radius of the radiating piston (m)
   */
  public DesignSpec withPistonRadius(double radiusM) {
    return new DesignSpec(
        title,
        woofer.withEffectiveDiameter(2 * radiusM),
        stacks.stream().map(stack -> stack.withPistonRadius(radiusM)).toList(),
        listening,
        target,
        amplifier);
  }
}
