package nullplane.sample;

import java.util.List;
import java.util.Optional;
import nullplane.scoring.Assessment;

/**
 * Samples against a brief, and what the maker should change.
 *
 * @param brief the brief
 * @param asked what the brief's woofer does with the best available parts
 * @param nominal every stack with the brief's woofer and parts
 * @param samples the samples, in the order of the file
 * @param spreads how the values scatter; empty for one sample
 * @param request what to change; empty if no sample fails
 * @param notes what holds for all samples, one sentence each
 */
public record SampleOutcome(
    SampleBrief brief,
    Assessment asked,
    List<PartsFigures> nominal,
    List<SampleResult> samples,
    List<BatchSpread> spreads,
    Optional<ChangeRequest> request,
    List<String> notes) {
  /** Copies the lists and checks that there is a sample. */
  public SampleOutcome {
    nominal = List.copyOf(nominal);
    samples = List.copyOf(samples);
    spreads = List.copyOf(spreads);
    notes = List.copyOf(notes);
    if (samples.isEmpty()) {
      throw new IllegalArgumentException("no sample");
    }
  }

  /** Returns the decision on all samples: one that fails decides. */
  public Decision decision() {
    Decision all = Decision.PASS;
    for (SampleResult sample : samples) {
      all = all.and(sample.decision());
    }
    return all;
  }

  /** Returns how many samples have a decision. */
  public int count(Decision decision) {
    return (int) samples.stream().filter(s -> s.decision() == decision).count();
  }
}
