package nullplane.scoring;

/**
 * What each objective costs, in decibels of root-mean-square deviation that a designer would trade
 * for it. Set by judgement, not by a source; the breakdown of every grade shows what they do.
 *
 * @param perDbDeviation per dB of root-mean-square deviation from the wanted level
 * @param perDbOutside per dB of the largest distance outside the corridor
 * @param perDbOutputLack per dB that the loudest level lacks
 * @param perDbCorrection per dB that a network bends the response, and per dB of level it takes
 * @param perGramOfWoofer per gram of wire in the woofer's own coil
 * @param perJouleOfGap per joule of magnetic energy in the woofer's gap, which its magnet is paid
 *     for
 * @param perPart per part of a stack's network
 * @param perKilogramOfCopper per kilogram of copper in a stack's network
 * @param perMillifarad per millifarad of capacitors in a stack's network
 * @param shareOfWorst weight of the worst stack; the rest is the mean over all stacks
 */
public record GradeWeights(
    double perDbDeviation,
    double perDbOutside,
    double perDbOutputLack,
    double perDbCorrection,
    double perGramOfWoofer,
    double perJouleOfGap,
    double perPart,
    double perKilogramOfCopper,
    double perMillifarad,
    double shareOfWorst) {

  /** The weights of a spec that states no priorities. */
  public static final GradeWeights STANDARD =
      new GradeWeights(1.0, 1.0, 0.5, 0.05, 0.005, 0.1, 0.1, 0.1, 0.5, 0.8);
}
