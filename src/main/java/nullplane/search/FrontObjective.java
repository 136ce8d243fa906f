package nullplane.search;

import java.util.function.ToDoubleFunction;

/** What the members of a front are compared by. */
public enum FrontObjective {
  /** Shape of the level, weighted. */
  SHAPE("shape", "dB", false, member -> member.score().shapeDb()),
  /** Margin of the loudest level; more is better. */
  OUTPUT("output margin", "dB", true, member -> member.score().outputMarginDb()),
  /** Correction by the networks, weighted. */
  CORRECTION("correction", "dB", false, member -> member.score().correctionDb()),
  /** Material of networks and woofer, weighted. */
  MATERIAL("material", "dB", false, member -> member.score().materialDb()),
  /** Share of a production run that stays in the corridor in every stack. */
  YIELD("yield", "%", true, member -> 100 * member.corridorYield());

  private final String word;
  private final String unit;
  private final boolean moreIsBetter;

  @SuppressWarnings("ImmutableEnumChecker") // the functions above keep no state
  private final ToDoubleFunction<FrontMember> value;

  FrontObjective(
      String word, String unit, boolean moreIsBetter, ToDoubleFunction<FrontMember> value) {
    this.word = word;
    this.unit = unit;
    this.moreIsBetter = moreIsBetter;
    this.value = value;
  }

  /** Returns what it is called. */
  public String word() {
    return word;
  }

  /** Returns the unit of its values. */
  public String unit() {
    return unit;
  }

  /** Returns whether more is better. */
  public boolean moreIsBetter() {
    return moreIsBetter;
  }

  /** Returns a member's value (in the unit named). */
  public double of(FrontMember member) {
    return value.applyAsDouble(member);
  }
}
