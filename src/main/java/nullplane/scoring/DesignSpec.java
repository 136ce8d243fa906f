package nullplane.scoring;

import java.util.List;
import nullplane.network.NetworkOffer;

/**
 * A panel system and what is wanted from it: the input of the whole program, units removed.
 *
 * @param title what people call the system
 * @param woofer what the search may choose
 * @param stacks the members of the family, one or more
 * @param listening where the listener is
 * @param target what every stack is held to
 * @param amplifier what drives a stack
 * @param networks what may stand before a stack
 * @param weights what each objective costs: the designer's priorities
 */
public record DesignSpec(
    String title,
    WooferBrief woofer,
    List<StackBrief> stacks,
    Listening listening,
    Target target,
    Amplifier amplifier,
    NetworkOffer networks,
    GradeWeights weights) {
  /** A spec that states neither networks nor priorities. */
  public DesignSpec(
      String title,
      WooferBrief woofer,
      List<StackBrief> stacks,
      Listening listening,
      Target target,
      Amplifier amplifier) {
    this(
        title,
        woofer,
        stacks,
        listening,
        target,
        amplifier,
        NetworkOffer.standard(),
        GradeWeights.STANDARD);
  }

  /** Checks that there is a stack and that every upper corner lies above the low one. */
  public DesignSpec {
    stacks = List.copyOf(stacks);
    for (StackBrief stack : stacks) {
      if (!(stack.upperCornerHz().orElse(target.upperCornerHz()) > target.lowCornerHz())) {
        throw new IllegalArgumentException(
            "upper corner of stack "
                + stack.name()
                + "; allowed: above "
                + target.lowCornerHz()
                + " Hz");
      }
    }
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
        amplifier,
        networks,
        weights);
  }

  /**
   * Returns the same spec with other networks.
   *
   * @param offer what may stand before a stack
   */
  public DesignSpec withNetworks(NetworkOffer offer) {
    return new DesignSpec(title, woofer, stacks, listening, target, amplifier, offer, weights);
  }

  /** Returns a stack's upper corner, its own or the target's (Hz). */
  public double upperCornerHz(StackBrief stack) {
    return stack.upperCornerHz().orElse(target.upperCornerHz());
  }

  /** Returns the upper corners of all stacks, rising, each once (Hz). */
  public List<Double> upperCornersHz() {
    return stacks.stream().map(this::upperCornerHz).distinct().sorted().toList();
  }

  /** Returns the highest upper corner of all stacks (Hz). */
  public double highestCornerHz() {
    List<Double> corners = upperCornersHz();
    return corners.get(corners.size() - 1);
  }

  /**
   * Returns up to where the shape of every stack is judged (Hz): the highest upper corner, or
   * {@link Target#BEYOND} times that if a slope or a sum with a main driver is asked for.
   */
  public double shapeTopHz() {
    double highest = highestCornerHz();
    boolean beyond =
        target.upperOrder() > 0 || stacks.stream().anyMatch(stack -> stack.main().isPresent());
    return beyond ? Target.BEYOND * highest : highest;
  }

  /**
   * Returns the level wanted of a stack at the listening point at the target's voltage (dB re 20
   * uPa): of woofers and main driver together if it has one, else of the woofers.
   *
   * @param stack the stack
   * @param frequencyHz where (Hz)
   */
  public double wantedDb(StackBrief stack, double frequencyHz) {
    return stack.main().isPresent()
        ? stack.levelDb()
        : stack.levelDb() + target.slopeDb(upperCornerHz(stack), frequencyHz);
  }
}
