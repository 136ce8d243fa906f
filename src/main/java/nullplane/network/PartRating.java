package nullplane.network;

import nullplane.units.Checks;

/**
 * What a part must stand: the most of each quantity over the band, for a lasting sine at its worst
 * frequency. Music asks for less on average; buy no part below these without a reason.
 *
 * @param peakVoltageV peak voltage across the part (V); what a capacitor is bought by
 * @param currentA root-mean-square current (A); what a coil is bought by
 * @param powerW heat in the part (W); what a resistor is bought by
 * @param atHz frequency at which the quantity the part is bought by is greatest (Hz)
 */
public record PartRating(double peakVoltageV, double currentA, double powerW, double atHz) {
  /** Checks that the figures are finite and not negative. */
  public PartRating {
    Checks.notNegative(peakVoltageV, "peak voltage", "V");
    Checks.notNegative(currentA, "current", "A");
    Checks.notNegative(powerW, "power", "W");
    Checks.positive(atHz, "frequency", "Hz");
  }

  /** Returns the quantity a kind of part is bought by (V, A or W). */
  public double governing(PartKind kind) {
    return switch (kind) {
      case RESISTOR -> powerW;
      case COIL -> currentA;
      case CAPACITOR -> peakVoltageV;
    };
  }

  /**
   * Returns what a part must stand that serves in two places or stacks, one at a time.
   *
   * @param other the other rating
   * @param kind the part's kind, which decides whose frequency is kept
   */
  public PartRating orMore(PartRating other, PartKind kind) {
    return new PartRating(
        Math.max(peakVoltageV, other.peakVoltageV),
        Math.max(currentA, other.currentA),
        Math.max(powerW, other.powerW),
        governing(kind) >= other.governing(kind) ? atHz : other.atHz);
  }
}
