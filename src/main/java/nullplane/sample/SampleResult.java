package nullplane.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import nullplane.driver.Woofer;
import nullplane.fit.Finding;
import nullplane.fit.SweepFit;
import nullplane.scoring.Assessment;
import nullplane.scoring.Grade;

/**
 * One sample against its brief.
 *
 * @param name the sample
 * @param measured what was measured
 * @param fit what its sweeps say
 * @param figures every figure that its sweeps determine (SI; dB re 20 uPa for the level)
 * @param checks every value of the brief that a sweep or a stated position can tell
 * @param notMeasured keys of values with a window that nothing here can tell
 * @param woofer the sample as a woofer, if its resonance is known
 * @param massAssumed whether its moving mass had to be taken from the brief
 * @param assessment what it does with the best available parts
 * @param briefParts every stack with the brief's parts; empty without a woofer
 * @param notes what was repaired, assumed or found doubtful, one sentence each
 */
public record SampleResult(
    String name,
    MeasuredSample measured,
    SweepFit fit,
    Map<BenchFigure, Finding.Estimate> figures,
    List<ValueCheck> checks,
    List<String> notMeasured,
    Optional<Woofer> woofer,
    boolean massAssumed,
    Optional<Assessment> assessment,
    List<PartsFigures> briefParts,
    List<String> notes) {
  /** Copies the collections. */
  public SampleResult {
    Map<BenchFigure, Finding.Estimate> copy = new EnumMap<>(BenchFigure.class);
    copy.putAll(figures);
    figures = Collections.unmodifiableMap(copy);
    checks = List.copyOf(checks);
    notMeasured = List.copyOf(notMeasured);
    briefParts = List.copyOf(briefParts);
    notes = List.copyOf(notes);
  }

  /** Returns whether it is a reference that decides nothing. */
  public boolean golden() {
    return measured.golden();
  }

  /** Returns its grade with the best available parts, if it is a woofer. */
  public Optional<Grade> grade() {
    return assessment.map(Assessment::grade);
  }

  /** Returns every stack with the best available parts; empty without a woofer. */
  public List<PartsFigures> bestParts() {
    return assessment.map(BriefStacks::withBestParts).orElse(List.of());
  }

  /** Returns the decision on the whole sample. */
  public Decision decision() {
    Decision all = Decision.PASS;
    for (ValueCheck check : checks) {
      all = all.and(check.decision());
    }
    return all;
  }

  /** Returns the checks with a decision. */
  public List<ValueCheck> with(Decision decision) {
    List<ValueCheck> found = new ArrayList<>();
    for (ValueCheck check : checks) {
      if (check.decision() == decision) {
        found.add(check);
      }
    }
    return found;
  }

  /** Returns the estimate of a key, if there is one. */
  public Optional<Finding.Estimate> estimate(String key) {
    for (ValueCheck check : checks) {
      if (check.value().key().equals(key) && check.finding() instanceof Finding.Estimate found) {
        return Optional.of(found);
      }
    }
    return Optional.empty();
  }
}
