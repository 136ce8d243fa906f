package nullplane.tolerance;

import nullplane.units.Curve;

/**
 * What a production run does in one stack, every woofer of which is like the unit. Curves have one
 * value per frequency of the band.
 *
 * @param stack the stack's name
 * @param share share of units that stay within what is permitted (1)
 * @param loadShare share of units whose load is permitted (1); 1 where load is not judged
 * @param loadJudged whether load is judged; it is not where the nominal woofer itself loads the
 *     amplifier too much
 * @param bindingHz frequency at which most of the units that leave what is permitted leave it
 *     furthest (Hz), or at which units come nearest if none leaves
 * @param nominalInside whether the nominal woofer stays inside the corridor
 * @param nominalExcessDb its largest distance outside (dB), 0 inside
 * @param nominalExcessHz where that is (Hz); where its deviation is largest if it stays inside
 * @param nominalDb level of the nominal woofer (dB re 20 uPa)
 * @param permittedLowerDb least permitted level (dB re 20 uPa)
 * @param permittedUpperDb greatest permitted level (dB re 20 uPa)
 * @param lowDb level that 2.5 % of the units stay below (dB re 20 uPa)
 * @param highDb level that 2.5 % of the units exceed (dB re 20 uPa)
 * @param nominalOutputMarginDb what the nominal woofer has in hand at its loudest, where it has
 *     least in the band (dB)
 * @param lowOutputMarginDb what 95 % of the units have in hand at least (dB)
 */
public record StackYield(
    String stack,
    double share,
    double loadShare,
    boolean loadJudged,
    double bindingHz,
    boolean nominalInside,
    double nominalExcessDb,
    double nominalExcessHz,
    Curve nominalDb,
    Curve permittedLowerDb,
    Curve permittedUpperDb,
    Curve lowDb,
    Curve highDb,
    double nominalOutputMarginDb,
    double lowOutputMarginDb) {

  /** Returns whether more units fail by their load than by all else. */
  public boolean loadBinds() {
    return 1 - loadShare > 0.5 * (1 - share);
  }
}
