package nullplane.judging;

import nullplane.units.Checks;

/**
 * One thing that a woofer lacks on a spec.
 *
 * @param kind what it is
 * @param stack the stack where it is worst; empty if it concerns the woofer alone
 * @param amount how much (dB, or the unit the sentence names; % for a contradiction)
 * @param frequencyHz where in the band (Hz); 0 if it has no frequency
 * @param sentence the finding in words, with its figures
 * @param remedy what would mend it
 */
public record Finding(
    Kind kind, String stack, double amount, double frequencyHz, String sentence, String remedy) {
  /** What a woofer can lack. */
  public enum Kind {
    /** The sheet contradicts itself. */
    CONTRADICTION,
    /** The bare stack plays too little at the low corner against the rest of its band. */
    LACKS_BASS,
    /** The bare stack plays too much near its resonance. */
    HUMP,
    /** The coil's inductance takes level at the upper corner. */
    INDUCTANCE,
    /** The level at the target's voltage is too low, even with the best network. */
    TOO_QUIET,
    /** The level at the target's voltage is too high and must be padded. */
    TOO_LOUD,
    /** The level leaves its corridor with the best network. */
    OUTSIDE_CORRIDOR,
    /** The loudest level falls short because a cone reaches its travel. */
    SHORT_TRAVEL,
    /** The loudest level falls short because a coil reaches its rated heat. */
    LITTLE_POWER,
    /** The loudest level falls short because the amplifier ends. */
    AMPLIFIER_ENDS,
    /** The load is below what the amplifier is rated for. */
    LOW_LOAD,
    /** A cone would pass its travel at the target's voltage. */
    TRAVEL_AT_TARGET,
    /** No coil can be wound that gives this motor and travel and leaves mass for a cone. */
    NO_COIL,
    /** The suspension is outside what this size can be given. */
    SUSPENSION
  }

  /** Checks that the figures are numbers. */
  public Finding {
    Checks.finite(amount, "amount", "dB");
    Checks.finite(frequencyHz, "frequency", "Hz");
  }
}
