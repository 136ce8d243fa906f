package nullplane.tolerance;

import java.util.List;

/**
 * What units do that fill windows evenly, drawn with chance that the windows were not found with.
 *
 * @param factor how much wider than the windows they were drawn (1)
 * @param units units drawn
 * @param share share of units good in every stack (1)
 * @param stackShares share of units good in each stack (1), in the spec's order
 */
public record WindowCheck(double factor, int units, double share, List<Double> stackShares) {
  /** Copies the list. */
  public WindowCheck {
    stackShares = List.copyOf(stackShares);
  }

  /** Returns the share in the stack where it is least (1). */
  public double leastStackShare() {
    return stackShares.stream().mapToDouble(Double::doubleValue).min().orElse(share);
  }
}
