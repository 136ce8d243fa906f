package nullplane.scoring;

import nullplane.network.SeriesCoil;

/**
 * One woofer in one stack, with the wiring and the coil that suit it best there.
 *
 * @param brief the stack
 * @param wiring wiring chosen, or the spec's
 * @param coil series coil chosen
 * @param figures single numbers
 * @param curves by frequency
 */
public record StackAssessment(
    StackBrief brief, Wiring wiring, SeriesCoil coil, StackFigures figures, StackCurves curves) {}
