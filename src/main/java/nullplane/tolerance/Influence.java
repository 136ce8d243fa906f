package nullplane.tolerance;

import java.util.List;

/**
 * How much one production variable matters to the largest deviation from the wanted level.
 *
 * @param variable the variable
 * @param stacks one entry per stack, in the spec's order
 */
public record Influence(ProductionVariable variable, List<InStack> stacks) {
  /** Copies the list. */
  public Influence {
    stacks = List.copyOf(stacks);
  }

  /**
   * Its influence in one stack.
   *
   * @param stack the stack's name
   * @param firstOrder share of the variance that it brings alone (1); may fall a little below 0 by
   *     the error of the estimate
   * @param total share of the variance that it brings in all, alone and with others (1)
   * @param deviationDb standard deviation that it brings in all, the root of the total share times
   *     the variance (dB)
   */
  public record InStack(String stack, double firstOrder, double total, double deviationDb) {}

  /** Returns the standard deviation that it brings in the stack where it matters most (dB). */
  public double largestDeviationDb() {
    return stacks.stream().mapToDouble(InStack::deviationDb).max().orElse(0);
  }
}
