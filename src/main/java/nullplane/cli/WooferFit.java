package nullplane.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import nullplane.driver.Woofer;
import nullplane.faults.InputFault;
import nullplane.faults.InvalidInputException;
import nullplane.judging.JudgingOutcome.Misfit;
import nullplane.scoring.DesignSpec;
import nullplane.scoring.StackBrief;
import nullplane.units.FiniteText;

/** Whether given woofers can be put on a spec's panels. */
final class WooferFit {
  /** Rounding that does not keep a piston off a panel, as a share of its radius (1). */
  private static final double SLACK = 1e-9;

  private WooferFit() {}

  /** Returns why a woofer does not fit; empty if it does. */
  static Optional<Misfit> misfitOf(Woofer woofer, DesignSpec spec) {
    List<StackBrief> tight =
        spec.stacks().stream()
            .filter(stack -> woofer.radiusM() > stack.largestPistonRadiusM() * (1 + SLACK))
            .toList();
    if (tight.isEmpty()) {
      return Optional.empty();
    }
    double most = tight.stream().mapToDouble(StackBrief::largestPistonRadiusM).min().orElse(0);
    return Optional.of(
        new Misfit(
            woofer.name(),
            FiniteText.of(
                "its piston of %.0f mm would cross the rim or its neighbour in stack %s, which takes"
                    + " %.0f mm at most",
                2e3 * woofer.radiusM(),
                tight.stream().map(StackBrief::name).collect(Collectors.joining(", ")),
                2e3 * most)));
  }

  /**
   * Requires that woofers fit.
   *
   * @throws InvalidInputException with every woofer that does not
   */
  static void require(List<Woofer> woofers, DesignSpec spec) {
    List<Misfit> misfits =
        woofers.stream().flatMap(woofer -> misfitOf(woofer, spec).stream()).toList();
    if (!misfits.isEmpty()) {
      throw notFitting(misfits);
    }
  }

  /** Returns the fault that none of some woofers fits. */
  static InvalidInputException notFitting(List<Misfit> misfits) {
    return new InvalidInputException(
        misfits.stream()
            .map(
                misfit ->
                    new InputFault(
                        misfit.name(),
                        0,
                        "effective-diameter",
                        "",
                        misfit.reason(),
                        "",
                        "move the woofers apart in the spec, or take smaller ones"))
            .toList());
  }
}
