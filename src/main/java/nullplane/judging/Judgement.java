package nullplane.judging;

import java.util.List;
import java.util.OptionalDouble;
import nullplane.scoring.Assessment;

/**
 * What a given woofer is worth on a spec.
 *
 * @param assessment its figures with the best network of each stack
 * @param findings what it lacks, the gravest first; empty if nothing
 * @param behindBestDb by how much its cost exceeds that of the best buildable woofer (dB); empty if
 *     none was searched for
 */
public record Judgement(
    Assessment assessment, List<Finding> findings, OptionalDouble behindBestDb) {
  /** Copies the list. */
  public Judgement {
    findings = List.copyOf(findings);
  }

  /** Returns the most correction that any stack needs without its network (dB). */
  public double mostCorrectionDb() {
    return assessment.stacks().stream()
        .mapToDouble(stack -> stack.figures().correctionDb())
        .max()
        .orElse(0);
  }

  /** Returns the least margin of the loudest level over what is asked for, over all stacks (dB). */
  public double leastOutputMarginDb() {
    return assessment.stacks().stream()
        .mapToDouble(stack -> stack.figures().outputMarginDb())
        .min()
        .orElse(0);
  }
}
