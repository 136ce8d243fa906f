package nullplane.tolerance;

import java.util.List;
import nullplane.units.Curve;

/**
 * What a simulated production run does in the stacks.
 *
 * @param units units simulated
 * @param share share of units that stay within what is permitted in every stack (1)
 * @param bandHz frequencies of the stacks' curves (Hz)
 * @param stacks one entry per stack, in the spec's order
 * @param bindingStack index of the stack with the lowest yield, the first of several
 * @param measured how much each measured quantity spreads
 */
public record ProductionYield(
    int units,
    double share,
    Curve bandHz,
    List<StackYield> stacks,
    int bindingStack,
    List<QuantitySpread> measured) {
  /** Copies the lists. */
  public ProductionYield {
    stacks = List.copyOf(stacks);
    measured = List.copyOf(measured);
  }

  /** Returns the yield of the stack that binds. */
  public StackYield binding() {
    return stacks.get(bindingStack);
  }
}
