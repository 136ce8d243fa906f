package nullplane.network;

import java.util.List;
import java.util.Optional;
import nullplane.units.Checks;
import nullplane.units.Range;

/**
 * What an active filter may be set to. All ranges are of quantities above 0 and are walked by
 * ratio.
 *
 * @param gain gain (1)
 * @param alignments low-pass shapes to choose from; "no low-pass" is always a choice
 * @param cornerHz corner of the low-pass (Hz)
 * @param correctionHz frequency of the correction (Hz)
 * @param correctionQ quality factor of a peak (1)
 * @param correctionGain gain of the correction (1), for example 0.5 to 2
 */
public record ActiveLimits(
    Range gain,
    List<FilterAlignment> alignments,
    Range cornerHz,
    Range correctionHz,
    Range correctionQ,
    Range correctionGain) {
  /** Copies the list and checks that the ranges lie above 0. */
  public ActiveLimits {
    alignments = List.copyOf(alignments);
    Checks.positive(gain.lower(), "least gain", "(1)");
    Checks.positive(cornerHz.lower(), "least corner", "Hz");
    Checks.positive(correctionHz.lower(), "least correction frequency", "Hz");
    Checks.positive(correctionQ.lower(), "least correction Q", "(1)");
    Checks.positive(correctionGain.lower(), "least correction gain", "(1)");
  }

  /**
   * Returns how far a setting lies outside, summed over its quantities as natural logarithms of
   * ratios; 0 if all is allowed, infinite for a shape that is not among the choices (1).
   *
   * @param branch the setting
   */
  public double excess(ActiveBranch branch) {
    double sum = outside(gain, branch.gain());
    if (branch.lowPass().isPresent()) {
      CrossoverFilter filter = branch.lowPass().get();
      if (!alignments.contains(filter.alignment())) {
        return Double.POSITIVE_INFINITY;
      }
      sum += outside(cornerHz, filter.cornerHz());
    }
    if (branch.correction().isPresent()) {
      Correction correction = branch.correction().get();
      sum += outside(correctionHz, correction.frequencyHz());
      sum += outside(correctionGain, correction.gain());
      if (correction instanceof Correction.Peaking peaking) {
        sum += outside(correctionQ, peaking.q());
      }
    }
    return sum;
  }

  private static double outside(Range range, double value) {
    return Math.max(0, Math.log(range.lower() / value))
        + Math.max(0, Math.log(value / range.upper()));
  }

  /** Which correction a setting has. */
  public enum CorrectionKind {
    /** No correction. */
    NONE,
    /** A {@link Correction.Shelf}. */
    SHELF,
    /** A {@link Correction.Peaking}. */
    PEAKING
  }

  /**
   * A setting as shares of the limits, for a search. Shares are 0 to 1 and walk by ratio.
   *
   * @param gain share of the gain
   * @param alignment 0 for no low-pass, then 1 on for the shapes in their order
   * @param corner share of the corner
   * @param correction which correction
   * @param correctionHz share of its frequency
   * @param correctionQ share of its Q
   * @param correctionGain share of its gain
   */
  public record Setting(
      double gain,
      int alignment,
      double corner,
      CorrectionKind correction,
      double correctionHz,
      double correctionQ,
      double correctionGain) {}

  /**
   * Returns the filter of a setting.
   *
   * @param setting shares of the limits
   * @throws IllegalArgumentException if a share or the shape's index is out of range
   */
  public ActiveBranch branch(Setting setting) {
    if (setting.alignment < 0 || setting.alignment > alignments.size()) {
      throw new IllegalArgumentException(
          "low-pass shape is " + setting.alignment + "; allowed: 0 .. " + alignments.size());
    }
    Optional<CrossoverFilter> lowPass =
        setting.alignment == 0
            ? Optional.empty()
            : Optional.of(
                new CrossoverFilter(
                    alignments.get(setting.alignment - 1), at(cornerHz, setting.corner)));
    double hz = at(correctionHz, setting.correctionHz);
    double most = at(correctionGain, setting.correctionGain);
    Optional<Correction> correction =
        switch (setting.correction) {
          case NONE -> Optional.empty();
          case SHELF -> Optional.of(new Correction.Shelf(hz, most));
          case PEAKING ->
              Optional.of(new Correction.Peaking(hz, at(correctionQ, setting.correctionQ), most));
        };
    return new ActiveBranch(at(gain, setting.gain), lowPass, correction);
  }

  private static double at(Range range, double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("share is " + share + "; allowed: 0 .. 1");
    }
    // the ends are met exactly, so that a setting within the limits has no excess
    double value = range.lower() * Math.pow(range.upper() / range.lower(), share);
    return Math.min(range.upper(), Math.max(range.lower(), value));
  }
}
