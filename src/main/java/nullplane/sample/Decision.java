package nullplane.sample;

import nullplane.fit.Finding;

/** Whether a sample meets its brief, as far as the measurement can tell. */
public enum Decision {
  /** Met, whatever the true value within its 95 % interval. */
  PASS("pass"),
  /** Missed, whatever the true value within its 95 % interval. */
  FAIL("fail"),
  /** The interval reaches across a limit, or there is no value. */
  CANNOT_TELL("cannot tell");

  private final String words;

  Decision(String words) {
    this.words = words;
  }

  /** Returns the decision in words. */
  public String words() {
    return words;
  }

  /**
   * Returns the decision on one value. The 95 % interval is the guard band at either limit: only an
   * interval that lies inside passes, only one that lies outside fails.
   *
   * <p>Source: JCGM 106:2012, clause 8.3 (guarded acceptance, guarded rejection).
   *
   * @param window what is accepted (SI)
   * @param finding what was measured (SI)
   */
  public static Decision of(BriefWindow window, Finding finding) {
    if (!(finding instanceof Finding.Estimate estimate)) {
      return window.limits() ? CANNOT_TELL : PASS;
    }
    if (window.accepts(estimate.lower95()) && window.accepts(estimate.upper95())) {
      return PASS;
    }
    boolean below = window.lower().isPresent() && estimate.upper95() < window.lower().getAsDouble();
    boolean above = window.upper().isPresent() && estimate.lower95() > window.upper().getAsDouble();
    return below || above ? FAIL : CANNOT_TELL;
  }

  /** Returns the decision on several: one that fails decides, then one that cannot be told. */
  public Decision and(Decision other) {
    if (this == FAIL || other == FAIL) {
      return FAIL;
    }
    return this == CANNOT_TELL || other == CANNOT_TELL ? CANNOT_TELL : PASS;
  }
}
