package nullplane.scoring;

import java.util.Optional;
import nullplane.network.SeriesCoil;

/**
 * One woofer in one stack, with the wiring and the coil that suit it best there.
 *
 * @param brief the stack
 * @param wiring wiring chosen, or the spec's
 * @param coil series coil chosen
 * @param figures single numbers
 * @param curves by frequency
 * @param limits heat, load, signals below the band and programme; empty where they were not worked
 *     out
 */
public record StackAssessment(
    StackBrief brief,
    Wiring wiring,
    SeriesCoil coil,
    StackFigures figures,
    StackCurves curves,
    Optional<LimitStudy> limits) {

  /** An assessment without its limits. */
  public StackAssessment(
      StackBrief brief, Wiring wiring, SeriesCoil coil, StackFigures figures, StackCurves curves) {
    this(brief, wiring, coil, figures, curves, Optional.empty());
  }

  /** Returns this assessment with its limits. */
  public StackAssessment withLimits(LimitStudy study) {
    return new StackAssessment(brief, wiring, coil, figures, curves, Optional.of(study));
  }
}
