package nullplane.sample;

import nullplane.fit.Finding;

/**
 * One value of a brief against a sample.
 *
 * @param value the value asked for, with its window
 * @param finding what the sample shows (SI), or why that is not known
 * @param decision the decision
 */
public record ValueCheck(BriefValue value, Finding finding, Decision decision) {
  /**
   * Checks a finding against a value's window.
   *
   * @param value the value asked for
   * @param finding what the sample shows (SI)
   */
  public static ValueCheck of(BriefValue value, Finding finding) {
    return new ValueCheck(value, finding, Decision.of(value.window(), finding));
  }
}
