package nullplane.scoring;

import java.util.Optional;
import nullplane.network.SeriesCoil;
import nullplane.network.StackNetwork;

/**
 * One woofer in one stack, with the wiring and the network that suit it best there.
 *
 * @param brief the stack
 * @param wiring wiring chosen, or the spec's
 * @param network network chosen
 * @param figures single numbers
 * @param curves by frequency
 * @param limits heat, load, signals below the band and programme; empty where they were not worked
 *     out
 */
public record StackAssessment(
    StackBrief brief,
    Wiring wiring,
    StackNetwork network,
    StackFigures figures,
    StackCurves curves,
    Optional<LimitStudy> limits) {

  /** An assessment without its limits. */
  public StackAssessment(
      StackBrief brief,
      Wiring wiring,
      StackNetwork network,
      StackFigures figures,
      StackCurves curves) {
    this(brief, wiring, network, figures, curves, Optional.empty());
  }

  /** Returns this assessment with its limits. */
  public StackAssessment withLimits(LimitStudy study) {
    return new StackAssessment(brief, wiring, network, figures, curves, Optional.of(study));
  }

  /** Returns the coil in series with the stack; {@link SeriesCoil#NONE} if there is none. */
  public SeriesCoil coil() {
    return network.seriesCoil();
  }
}
